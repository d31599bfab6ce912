namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>known_recipient</c>.</summary>
internal static class KnownRecipientSql
{
    public const string Load = "select address as Address, since as Since from known_recipient order by address";

    public const string Keep = """
        insert into known_recipient (address, since) values (@address, @since)
        on conflict (address) do nothing
        """;
}
