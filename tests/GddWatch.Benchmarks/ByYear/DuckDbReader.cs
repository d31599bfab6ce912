#if WITH_DUCKDB
using System.Globalization;
using DuckDB.NET.Data;

namespace GddWatch.Benchmarks.ByYear;

/// <summary>DuckDB's CSV reader from the file to the sums; no days and no columns are kept.</summary>
internal static class DuckDbReader
{
    public static YearlySums Read(string path, int threads)
    {
        using DuckDBConnection connection = new("DataSource=:memory:");
        connection.Open();
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = $"""
            set threads = {threads.ToString(CultureInfo.InvariantCulture)};
            select count(*) filter (el in ('TMAX', 'TMIN', 'PRCP'))::bigint, sum(v) filter (el = 'TMAX')::bigint, sum(v) filter (el = 'TMIN')::bigint, sum(v) filter (el = 'PRCP')::bigint, sum(ymd)::bigint
            from read_csv('{path.Replace("'", "''", StringComparison.Ordinal)}',
              columns = {"{"}'id': 'VARCHAR', 'ymd': 'INTEGER', 'el': 'VARCHAR', 'v': 'INTEGER', 'mf': 'VARCHAR', 'qf': 'VARCHAR', 'sf': 'VARCHAR', 'ot': 'VARCHAR'{"}"},
              header = false, delim = ',', quote = '', escape = '')
            where qf is null or qf = ''
            """;
        using DuckDBDataReader reader = command.ExecuteReader();
        if (reader.FieldCount < 5) reader.NextResult();
        reader.Read();
        return new YearlySums(reader.GetInt64(0), reader.GetInt64(1), reader.GetInt64(2), reader.GetInt64(3));
    }
}
#endif
