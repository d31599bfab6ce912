using System.Reflection;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds;
using GddWatch.Notices;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.HouseRules;

public sealed class OneWayReferencesTests
{
    private static readonly Assembly Agronomy = typeof(WindowJudge).Assembly;
    private static readonly Assembly Feeds = typeof(FeedReading).Assembly;
    private static readonly Assembly Storage = typeof(Database).Assembly;
    private static readonly Assembly Notices = typeof(DeliveryOutcome).Assembly;

    [Fact]
    public void Feeds_storage_and_notices_know_the_core_and_not_each_other()
    {
        foreach (Assembly room in (ReadOnlySpan<Assembly>)[Feeds, Storage, Notices])
        {
            Assert.Equal(["GddWatch.Agronomy"], OwnReferences(room));
        }
    }

    [Fact]
    public void The_core_knows_no_other_room() => Assert.Empty(OwnReferences(Agronomy));

    [Fact]
    public void The_program_knows_all_of_them() =>
        Assert.Equal(
            ["GddWatch.Agronomy", "GddWatch.Feeds", "GddWatch.Notices", "GddWatch.Storage"],
            OwnReferences(Assembly.Load("gddwatch")));

    private static IEnumerable<string> OwnReferences(Assembly assembly) => assembly.GetReferencedAssemblies()
        .Select(reference => reference.Name!)
        .Where(name => name.StartsWith("GddWatch", StringComparison.OrdinalIgnoreCase))
        .Order(StringComparer.Ordinal);
}
