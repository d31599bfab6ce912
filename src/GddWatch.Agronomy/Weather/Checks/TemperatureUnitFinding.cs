namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>What a whole file of air temperatures says about its unit.</summary>
public enum TemperatureUnitFinding
{
    /// <summary>The temperatures are possible in the unit that was stated.</summary>
    Fits,

    /// <summary>They are impossible in the stated unit and possible in the other one.</summary>
    OtherUnit,

    /// <summary>Too few different months to tell: they are possible in both units.</summary>
    EitherUnit,

    /// <summary>They are impossible in both units: the place or the column must be wrong.</summary>
    NeitherUnit,

    /// <summary>No month has enough days to judge by.</summary>
    TooShort,
}
