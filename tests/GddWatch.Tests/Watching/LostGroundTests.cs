using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>A service that cannot go on says so and ends with 1.</summary>
public sealed class LostGroundTests
{
    private static readonly DateOnly Day = new(2025, 4, 25);

    [Fact]
    public async Task A_database_that_disappears_under_the_service_ends_it_with_a_failure_that_says_so()
    {
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), Day));
        await using LiveWatch watch = await LiveWatch.StartAsync(workshop, new DateTimeOffset(2025, 4, 25, 12, 0, 0, TimeSpan.Zero));
        foreach (string file in Directory.EnumerateFiles(workshop.Data, "gddwatch.db*")) File.Delete(file);
        Assert.Equal(1, await watch.EndsWithinMinuteAsync());
        Assert.Contains("error: The service cannot go on: The database", watch.Said, StringComparison.Ordinal);
        Assert.Contains("has disappeared while the service was running", watch.Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_that_is_spoilt_under_the_service_ends_it_with_a_failure_and_no_stack_trace()
    {
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), Day));
        await using LiveWatch watch = await LiveWatch.StartAsync(workshop, new DateTimeOffset(2025, 4, 25, 12, 0, 0, TimeSpan.Zero));
        await using (var raw = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(workshop.Data, "gddwatch.db")};Pooling=False"))
        {
            await raw.OpenAsync(TestContext.Current.CancellationToken);
            await using Microsoft.Data.Sqlite.SqliteCommand drop = raw.CreateCommand();
            drop.CommandText = "alter table message rename to elsewhere";
            await drop.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }

        Assert.Equal(1, await watch.EndsWithinMinuteAsync());
        Assert.Contains("error: The service cannot go on: ", watch.Said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", watch.Said, StringComparison.Ordinal);
    }
}
