using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// What was worked out of a site's past, remembered from one day's judging to the next: what is usual, and where soil and root zone stood some years ago. So a day costs the same however long the history is;
/// what rests on days that have changed, or on another journal, is forgotten, so that the judging is the same with it and without. For one configuration, and for one judging at a time.
/// </summary>
public sealed class SiteMemory
{
    private static readonly WeatherVariable[] Variables = Enum.GetValues<WeatherVariable>();

    private DailySeries? seen;
    private IReadOnlyList<JournalEntry> recorded = [];

    internal Remembered<(double FreezeC, DateOnly From, DateOnly Until), int?> FirstFreezes { get; } = new();

    internal Remembered<(double FreezeC, int Year), int?> LastFreezes { get; } = new();

    internal Remembered<(TurfType Turf, int Before), UsualGrowth> Growth { get; } = new();

    internal Remembered<(SoilTemperatureCondition Condition, DateSpan Season), UsualDate> SoilPassages { get; } = new();

    internal Remembered<(string Treatment, int Season), UsualPace> Paces { get; } = new();

    /// <summary>How the soil stood on the day before a day.</summary>
    internal Remembered<DateOnly, TurfSoilStand> Soils { get; } = new();

    /// <summary>How the root zone stood on the day before a day.</summary>
    internal Remembered<(TurfType Turf, DateOnly Day), RootZone> RootZones { get; } = new();

    /// <summary>Goes on to the days and the journal as they are known now: what does not rest on the same any more is forgotten.</summary>
    internal void GoOnTo(DailySeries now, SiteJournal journal)
    {
        DateOnly changed = seen is not null && recorded.SequenceEqual(journal.Entries) ? seen.FirstDifference(now, Variables) : DateOnly.MinValue;
        if (seen is not null)
        {
            FirstFreezes.ForgetFrom(changed);
            LastFreezes.ForgetFrom(changed);
            // Who judges a day asks for this season and the one before, and each asks for the years that ended before it; those of longer ago only led to them.
            Growth.Forget((key, through) => through >= changed || key.Before < now.LastDay.Year - 3);
            SoilPassages.ForgetFrom(changed);
            Paces.ForgetFrom(changed);
            Soils.ForgetFrom(changed);
            RootZones.ForgetFrom(changed);
        }

        (seen, recorded) = (now, journal.Entries);
    }
}
