namespace GddWatch.Agronomy.Weather;

/// <summary>What a mark says of its value.</summary>
public static class Marks
{
    /// <summary>Whether the value is a reading that is believed; false where it was filled, forecast or doubted.</summary>
    public static bool IsReading(this Mark mark) => mark is Mark.Measured or Mark.Corrected;
}
