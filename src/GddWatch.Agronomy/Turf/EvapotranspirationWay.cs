namespace GddWatch.Agronomy.Turf;

/// <summary>By which way reference evapotranspiration is reckoned, from the most that can be known to the least.</summary>
public enum EvapotranspirationWay
{
    /// <summary>Penman-Monteith with sun, humidity and wind known.</summary>
    Full,

    /// <summary>Penman-Monteith with one or two of sun, humidity and wind replaced by the standard's reductions.</summary>
    Reduced,

    /// <summary>Hargreaves: only the day's temperatures are known.</summary>
    TemperaturesAlone,
}
