using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class SortedWindowTests
{
    private const int HalfDays = 7;

    [Fact]
    public void A_window_that_slides_holds_what_a_fresh_one_holds_at_every_place_of_the_year()
    {
        DailySeries series = RandomTemperatures.Series(new DateOnly(2000, 1, 1), 13 * 366, seed: 8);
        EarlierYears years = new(new CheckedValues(series));
        for (int today = 0; today < series.Count; today++) years.Advance(today);
        SortedWindow sliding = new(years, WeatherVariable.MaximumAirC, HalfDays);
        int held = 0;

        for (int place = 0; place < EarlierYears.DaysOfAYear; place++)
        {
            double[] fresh = [.. Enumerable.Range(place - HalfDays, (2 * HalfDays) + 1).SelectMany(each => years.SortedDay(WeatherVariable.MaximumAirC, each).ToArray()).Order()];
            Assert.Equal(fresh, sliding.At(place).ToArray());
            held += fresh.Length;
        }

        Assert.True(held > 12 * 15 * 300, $"{held} values");
    }
}
