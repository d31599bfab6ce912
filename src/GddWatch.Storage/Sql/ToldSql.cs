namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>told</c>.</summary>
internal static class ToldSql
{
    public const string Load = """
        select site as Site, treatment as Treatment, season as Season, kind as Kind, revision as Revision, address as Address, day as Day, fact as Fact,
               configuration as Configuration, message_id as MessageId
        from told
        order by site, treatment, season, kind, address, revision
        """;

    public const string Keep = """
        insert into told (site, treatment, season, kind, revision, address, day, fact, configuration, message_id)
        values (@Site, @Treatment, @Season, @Kind, @Revision, @Address, @Day, @Fact, @Configuration, @MessageId)
        on conflict (site, treatment, season, kind, address, revision) do nothing
        """;

    public const string ByWhichMessage = """
        select message_id from told
        where site = @Site and treatment = @Treatment and season = @Season and kind = @Kind and address = @Address and revision = @Revision
        """;
}
