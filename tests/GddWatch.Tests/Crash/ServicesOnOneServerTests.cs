using System.Text.Json;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Storage;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>Two real processes on one PostgreSQL database and one mail server of this machine.</summary>
public sealed class ServicesOnOneServerTests
{
    private const int Days = 4;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_two_services_one_judges_and_every_notice_comes_once_as_from_a_single_one()
    {
        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        string connection = (await cluster.NewAsync()).Connection;
        await using var alone = new Hunt(0, Days, killsADay: 0);
        await alone.LiveAsync(Cancel);
        await using var server = new WitnessMailServer();
        using Workshop workshop = HuntedRegion.Make(Days, server.Port);
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""
            { "Mail": { "Host": "127.0.0.1", "Port": "{{server.Port}}", "Security": "none", "From": "service@example.org" }, "Storage": { "Kind": "postgresql", "Connection": {{JsonSerializer.Serialize(connection)}} } }
            """);
        for (int i = 0; i < Days; i++)
        {
            DateTimeOffset noon = HuntedRegion.At(HuntedRegion.FirstDay.AddDays(i), 0);
            using ProgramProcess one = ProgramProcess.Start(workshop, noon, "watch", "--once");
            using ProgramProcess two = ProgramProcess.StartBeside(workshop, noon, workshop.Data + "-two", "watch", "--once");
            await Task.WhenAll(one.Ended, two.Ended).WaitAsync(Cancel);
            Assert.True(one.ExitCode == 0, string.Join('\n', one.Lines));
            Assert.True(two.ExitCode == 0, string.Join('\n', two.Lines));
            await server.BecomesQuietAsync(Cancel);
        }

        Assert.Equal(server.Accepted.Count, server.Accepted.Select(mail => mail.MessageId).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(alone.Mails.Keys.Order(StringComparer.Ordinal), server.Accepted.Select(mail => mail.MessageId).Order(StringComparer.Ordinal));
    }
}
