using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Windows;

/// <summary>A station's past windows, judged once from estimated and once from measured soil by configuration alone.</summary>
/// <param name="Station">The station.</param>
/// <param name="Estimated">From the soil estimated from the air.</param>
/// <param name="Measured">From the measured soil.</param>
internal sealed record JudgedStation(MeasuredStation Station, IReadOnlyList<Window> Estimated, IReadOnlyList<Window> Measured)
{
    /// <summary>Judges every season that the station holds.</summary>
    public static JudgedStation Of(MeasuredStation station, IReadOnlyList<Treatment> treatments)
    {
        var site = new Site
        {
            Id = station.Name,
            Name = station.Name,
            Latitude = station.LatitudeDegrees,
            Longitude = 0,
            ElevationM = 0,
            TimeZone = "UTC",
            Turf = [TurfType.CoolSeason, TurfType.WarmSeason],
            Soil = SoilTexture.Loam,
            History = ["grubs"],
        };
        DailySeries series = WithSoil(station);
        return new JudgedStation(
            station,
            Backtest.Seasons(treatments, SiteMetrics.Of(series, site)),
            Backtest.Seasons(treatments, SiteMetrics.Of(series, site with { SoilTemperature = SoilSource.Measured })));
    }

    /// <summary>
    /// The pairs of openings of a treatment: seasons in which both opened on a day that is certain, and in which the measured soil has a value on each of the 30 days before either
    /// opening, so that no hole in the measurement is taken for an error of the estimate.
    /// </summary>
    /// <param name="treatment">The treatment's id.</param>
    /// <param name="withHoles">Whether pairs after a hole in the measurement are given too.</param>
    public IEnumerable<(Window Estimated, Window Measured)> Pairs(string treatment, bool withHoles = false)
    {
        double[] soil = Station.MeasuredC[5];
        foreach (Window estimated in Estimated.Where(window => window.Treatment.Id == treatment))
        {
            Window measured = Measured.First(window => window.Treatment.Id == treatment && window.Season.Year == estimated.Season.Year);
            if (estimated.FirstOpening is not { } one || measured.FirstOpening is not { } other || estimated.MayHaveOpenedEarlier || measured.MayHaveOpenedEarlier) continue;
            DateOnly first = one.Day < other.Day ? one.Day : other.Day;
            DateOnly last = one.Day > other.Day ? one.Day : other.Day;
            var span = new DateSpan(first.AddDays(-30), last);
            int from = Station.Series.IndexOf(span.First);
            bool whole = from >= 0 && Enumerable.Range(from, span.Days).All(index => index < soil.Length && !double.IsNaN(soil[index]));
            if (whole || withHoles) yield return (estimated, measured);
        }
    }

    private static DailySeries WithSoil(MeasuredStation station)
    {
        var builder = new DailySeriesBuilder();
        builder.AddMissingFrom(station.Series);
        foreach ((int depth, WeatherVariable variable) in new[] { (5, WeatherVariable.Soil5CmC), (10, WeatherVariable.Soil10CmC) })
        {
            if (!station.MeasuredC.TryGetValue(depth, out double[]? soil)) continue;
            for (int i = 0; i < soil.Length; i++)
            {
                if (!double.IsNaN(soil[i])) builder.Put(station.Series.DayAt(i), variable, soil[i]);
            }
        }

        return builder.Build()!;
    }
}
