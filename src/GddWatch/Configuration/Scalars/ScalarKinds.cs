using System.Collections.Frozen;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Feeds.Csv;

namespace GddWatch.Configuration.Scalars;

/// <summary>All kinds of single value, by the type that they are read as. Reading and the editors' schemas both go by this table.</summary>
public static class ScalarKinds
{
    private static readonly FrozenDictionary<Type, ScalarKind> Kinds = new Dictionary<Type, ScalarKind>
    {
        [typeof(string)] = new("text", ScalarForm.Text, null, null, PlainText.Sentence),
        [typeof(double)] = new("a number with a decimal point, such as 41.6", ScalarForm.Number, null, null, PlainText.Number),
        [typeof(bool)] = new("true or false", ScalarForm.Truth, null, null, PlainText.Truth),
        [typeof(DateOnly)] = new("a date as year-month-day, such as 2027-01-01", ScalarForm.Text, PlainText.DatePattern, null, PlainText.Date),
        [typeof(TimeOnly)] = new("a time of day as hours:minutes with two digits each, such as \"21:00\"", ScalarForm.Text, PlainText.TimeOfDayPattern, null, PlainText.TimeOfDay),
        [typeof(AnnualDay)] = new("a day of the year as month-day with two digits each, such as 05-01 for 1 May", ScalarForm.Text, PlainText.AnnualDayPattern, null, PlainText.AnnualDay),
        [typeof(Temperature)] = new("a number with °F or °C, such as \"50 °F\" or \"10 °C\"", ScalarForm.Text, UnitText.TemperaturePattern, null, UnitText.Temperature),
        [typeof(TemperatureDifference)] = new("a number with °F or °C, such as \"2 °F\" or \"1 °C\"", ScalarForm.Text, UnitText.TemperaturePattern, null, UnitText.TemperatureDifference),
        [typeof(WaterDepth)] = new("a number with mm, cm or in, such as \"10 mm\" or \"0.4 in\"", ScalarForm.Text, UnitText.DepthPattern, null, UnitText.Water),
        [typeof(Share)] = new("a number with %, such as \"85 %\"", ScalarForm.Text, UnitText.PercentPattern, null, UnitText.Share),
        [typeof(MissingWater)] = new("a number with % of what may be missing, or with mm, cm or in, such as \"50 %\", \"15 mm\" or \"0.6 in\"", ScalarForm.Text, UnitText.MissingWaterPattern, null, UnitText.MissingWater),
        [typeof(AirValue)] = ScalarKind.OneOf(Words.AirValues),
        [typeof(GrowthDirection)] = ScalarKind.OneOf(Words.GrowthDirections),
        [typeof(Depth)] = new("a number with cm, mm or in, such as \"5 cm\" or \"2 in\"", ScalarForm.Text, UnitText.DepthPattern, null, UnitText.Depth),
        [typeof(Elevation)] = new("a number with m or ft, such as \"250 m\" or \"820 ft\"", ScalarForm.Text, UnitText.ElevationPattern, null, UnitText.Elevation),
        [typeof(DegreeDays)] = new("a number with °F-days or °C-days, such as \"350 °F-days\" or \"78 °C-days\"", ScalarForm.Text, UnitText.HeatPattern, null, UnitText.Heat),
        [typeof(DayCount)] = new("a whole number with days, such as \"5 days\"", ScalarForm.Text, UnitText.DaysPattern, null, UnitText.Days),
        [typeof(Chance)] = new("a number with %, such as \"50 %\"", ScalarForm.Text, UnitText.PercentPattern, null, UnitText.Chance),
        [typeof(Holding)] = new("\"3 of 5 days\", or \"3 days\" for days in a row", ScalarForm.Text, UnitText.HoldingPattern, null, UnitText.Holding),
        [typeof(TurfType)] = ScalarKind.OneOf(Words.Turf),
        [typeof(WorkKind)] = ScalarKind.OneOf(Words.Work),
        [typeof(SoilTexture)] = ScalarKind.OneOf(Words.Soil),
        [typeof(SoilSource)] = ScalarKind.OneOf(Words.SoilSources),
        [typeof(ReadersUnits)] = ScalarKind.OneOf(Words.Units),
        [typeof(NoticeKind)] = ScalarKind.OneOf(Words.Notices),
        [typeof(DegreeDayMethod)] = ScalarKind.OneOf(Words.Methods),
        [typeof(DegreeDayCutoff)] = ScalarKind.OneOf(Words.Cutoffs),
        [typeof(FileTemperatureUnit)] = ScalarKind.OneOf(Words.FileTemperatures),
        [typeof(FileLengthUnit)] = ScalarKind.OneOf(Words.FileLengths),
        [typeof(ObservationTime)] = ScalarKind.OneOf(Words.ObservationTimes),
    }.ToFrozenDictionary();

    /// <summary>The kind that is read as a type.</summary>
    public static ScalarKind Of(Type type) =>
        Kinds.TryGetValue(type, out ScalarKind? kind) ? kind : throw new ArgumentException($"No single value is read as {type.Name}.", nameof(type));
}
