using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// Corrects the estimated soil temperature of a site by a person's soil-thermometer readings.
/// <para>The site's bias is followed as <see cref="SiteBias"/>; corrected mean x + b, corrected deviation s·√(0.7·P/σb² + 0.3). The
/// correction and its certainty fade with time (τ = 120 days) and with distance in depth (ρ = exp(−|Δz|/150 cm)).</para>
/// <para>A reading with a time of day stands for the mean of its day: value − <see cref="DiurnalWave.DepartureC"/>. No wave is taken off
/// where the estimate is 1 °C or colder or snow was measured. Where the day's extremes are missing a range of 10 °C is assumed.</para>
/// <para>Variance of a reading's departure: R = 0.5 (the estimate's own day) + 0.25/n (thermometer) + (m/n)²·0.49² (conversion) [°C²], for
/// n readings of the same day and depth, of which m have a time and needed the wave. Such readings are taken as one, at the mean of their
/// daily means: only the thermometer's part is independent, so that they do not count n-fold. Among them a doubted one is left out of the
/// mean; where all are doubted the mean of all is taken and doubted, moves the correction little and leaves its certainty as it was.</para>
/// <para>Valid for readings at 2 to 20 cm. A day's estimate uses readings of that day and earlier ones only; the order in which readings of
/// one day are handed over does not matter.</para>
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

    /// <summary>
    /// Estimates by a model and corrects it by the readings, as told above.
    /// <para>Valid for 2 to 20 cm and any finite reading. Days without an estimate stay NaN; a reading on a day without weather or estimate
    /// corrects nothing, and its verdict says so.</para>
    /// </summary>
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
        return Correct(z => SoilTemperatureColumns.Estimate(model, series, latitudeDegrees, z), series, depth, readings, constants);
    }

    /// <summary>Corrects estimates by the readings, as told above.</summary>
    /// <param name="estimates">The estimates at a depth, as they are without readings, in columns of their own.</param>
    /// <param name="series">The weather [°C], of the same days.</param>
    /// <param name="depth">Depth asked for, 2 to 20 cm.</param>
    /// <param name="readings">The readings, in any order.</param>
    /// <param name="constants">The constants; null for those from validation.</param>
    internal static ProbedSoil Correct(Func<Depth, SoilTemperatureColumns> estimates, DailySeries series, Depth depth, IReadOnlyList<ProbeReading> readings, ProbeConstants? constants = null)
    {
        foreach (ProbeReading reading in readings) SoilDemand.DepthOfTurf(reading.Depth);
        var known = new Dictionary<Depth, SoilTemperatureColumns>();
        SoilTemperatureColumns uncorrected = At(depth);
        ProbeReading[] inOrder =
        [
            .. readings.OrderBy(reading => reading.Day).ThenBy(reading => reading.Depth.Centimetres)
                .ThenBy(reading => reading.Time).ThenBy(reading => reading.Value.Celsius),
        ];
        var course = new Course(series, depth, constants ?? new ProbeConstants(), inOrder);
        // Only readings look at the uncorrected ones again.
        double[] mean = inOrder.Length == 0 ? uncorrected.MeanC : [.. uncorrected.MeanC];
        double[] deviation = inOrder.Length == 0 ? uncorrected.DeviationC : [.. uncorrected.DeviationC];
        for (int i = 0; i < mean.Length; i++)
        {
            course.GoTo(i, At);
            mean[i] += course.Bias.MeanC;
            deviation[i] *= course.ShareOfDeviation;
        }

        return new ProbedSoil(new SoilTemperatureColumns(mean, deviation), course.Finish());

        SoilTemperatureColumns At(Depth z) => known.TryGetValue(z, out SoilTemperatureColumns? before) ? before : known[z] = estimates(z);
    }

    /// <summary>
    /// Gives the mean of the day that a reading stands for [°C]: its value, less <see cref="DiurnalWave.DepartureC"/> where it has a time and
    /// the soil is neither at 1 °C or colder nor under measured snow.
    /// <para>Valid for 2 to 20 cm. Where an extreme of the day's air is missing a range of 10 °C is assumed; a missing estimate (NaN) counts as
    /// unfrozen soil.</para>
    /// </summary>
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

        return reading.Value.Celsius - (Wave(reading, series, estimateC) ?? 0.0);
    }

    /// <summary>By how much the soil at the reading's time exceeds the mean of its day [°C]; null where no wave is taken off.</summary>
    private static double? Wave(ProbeReading reading, DailySeries series, double estimateC)
    {
        int index = series.IndexOf(reading.Day);
        ReadOnlySpan<double> snow = series.Column(WeatherVariable.SnowDepthMm);
        bool covered = !snow.IsEmpty && snow[index] > 0;
        if (reading.Time is not { } time || covered || estimateC <= HardlyAnyWaveC) return null;
        double range = series.MaximumAirC[index] - series.MinimumAirC[index];
        if (double.IsNaN(range)) range = UsualAirRangeC;
        return DiurnalWave.DepartureC(range, reading.Depth.Centimetres, time.ToTimeSpan().TotalHours);
    }

    /// <summary>The bias on its way through the days, and the readings met so far.</summary>
    private sealed class Course(DailySeries series, Depth depth, ProbeConstants constants, ProbeReading[] readings)
    {
        private readonly List<JudgedReading> judged = [];

        // Where nothing is left of any reading, a day more changes nothing.
        private bool isSettled;

        public SiteBias Bias { get; private set; } = SiteBias.Unknown(constants);

        public double ShareOfDeviation { get; private set; } = ShareOf(SiteBias.Unknown(constants), constants);

        public void GoTo(int index, Func<Depth, SoilTemperatureColumns> estimates)
        {
            if (index > 0 && !isSettled) Fade();
            DateOnly day = series.DayAt(index);
            while (judged.Count < readings.Length && readings[judged.Count].Day <= day)
            {
                ProbeReading[] together = Together(readings.AsSpan(judged.Count));
                if (together[0].Day < day) judged.AddRange(together.Select(WithoutWeather));
                else Take(together, estimates(together[0].Depth).MeanC[index]);
            }
        }

        /// <summary>The readings in the order of time.</summary>
        public List<JudgedReading> Finish()
        {
            while (judged.Count < readings.Length) judged.Add(WithoutWeather(readings[judged.Count]));
            return [.. judged.OrderBy(one => one.Reading.Day).ThenBy(one => one.Reading.Time)];
        }

        private static double ShareOf(SiteBias bias, ProbeConstants constants) => Math.Sqrt(
            constants.BiasShareOfVariance * bias.Variance / SiteBias.Unknown(constants).Variance + 1.0 - constants.BiasShareOfVariance);

        private void Fade()
        {
            SiteBias after = Bias.After(1, constants);
            if (after == Bias) isSettled = true;
            else Become(after);
        }

        private void Become(SiteBias bias)
        {
            isSettled = false;
            Bias = bias;
            ShareOfDeviation = ShareOf(bias, constants);
        }

        private static JudgedReading WithoutWeather(ProbeReading reading) => new(reading, ReadingVerdict.NoWeatherThatDay, null, null, null);

        /// <summary>The readings at the front that share their day and depth.</summary>
        private static ProbeReading[] Together(ReadOnlySpan<ProbeReading> left)
        {
            int count = 1;
            while (count < left.Length && left[count].Day == left[0].Day && left[count].Depth == left[0].Depth) count++;
            return left[..count].ToArray();
        }

        private void Take(ProbeReading[] together, double estimateC)
        {
            // An estimate over a hole in the weather is off for reasons that are no bias of the site.
            bool noWeather = series.QualityAt(series.IndexOf(together[0].Day)) is not { } mark || !mark.IsReading();
            if (noWeather || double.IsNaN(estimateC))
            {
                ReadingVerdict why = noWeather ? ReadingVerdict.NoWeatherThatDay : ReadingVerdict.NoEstimateThatDay;
                judged.AddRange(together.Select(reading => new JudgedReading(reading, why, null, null, null)));
                return;
            }

            double correlation = Math.Exp(-Math.Abs(together[0].Depth.Centimetres - depth.Centimetres) / constants.DepthMemoryCm);
            double expected = estimateC + correlation * Bias.MeanC;
            double?[] waves = [.. together.Select(reading => Wave(reading, series, estimateC))];
            double[] daily = [.. together.Zip(waves, (reading, wave) => reading.Value.Celsius - (wave ?? 0.0))];
            double[] deviations = [.. daily.Zip(waves, (value, wave) => Deviations(value - estimateC, wave is null ? 0 : 1, correlation))];
            int[] all = [.. Enumerable.Range(0, together.Length)];
            int[] trusted = [.. all.Where(i => deviations[i] <= constants.DoubtFromDeviations)];
            int[] used = trusted.Length > 0 ? trusted : all;
            double variance = ReadingVariance(used.Length, used.Count(i => waves[i] is not null));
            Become(Bias.With(used.Average(i => daily[i]) - estimateC, variance, correlation, constants, out double ofMean));
            bool meanDoubted = ofMean > constants.DoubtFromDeviations;
            foreach (int i in all)
            {
                bool doubted = meanDoubted || !used.Contains(i);
                judged.Add(new JudgedReading(together[i], doubted ? ReadingVerdict.Doubted : ReadingVerdict.Used, daily[i], expected, deviations[i]));
            }
        }

        /// <summary>How far a reading lies from what was expected of it, in standard deviations.</summary>
        private double Deviations(double departureC, int converted, double correlation)
        {
            Bias.With(departureC, ReadingVariance(1, converted), correlation, constants, out double deviations);
            return deviations;
        }

        /// <summary>All readings of a day and depth share the estimate's day and the conversion; each has its own thermometer's
        /// error.</summary>
        private double ReadingVariance(int count, int converted)
        {
            double share = converted / (double)count;
            return constants.DayToDayVariance + constants.ThermometerVariance / count + share * share * constants.ConversionVariance;
        }
    }
}
