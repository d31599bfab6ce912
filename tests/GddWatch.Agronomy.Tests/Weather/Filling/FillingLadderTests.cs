using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Filling;

public sealed class FillingLadderTests
{
    private const WeatherVariable Low = WeatherVariable.MinimumAirC;
    private const WeatherVariable High = WeatherVariable.MaximumAirC;
    private static readonly DateOnly First = new(2023, 4, 1);

    [Fact]
    public void A_hole_stands_on_the_last_known_day_until_its_later_side_comes_in_and_on_the_line_between_them_from_then_on()
    {
        // CALC: a third and two thirds of the way from 10 to 16 °C.
        DailySeries series = Days([8, 10, double.NaN, double.NaN, 16]);
        IReadOnlyList<FilledValue> fillings = FillingLadder.FillingsOf(series, [], []);
        DateOnly later = First.AddDays(4);
        Assert.Equal(
            [(2, 10, FillingRung.LastKnownDay, First.AddDays(2), later), (2, 12, FillingRung.BetweenNeighbours, later, null), (3, 10, FillingRung.LastKnownDay, First.AddDays(3), later), (3, 14, FillingRung.BetweenNeighbours, later, (DateOnly?)null)],
            fillings.Where(each => each.Variable == Low).Select(each => (each.Day.DayNumber - First.DayNumber, each.ValueC, each.Rung, each.KnownFrom, each.ReplacedOn)));
        Assert.Equal([8, 10, 10, 10], FillingLadder.AsOf(series, First.AddDays(3), fillings).Series.MinimumAirC.ToArray());
        Assert.Equal([8, 10, 12, 14, 16], FillingLadder.AsOf(series, later, fillings).Series.MinimumAirC.ToArray());
        Assert.Equal(Mark.Filled, FillingLadder.AsOf(series, later, fillings).Series.QualityAt(2));
    }

    [Fact]
    public void A_neighbour_s_value_is_moved_by_the_usual_difference_of_each_temperature()
    {
        // CALC: 2 °C colder by night and 1 °C warmer by day on all common days; the neighbour reads 5 and 20 on the missing day.
        DailySeries own = Days([.. Enumerable.Range(0, 12).Select(i => 3.0 + i % 4), double.NaN], rangeC: 13);
        DailySeries near = Days([.. Enumerable.Range(0, 12).Select(i => 5.0 + i % 4), 5], rangeC: 10, lastRangeC: 15);
        IReadOnlyList<FilledValue> fillings = FillingLadder.FillingsOf(own, [new("The field", near)], []);
        Assert.Equal([(Low, 3.0), (High, 21.0)], fillings.Select(each => (each.Variable, Math.Round(each.ValueC, 9))));
        Assert.All(fillings, each => Assert.Equal((FillingRung.NeighbouringSite, First.AddDays(12), null), (each.Rung, each.KnownFrom, each.ReplacedOn)));
    }

    [Fact]
    public void The_error_of_a_neighbour_s_value_is_that_of_a_new_difference_about_the_mean_and_the_most_alike_neighbour_is_taken()
    {
        // CALC: differences 1 and −1 in turn on 12 days have s = √(12/11); 1.2·s·√(1 + 1/12) = 1.304538. The other neighbour's differ by 2.
        DailySeries own = Days([.. Enumerable.Repeat(10.0, 12), double.NaN]);
        DailySeries alike = Days([.. Enumerable.Range(0, 12).Select(i => i % 2 == 0 ? 11.0 : 9), 14]);
        DailySeries lessAlike = Days([.. Enumerable.Range(0, 12).Select(i => i % 2 == 0 ? 12.0 : 8), 20]);
        FilledValue filling = FillingLadder.FillingsOf(own, [new("Far", lessAlike), new("Near", alike)], [])[0];
        Assert.Equal(14, filling.ValueC, 9);
        Assert.Equal(1.304538, filling.ErrorC, 1e-6);
    }

    [Fact]
    public void A_site_with_nine_common_days_or_with_widely_varying_differences_is_no_neighbour()
    {
        DailySeries own = Days([.. Enumerable.Repeat(10.0, 9), double.NaN]);
        Assert.Equal(FillingRung.LastKnownDay, FillingLadder.FillingsOf(own, [new("Young", Days([.. Enumerable.Repeat(10.0, 10)]))], [])[0].Rung);
        DailySeries longer = Days([.. Enumerable.Repeat(10.0, 20), double.NaN]);
        DailySeries unlike = Days([.. Enumerable.Range(0, 21).Select(i => i % 2 == 0 ? 13.0 : 7)]);
        Assert.Equal(FillingRung.LastKnownDay, FillingLadder.FillingsOf(longer, [new("Unlike", unlike)], [])[0].Rung);
    }

    [Fact]
    public void The_latest_forecast_issued_by_the_day_itself_fills_it_and_is_marked_as_a_forecast()
    {
        DailySeries series = Days([8, 10, double.NaN]);
        Forecast[] forecasts = [Told(2, 14), Told(3, 99), Told(1, 12)];
        FilledSeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], forecasts));
        Assert.Equal(14, filled.Series.MinimumAirC[2]);
        Assert.Equal(Mark.Forecast, filled.Series.QualityAt(2));
        Assert.True(ForecastAsIssued.ErrorC(3) > filled.Fillings[0].ErrorC);

        FilledSeries none = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], [Told(2 - ForecastAsIssued.LongestLeadDays - 1, 12)]));
        Assert.Equal(FillingRung.LastKnownDay, none.Fillings[0].Rung);

        static Forecast Told(int issued, double minimumC)
        {
            DateOnly day = First.AddDays(issued);
            return new Forecast(day, new DateTimeOffset(day, new TimeOnly(6, 0), TimeSpan.Zero), Days([.. Enumerable.Repeat(minimumC, 14)], firstDay: First.AddDays(issued)));
        }
    }

    [Fact]
    public void A_hole_is_filled_from_ten_earlier_years_and_the_fading_departure_for_ten_days_and_stays_a_hole_from_the_eleventh()
    {
        // CALC: ten years of 10 °C every day, then 14 °C on the last known day: 10 + 4·exp(−k/2.1).
        DailySeries series = Days([.. Enumerable.Repeat(10.0, 3659), 14, .. Enumerable.Repeat(double.NaN, 12)], firstDay: new DateOnly(2013, 1, 1));
        DailySeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], [])).Series;
        for (int k = 1; k <= 10; k++) Assert.Equal(10 + 4 * Math.Exp(-k / 2.1), filled.MinimumAirC[3659 + k], 1e-9);
        Assert.True(double.IsNaN(filled.MinimumAirC[3659 + 11]));
    }

    [Fact]
    public void Nine_earlier_years_are_too_few_and_the_last_known_day_stands_in_for_five_days_as_it_always_did()
    {
        DailySeries series = Days([.. Enumerable.Repeat(10.0, 3299), 14, .. Enumerable.Repeat(double.NaN, 8)], firstDay: new DateOnly(2013, 1, 1));
        FilledSeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], []));
        Assert.Equal(2 * LastKnownDay.LongestHoleDays, filled.Fillings.Count);
        Assert.Equal(LastKnownDay.Fill(series).MinimumAirC.ToArray(), filled.Series.MinimumAirC.ToArray());
        Assert.Equal(LastKnownDay.Fill(series).MaximumAirC.ToArray(), filled.Series.MaximumAirC.ToArray());
    }

    [Fact]
    public void A_hole_of_five_days_is_bridged_and_one_of_six_is_not()
    {
        static double[] Holed(int days) => [10, .. Enumerable.Repeat(double.NaN, days), 22];
        Assert.Equal(5, FillingLadder.FillingsOf(Days(Holed(5)), [], []).Count(each => each.Variable == Low && each.Rung == FillingRung.BetweenNeighbours));
        Assert.DoesNotContain(FillingLadder.FillingsOf(Days(Holed(6)), [], []), each => each.Rung == FillingRung.BetweenNeighbours);
    }

    [Fact]
    public void A_measured_temperature_is_kept_and_a_filled_minimum_above_it_is_set_level_with_it()
    {
        DailySeries series = Days([15, double.NaN], rangeC: 5, lastMaximumC: 9);
        FilledSeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], []));
        FilledValue only = Assert.Single(filled.Fillings);
        Assert.Equal((Low, 9.0), (only.Variable, only.ValueC));
        Assert.Equal(9, filled.Series.MaximumAirC[1]);
        Assert.Equal((Mark.Filled, Mark.Measured), (filled.Series.MinimumMarks[1], filled.Series.MaximumMarks[1]));
    }

    [Fact]
    public void A_doubted_value_is_filled_and_fills_nothing()
    {
        DailySeries plain = Days([10, 40, double.NaN]);
        Mark[] marks = [Mark.Measured, Mark.Suspect, Mark.Measured];
        DailySeries doubted = plain.WithAirTemperature(plain.MinimumAirC.ToArray(), plain.MaximumAirC.ToArray(), marks, marks);
        FilledSeries filled = FillingLadder.AsOf(doubted, doubted.LastDay, FillingLadder.FillingsOf(doubted, [], []));
        Assert.Equal([10, 10, 10], filled.Series.MinimumAirC.ToArray());
    }

    [Fact]
    public void A_series_without_holes_is_given_back_as_it_is_and_a_day_before_it_is_refused()
    {
        DailySeries series = Days([10, 11]);
        FilledSeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], []));
        Assert.Same(series, filled.Series);
        Assert.Empty(filled.Fillings);
        Assert.Throws<ArgumentOutOfRangeException>(() => FillingLadder.AsOf(series, First.AddDays(-1), []));
    }

    private static DailySeries Days(
        double[] minimumC, double rangeC = 10, double lastRangeC = double.NaN, double lastMaximumC = double.NaN, DateOnly? firstDay = null)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < minimumC.Length; i++)
        {
            bool isLast = i == minimumC.Length - 1;
            double range = isLast && !double.IsNaN(lastRangeC) ? lastRangeC : rangeC;
            builder.Put((firstDay ?? First).AddDays(i), Low, minimumC[i]);
            builder.Put((firstDay ?? First).AddDays(i), High, isLast && !double.IsNaN(lastMaximumC) ? lastMaximumC : minimumC[i] + range);
        }

        return builder.Build()!;
    }
}
