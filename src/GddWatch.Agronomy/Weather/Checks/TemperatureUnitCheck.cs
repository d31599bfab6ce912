using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>Tells Fahrenheit in a Celsius column, and Celsius in a Fahrenheit column, from the whole file.</summary>
public static class TemperatureUnitCheck
{
    /// <summary>A month of the year is judged from this many days on, over all years together [days].</summary>
    public const int LeastDaysOfAMonth = 15;

    /// <summary>From this many different months on, a file that is possible in both units is believed [months].</summary>
    public const int EnoughMonths = 6;

    /// <summary>
    /// Judges whether air temperatures can be in the unit that was stated, by the medians of the daily means (minimum + maximum)/2 of each month of the year.
    /// <para>d = the greatest distance of a month's median outside <see cref="PossibleMonth"/> as stated, e = the same as if in the other unit.
    /// d = 0: fits (with fewer than <see cref="EnoughMonths"/> months and e = 0 too: either). d > 0 and e &lt; d/2: the other unit. Else neither.</para>
    /// <para>Days that lack the minimum or the maximum do not count; months with fewer than <see cref="LeastDaysOfAMonth"/> days are not judged.</para>
    /// <para>Source: the range of the earth's climates, see <see cref="PossibleMonth"/>. Tried on 50 stations of the US Climate Reference Network 2010-2023,
    /// 30.5 to 49° N: no true unit was doubted in any slice of 1, 2, 3 or 12 months, and 12 months in the wrong unit were always found. Of 8,344 slices of two months
    /// 2.6 % stayed unfound as °F called °C and 17 % as °C called °F, all in the cold half of the year: −20 °C and −4 °F are the same, and there both occur.</para>
    /// </summary>
    /// <param name="series">Air temperatures [°C], converted as the stated unit says.</param>
    /// <param name="latitude">Latitude [°], north positive.</param>
    /// <param name="elevationM">Height above the sea [m].</param>
    /// <param name="stated">The unit that was stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">Latitude outside −90 to 90, or elevation not finite.</exception>
    public static TemperatureUnitVerdict Judge(DailySeries series, double latitude, double elevationM, TemperatureScale stated)
    {
        ArgumentNullException.ThrowIfNull(series);
        Demand.Within(latitude, -90, 90, "latitude [°]");
        Demand.Finite(elevationM, "elevation [m]");
        List<double>[] monthsC = DailyMeansByMonth(series);
        int judged = 0;
        double outside = 0;
        double outsideInOther = 0;
        TemperatureUnitVerdict? clearest = null;
        for (int month = 1; month <= 12; month++)
        {
            List<double> daysC = monthsC[month - 1];
            if (daysC.Count < LeastDaysOfAMonth) continue;
            judged++;
            double medianC = Median(daysC);
            double otherC = stated == TemperatureScale.Celsius ? Temperature.FromFahrenheit(medianC).Celsius : Temperature.FromCelsius(medianC).Fahrenheit;
            (double lowestC, double highestC) = PossibleMonth.At(latitude, elevationM, month);
            double distance = Outside(medianC, lowestC, highestC);
            outsideInOther = Math.Max(outsideInOther, Outside(otherC, lowestC, highestC));
            if (clearest is null || distance > outside || (outside == 0 && medianC > clearest.AsStatedC))
            {
                clearest = new TemperatureUnitVerdict(TemperatureUnitFinding.Fits, month, daysC.Count, medianC, otherC, lowestC, highestC);
            }

            outside = Math.Max(outside, distance);
        }

        if (clearest is null) return new TemperatureUnitVerdict(TemperatureUnitFinding.TooShort, 0, 0, double.NaN, double.NaN, double.NaN, double.NaN);
        return clearest with { Finding = Decide(outside, outsideInOther, judged) };
    }

    private static TemperatureUnitFinding Decide(double outside, double outsideInOther, int judgedMonths)
    {
        if (outside == 0)
        {
            return outsideInOther == 0 && judgedMonths < EnoughMonths ? TemperatureUnitFinding.EitherUnit : TemperatureUnitFinding.Fits;
        }

        return outsideInOther < outside / 2 ? TemperatureUnitFinding.OtherUnit : TemperatureUnitFinding.NeitherUnit;
    }

    private static List<double>[] DailyMeansByMonth(DailySeries series)
    {
        ReadOnlySpan<double> minimumC = series.MinimumAirC;
        ReadOnlySpan<double> maximumC = series.MaximumAirC;
        var months = new List<double>[12];
        for (int month = 0; month < 12; month++) months[month] = [];
        for (int i = 0; i < series.Count; i++)
        {
            double meanC = (minimumC[i] + maximumC[i]) / 2;
            if (double.IsFinite(meanC)) months[series.DayAt(i).Month - 1].Add(meanC);
        }

        return months;
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        int middle = values.Count / 2;
        return values.Count % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }

    private static double Outside(double valueC, double lowestC, double highestC) =>
        Math.Max(0, Math.Max(lowestC - valueC, valueC - highestC));
}
