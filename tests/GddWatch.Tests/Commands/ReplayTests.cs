using MimeKit;
using Xunit;

namespace GddWatch.Tests.Commands;

public sealed class ReplayTests
{
    /// <summary>A spring, long enough for openings and closings at every site.</summary>
    private static readonly string[] Spring = ["replay", "--from", "2025-03-15", "--until", "2025-05-31"];

    [Fact]
    public async Task A_replay_writes_a_mail_for_each_change_and_run_again_it_writes_nothing_new()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran first = await workshop.RunAsync("replay");
        Assert.Equal(0, first.Code);
        SortedDictionary<string, byte[]> mails = workshop.ReplayMails;
        Assert.NotEmpty(mails);
        // The page beside the samples shows what this prints.
        string page = File.ReadAllText(Path.Combine(SharedFiles.RepositoryRoot, "data-samples", "YEAR.md"));
        string[] printed = [.. first.Output.Split('\n').Select(line => line.TrimEnd()).TakeWhile(line => !line.StartsWith("No mail about", StringComparison.Ordinal))];
        Assert.Contains(string.Join('\n', printed).TrimEnd(), page, StringComparison.Ordinal);
        DateTime[] written = WrittenAt(workshop);
        Ran second = await workshop.RunAsync("replay");
        Assert.Equal(0, second.Code);
        Assert.Contains("nothing new", second.Output, StringComparison.Ordinal);
        Assert.Equal(mails.Keys, workshop.ReplayMails.Keys);
        Assert.Equal(written, WrittenAt(workshop));
    }

    [Fact]
    public async Task Every_mail_says_that_the_region_is_invented_and_that_the_label_is_the_law()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync(Spring);
        foreach ((string name, byte[] bytes) in workshop.ReplayMails)
        {
            string[] texts = Texts(bytes);
            Assert.Equal(2, texts.Length);
            foreach (string text in texts)
            {
                Assert.True(text.Contains("invented", StringComparison.Ordinal), name);
                Assert.True(text.Contains("label is the law", StringComparison.Ordinal), name);
                Assert.True(text.Contains("not a prescription", StringComparison.Ordinal), name);
            }
        }
    }

    [Fact]
    public async Task Opening_mails_of_pre_emergent_and_overseeding_say_that_they_forbid_each_other_and_what_is_not_recorded()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("replay", "--from", "2025-02-10", "--until", "2025-09-05");
        string[] names = [.. workshop.ReplayMails.Keys.Where(name => name.Contains("opened.spring-pre-emergent", StringComparison.Ordinal) || name.Contains("opened.overseeding", StringComparison.Ordinal))];
        Assert.NotEmpty(names);
        foreach (string name in names)
        {
            string text = string.Join(' ', Texts(workshop.ReplayMails[name])[0].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains("is recorded here; if", text, StringComparison.Ordinal);
            Assert.Contains("do not seed before its label allows", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_days_after_the_replayed_one_are_hidden()
    {
        using Workshop whole = Workshop.WithSamples();
        await whole.RunAsync("replay", "--from", "2025-01-01", "--until", "2025-06-30");
        using Workshop cut = Workshop.WithSamples();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(cut.Folder, "data-samples")))
        {
            File.WriteAllLines(file, File.ReadAllLines(file).TakeWhile(line => !line.StartsWith("2025-07-01", StringComparison.Ordinal)));
        }

        await cut.RunAsync("replay", "--from", "2025-01-01", "--until", "2025-06-30");
        Assert.NotEmpty(whole.ReplayMails);
        Assert.Equal(whole.ReplayMails, cut.ReplayMails);
    }

    [Fact]
    public async Task A_replay_that_was_stopped_half_way_goes_on_to_the_same_mails()
    {
        using Workshop whole = Workshop.WithSamples();
        await whole.RunAsync(Spring);
        using Workshop stopped = Workshop.WithSamples();
        using var stop = new CancellationTokenSource();
        using var output = new StringWriter();
        // The first mails are there when this fires: stop in the middle of the year.
        string mailFolder = Path.Combine(stopped.Data, "replay", "mail");
        Directory.CreateDirectory(mailFolder);
        using var watcher = new FileSystemWatcher(mailFolder) { EnableRaisingEvents = true };
        watcher.Renamed += (_, _) => stop.Cancel();
        int code = await GddWatch.Commands.CommandLine.RunAsync(
            [.. Spring, "--config", stopped.Config, "--data", stopped.Data],
            new GddWatch.Commands.Terminal(output, output, stopped.Clock, isInteractive: false),
            stop.Token);
        Assert.Equal(1, code);
        Assert.InRange(stopped.ReplayMails.Count, 1, whole.ReplayMails.Count - 1);
        await stopped.RunAsync(Spring);
        Assert.Equal(whole.ReplayMails, stopped.ReplayMails);
    }

    [Fact]
    public async Task A_replay_with_other_thresholds_starts_afresh_and_says_so()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync(Spring);
        string treatments = Path.Combine(workshop.Config, "treatments.yaml");
        File.WriteAllText(treatments, File.ReadAllText(treatments).Replace("reaches: 350 °F-days", "reaches: 400 °F-days", StringComparison.Ordinal));
        Ran again = await workshop.RunAsync(Spring);
        Assert.Contains("made afresh", again.Error, StringComparison.Ordinal);
        using Workshop fresh = Workshop.WithSamples();
        File.Copy(treatments, Path.Combine(fresh.Config, "treatments.yaml"), overwrite: true);
        await fresh.RunAsync(Spring);
        Assert.Equal(fresh.ReplayMails, workshop.ReplayMails);
    }

    [Fact]
    public async Task A_replay_never_sends_even_where_a_mail_server_is_configured()
    {
        using Workshop workshop = Workshop.WithSamples();
        // Nothing listens there: an attempt to send would be an error.
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), """{ "Mail": { "Host": "127.0.0.1", "Port": 9, "Security": "none", "From": "service@example.org" } }""");
        Ran ran = await workshop.RunAsync("replay", "--from", "2025-03-01", "--until", "2025-05-31");
        Assert.Equal(0, ran.Code);
        Assert.NotEmpty(workshop.ReplayMails);
        Assert.False(Directory.Exists(Path.Combine(workshop.Data, "mail")));
    }

    [Fact]
    public async Task A_range_turned_round_is_wrong_usage()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("replay", "--from", "2025-05-01", "--until", "2025-04-01");
        Assert.Equal(2, ran.Code);
        Assert.Contains("--until 2025-04-01 is before --from 2025-05-01", ran.Error, StringComparison.Ordinal);
    }

    private static DateTime[] WrittenAt(Workshop workshop) =>
        [.. workshop.ReplayMails.Keys.Select(name => File.GetLastWriteTimeUtc(Path.Combine(workshop.Data, "replay", "mail", name)))];

    private static string[] Texts(byte[] mail)
    {
        using var stream = new MemoryStream(mail);
        MimeMessage message = MimeMessage.Load(stream);
        return [message.TextBody!, message.HtmlBody!];
    }
}
