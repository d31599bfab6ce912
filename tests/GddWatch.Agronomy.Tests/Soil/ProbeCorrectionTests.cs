using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

public sealed class ProbeCorrectionTests
{
    private static readonly DateOnly NewYear = new(2023, 1, 1);
    private static readonly DailySeries Weather = SomeSoil.Days(NewYear, SomeSoil.SmoothYear(365), d => d % 5 == 0 ? 10 : 0);
    private static readonly SoilTemperatureColumns Uncorrected = SomeSoil.Of(LayeredTurfSoil.Default, Weather);

    [Fact]
    public void Without_readings_nothing_changes()
    {
        ProbedSoil probed = Corrected();
        Assert.Empty(probed.Readings);
        for (int i = 13; i < Weather.Count; i++)
        {
            Assert.Equal(Uncorrected.MeanC[i], probed.Columns.MeanC[i]);
            Assert.Equal(Uncorrected.DeviationC[i], probed.Columns.DeviationC[i], 1e-12);
        }
    }

    [Fact]
    public void Readings_that_agree_move_the_estimate_towards_them_and_shrink_its_deviation_with_each()
    {
        ProbeReading[] readings = [At(120, 2), At(127, 2), At(134, 2)];
        double deviation = Uncorrected.DeviationC[134];
        double moved = 0;
        for (int count = 1; count <= 3; count++)
        {
            ProbedSoil probed = Corrected(readings[..count]);
            Assert.All(probed.Readings, reading => Assert.Equal(ReadingVerdict.Used, reading.Verdict));
            Assert.True(probed.Columns.DeviationC[134] < deviation);
            double now = probed.Columns.MeanC[134] - Uncorrected.MeanC[134];
            Assert.InRange(now, moved + 0.05, 2);
            (deviation, moved) = (probed.Columns.DeviationC[134], now);
        }
    }

    [Fact]
    public void A_reading_changes_no_day_before_it_and_less_with_each_day_after_it()
    {
        ProbedSoil probed = Corrected(At(150, 2));
        double before = 10;
        for (int i = 13; i < Weather.Count; i++)
        {
            double correction = probed.Columns.MeanC[i] - Uncorrected.MeanC[i];
            if (i < 149) Assert.Equal(0, correction);
            else Assert.InRange(correction, double.Epsilon, before);
            if (i >= 149) before = correction;
        }

        double ratio = probed.Columns.DeviationC[^1] / Uncorrected.DeviationC[^1];
        Assert.InRange(ratio, probed.Columns.DeviationC[149] / Uncorrected.DeviationC[149], 1);
    }

    [Fact]
    public void A_reading_at_another_depth_corrects_less()
    {
        // ρ = exp(−|Δz|/150 cm): 0.967 from 10 to 5 cm, 0.905 from 20 to 5 cm. Each reading lies 2 °C above the estimate at its own depth.
        double at5 = CorrectionFrom(5), at10 = CorrectionFrom(10), at20 = CorrectionFrom(20);
        Assert.Equal(Math.Exp(-5 / 150.0), at10 / at5, 1e-9);
        Assert.Equal(Math.Exp(-15 / 150.0), at20 / at5, 1e-9);

        static double CorrectionFrom(double depthCm) => Corrected(At(150, 2, depthCm)).Columns.MeanC[149] - Uncorrected.MeanC[149];
    }

    [Fact]
    public void A_reading_far_off_is_doubted_said_so_and_hardly_moves_the_estimate()
    {
        ProbedSoil probed = Corrected(At(150, 9), At(151, 0.5));
        JudgedReading doubted = probed.Readings[0];
        Assert.Equal(ReadingVerdict.Doubted, doubted.Verdict);
        Assert.Equal(Uncorrected.MeanC[149], doubted.ExpectedC!.Value, 1e-9);
        Assert.Equal(9, doubted.DailyMeanC!.Value - doubted.ExpectedC!.Value, 1e-9);
        Assert.Equal(9 / Math.Sqrt(1.44 + 0.75), doubted.Deviations!.Value, 1e-9);
        Assert.Equal(ReadingVerdict.Used, probed.Readings[1].Verdict);
        Assert.InRange(probed.Columns.MeanC[150] - Uncorrected.MeanC[150], 0, 1.2);
    }

    [Fact]
    public void A_morning_reading_is_raised_and_an_afternoon_reading_lowered_to_the_mean_of_the_day()
    {
        // By hand from the documented wave, 5 cm, range 12 °C: 0.26·12·exp(−5/10.5) = 1.9379; 8 h: cos(−π/2 − 0.47619) = −0.45839; 17 h:
        // cos(π/4 − 0.47619) = 0.95254.
        Assert.Equal(10 + 1.9379 * 0.45839, Daily(new TimeOnly(8, 0)), 1e-3);
        Assert.Equal(10 - 1.9379 * 0.95254, Daily(new TimeOnly(17, 0)), 1e-3);
        Assert.Equal(10, Daily(null));

        static double Daily(TimeOnly? time) =>
            ProbeCorrection.DailyMeanC(new ProbeReading(NewYear.AddDays(100), time, SomeSoil.FiveCm, Temperature.FromCelsius(10)), Weather, 10);
    }

    [Fact]
    public void The_wave_of_the_day_has_its_mean_at_zero()
    {
        double sum = 0;
        for (int hour = 0; hour < 24; hour++) sum += DiurnalWave.DepartureC(11, 7, hour);
        Assert.Equal(0, sum, 1e-12);
        Assert.Contains("hour of the day [hours] was 25", Assert.Throws<ArgumentOutOfRangeException>(() => DiurnalWave.DepartureC(11, 7, 25)).Message);
    }

    [Fact]
    public void Under_snow_or_in_frozen_soil_a_reading_is_taken_as_it_is()
    {
        var reading = new ProbeReading(NewYear.AddDays(100), new TimeOnly(8, 0), SomeSoil.FiveCm, Temperature.FromCelsius(0.5));
        Assert.Equal(0.5, ProbeCorrection.DailyMeanC(reading, Weather, 0.2));
        var builder = new DailySeriesBuilder();
        builder.AddMissingFrom(Weather);
        builder.Put(reading.Day, WeatherVariable.SnowDepthMm, 80);
        Assert.Equal(0.5, ProbeCorrection.DailyMeanC(reading, builder.Build()!, 3));
    }

    [Fact]
    public void A_reading_without_weather_or_estimate_corrects_nothing_and_says_so()
    {
        ProbedSoil probed = Corrected(At(-5, 0), At(5, 0), At(400, 0));
        Assert.Equal(
            [ReadingVerdict.NoWeatherThatDay, ReadingVerdict.NoEstimateThatDay, ReadingVerdict.NoWeatherThatDay],
            probed.Readings.Select(reading => reading.Verdict));
        Assert.All(probed.Readings, reading => Assert.Null(reading.DailyMeanC));
        Assert.Equal(Uncorrected.MeanC[^1], probed.Columns.MeanC[^1]);
    }

    [Fact]
    public void A_reading_in_a_hole_of_the_weather_corrects_nothing_because_the_estimate_is_off_there_for_other_reasons()
    {
        double[] year = SomeSoil.SmoothYear(200);
        year[149] = double.NaN;
        DailySeries holed = SomeSoil.Days(NewYear, year);
        foreach (DailySeries series in (DailySeries[])[holed, LastKnownDay.Fill(holed)])
        {
            ProbedSoil probed = ProbeCorrection.Estimate(LayeredTurfSoil.Default, series, 40, SomeSoil.FiveCm, [At(150, 3)]);
            Assert.Equal(ReadingVerdict.NoWeatherThatDay, probed.Readings[0].Verdict);
            Assert.Equal(SomeSoil.Of(LayeredTurfSoil.Default, series).MeanC[^1], probed.Columns.MeanC[^1]);
        }
    }

    [Fact]
    public void A_reading_at_a_time_of_day_weighs_less_than_a_mean_of_the_day()
    {
        // By hand: gain P/(P + R), P = 1.2² = 1.44, R = 0.5 + 0.25 for a daily mean and 0.49² = 0.2401 more for a converted reading.
        ProbeReading mean = At(150, 2);
        double wave = DiurnalWave.DepartureC(12, 5, 8);
        ProbeReading timed = mean with { Time = new TimeOnly(8, 0), Value = Temperature.FromCelsius(mean.Value.Celsius + wave) };
        Assert.Equal(2 * 1.44 / (1.44 + 0.75), Corrected(mean).Columns.MeanC[149] - Uncorrected.MeanC[149], 1e-9);
        Assert.Equal(2 * 1.44 / (1.44 + 0.75 + 0.2401), Corrected(timed).Columns.MeanC[149] - Uncorrected.MeanC[149], 1e-9);
        Assert.True(Corrected(timed).Columns.DeviationC[149] > Corrected(mean).Columns.DeviationC[149]);
    }

    [Fact]
    public void Readings_of_the_same_day_and_depth_count_as_one_whose_thermometer_error_alone_is_averaged()
    {
        // By hand: R = 0.5 + 0.25/4; P = 1.44 − 1.44²/(1.44 + R); share of the deviation √(0.7·P/1.44 + 0.3).
        ProbedSoil four = Corrected(At(150, 1), At(150, 3), At(150, 2), At(150, 2));
        const double r = 0.5 + 0.25 / 4;
        Assert.Equal(2 * 1.44 / (1.44 + r), four.Columns.MeanC[149] - Uncorrected.MeanC[149], 1e-9);
        Assert.Equal(Math.Sqrt(0.7 * r / (1.44 + r) + 0.3), four.Columns.DeviationC[149] / Uncorrected.DeviationC[149], 1e-9);
        Assert.Equal(4, four.Readings.Count);
        Assert.All(four.Readings, reading => Assert.Equal(ReadingVerdict.Used, reading.Verdict));

        // However many there are, the day itself stays: never more certain than a perfect thermometer makes it.
        ProbedSoil many = Corrected([.. Enumerable.Repeat(At(150, 2), 200)]);
        Assert.True(many.Columns.DeviationC[149] / Uncorrected.DeviationC[149] > Math.Sqrt(0.7 * 0.5 / (1.44 + 0.5) + 0.3));
    }

    [Fact]
    public void Readings_of_the_same_day_and_depth_share_the_error_of_their_conversion()
    {
        // By hand: one with a time and one without share half of it, (1/2)²·0.2401; two with a time all of it.
        ProbeReading mean = At(150, 2);
        ProbeReading timed(int hour) => mean with
        {
            Time = new TimeOnly(hour, 0), Value = Temperature.FromCelsius(mean.Value.Celsius + DiurnalWave.DepartureC(12, 5, hour)),
        };
        Assert.Equal(2 * 1.44 / (1.44 + 0.625 + 0.2401 / 4), Corrected(mean, timed(8)).Columns.MeanC[149] - Uncorrected.MeanC[149], 1e-9);
        Assert.Equal(2 * 1.44 / (1.44 + 0.625 + 0.2401), Corrected(timed(17), timed(8)).Columns.MeanC[149] - Uncorrected.MeanC[149], 1e-9);
    }

    [Fact]
    public void An_outlier_among_readings_of_a_day_is_doubted_alone_and_left_out_of_their_mean()
    {
        ProbedSoil probed = Corrected(At(150, 1), At(150, 12));
        Assert.Equal([ReadingVerdict.Used, ReadingVerdict.Doubted], probed.Readings.OrderBy(one => one.DailyMeanC).Select(one => one.Verdict));
        Assert.Equal(Corrected(At(150, 1)).Columns.MeanC, probed.Columns.MeanC);
    }

    [Fact]
    public void A_doubted_reading_leaves_the_deviation_as_it_was()
    {
        ProbedSoil probed = Corrected(At(150, 9));
        Assert.Equal(ReadingVerdict.Doubted, probed.Readings[0].Verdict);
        for (int i = 149; i < Weather.Count; i++) Assert.Equal(Uncorrected.DeviationC[i], probed.Columns.DeviationC[i], 1e-12);
    }

    [Fact]
    public void The_order_in_which_readings_are_handed_over_does_not_matter()
    {
        ProbeReading[] readings = [At(120, 1), At(140, -2), At(150, 0.5, 10), At(150, 1), At(150, -0.5)];
        Assert.Equal(Corrected(readings).Columns.MeanC, Corrected([.. readings.Reverse()]).Columns.MeanC);
    }

    [Fact]
    public void A_reading_from_too_deep_is_refused_with_its_depth() =>
        Assert.Contains(
            "depth [cm] was 30; allowed is 2 to 20.",
            Assert.Throws<ArgumentOutOfRangeException>(() => Corrected(new ProbeReading(NewYear.AddDays(99), null, Depth.FromCentimetres(30), default))).Message);

    private static ProbedSoil Corrected(params ProbeReading[] readings) =>
        ProbeCorrection.Estimate(LayeredTurfSoil.Default, Weather, 40, SomeSoil.FiveCm, readings);

    /// <summary>A daily mean that lies so much above the estimate at its depth.</summary>
    private static ProbeReading At(int day, double above, double depthCm = 5)
    {
        double estimate = day is > 14 and <= 365 ? SomeSoil.Of(LayeredTurfSoil.Default, Weather, 40, depthCm).MeanC[day - 1] : 10;
        return new ProbeReading(NewYear.AddDays(day - 1), null, Depth.FromCentimetres(depthCm), Temperature.FromCelsius(estimate + above));
    }
}
