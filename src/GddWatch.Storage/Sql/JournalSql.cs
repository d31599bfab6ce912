namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>journal_entry</c>.</summary>
internal static class JournalSql
{
    public const string LoadAll = """
        select number as Number, site as Site, kind as Kind, on_day as OnDay, at_time as AtTime, treatment as Treatment, active as Active,
               no_seed_until as NoSeedUntil, what as What, depth_cm as DepthCm, value_c as ValueC, note as Note, recorded_at as RecordedAt,
               replaced_by as ReplacedBy, withdrawn_at as WithdrawnAt, withdrawn_because as WithdrawnBecause
        from journal_entry
        order by number
        """;

    // Counted here and not by the database, whose own counter would leave a gap after a batch that failed; no entry is ever removed, and writers take turns.
    public const string Insert = """
        insert into journal_entry (number, site, kind, on_day, at_time, treatment, active, no_seed_until, what, depth_cm, value_c, note, recorded_at)
        values ((select coalesce(max(number), 0) + 1 from journal_entry), @Site, @Kind, @OnDay, @AtTime, @Treatment, @Active, @NoSeedUntil, @What, @DepthCm, @ValueC, @Note, @RecordedAt)
        returning number
        """;

    public const string Replace = """
        update journal_entry set replaced_by = @by
        where number = @number and replaced_by is null and withdrawn_at is null
        """;

    public const string Withdraw = """
        update journal_entry set withdrawn_at = @at, withdrawn_because = @because
        where number = @number and replaced_by is null and withdrawn_at is null
        """;
}
