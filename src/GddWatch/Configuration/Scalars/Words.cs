using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Services;

namespace GddWatch.Configuration.Scalars;

/// <summary>The words that configuration uses for things of which there are a few, in the order in which people are told of them.</summary>
public static class Words
{
    /// <summary>The two families of turf.</summary>
    public static readonly IReadOnlyDictionary<string, TurfType> Turf = Table([("cool-season", TurfType.CoolSeason), ("warm-season", TurfType.WarmSeason)]);

    /// <summary>Kinds of work.</summary>
    public static readonly IReadOnlyDictionary<string, WorkKind> Work = Table([.. Enum.GetValues<WorkKind>().Select(kind => (WorkKinds.Word(kind), kind))]);

    /// <summary>Which of a day's air temperatures is meant.</summary>
    public static readonly IReadOnlyDictionary<string, AirValue> AirValues = Table([("minimum", AirValue.Minimum), ("maximum", AirValue.Maximum), ("mean", AirValue.Mean)]);

    /// <summary>Which way growth goes.</summary>
    public static readonly IReadOnlyDictionary<string, GrowthDirection> GrowthDirections =
        Table([("rising", GrowthDirection.Rising), ("rising or flat", GrowthDirection.RisingOrFlat), ("falling", GrowthDirection.Falling)]);

    /// <summary>Soil textures.</summary>
    public static readonly IReadOnlyDictionary<string, SoilTexture> Soil = Table(
    [
        ("sand", SoilTexture.Sand), ("loamy sand", SoilTexture.LoamySand), ("sandy loam", SoilTexture.SandyLoam), ("loam", SoilTexture.Loam),
        ("silt loam", SoilTexture.SiltLoam), ("clay loam", SoilTexture.ClayLoam), ("clay", SoilTexture.Clay),
    ]);

    /// <summary>Where soil temperature comes from.</summary>
    public static readonly IReadOnlyDictionary<string, SoilSource> SoilSources = Table([("estimated", SoilSource.Estimated), ("measured", SoilSource.Measured)]);

    /// <summary>The units that people read.</summary>
    public static readonly IReadOnlyDictionary<string, ReadersUnits> Units = Table([("us", ReadersUnits.UnitedStates), ("metric", ReadersUnits.Metric)]);

    /// <summary>Kinds of notice.</summary>
    public static readonly IReadOnlyDictionary<string, NoticeKind> Notices = Table([.. Enum.GetValues<NoticeKind>().Select(kind => (NoticeKinds.Word(kind), kind))]);

    /// <summary>Degree-day methods.</summary>
    public static readonly IReadOnlyDictionary<string, DegreeDayMethod> Methods =
        Table([.. Enum.GetValues<DegreeDayMethod>().Select(method => (DegreeDayWords.Of(method), method))]);

    /// <summary>What happens above an upper threshold.</summary>
    public static readonly IReadOnlyDictionary<string, DegreeDayCutoff> Cutoffs =
        Table([.. Enum.GetValues<DegreeDayCutoff>().Select(cutoff => (DegreeDayWords.Of(cutoff), cutoff))]);

    /// <summary>Units of temperatures in files.</summary>
    public static readonly IReadOnlyDictionary<string, FileTemperatureUnit> FileTemperatures = Table([("°C", FileTemperatureUnit.Celsius), ("°F", FileTemperatureUnit.Fahrenheit)]);

    /// <summary>Units of rain in files.</summary>
    public static readonly IReadOnlyDictionary<string, FileLengthUnit> FileLengths =
        Table([("mm", FileLengthUnit.Millimetre), ("cm", FileLengthUnit.Centimetre), ("in", FileLengthUnit.Inch)]);

    /// <summary>When a station's day is read.</summary>
    public static readonly IReadOnlyDictionary<string, ObservationTime> ObservationTimes = Table([("midnight", ObservationTime.Midnight), ("morning", ObservationTime.Morning)]);

    /// <summary>The public archives that can be read.</summary>
    public static readonly IReadOnlyDictionary<string, ArchiveKind> Archives = Table(
    [
        ("uscrn-daily", ArchiveKind.UscrnDaily), ("ghcn-daily-dly", ArchiveKind.GhcnDailyDly), ("ghcn-daily-station-csv", ArchiveKind.GhcnDailyStationCsv),
        ("ghcn-daily-by-year-csv", ArchiveKind.GhcnDailyByYearCsv),
    ]);

    /// <summary>The open weather services that can be asked.</summary>
    public static readonly IReadOnlyDictionary<string, ServiceKind> Services = Table([.. Enum.GetValues<ServiceKind>().Select(kind => (ServiceFacts.Word(kind), kind))]);

    private static OrderedDictionary<string, T> Table<T>((string Word, T Meaning)[] words) =>
        new(words.Select(each => KeyValuePair.Create(each.Word, each.Meaning)));
}
