using System.Text.Json;
using GddWatch.Agronomy.Changes;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage.Upkeep;

/// <summary>Looks through everything that is kept for what is damaged and for what cannot be true together. It changes nothing.</summary>
public sealed class Inspection(Database database)
{
    /// <summary>No worker holds a message for longer [hours].</summary>
    private const int LongestClaimHours = 24;

    /// <summary>Looks through everything, as it was at one moment.</summary>
    /// <param name="now">The instant, by which claims are judged.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task<InspectionReport> RunAsync(DateTimeOffset now, CancellationToken stop) => database.ReadAtOnceAsync(
        async work =>
        {
            var findings = new List<string>(await database.FindDamageAsync(work));
            IReadOnlyList<ToldRow> told = [.. await work.QueryAsync<ToldRow>(ToldSql.Load)];
            int windows = await LookAtWindowsAsync(work, findings);
            await LookAtToldAsync(work, told, findings);
            int messages = await LookAtMessagesAsync(work, told, now, findings);
            int entries = await LookAtJournalAsync(work, findings);
            await LookAtWeatherAsync(work, findings);
            return new InspectionReport(
                findings, windows, told.Count, messages, entries, await work.SingleAsync<long>(InspectionSql.CountValues), await work.SingleAsync<long>(InspectionSql.CountForecasts));
        },
        stop);

    private static async Task<int> LookAtWindowsAsync(Work work, List<string> findings)
    {
        int count = 0;
        foreach (KeptWindowRow row in await work.QueryAsync<KeptWindowRow>(KeptWindowSql.LoadAll))
        {
            count++;
            string which = $"The window {row.Site}/{row.Treatment}/{row.Season}";
            if (Read(row.Window, which, findings) is not { } window) continue;
            if (window.Opened > window.JudgedOn || window.ClosedOn > window.JudgedOn || window.PastBest > window.JudgedOn)
                findings.Add($"{which} opened, went past its best or closed after {row.JudgedOn}, the day as of which it was judged.");
            if (window.ClosedOn < window.Opened) findings.Add($"{which} closed on {row.ClosedOn}, before it opened on {row.Opened}.");
            if (window.WeatherThrough > window.JudgedOn) findings.Add($"{which} was judged as of {row.JudgedOn} with weather of later days, up to {row.WeatherThrough}.");
        }

        foreach (JudgedOtherwise row in await work.QueryAsync<JudgedOtherwise>(InspectionSql.WindowsJudgedOtherwise))
        {
            findings.Add($"The window {row.Site}/{row.Treatment}/{row.Season} was judged as of {row.JudgedOn}, but its site {(row.SiteJudgedOn is { } day ? $"only as of {day}" : "never")}.");
        }

        return count;
    }

    private static async Task LookAtToldAsync(Work work, IReadOnlyList<ToldRow> told, List<string> findings)
    {
        foreach (ToldRow row in told) Read(row.Notice, $"The notice {Key(row)} to {row.Address}", findings);
        foreach (ToldRow row in await work.QueryAsync<ToldRow>(InspectionSql.ToldWithoutWindow))
            findings.Add($"The notice {Key(row)} was told to {row.Address} on {row.Day}, and no such window is kept.");
        foreach (ToldRow row in await work.QueryAsync<ToldRow>(InspectionSql.ToldBackwards))
            findings.Add($"The notice {Key(row)} was told to {row.Address} on {row.Day}, before the one that it comes after.");
    }

    private static async Task<int> LookAtMessagesAsync(Work work, IReadOnlyList<ToldRow> told, DateTimeOffset now, List<string> findings)
    {
        int count = 0;
        ILookup<string, ToldRow> byMessage = told.ToLookup(row => row.MessageId, StringComparer.Ordinal);
        await foreach (MessageRow row in work.StreamAsync<MessageRow>(InspectionSql.Messages))
        {
            count++;
            string which = $"The message {row.MessageId}";
            if (!IsOneAddress(row.Address)) findings.Add($"{which} is not for one recipient: \"{row.Address}\".");
            if (row.Attempts < 0) findings.Add($"{which} was tried {row.Attempts} times.");
            if ((row.State == "queued") != (row.SettledAt is null)) findings.Add($"{which} is {row.State}, and {(row.SettledAt is { } at ? $"settled at {at}" : "has no instant at which it was settled")}.");
            if (row.ClaimedUntil is { } until && Read(() => StoredText.Instant(until), which, findings) > now.AddHours(LongestClaimHours))
                findings.Add($"{which} is in the hands of a worker until {until}, which is longer than any worker holds one.");
            if (Read(() => MessageText.Read(row.Body), which, findings) is { } message) LookAtText(message, row, byMessage[row.MessageId], which, findings);
        }

        return count;
    }

    private static void LookAtText(Message message, MessageRow row, IEnumerable<ToldRow> told, string which, List<string> findings)
    {
        if (message.MessageId != row.MessageId) findings.Add($"{which} calls itself {message.MessageId} in its text.");
        if (StoredText.Address(message.Address) != StoredText.Address(row.Address)) findings.Add($"{which} is for {row.Address}, and for {message.Address} in its text.");
        if (StoredText.Of(message.Day) != row.Day) findings.Add($"{which} is of {row.Day}, and of {StoredText.Of(message.Day)} in its text.");
        if (message.Notices.Count == 0 && message.OperatorWords.Count == 0 && message.Bulletin is null) findings.Add($"{which} says nothing.");
        HashSet<(string Key, string Address)> said = [.. message.Notices.SelectMany(notice => notice.Facts).Select(fact => ($"{fact.Key}", StoredText.Address(message.Address)))];
        HashSet<(string Key, string Address)> marked = [.. told.Select(each => (Key(each), each.Address))];
        foreach ((string key, string address) in said.Except(marked).Order()) findings.Add($"{which} tells {address} the notice {key}, which is not marked as told by it.");
        foreach ((string key, string address) in marked.Except(said).Order()) findings.Add($"The notice {key} is marked as told to {address} by the message {row.MessageId}, which does not tell it.");
    }

    private static async Task<int> LookAtJournalAsync(Work work, List<string> findings)
    {
        var entries = new Dictionary<long, KeptEntry>();
        int count = 0;
        foreach (JournalRow row in await work.QueryAsync<JournalRow>(JournalSql.LoadAll))
        {
            count++;
            if (Read(row.Kept, $"The entry {row.Number} of the journal", findings) is { } kept) entries.Add(kept.Number, kept);
        }

        foreach (KeptEntry kept in entries.Values.Where(kept => kept.ReplacedBy is not null && !Ends(kept, entries)))
            findings.Add($"The entry {kept.Number} of the journal was mended by number {kept.ReplacedBy}, and following that leads to no entry that ends it.");
        foreach (IGrouping<string, KeptEntry> same in entries.Values.Where(kept => kept.IsInForce).GroupBy(kept => JournalKinds.Identity(kept.Entry), StringComparer.Ordinal).Where(same => same.Count() > 1))
            findings.Add($"The entries {string.Join(" and ", same.Select(kept => kept.Number))} of the journal are about the same thing on the same day, and all of them stand.");
        return count;
    }

    private static async Task LookAtWeatherAsync(Work work, List<string> findings)
    {
        foreach (DailyValueRow row in await work.QueryAsync<DailyValueRow>(InspectionSql.HistoryOutOfOrder))
        {
            string what = row.ReplacedAt is { } at ? $"is said to have stood until {at}, and no other was seen then" : "is said to stand, and another one was seen after it";
            findings.Add($"The history of a value is not in order: {Which(row)}, seen at {row.SeenAt}, {what}.");
        }

        foreach (DailyValueRow row in await work.QueryAsync<DailyValueRow>(InspectionSql.ImpossibleValues))
            findings.Add(FormattableString.Invariant($"{Which(row)} is {row.Value}, which no day can have."));
        foreach (DailyValueRow row in await work.QueryAsync<DailyValueRow>(InspectionSql.SeenBeforeTheirDay))
        {
            if (Read(() => StoredText.Day(row.Day) > DateOnly.FromDateTime(StoredText.Instant(row.SeenAt).UtcDateTime).AddDays(1), Which(row), findings) is true)
                findings.Add($"{Which(row)} was seen at {row.SeenAt}, before that day began anywhere.");
        }

        foreach (string variable in (await work.QueryAsync<string>(InspectionSql.VariablesOfDays)).Concat(await work.QueryAsync<string>(InspectionSql.VariablesOfForecasts)).Distinct())
            Read(() => DailyValueRow.VariableOf(variable), "The weather", findings);
        foreach (ForecastValueRow row in await work.QueryAsync<ForecastValueRow>(InspectionSql.ForecastsOfThePast))
            findings.Add($"The forecast of {row.Feed} for {row.Site} that was issued on {row.IssuedOn} speaks of {row.Day}, a day that was over.");
        foreach (ForecastValueRow row in await work.QueryAsync<ForecastValueRow>(InspectionSql.ForecastsIssuedOnAnotherDay))
        {
            int? apart = Read(() => (int?)Math.Abs(StoredText.Day(row.IssuedOn).DayNumber - DateOnly.FromDateTime(StoredText.Instant(row.IssuedAt).UtcDateTime).DayNumber), $"A forecast of {row.Feed} for {row.Site}", findings);
            if (apart > 1) findings.Add($"The forecast of {row.Feed} for {row.Site} that was issued at {row.IssuedAt} is said to be of {row.IssuedOn}.");
        }

        foreach (FeedPositionRow row in await work.QueryAsync<FeedPositionRow>(InspectionSql.PositionsOffTheEarth))
            findings.Add(FormattableString.Invariant($"The place of {row.Feed} for {row.Site}, seen at {row.SeenAt}, is {row.Latitude}, {row.Longitude}: not on earth."));
    }

    private static bool Ends(KeptEntry kept, Dictionary<long, KeptEntry> entries)
    {
        var seen = new HashSet<long>();
        KeptEntry at = kept;
        while (at.ReplacedBy is { } by)
        {
            if (!seen.Add(at.Number) || !entries.TryGetValue(by, out KeptEntry? next)) return false;
            at = next;
        }

        return true;
    }

    private static bool IsOneAddress(string address) =>
        address.Count(each => each == '@') == 1 && !address.Any(each => char.IsControl(each) || char.IsWhiteSpace(each) || each is ',' or ';' or '<' or '>');

    private static string Key(ToldRow row) => row.Revision == 0 ? $"{row.Site}/{row.Treatment}/{row.Season}/{row.Kind}" : $"{row.Site}/{row.Treatment}/{row.Season}/{row.Kind}/{row.Revision}";

    private static string Which(DailyValueRow row) => $"{row.Variable} of {row.Day} at {row.Site} from {row.Feed}";

    /// <summary>Reads a row; where it cannot be read, that is a finding.</summary>
    private static T? Read<T>(Func<T> read, string which, List<string> findings)
    {
        try
        {
            return read();
        }
        catch (Exception fault) when (fault is FormatException or JsonException or InvalidOperationException or ArgumentException)
        {
            findings.Add($"{which} cannot be read: {fault.Message}.");
            return default;
        }
    }

    private sealed class JudgedOtherwise
    {
        public string Site { get; init; } = "";

        public string Treatment { get; init; } = "";

        public int Season { get; init; }

        public string JudgedOn { get; init; } = "";

        public string? SiteJudgedOn { get; init; }
    }

    private sealed class MessageRow
    {
        public string MessageId { get; init; } = "";

        public string Address { get; init; } = "";

        public string Day { get; init; } = "";

        public string State { get; init; } = "";

        public string? ClaimedUntil { get; init; }

        public int Attempts { get; init; }

        public string? SettledAt { get; init; }

        public string Body { get; init; } = "";
    }
}
