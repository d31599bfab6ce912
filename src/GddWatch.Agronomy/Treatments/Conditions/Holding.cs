namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>How long something must be so before it counts, so that a short spell does not.</summary>
/// <param name="Days">On how many days [days].</param>
/// <param name="OfDays">Of how many last days, today included [days]; equal to <paramref name="Days"/> for days in a row.</param>
public readonly record struct Holding(int Days, int OfDays)
{
    /// <summary>The holding in words, such as "on 3 of the last 5 days".</summary>
    public string InWords() => Days == OfDays
        ? Days == 1 ? "on the day itself" : $"on {Wording.Days(Days)} in a row"
        : $"on {Days} of the last {Wording.Days(OfDays)}";

    /// <summary>What was found, in words, such as "on 2 of the last 5 days, of which 3 are needed"; empty where the day alone counts.</summary>
    public string FoundInWords(int days)
    {
        if (OfDays == 1) return "";
        string found = days == OfDays ? $"on all of the last {Wording.Days(days)}" : $"on {days} of the last {Wording.Days(OfDays)}";
        return days < Days ? $"{found}; {Days} are needed" : found;
    }
}
