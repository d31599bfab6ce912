using System.Globalization;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;
using GddWatch.Validation.Weather;
using MathNet.Numerics.Statistics;

namespace GddWatch.Validation;

/// <summary>
/// Fits bud break of every species at Harvard Forest (data set HF003) to the same place's weather (HF001), and prints how far years left out are off, beside the mean date of the other years.
/// </summary>
internal static class BudBreakCommand
{
    private const int Seed = 20240521;

    private static readonly HeatSumDefinition FromNewYear = new(Temperature.FromCelsius(4), null, DegreeDayMethod.SingleSine, DegreeDayCutoff.None, AnnualDay.Of(1, 1));
    private static readonly SeasonRule Spring = new(AnnualDay.Of(1, 1), AnnualDay.Of(7, 31));

    public static void Run(string weatherFolder, TextWriter output)
    {
        MeasuredStation station = HarvardForest.Read(weatherFolder) ?? throw new InvalidDataException($"{weatherFolder} holds no harvard-forest.");
        Site site = Forest(station);
        var metrics = new Dictionary<string, SiteMetrics> { [site.Id] = SiteMetrics.Of(station.Series, site) };
        DateModel[] models =
        [
            new HeatSumModel(FromNewYear),
            new RunningMeanModel(null, AirValue.Mean, Passing.RisesAbove, new Holding(1, 1)),
            new RunningMeanModel(Depth.FromCentimetres(5), AirValue.Mean, Passing.RisesAbove, new Holding(1, 1)),
        ];
        output.WriteLine($"Bud break by species at {station.Name}: mean absolute error in days of years left out; seed {Seed}");
        output.WriteLine("species; years; mean date; heat sum (single sine from 1 January): least error in days; base °C; °C-days; by least coefficient of variation; base °C; nearer than the mean date, 95 % interval; air mean; soil mean");
        List<double[]> rows = [];
        foreach (IGrouping<string, FitEvent> species in HarvardForest.BudBreak(weatherFolder)
            .Select(each => (each.Species, Event: new FitEvent(site.Id, Spring.BeginningIn(each.Year, site.Hemisphere), each.Day)))
            .GroupBy(each => each.Species, each => each.Event, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            DateFit?[] fits = [.. models.Select(model => DateFitter.Fit(model, [.. species], metrics, new Random(Seed).Next).Fit)];
            if (fits is not [{ } heat, { } air, { } soil] || heat.Years < 8) continue;
            FittedDates variation = heat.ByCriterion.Single(each => each.Criterion == FitCriterion.LeastCoefficientOfVariation);
            rows.Add([heat.MeanDate.YearLeftOutErrorDays, heat.Best.YearLeftOutErrorDays, variation.YearLeftOutErrorDays, air.Best.YearLeftOutErrorDays, soil.Best.YearLeftOutErrorDays]);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{species.Key}; {heat.Years}; {rows[^1][0]:0.00}; {rows[^1][1]:0.00}; {heat.Best.GridValue:0.0}; {heat.Best.Threshold:0}; {rows[^1][2]:0.00}; {variation.GridValue:0.0}; {heat.NearerThanMeanDate?.Low:0.0} to {heat.NearerThanMeanDate?.High:0.0}; {rows[^1][3]:0.00}; {rows[^1][4]:0.00}"));
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"mean of {rows.Count} species; ; {Mean(rows, 0):0.00}; {Mean(rows, 1):0.00}; ; ; {Mean(rows, 2):0.00}; ; ; {Mean(rows, 3):0.00}; {Mean(rows, 4):0.00}"));
        output.WriteLine($"nearer than the mean date; ; ; {Nearer(rows, 1)}; ; ; {Nearer(rows, 2)}; ; ; {Nearer(rows, 3)}; {Nearer(rows, 4)}");
    }

    private static Site Forest(MeasuredStation station) => new()
    {
        Id = "harvard-forest",
        Name = station.Name,
        Latitude = station.LatitudeDegrees,
        Longitude = -72.19,
        ElevationM = 340,
        TimeZone = "America/New_York",
        Turf = [TurfType.CoolSeason],
    };

    private static double Mean(List<double[]> rows, int column) => rows.Select(row => row[column]).Mean();

    private static string Nearer(List<double[]> rows, int column) => $"{rows.Count(row => row[column] < row[0])} of {rows.Count}";
}
