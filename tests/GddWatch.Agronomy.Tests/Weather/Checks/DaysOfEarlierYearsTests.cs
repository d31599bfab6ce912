using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using MathNet.Numerics.Statistics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class DaysOfEarlierYearsTests
{
    private const int HalfDays = EarlierYears.HalfWindowDays;

    // Against the values themselves, and MathNet.Numerics' mean and population standard deviation of them.
    [Fact]
    public void What_is_kept_in_sums_is_that_of_the_values_at_every_place_of_the_year()
    {
        DailySeries series = RandomTemperatures.Series(new DateOnly(2000, 1, 1), 13 * 366, seed: 8);
        EarlierYears years = new(new CheckedValues(series));
        for (int today = 0; today < series.Count; today++) years.Advance(today);
        DaysOfEarlierYears days = years.Days(WeatherVariable.MaximumAirC);
        int joined = series.LastDay.Year - 1;
        int held = 0;

        for (int place = 0; place < EarlierYears.DaysOfAYear; place++)
        {
            double[] values = [.. ValuesAbout(series, place, joined)];
            Assert.Equal(values.Order(), days.Gather(place, days.Years).Order());
            Assert.Equal([.. ValuesAbout(series, place, 2004).Order()], days.Gather(place, 2004 - 2000 + 2).Order());
            Assert.Equal(values.Length, days.Count(place));
            Assert.Equal(values.Mean(), days.Moments(place).MeanC, 7);
            Assert.Equal(values.PopulationStandardDeviation(), days.Moments(place).DeviationC, 6);
            held += values.Length;
        }

        Assert.True(held > 12 * 15 * 300, $"{held} values");
    }

    private static IEnumerable<double> ValuesAbout(DailySeries series, int place, int lastYear)
    {
        for (int i = 0; i < series.Count && series.DayAt(i).Year <= lastYear; i++)
        {
            int apart = Math.Abs(EarlierYears.PlaceOf(series.DayAt(i)) - place);
            bool isNear = Math.Min(apart, EarlierYears.DaysOfAYear - apart) <= HalfDays;
            if (isNear && !double.IsNaN(series.MaximumAirC[i])) yield return series.MaximumAirC[i];
        }
    }
}
