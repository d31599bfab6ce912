using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>A change of the form is made twice, once for each kind of database; these hold the two to each other.</summary>
public sealed class BothFormsTests
{
    private const string SqliteColumns = """
        select t.name || '.' || c.name || case when c."notnull" or c.pk > 0 then ' not null' else '' end
        from sqlite_schema t join pragma_table_info(t.name) c
        where t.type = 'table' and t.name not like 'sqlite@_%' escape '@' and t.name <> 'schema_version'
        order by 1
        """;

    private const string PostgresColumns = """
        select table_name || '.' || column_name || case when is_nullable = 'NO' then ' not null' else '' end collate "C"
        from information_schema.columns
        where table_schema = current_schema() and table_name <> 'schema_version'
        order by 1
        """;

    private const string OtherCollations = """
        select table_name || '.' || column_name
        from information_schema.columns
        where table_schema = current_schema() and table_name <> 'schema_version' and data_type = 'text' and collation_name is distinct from 'C'
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Each_change_of_the_form_stands_under_one_name_for_both() =>
        Assert.Equal(SchemaChange.OfSqlite().Select(change => change.Name), SchemaChange.OfPostgreSql().Select(change => change.Name));

    [Fact]
    public async Task Both_have_the_same_tables_and_columns()
    {
        await using var file = new TestDatabase(DatabaseKind.File);
        await using var server = new TestDatabase(DatabaseKind.Server);
        await using Database inFile = await file.OpenAsync(Stop);
        await using Database onServer = await server.OpenAsync(Stop);

        IEnumerable<string> expected = await inFile.ReadAsync(work => work.QueryAsync<string>(SqliteColumns), Stop);

        Assert.Equal(expected, await onServer.ReadAsync(work => work.QueryAsync<string>(PostgresColumns), Stop));
    }

    [Fact]
    public async Task Every_text_on_a_server_sorts_by_its_bytes_whatever_the_servers_language()
    {
        await using var server = new TestDatabase(DatabaseKind.Server);
        await using Database onServer = await server.OpenAsync(Stop);

        Assert.Empty(await onServer.ReadAsync(work => work.QueryAsync<string>(OtherCollations), Stop));
    }
}
