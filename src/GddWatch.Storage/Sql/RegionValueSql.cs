namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>region_value</c>.</summary>
internal static class RegionValueSql
{
    public const string Find = "select value from region_value where name = @name";

    public const string Keep = """
        insert into region_value (name, value) values (@name, @value)
        on conflict (name) do update set value = excluded.value
        """;
}
