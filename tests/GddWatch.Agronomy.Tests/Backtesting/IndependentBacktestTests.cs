using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>The whole backtest of one real station against a few plain loops over the raw columns of its file, which share no code with what is tested.</summary>
public sealed class IndependentBacktestTests
{
    private static readonly IReadOnlyList<(DateOnly Day, double MinimumC, double MaximumC, double SoilC)> Raw = HarvardForest.Days();

    private static readonly Site Forest = Some.Site(latitude: 42.53) with { SoilTemperature = SoilSource.Measured };

    private static DailySeries Series()
    {
        var builder = new DailySeriesBuilder();
        foreach ((DateOnly day, double minimum, double maximum, double soil) in Raw)
        {
            builder.Put(day, WeatherVariable.MinimumAirC, minimum);
            builder.Put(day, WeatherVariable.MaximumAirC, maximum);
            builder.Put(day, WeatherVariable.Soil10CmC, soil);
        }

        return builder.Build()!;
    }

    [Fact]
    public void Windows_by_a_five_day_mean_of_the_air_open_and_close_on_the_days_that_plain_loops_find()
    {
        Treatment task = Some.Treatment(
            new AirTemperatureCondition(AirValue.Mean, 5, Temperature.FromCelsius(10), null, new Holding(1, 1)),
            closed: new AirTemperatureCondition(AirValue.Mean, 5, Temperature.FromCelsius(18), null, new Holding(1, 1)));
        Compare(task, [.. Raw.Select(row => (row.MinimumC + row.MaximumC) / 2)], 5, 10, 18);
    }

    [Fact]
    public void Windows_by_a_three_day_mean_of_measured_soil_do_too()
    {
        Depth depth = Depth.FromCentimetres(10);
        Treatment task = Some.Treatment(
            new SoilTemperatureCondition(depth, 3, Passing.RisesAbove, Temperature.FromCelsius(9), new Holding(1, 1)),
            closed: new SoilTemperatureCondition(depth, 3, Passing.RisesAbove, Temperature.FromCelsius(17), new Holding(1, 1)));
        Compare(task, [.. Raw.Select(row => row.SoilC)], 3, 9, 17);
    }

    private static void Compare(Treatment task, double[] daily, int days, double opensC, double closesC)
    {
        Window[] windows = [.. Backtest.Seasons([task], SiteMetrics.Of(Series(), Forest))];
        int compared = 0;
        foreach (Window window in windows)
        {
            // By hand: January to July, the first day on which the mean of the last days is at or above the one value, and from then on the other.
            int first = IndexOf(window.Season.Year, 1, 1), last = IndexOf(window.Season.Year, 7, 31);
            bool hasHole = false;
            for (int i = first - days + 1; i <= last; i++) hasHole |= double.IsNaN(daily[i]);
            if (hasHole) continue;
            DateOnly? opened = null, closed = null;
            for (int i = first; i <= last && closed is null; i++)
            {
                double sum = 0;
                for (int back = 0; back < days; back++) sum += daily[i - back];
                if (opened is null && sum / days >= opensC) opened = Raw[i].Day;
                if (opened is not null && sum / days >= closesC) closed = Raw[i].Day;
            }

            Assert.Equal((window.Season.Year, opened, closed ?? Raw[last].Day), (window.Season.Year, window.FirstOpening?.Day, window.LastClosing!.Day));
            compared++;
        }

        Assert.InRange(compared, 9, 14);
    }

    private static int IndexOf(int year, int month, int day) => new DateOnly(year, month, day).DayNumber - HarvardForest.First.DayNumber;
}
