namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>refusing_address</c>.</summary>
internal static class RefusingAddressSql
{
    public const string Count = """
        insert into refusing_address (address, refusals, last_words, last_at)
        values (@address, 1, @words, @at)
        on conflict (address) do update set refusals = refusing_address.refusals + 1, last_words = @words, last_at = @at
        """;

    public const string Pause = """
        update refusing_address
        set paused_at = @at, resumed_at = null
        where address = @address and refusals >= @pauseAfter and paused_at is null
        """;

    // It has taken a mail: what it refused before is over.
    public const string Forgive = """
        delete from refusing_address
        where address = @address and paused_at is null
        """;

    public const string Resume = """
        update refusing_address
        set resumed_at = @at
        where address = @address and paused_at is not null and resumed_at is null
        """;

    public const string Remove = """
        delete from refusing_address
        where address = @address
        """;

    public const string Load = """
        select address as Address, refusals as Refusals, last_words as LastWords, last_at as LastAt, paused_at as PausedAt, resumed_at as ResumedAt
        from refusing_address
        order by address
        """;
}
