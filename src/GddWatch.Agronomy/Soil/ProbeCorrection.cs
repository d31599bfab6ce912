using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// Corrects the estimated soil temperature of a site by a person's soil-thermometer readings.
/// <para>The site's bias is followed as <see cref="SiteBias"/>; corrected mean x + b, corrected deviation s·√(0.7·P/σb² + 0.3). The
/// correction and its certainty fade with time (τ = 120 days) and with distance in depth (ρ = exp(−|Δz|/150 cm)).</para>
/// <para>A reading with a time of day stands for the mean of its day: value − <see cref="DiurnalWave.DepartureC"/>. No wave is taken off
/// where the estimate is 1 °C or colder or snow was measured. Where the day's extremes are missing a range of 10 °C is assumed.</para>
/// <para>Valid for readings at 2 to 20 cm. A day's estimate uses readings of that day and earlier ones only.</para>
/// <para>Missing input: a reading on a day whose air temperatures are missing or filled in, or that has no estimate, corrects nothing, and
/// its verdict says so.</para>
/// <para>Source: Kalman filter on an autoregressive bias, textbook (MEMORY); constants, their data and error:
/// <see cref="ProbeConstants"/>.</para>
/// </summary>
public static class ProbeCorrection
{
    /// <summary>At which estimate the soil counts as frozen or under snow [°C].</summary>
    private const double HardlyAnyWaveC = 1;

    private const double UsualAirRangeC = 10;

    /// <summary>Estimates by a model and corrects it by the readings.</summary>
    /// <param name="model">The model.</param>
    /// <param name="series">The weather [°C].</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="depth">Depth asked for, 2 to 20 cm.</param>
    /// <param name="readings">The readings, in any order.</param>
    /// <param name="constants">The constants; null for those from validation.</param>
    /// <exception cref="ArgumentOutOfRangeException">A reading's depth lies outside 2 to 20 cm, or the model refuses the weather, the
    /// latitude or the depth.</exception>
    public static ProbedSoil Estimate(
        ISoilTemperatureModel model,
        DailySeries series,
        double latitudeDegrees,
        Depth depth,
        IReadOnlyList<ProbeReading> readings,
        ProbeConstants? constants = null)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var estimates = new Dictionary<Depth, SoilTemperatureColumns>();
        SoilTemperatureColumns at(Depth z)
        {
            if (!estimates.TryGetValue(z, out SoilTemperatureColumns? known))
            {
                known = SoilTemperatureColumns.Estimate(model, series, latitudeDegrees, z);
                estimates.Add(z, known);
            }

            return known;
        }

        foreach (ProbeReading reading in readings) SoilDemand.DepthOfTurf(reading.Depth);
        SoilTemperatureColumns uncorrected = at(depth);
        ProbeReading[] inOrder = [.. readings.OrderBy(reading => reading.Day).ThenBy(reading => reading.Time)];
        var course = new Course(series, depth, constants ?? new ProbeConstants(), inOrder);
        double[] mean = [.. uncorrected.MeanC];
        double[] deviation = [.. uncorrected.DeviationC];
        for (int i = 0; i < mean.Length; i++)
        {
            course.GoTo(i, at);
            mean[i] += course.Bias.MeanC;
            deviation[i] *= course.ShareOfDeviation;
        }

        return new ProbedSoil(new SoilTemperatureColumns(mean, deviation), course.Finish());
    }

    /// <summary>The mean of the day that a reading stands for [°C].</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="series">The weather, which must hold its day.</param>
    /// <param name="estimateC">The estimated mean at its depth [°C].</param>
    /// <exception cref="ArgumentOutOfRangeException">The series does not hold the reading's day.</exception>
    public static double DailyMeanC(ProbeReading reading, DailySeries series, double estimateC)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(series);
        if (!series.Holds(reading.Day))
        {
            string span = $"{series.FirstDay:yyyy-MM-dd} to {series.LastDay:yyyy-MM-dd}";
            string message = $"The reading's day was {reading.Day:yyyy-MM-dd}; allowed is a day of the weather, {span}.";
            throw new ArgumentOutOfRangeException(nameof(reading), reading.Day, message);
        }

        int index = series.IndexOf(reading.Day);
        ReadOnlySpan<double> snow = series.Column(WeatherVariable.SnowDepthMm);
        bool covered = !snow.IsEmpty && snow[index] > 0;
        if (reading.Time is not { } time || covered || estimateC <= HardlyAnyWaveC) return reading.Value.Celsius;
        double range = series.MaximumAirC[index] - series.MinimumAirC[index];
        if (double.IsNaN(range)) range = UsualAirRangeC;
        return reading.Value.Celsius - DiurnalWave.DepartureC(range, reading.Depth.Centimetres, time.ToTimeSpan().TotalHours);
    }

    /// <summary>The bias on its way through the days, and the readings met so far.</summary>
    private sealed class Course(DailySeries series, Depth depth, ProbeConstants constants, ProbeReading[] readings)
    {
        private readonly List<JudgedReading> judged = [];

        public SiteBias Bias { get; private set; } = SiteBias.Unknown(constants);

        public double ShareOfDeviation => Math.Sqrt(
            constants.BiasShareOfVariance * Bias.Variance / SiteBias.Unknown(constants).Variance + 1.0 - constants.BiasShareOfVariance);

        public void GoTo(int index, Func<Depth, SoilTemperatureColumns> estimates)
        {
            if (index > 0) Bias = Bias.After(1, constants);
            DateOnly day = series.DayAt(index);
            while (judged.Count < readings.Length && readings[judged.Count].Day <= day)
            {
                ProbeReading reading = readings[judged.Count];
                judged.Add(reading.Day < day ? WithoutWeather(reading) : Take(reading, estimates(reading.Depth).MeanC[index]));
            }
        }

        public List<JudgedReading> Finish()
        {
            while (judged.Count < readings.Length) judged.Add(WithoutWeather(readings[judged.Count]));
            return judged;
        }

        private static JudgedReading WithoutWeather(ProbeReading reading) => new(reading, ReadingVerdict.NoWeatherThatDay, null, null, null);

        private JudgedReading Take(ProbeReading reading, double estimateC)
        {
            // An estimate over a hole in the weather is off for reasons that are no bias of the site.
            if (series.QualityAt(series.IndexOf(reading.Day)) is null or Mark.Filled) return WithoutWeather(reading);
            if (double.IsNaN(estimateC)) return new JudgedReading(reading, ReadingVerdict.NoEstimateThatDay, null, null, null);
            double daily = DailyMeanC(reading, series, estimateC);
            double correlation = Math.Exp(-Math.Abs(reading.Depth.Centimetres - depth.Centimetres) / constants.DepthMemoryCm);
            double expected = estimateC + correlation * Bias.MeanC;
            double variance = constants.DayToDayVariance + constants.ThermometerVariance;
            Bias = Bias.With(daily - estimateC, variance, correlation, constants, out double deviations);
            ReadingVerdict verdict = deviations > constants.DoubtFromDeviations ? ReadingVerdict.Doubted : ReadingVerdict.Used;
            return new JudgedReading(reading, verdict, daily, expected, deviations);
        }
    }
}
