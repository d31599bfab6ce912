using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// Runs the published models, which say nothing of missing days, over a series with holes: up to 5 missing days in a row are taken from
/// the last known day, and the deviation grows; after a longer hole the model begins afresh, without snow.
/// </summary>
internal static class AirDrivenRun
{
    /// <summary>
    /// What each filled day in a row adds to the variance [°C²]. CALC: the last known day in place of 1 to 5 days moved the soil by 0.79,
    /// 1.48, 1.97, 2.27 and 2.44 °C (1785 holes made at humid stations of the US Climate Reference Network).
    /// </summary>
    private const double VarianceOfFilledDay = 1.2;

    /// <summary>Steps a state through the series. Nothing is said for its first <paramref name="warmUpDays"/> days nor for missing
    /// ones.</summary>
    public static void Over<TState>(
        DailySeries series,
        double latitudeDegrees,
        TState state,
        int warmUpDays,
        double typicalErrorC,
        Span<double> meanC,
        Span<double> deviationC)
        where TState : struct, IAirDrivenState
    {
        DailySeries filled = LastKnownDay.Fill(series);
        Span<LatitudeDay> year = stackalloc LatitudeDay[LatitudeDay.DaysOfTable];
        LatitudeDay.Fill(latitudeDegrees, year);
        ReadOnlySpan<double> rain = filled.Column(WeatherVariable.PrecipitationMm);
        var calendar = new DayOfYearCounter(filled.FirstDay);
        double snowMm = 0;
        int known = 0;
        int filledInARow = 0;
        for (int i = 0; i < meanC.Length; i++, calendar.Next())
        {
            meanC[i] = deviationC[i] = double.NaN;
            filledInARow = filled.QualityAt(i) is { } mark && !mark.IsReading() ? filledInARow + 1 : 0;
            double rainMm = rain.IsEmpty || double.IsNaN(rain[i]) ? 0.0 : rain[i];
            var day = new AirDay(calendar.DayOfYear, year[calendar.DayOfYear - 1], filled.MinimumAirC[i], filled.MaximumAirC[i], rainMm, snowMm);
            known = double.IsNaN(day.MeanC) ? 0 : known + 1;
            if (known == 0)
            {
                // What lay before a hole that nobody can bridge is not known to lie after it.
                snowMm = 0;
                continue;
            }

            (snowMm, _) = SnowByDegreeDays.Step(snowMm, day.MeanC, rainMm, SnowByDegreeDays.UsualMeltMmPerC);
            day = day with { SnowMm = snowMm };
            if (known == 1) state.Start(day);
            else state.Step(day);
            if (known <= warmUpDays) continue;
            meanC[i] = state.SoilC;
            deviationC[i] = Math.Sqrt(typicalErrorC * typicalErrorC + VarianceOfFilledDay * filledInARow);
        }
    }
}
