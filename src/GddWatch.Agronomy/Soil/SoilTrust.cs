namespace GddWatch.Agronomy.Soil;

/// <summary>Whether enough days are known for the estimate of <see cref="LayeredTurfSoil"/> to be worth giving.</summary>
internal struct SoilTrust
{
    private int knownDays;
    private int missingInARow;

    /// <summary>Whether any day was known yet.</summary>
    public bool HasBegun { readonly get; private set; }

    /// <summary>Whether the estimate is given.</summary>
    public readonly bool Holds => knownDays >= LayeredTurfSoil.KnownDaysNeeded;

    /// <summary>Goes one day on.</summary>
    public void Next(bool known)
    {
        HasBegun |= known;
        missingInARow = known ? 0 : missingInARow + 1;
        if (known) knownDays++;
        else if (missingInARow > LayeredTurfSoil.LongestHoleDays) knownDays = 0;
    }
}
