using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>A model of the daily mean soil temperature under turf. Each published model, and our own, is one implementation.</summary>
public interface ISoilTemperatureModel
{
    /// <summary>The model's name, after its authors where it is published.</summary>
    string Name { get; }

    /// <summary>
    /// Estimates the daily mean at a depth for each day of a series. A day's estimate uses that day and earlier ones only, so that cutting
    /// the series changes nothing before the cut.
    /// <para>Valid for 2 to 20 cm under turf between the poles.</para>
    /// <para>Missing input (NaN) is never refused: each model says how it bridges holes; where nothing can be said both columns are
    /// NaN.</para>
    /// </summary>
    /// <param name="series">The weather; the air temperatures [°C] are needed, everything else is used where it is known.</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="depth">Depth, 2 to 20 cm.</param>
    /// <param name="meanC">Receives the daily mean [°C], one a day of the series.</param>
    /// <param name="deviationC">Receives its standard deviation [°C].</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles or is not finite, the depth outside 2 to 20 cm; a day's
    /// minimum lies above its maximum; a temperature or precipitation is infinite, or precipitation negative.</exception>
    /// <exception cref="ArgumentException">A column has another length than the series.</exception>
    void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC);
}
