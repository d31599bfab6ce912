#if WITH_DUCKDB
using System.Globalization;
using DuckDB.NET.Data;

namespace GddWatch.Benchmarks.Seasons;

/// <summary>
/// DuckDB from the file to a table of heat sums and 5-day means; tuned: the station as an enumeration, no order of rows to keep, "case" in place of "filter", no quotes looked for.
/// </summary>
internal static class HeatSumsBySql
{
    /// <summary>Makes the table.</summary>
    public static void Run(string path, int stations, int threads, DuckDBConnection connection)
    {
        Execute(connection, $"""
            set threads = {threads.ToString(CultureInfo.InvariantCulture)};
            set preserve_insertion_order = false;
            create type station as enum (select 'USW' || lpad((i + 1)::varchar, 8, '0') from range(0, {stations.ToString(CultureInfo.InvariantCulture)}) numbers(i));
            create table heat as
            with paired as (
              select id, ymd, max(case when el = 'TMAX' then v end) tx, max(case when el = 'TMIN' then v end) tn
              from read_csv('{path.Replace("'", "''", StringComparison.Ordinal)}',
                columns = {"{"}'id': 'station', 'ymd': 'INTEGER', 'el': 'VARCHAR', 'v': 'INTEGER', 'mf': 'VARCHAR', 'qf': 'VARCHAR', 'sf': 'VARCHAR', 'ot': 'VARCHAR'{"}"},
                header = false, delim = ',', quote = '', escape = '')
              where el in ('TMAX', 'TMIN') and (qf is null or qf = '')
              group by id, ymd),
            days as (
              select id, ymd, ymd // 10000 as year, (tx + tn) / 20.0 * 1.8 + 32 as mean
              from paired where tx is not null and tn is not null)
            select id, ymd, mean, greatest(0, mean - 50) as gdd,
              sum(greatest(0, mean - 50)) over (partition by id, year order by ymd) as cumulated,
              avg(mean) over (partition by id order by ymd rows between 4 preceding and current row) as five_days
            from days
            """);
    }

    /// <summary>What is in the table.</summary>
    public static TableSums Sums(DuckDBConnection connection)
    {
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = "select count(*)::bigint, sum(gdd), sum(cumulated), sum(five_days) from heat";
        using DuckDBDataReader reader = command.ExecuteReader();
        reader.Read();
        return new TableSums(reader.GetInt64(0), reader.GetDouble(1), reader.GetDouble(2), reader.GetDouble(3));
    }

    private static void Execute(DuckDBConnection connection, string text)
    {
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }
}
#endif
