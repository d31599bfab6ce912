using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Single values kept for the whole region, by name, such as the fingerprint of the configuration last seen.</summary>
public sealed class RegionValues(Database database)
{
    /// <summary>The value, or null where none is kept.</summary>
    public Task<string?> FindAsync(string name, CancellationToken stop) => database.ReadAsync(
        work => work.FindAsync<string>(RegionValueSql.Find, new { name }), stop);

    /// <summary>Keeps a value in place of the one before.</summary>
    public Task KeepAsync(string name, string value, CancellationToken stop) => database.WriteAsync(work => KeepAsync(work, name, value), stop);

    internal static Task<int> KeepAsync(Work work, string name, string value) => work.ExecuteAsync(RegionValueSql.Keep, new { name, value });
}
