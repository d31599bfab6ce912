using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Notices.Channels;
using GddWatch.Notices.Composing;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Benchmarks.Mail;

/// <summary>
/// Queues 10,000 notices for 2,000 people, a mail each, and delivers them as the worker does, through a mail server on this machine: compose, hand over, record. Prints
/// the rate and the memory over the course, and fails where a mail is missing or the memory grows with the queue.
/// </summary>
internal static class MailCommand
{
    private const int People = 2_000;
    private const int NoticesEach = 5;
    private const int Parts = 10;

    /// <summary>The memory in use may grow so much from the second tenth of the mails to the last [MB].</summary>
    private const double MostGrowthMB = 20;

    private static readonly DateOnly Day = new(2026, 4, 12);

    /// <summary>Runs it; the folder of the mail templates may be given.</summary>
    public static async Task<int> RunAsync(string[] args, CancellationToken stop)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("gddwatch-mail-");
        try
        {
            return await MeasureAsync(folder.FullName, args is [var templates] ? templates : Path.Combine("config", "mail"), stop);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<int> MeasureAsync(string folder, string templates, CancellationToken stop)
    {
        TimeProvider clock = TimeProvider.System;
        await using Database database = await Database.OpenAsync(Path.Combine(folder, "gddwatch.db"), clock, stop);
        long start = Stopwatch.GetTimestamp();
        int queued = await new PassStore(database).CommitAsync(
            new PassResult { Day = Day, At = clock.GetUtcNow(), Configuration = "benchmark", Sites = [], Windows = [], Messages = [.. Messages().Select(message => new QueuedMessage(message))] }, stop);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"queued {queued:N0} mails in one transaction in {Stopwatch.GetElapsedTime(start).TotalSeconds:N1} s"));
        GC.Collect();

        await using var server = new CountingMailServer();
        var options = new SmtpOptions { Host = "127.0.0.1", Port = server.Port, Security = SmtpSecurity.None, From = "service@example.org", MostPerMinute = 0 };
        await using var channel = new WatchedChannel(new SmtpChannel(options, clock), queued / Parts);
        var composer = new MailComposer(templates, new MailHeaderOptions { From = options.From });
        var region = new Region { Name = "Benchmark", TimeZone = "UTC", Units = ReadersUnits.Metric, Sites = [], Recipients = [], OperatorAddress = "operator@example.org" };
        var pass = new DeliveryPass(new Outbox(database), composer, channel, new DeliveryRules(region, TimeSpan.FromDays(3)), TimeZoneInfo.Utc, () => 0);
        using var process = Process.GetCurrentProcess();
        TimeSpan busyBefore = process.TotalProcessorTime;
        start = Stopwatch.GetTimestamp();
        DeliveryReport report = await pass.RunAsync(clock.GetUtcNow, stop);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        process.Refresh();
        double busy = (process.TotalProcessorTime - busyBefore).TotalSeconds;

        Console.WriteLine($"{"mails",10}{"in use MB",12}{"working set MB",16}");
        foreach ((int mails, double inUse, double workingSet) in channel.Course) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mails,10:N0}{inUse,12:N1}{workingSet,16:N0}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"delivered {report.Delivered:N0} of {queued:N0} over {server.Connections} connection(s) in {seconds:N1} s: {report.Delivered / seconds:N0} a second, {1000 * seconds / report.Delivered:N2} ms each ({1000 * busy / report.Delivered:N2} ms of processor with the server), {server.Bytes / 1e6 / report.Delivered * 1000:N1} kB each, peak {process.PeakWorkingSet64 / 1e6:N0} MB"));
        bool isWhole = report.Delivered == queued && server.Accepted == queued && report.Waiting == 0;
        double growth = channel.Course[^1].InUseMB - channel.Course[1].InUseMB;
        if (!isWhole) Console.WriteLine("  NOT every mail arrived once");
        if (growth > MostGrowthMB) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  the memory is NOT flat: it grew by {growth:N1} MB"));
        return isWhole && growth <= MostGrowthMB ? 0 : 1;
    }

    private static IEnumerable<Message> Messages()
    {
        for (int notice = 0; notice < NoticesEach; notice++)
        {
            for (int person = 0; person < People; person++)
            {
                string address = $"reader{person}@example.org";
                var key = new NoticeKey($"lawn-{notice}", "overseeding", Day.Year, NoticeKind.Opened);
                yield return new Message
                {
                    MessageId = $"{notice}.{person}@example.org",
                    Address = address,
                    AddresseeName = $"Reader {person}",
                    Region = "Benchmark",
                    OperatorAddress = "operator@example.org",
                    Day = Day,
                    Notices = [Notice(key)],
                };
            }
        }
    }

    private static Notice Notice(NoticeKey key) => new()
    {
        Key = key,
        Day = Day,
        Since = Day,
        SiteName = $"Lawn {key.Site}",
        TreatmentName = "Overseeding cool-season turf",
        Headline = $"Lawn {key.Site}: Overseeding cool-season turf window opened on Sunday 12 April 2026",
        Reason = "The 5-day mean of the estimated soil temperature at 5 cm has fallen to 22.4 °C and has stayed at or below 22.8 °C on 3 of 5 days.",
        Figures = [new Figure("Soil temperature at 5 cm, estimated, mean of 5 days", "22.4 °C ± 1.4 °C", "22.8 °C or less")],
        ExpectedEnd = "About 24 days, until Wednesday 6 May, as in 12 earlier seasons.",
        Do = ["Sow as early in the window as you can.", "Keep the seedbed moist until it is up."],
        DoNot = ["Do not sow into dry ground without a way to water."],
        Choices = ["A pre-emergent also stops grass seed: for each area choose one of the two."],
        Cautions = ["Watering rules where you live come first.", "The product's label is the law."],
        Facts = [new ToldFact(key, Day)],
    };
}
