namespace GddWatch.InventedWeather;

/// <summary>
/// A value that changes smoothly over the year: mean + amplitude cos(2π (day - peakDay) / 365.25)
/// + halfYearAmplitude cos(4π (day - halfYearPeakDay) / 365.25), with day 1 on 1 January.
/// The half-year wave makes autumn differ from spring and lets summers be flat.
/// </summary>
public sealed record SeasonalCurve(
    double Mean, double Amplitude, double PeakDay, double HalfYearAmplitude = 0, double HalfYearPeakDay = 0)
{
    /// <summary>The value on a day; 29 February simply lies between its neighbours.</summary>
    public double On(DateOnly date)
    {
        double turn = 2 * Math.PI / 365.25;
        return Mean
            + (Amplitude * Math.Cos(turn * (date.DayOfYear - PeakDay)))
            + (HalfYearAmplitude * Math.Cos(2 * turn * (date.DayOfYear - HalfYearPeakDay)));
    }
}
