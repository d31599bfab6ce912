namespace GddWatch.Agronomy.Backtesting.Variants;

/// <summary>What can be varied in the opening of a treatment: always the first condition in it that has such a part.</summary>
public enum VariedPart
{
    /// <summary>The threshold of a soil temperature [°C].</summary>
    SoilThreshold,

    /// <summary>The threshold of an air temperature [°C].</summary>
    AirThreshold,

    /// <summary>The heat that a sum must reach [°C-days].</summary>
    Heat,

    /// <summary>The base temperature of a heat sum [°C]; its threshold stays, though strictly it belongs to its base.</summary>
    BaseTemperature,

    /// <summary>Over how many days a temperature or a growth potential is averaged [days].</summary>
    AveragingDays,

    /// <summary>The depth of the soil that is looked at [cm].</summary>
    SoilDepth,
}
