using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>One life through many days, in which the program is killed again and again and goes on.</summary>
internal sealed class Hunt(int seed, int days, int killsADay) : IAsyncDisposable
{
    private readonly Random chance = new(seed);
    private readonly WitnessMailServer server = new();
    private readonly SortedDictionary<string, int> where = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> unrecorded = new(StringComparer.Ordinal);
    private readonly ConcurrentQueue<string> surprises = [];
    private Workshop? workshop;
    private TimeSpan life = TimeSpan.FromSeconds(1.5);

    public int Kills { get; private set; }

    public int Runs { get; private set; }

    /// <summary>How many kills fell where.</summary>
    public IReadOnlyDictionary<string, int> Where => where;

    /// <summary>The mails that came, each with how often.</summary>
    public IReadOnlyDictionary<string, int> Mails => server.Accepted.GroupBy(mail => mail.MessageId, StringComparer.Ordinal).ToDictionary(mail => mail.Key, mail => mail.Count(), StringComparer.Ordinal);

    /// <summary>The mails as text without their date: that of a pass that was made again is later.</summary>
    public SortedDictionary<string, string> Texts()
    {
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach ((string id, byte[] bytes) in server.Accepted)
        {
            var mail = MimeMessage.Load(new MemoryStream(bytes));
            mail.Headers.Remove(HeaderId.Date);
            texts[id] = $"{mail.To} {mail.Subject}\n{mail.TextBody}\n{mail.HtmlBody}";
        }

        return texts;
    }

    public KeptTables Tables() => KeptTables.Read(Path.Combine(workshop!.Data, "gddwatch.db"));

    /// <summary>Lives through the days; kills so often on each of them, then lets the day end.</summary>
    public async Task LiveAsync(CancellationToken cancel)
    {
        workshop = HuntedRegion.Make(days, server.Port);
        for (int i = 0; i < days; i++)
        {
            DateOnly day = HuntedRegion.FirstDay.AddDays(i);
            int attempt = 0;
            while (attempt < killsADay && await RunAndKillAsync(HuntedRegion.At(day, attempt), day, cancel)) attempt++;
            server.At = _ => false;
            workshop.PutClockTo(HuntedRegion.At(day, attempt + 1));
            Ran ran = await workshop.RunAsync("watch", "--once");
            Assert.True(ran.Code == 0, $"The run that ends {day:yyyy-MM-dd} failed: {ran.Error}");
            await server.BecomesQuietAsync(cancel);
        }

        Assert.Empty(surprises);
    }

    /// <summary>What came more than once without a kill between the server's acceptance and the program's record, or not the same each time.</summary>
    public IEnumerable<string> Wrongs()
    {
        foreach (IGrouping<string, (string MessageId, byte[] Bytes)> mail in server.Accepted.GroupBy(mail => mail.MessageId, StringComparer.Ordinal))
        {
            int allowed = 1 + unrecorded.GetValueOrDefault(mail.Key);
            if (mail.Count() > allowed) yield return $"{mail.Key} came {mail.Count()} times; {allowed - 1} kills fell between its acceptance and its record";
            string[] lines = Encoding.UTF8.GetString(mail.First().Bytes).Split('\n');
            foreach (string[] other in mail.Skip(1).Select(each => Encoding.UTF8.GetString(each.Bytes).Split('\n')))
            {
                int differs = Enumerable.Range(0, Math.Max(lines.Length, other.Length)).FirstOrDefault(i => lines.ElementAtOrDefault(i) != other.ElementAtOrDefault(i), -1);
                if (differs >= 0) yield return $"{mail.Key} came in different words: \"{lines.ElementAtOrDefault(differs)}\" and \"{other.ElementAtOrDefault(differs)}\"";
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        await server.DisposeAsync();
        workshop?.Dispose();
    }

    /// <summary>Runs the program and kills it at some moment; false where it had done all of its work before.</summary>
    private async Task<bool> RunAndKillAsync(DateTimeOffset at, DateOnly day, CancellationToken cancel)
    {
        Directory.CreateDirectory(workshop!.Data);
        long begun = Stopwatch.GetTimestamp();
        Runs++;
        var moment = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        (string kind, Func<ProgramProcess, IDisposable?> arm) = ChooseMoment(moment);
        using ProgramProcess program = ProgramProcess.Start(workshop, at, "watch", "--once");
        using IDisposable? armed = arm(program);
        await Task.WhenAny(moment.Task, program.Ended).WaitAsync(cancel);
        program.Kill();
        await program.Ended.WaitAsync(cancel);
        server.At = _ => false;
        await server.BecomesQuietAsync(cancel);
        // How it ended tells more than what came first: what kills it at a chosen moment may have done so before the moment was heard of here.
        if (program.ExitCode != ProgramProcess.KilledCode)
        {
            life = Stopwatch.GetElapsedTime(begun);
            if (program.ExitCode != 0) surprises.Enqueue($"{day:yyyy-MM-dd}: ended with {program.ExitCode} though it was not killed: {string.Join('\n', program.Lines)}");
            return false;
        }

        Kills++;
        NoteWhere(kind, day);
        return true;
    }

    private void NoteWhere(string kind, DateOnly day)
    {
        KeptTables left = Tables();
        HashSet<string> accepted = [.. server.Accepted.Select(mail => mail.MessageId)];
        string[] between = [.. left.Messages.Where(message => message.Value.State == "queued" && accepted.Contains(message.Key)).Select(message => message.Key)];
        foreach (string id in between) unrecorded[id] = unrecorded.GetValueOrDefault(id) + 1;
        foreach (string id in accepted.Where(id => !left.Messages.ContainsKey(id))) surprises.Enqueue($"{id} was accepted but is not in the queue that the kill left");
        string phase = left.IsCutOff ? "while a transaction was being written"
            : left.Judged != day ? "before the pass was committed"
            : between.Length > 0 ? "between acceptance and record"
            : left.Messages.Values.Any(message => message.IsClaimed) ? "with mails in hand, none unrecorded"
            : left.Messages.Values.Any(message => message.State == "queued") ? "after the commit, no mail in hand"
            : "after the last record";
        Count($"{phase}, killed {kind}");
    }

    private void Count(string what) => where[what] = where.GetValueOrDefault(what) + 1;

    private (string Kind, Func<ProgramProcess, IDisposable?> Arm) ChooseMoment(TaskCompletionSource moment)
    {
        double draw = chance.NextDouble();
        if (draw < 0.25)
        {
            TimeSpan after = life * chance.NextDouble();
            return ("at a random time", _ => new Timer(_ => moment.TrySetResult(), null, after, Timeout.InfiniteTimeSpan));
        }

        if (draw < 0.55)
        {
            int writes = chance.Next(1, 40);
            return ("at a write to the data folder", program => Watch(program, writes, moment));
        }

        var step = (SmtpStep)chance.Next(Enum.GetValues<SmtpStep>().Length);
        int nth = step == SmtpStep.Connected ? 1 : chance.Next(1, 4);
        return ($"by the mail server, {step}", program =>
        {
            int count = 0;
            server.At = reached =>
            {
                if (reached != step || Interlocked.Increment(ref count) < nth) return count >= nth;
                program.Kill();
                moment.TrySetResult();
                return true;
            };
            return null;
        });
    }

    private FileSystemWatcher Watch(ProgramProcess program, int writes, TaskCompletionSource moment)
    {
        int count = 0;
        var watcher = new FileSystemWatcher(workshop!.Data) { InternalBufferSize = 65536 };
        watcher.Changed += Write;
        watcher.Created += Write;
        watcher.EnableRaisingEvents = true;
        return watcher;

        void Write(object sender, FileSystemEventArgs e)
        {
            if (Interlocked.Increment(ref count) < writes) return;
            program.Kill();
            moment.TrySetResult();
        }
    }
}
