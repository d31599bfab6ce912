using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using GddWatch.Configuration;
using GddWatch.Configuration.Settings;
using GddWatch.Feeds.Gathering;
using GddWatch.Notices.Composing;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>
/// What makes a replay the same replay: configuration, templates, weather, journal and range. The same one goes on where it stopped and writes nothing twice;
/// another one starts afresh.
/// </summary>
internal static class ReplayScenario
{
    /// <summary>SHA-256 over everything that a replay's mails depend on.</summary>
    public static string Fingerprint(
        WatchConfiguration configuration, IReadOnlyList<SiteWeather> weather, IReadOnlyDictionary<string, SiteJournal> journals, BulletinTime? bulletin, DateSpan range)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, $"{configuration.Fingerprint} {bulletin} {range.First:yyyy-MM-dd} {range.Last:yyyy-MM-dd}");
        foreach (Type room in (ReadOnlySpan<Type>)[typeof(ReplayScenario), typeof(WeatherVariable), typeof(SiteWeather), typeof(MailComposer), typeof(Database)])
        {
            Add(hash, room.Assembly.ManifestModule.ModuleVersionId.ToString());
        }

        foreach (string template in Directory.EnumerateFiles(configuration.MailTemplatesFolder).Order(StringComparer.Ordinal))
        {
            Add(hash, Path.GetFileName(template));
            hash.AppendData(File.ReadAllBytes(template));
        }

        foreach (SiteWeather site in weather)
        {
            Add(hash, $"{site.Site.Id} {site.Series?.FirstDay:yyyy-MM-dd}");
            if (site.Series is not { } series) continue;
            foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>()) hash.AppendData(MemoryMarshal.AsBytes(series.Column(variable)));
            foreach (Forecast forecast in site.History!.Forecasts) Add(hash, $"{forecast.IssuedAt:O}");
        }

        // An entry is a record: its text holds all that it says.
        foreach (JournalEntry entry in journals.OrderBy(each => each.Key, StringComparer.Ordinal).SelectMany(each => each.Value.Entries)) Add(hash, entry.ToString());
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static void Add(IncrementalHash hash, string text) => hash.AppendData(Encoding.UTF8.GetBytes($"{text}\n"));
}
