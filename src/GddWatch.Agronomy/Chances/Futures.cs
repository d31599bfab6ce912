using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// The futures of a site as of a day: the forecast as far as it reaches, each future with an error of its own, then one past year each, moved by what is left of this year's departure
/// (<see cref="DeparturePath"/>). Minimum and maximum of the air move together. Rain and what else was measured are the past year's; rain is the forecast's where it says so.
/// <para>Soil that is estimated goes on from where it stands by its own model. Soil that is measured does too, and what it was measured warmer or colder than the model goes the way of its own past years; where the forecast
/// itself speaks of the soil both are weighed (<see cref="ForecastWeighing"/>), as the air's forecast is against the past years.</para>
/// </summary>
internal sealed class Futures
{
    /// <summary>With fewer past years nothing is said of the days ahead.</summary>
    public const int FewestYears = 3;

    /// <summary>So many days before the present are kept in each future, for heat sums and means that began then [days].</summary>
    private const int DaysKept = 430;

    private const int AirLagDays = 2, SoilLagDays = 3;

    /// <summary>A reading's correction of the estimated soil fades with the memory of <see cref="ProbeConstants"/>.</summary>
    private static readonly double CorrectionLeftEachDay = Math.Exp(-1 / new ProbeConstants().MemoryDays);

    private static readonly WeatherVariable[] SoilVariables = [WeatherVariable.Soil5CmC, WeatherVariable.Soil10CmC];

    private readonly SiteMetrics metrics;
    private readonly DailySeries known;
    private readonly PastYears past;
    private readonly ForecastInUse forecast;
    private readonly int daysAhead;
    private readonly int kept;
    private readonly ulong seed;

    private Futures(SiteMetrics metrics, PastYears past, ForecastInUse forecast, int daysAhead, ulong seed)
    {
        this.metrics = metrics;
        known = metrics.Series;
        this.past = past;
        this.forecast = forecast with { Count = Math.Min(forecast.Count, daysAhead) };
        this.daysAhead = daysAhead;
        this.seed = seed;
        kept = Math.Min(known.Count, DaysKept);
    }

    /// <summary>The futures; none where fewer than three past years are known.</summary>
    /// <param name="metrics">The site as known on the day.</param>
    /// <param name="past">The past years.</param>
    /// <param name="forecast">What the forecast gives.</param>
    /// <param name="daysAhead">How far they reach after the last known day [days].</param>
    /// <param name="seed">What decides the errors of the forecast in each future.</param>
    public static IReadOnlyList<SiteMetrics> Of(SiteMetrics metrics, DailySeries past, ForecastInUse forecast, int daysAhead, ulong seed) =>
        new Futures(metrics, PastYears.Of(past, metrics.Series.LastDay), forecast, daysAhead, seed).Make();

    private IReadOnlyList<SiteMetrics> Make()
    {
        YearlyCourse air = past.CourseOf(Middle(known), known.FirstDay, Middle(past.Series), daysAhead);
        (WeatherVariable Variable, YearlyCourse Course)[] soils = metrics.SoilIsMeasured
            ? [.. SoilVariables.Where(past.Series.Has).Select(variable => (variable, past.CourseOf(ErrorOfModel(known, variable), known.FirstDay, ErrorOfModel(past.Series, variable), daysAhead)))]
            : [];
        int[] years = [.. Enumerable.Range(0, past.Anchors.Count).Where(year => air.IsFuture(year) && soils.All(soil => soil.Course.IsFuture(year)))];
        if (years.Length < FewestYears) return [];
        DeparturePath airPath = PathOf(air, years, AirLagDays, Fading.UsualAir);
        var soilPaths = soils.Select(soil => (soil.Variable, soil.Course, Path: PathOf(soil.Course, years, SoilLagDays, Fading.UsualSoil))).ToArray();
        int[] leads = forecast.Leads();
        var draws = new SeededDraws(seed);
        double[][] airErrors = ForecastErrors.Draw(forecast.Errors.AirC, leads, years.Length, forecast.Errors.AirLink, ref draws);
        double[][] soilErrors = ForecastErrors.Draw(forecast.Errors.SoilC, leads, years.Length, forecast.Errors.SoilLink, ref draws);
        double[][] airYears = [.. years.Select(air.Whole)];
        double[][] givenAir = GivenAir(airPath, airYears, airErrors, leads);
        double[]?[][] columns = [.. years.Select(year => Columns(past.Anchors[year]))];
        DailySeries[] series = new DailySeries[years.Length];
        for (int i = 0; i < years.Length; i++)
        {
            PutAir(columns[i], airPath.Of(airYears[i], givenAir[i]));
            series[i] = SeriesOf(columns[i]);
        }

        foreach ((WeatherVariable variable, YearlyCourse course, DeparturePath path) in soilPaths)
        {
            PutSoil([.. columns.Select(each => each[(int)variable]!)], path, [.. years.Select(course.Whole)], [.. series.Select(each => ModelAhead(variable, each))], SaidOfSoil(variable), soilErrors, leads);
        }

        return [.. series.Select(each => metrics.Ahead(each, metrics.SoilIsMeasured ? null : depth => SoilAhead(each, depth)))];
    }

    /// <summary>The measured soil of each future: what its air makes of it by the model, and the way of what was measured warmer or colder; where the forecast speaks of the soil, both are weighed.</summary>
    private void PutSoil(double[][] soil, DeparturePath path, double[][] years, double[][] modelled, double[] said, double[][] errors, int[] leads)
    {
        double[][] ways = [.. years.Select(year => path.Of(year, []))];
        double[][] given = [.. years.Select(_ => Array.Empty<double>())];
        if (said.Length > 0)
        {
            double[][] without = [.. ways.Select((way, i) => Enumerable.Range(0, said.Length).Select(k => modelled[i][kept + k] + way[k]).ToArray())];
            given = ForecastWeighing.Weigh(without, said, errors, Deviations(forecast.Errors.SoilC, leads, said.Length), forecast.Errors.SoilLink);
        }

        for (int i = 0; i < years.Length; i++)
        {
            double[] way = said.Length == 0 ? ways[i] : path.Of(years[i], [.. given[i].Select((soilC, k) => soilC - modelled[i][kept + k])]);
            for (int k = 0; k < way.Length; k++) soil[i][kept + k] = modelled[i][kept + k] + way[k];
        }
    }

    private static DeparturePath PathOf(YearlyCourse course, int[] years, int lag, Fading usual)
    {
        int[] starts = [.. Enumerable.Range(0, 15).Select(i => YearlyCourse.Zero - 14 + 2 * i)];
        return new DeparturePath(course, Fading.Measure([.. years.Select(year => course.Departures[year])], starts, lag, usual), years.Length);
    }

    /// <summary>The first days of the air of each future [°C].</summary>
    private double[][] GivenAir(DeparturePath path, double[][] years, double[][] errors, int[] leads)
    {
        if (forecast.Count == 0) return [.. years.Select(_ => Array.Empty<double>())];
        double[] said = [.. Enumerable.Range(forecast.First, forecast.Count).Select(place => (forecast.Days!.MinimumAirC[place] + forecast.Days.MaximumAirC[place]) / 2)];
        double[][] without = [.. years.Select(year => path.Of(year, [])[..said.Length])];
        return ForecastWeighing.Weigh(without, said, errors, Deviations(forecast.Errors.AirC, leads, said.Length), forecast.Errors.AirLink);
    }

    private static double[] Deviations(IReadOnlyList<double> byLead, int[] leads, int count) => [.. leads.Take(count).Select(lead => byLead[Math.Min(lead, byLead.Count - 1)])];

    /// <summary>What the model makes of the days of a future [°C].</summary>
    private double[] ModelAhead(WeatherVariable variable, DailySeries future)
    {
        double[] means = new double[future.Count], deviations = new double[future.Count];
        LayeredTurfSoil.GoOn(metrics.SoilStand, future, kept, DepthOf(variable), means, deviations);
        return means;
    }

    /// <summary>What a forecast says of the soil itself on its first days [°C]; empty where it says nothing.</summary>
    private double[] SaidOfSoil(WeatherVariable variable)
    {
        if (forecast.Count == 0 || !forecast.Days!.Has(variable)) return [];
        double[] said = forecast.Days.Column(variable).Slice(forecast.First, forecast.Count).ToArray();
        int end = Array.FindIndex(said, double.IsNaN);
        return end < 0 ? said : said[..end];
    }

    /// <summary>Measured less modelled [°C].</summary>
    private double[] ErrorOfModel(DailySeries series, WeatherVariable variable)
    {
        double[] error = Bridged(series, variable);
        double[] means = SoilTemperatureColumns.Estimate(LayeredTurfSoil.Default, series, metrics.Site.Latitude, DepthOf(variable)).MeanC;
        for (int i = 0; i < error.Length; i++) error[i] -= means[i];
        return error;
    }

    private static Depth DepthOf(WeatherVariable variable) => Depth.FromCentimetres(variable == WeatherVariable.Soil5CmC ? 5 : 10);

    /// <summary>Soil that is estimated: as known up to the present, then by its model from where it stands.</summary>
    private SoilTemperatureColumns SoilAhead(DailySeries series, Depth depth)
    {
        SoilTemperatureColumns before = metrics.OfLast(kept).Soil(depth);
        double[] means = new double[series.Count], deviations = new double[series.Count];
        before.MeanC.AsSpan(^kept..).CopyTo(means);
        before.DeviationC.AsSpan(^kept..).CopyTo(deviations);
        LayeredTurfSoil.GoOn(metrics.SoilStand, series, kept, depth, means, deviations);
        double correction = before.MeanC[^1] - metrics.SoilStand.Layers.At(TurfSoilLayers.ShareOfMiddle(depth.Centimetres));
        for (int i = kept; i < means.Length; i++)
        {
            correction *= CorrectionLeftEachDay;
            if (!double.IsNaN(correction)) means[i] += correction;
        }

        return new SoilTemperatureColumns(means, deviations);
    }

    /// <summary>The columns of a future: the days kept, then those of the past year.</summary>
    private double[]?[] Columns(DateOnly anchor)
    {
        int from = past.Series.IndexOf(anchor) + 1;
        WeatherVariable[] variables = Enum.GetValues<WeatherVariable>();
        var columns = new double[]?[variables.Length];
        foreach (WeatherVariable variable in variables)
        {
            bool isNeeded = variable is WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC || (metrics.SoilIsMeasured && Array.IndexOf(SoilVariables, variable) >= 0 && past.Series.Has(variable));
            if (!isNeeded && !known.Has(variable)) continue;
            var column = new double[kept + daysAhead];
            Array.Fill(column, double.NaN);
            if (known.Has(variable)) known.Column(variable)[^kept..].CopyTo(column);
            ReadOnlySpan<double> then = past.Series.Column(variable);
            if (from < then.Length) then[from..Math.Min(then.Length, from + daysAhead)].CopyTo(column.AsSpan(kept));
            columns[(int)variable] = column;
        }

        if (columns[(int)WeatherVariable.PrecipitationMm] is { } rain && forecast.Count > 0 && forecast.Days!.Has(WeatherVariable.PrecipitationMm))
        {
            for (int i = 0; i < forecast.Count; i++)
            {
                double said = forecast.Days.Column(WeatherVariable.PrecipitationMm)[forecast.First + i];
                if (double.IsFinite(said) && said >= 0) rain[kept + i] = said;
            }
        }

        return columns;
    }

    /// <summary>Moves the two temperatures of each day so that their middle is that of the way.</summary>
    private void PutAir(double[]?[] columns, double[] way)
    {
        double[] minimum = columns[(int)WeatherVariable.MinimumAirC]!, maximum = columns[(int)WeatherVariable.MaximumAirC]!;
        double half = 5;
        for (int i = 0; i < daysAhead; i++)
        {
            double then = (maximum[kept + i] - minimum[kept + i]) / 2;
            if (i < forecast.Count) then = (forecast.Days!.MaximumAirC[forecast.First + i] - forecast.Days.MinimumAirC[forecast.First + i]) / 2;
            // A day without its two temperatures has the range of the one before.
            if (then >= 0) half = then;
            minimum[kept + i] = way[i] - half;
            maximum[kept + i] = way[i] + half;
        }
    }

    private DailySeries SeriesOf(double[]?[] columns)
    {
        int length = kept + daysAhead;
        Mark[] minimum = new Mark[length], maximum = new Mark[length];
        known.MinimumMarks[^kept..].CopyTo(minimum);
        known.MaximumMarks[^kept..].CopyTo(maximum);
        return new DailySeries(known.DayAt(known.Count - kept), length, columns, minimum, maximum);
    }

    private static double[] Middle(DailySeries series)
    {
        ReadOnlySpan<double> minimum = series.MinimumAirC, maximum = series.MaximumAirC;
        var middle = new double[series.Count];
        for (int i = 0; i < middle.Length; i++) middle[i] = (minimum[i] + maximum[i]) / 2;
        return middle;
    }

    /// <summary>A measured soil with short holes bridged, as it is judged by.</summary>
    private static double[] Bridged(DailySeries series, WeatherVariable variable)
    {
        double[] bridged = series.Has(variable) ? series.Column(variable).ToArray() : new double[series.Count];
        if (!series.Has(variable)) Array.Fill(bridged, double.NaN);
        int hole = MeasuredSoil.LongestHoleDays;
        for (int i = 0; i < bridged.Length; i++)
        {
            hole = double.IsNaN(bridged[i]) ? hole + 1 : 0;
            if (hole > 0 && hole <= MeasuredSoil.LongestHoleDays && i > 0) bridged[i] = bridged[i - 1];
        }

        return bridged;
    }
}
