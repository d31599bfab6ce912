using System.Diagnostics;
using System.Globalization;
using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>
/// The real process and a real mail server of this machine: kill -9 at random moments of its life, at its writes to the disk and at chosen steps of a mail, a
/// hundred times, or as often as the environment variable GDDWATCH_KILLS says.
/// </summary>
public sealed class KilledWatchTests(ITestOutputHelper output)
{
    private const int UsualKills = 100;

    /// <summary>More would not fit into one day: each new attempt is half an hour later, when the claims of the killed one have run out.</summary>
    private const int MostKillsADay = 12;

    [Fact]
    public async Task However_often_it_is_killed_every_notice_comes_and_comes_again_only_where_its_acceptance_could_not_be_recorded()
    {
        CancellationToken cancel = TestContext.Current.CancellationToken;
        int kills = int.TryParse(Environment.GetEnvironmentVariable("GDDWATCH_KILLS"), CultureInfo.InvariantCulture, out int asked) ? asked : UsualKills;
        int killsADay = kills <= UsualKills ? 6 : MostKillsADay;
        // Two lives side by side, for two cores. On some days it is done before it is killed: hence a few days more.
        int days = (int)Math.Ceiling(1.4 * kills / 2 / killsADay) + 1;
        long begun = Stopwatch.GetTimestamp();
        await using var calm = new Hunt(0, days, killsADay: 0);
        await calm.LiveAsync(cancel);
        await using var first = new Hunt(20260415, days, killsADay);
        await using var second = new Hunt(20260416, days, killsADay);
        await Task.WhenAll(first.LiveAsync(cancel), second.LiveAsync(cancel));

        output.WriteLine($"{first.Kills + second.Kills} kills in {first.Runs + second.Runs} runs over {days} days, {calm.Mails.Count} mails a life, {first.Mails.Values.Concat(second.Mails.Values).Sum(times => times - 1)} repeats, {Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s");
        foreach (IGrouping<string, KeyValuePair<string, int>> phase in first.Where.Concat(second.Where).GroupBy(each => each.Key, StringComparer.Ordinal).OrderBy(each => each.Key, StringComparer.Ordinal))
            output.WriteLine($"{phase.Sum(each => each.Value),5}  {phase.Key}");

        Assert.True(first.Kills + second.Kills >= kills, $"{first.Kills + second.Kills} kills of {kills}");
        foreach (string phase in (string[])["before the pass was committed", "between acceptance and record", "with mails in hand"])
            Assert.Contains(first.Where.Concat(second.Where), each => each.Key.StartsWith(phase, StringComparison.Ordinal));
        Assert.All(calm.Mails.Values, times => Assert.Equal(1, times));
        foreach (Hunt hunted in (Hunt[])[first, second])
        {
            string wrongs = string.Join('\n', hunted.Wrongs());
            Assert.True(wrongs.Length == 0, wrongs);
            Assert.Equal(calm.Texts(), hunted.Texts());
            Assert.Equal(calm.Tables().Rows, hunted.Tables().Rows);
        }
    }
}
