using System.Globalization;
using GddWatch.Agronomy.Treatments;
using GddWatch.Commands;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What the service has kept that <c>status</c> shows beside the windows.</summary>
/// <param name="ConfigurationNotes">What the last change of the configuration changed.</param>
/// <param name="Undelivered">The mails that have not been delivered.</param>
/// <param name="Refusing">The addresses that refuse mails.</param>
internal sealed record KeptRemarks(IReadOnlyList<ConfigurationNote> ConfigurationNotes, IReadOnlyList<UndeliveredMessage> Undelivered, IReadOnlyList<RefusingAddress> Refusing)
{
    private const int MostShown = 5;

    /// <summary>What is kept; nothing where no service has run yet.</summary>
    public static Task<KeptRemarks> LoadAsync(Keeping keeping, CancellationToken stop) => keeping.ReadAsync(
        new KeptRemarks([], [], []),
        async database =>
        {
            IReadOnlyList<KeptWindow> windows = await new WindowStore(database).LoadAsync(stop);
            return new KeptRemarks(
                [.. windows.Where(window => window.ConfigurationNote is not null).Select(window => new ConfigurationNote(window.Site, window.Treatment, window.Season, window.ConfigurationNote!))],
                await new Outbox(database).LoadUndeliveredAsync(stop),
                await new RefusingAddresses(database).LoadAsync(stop));
        },
        stop);

    /// <summary>The addresses to which nothing is sent any more, a sentence each.</summary>
    public IEnumerable<string> PausedInWords() => Refusing.Where(each => each.IsPaused).Select(PausedWords.Of);

    /// <summary>The undelivered mails in words, the first few of them.</summary>
    public IEnumerable<string> UndeliveredInWords()
    {
        foreach (UndeliveredMessage mail in Undelivered.Take(MostShown))
        {
            string attempts = mail.Attempts switch
            {
                0 => "not tried yet",
                1 => "tried once",
                _ => $"tried {mail.Attempts} times",
            };
            string next = mail.NextAttempt is { } at ? $", next try from {at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC on" : "";
            yield return $"Not delivered: the mail of {Wording.Day(mail.Day)} to {mail.Address}, {attempts}{next}{(mail.LastWords is { } words ? $"; {words}" : ".")}";
        }

        if (Undelivered.Count > MostShown) yield return $"And {Undelivered.Count - MostShown} more that were not delivered.";
    }
}
