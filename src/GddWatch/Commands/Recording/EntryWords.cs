using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Commands.Recording;

/// <summary>An entry of the journal in words.</summary>
internal static class EntryWords
{
    /// <summary>The entry as a clause, such as "Overseeding done at North Common on Sunday 12 April 2026".</summary>
    public static string Of(JournalEntry entry, Workplace place)
    {
        Region region = place.Region;
        string site = region.Sites.FirstOrDefault(each => each.Id == entry.SiteId)?.Name ?? entry.SiteId;
        string where = $"at {site} on {Wording.Day(entry.On)}";
        string note = entry.Note.Length > 0 ? $" ({entry.Note})" : "";
        return entry switch
        {
            TreatmentDone done => $"{Name(done, place)} done {where}{Details(done)}{note}",
            SoilReading reading => $"soil at {Wording.Depth(reading.Depth, region.Units)} {Wording.Temperature(reading.Value, region.Units)} {where}{(reading.At is { } time ? $" at {time:HH:mm}" : ", mean of the day")}{note}",
            Sighting sighting => $"{sighting.What} seen {where}{note}",
            _ => $"mowed {where}{note}",
        };
    }

    private static string Name(TreatmentDone done, Workplace place) =>
        place.Configuration.Treatments.FirstOrDefault(treatment => treatment.Id == done.Treatment)?.Name ?? done.Treatment;

    private static string Details(TreatmentDone done)
    {
        string active = done.Active.Length > 0 ? $", active ingredient {done.Active}" : "";
        return done.NoSeedUntil is { } label ? $"{active}, no seed before {Wording.Day(label)} by its label" : active;
    }
}
