using System.Globalization;

namespace GddWatch.Agronomy.Heat;

/// <summary>Refusals of the degree-day methods in one place: each message carries the name, the value found and the values allowed.</summary>
internal static class HeatDemand
{
    /// <summary>The upper threshold as a number: positive infinity for none. Refuses one that is not above the base.</summary>
    public static double Thresholds(double baseC, double? upperC)
    {
        if (!double.IsFinite(baseC)) throw Refuse("base temperature", baseC, "a finite number");
        if (upperC is not { } upper) return double.PositiveInfinity;
        if (!double.IsFinite(upper)) throw Refuse("upper threshold", upper, "a finite number");
        return upper > baseC ? upper : throw Refuse("upper threshold", upper, $"more than the base temperature of {Show(baseC)}");
    }

    /// <summary>Refuses extremes that no day can have. A missing extreme (NaN) is not refused.</summary>
    public static void Extremes(double minimumC, double maximumC, string ofDay = "")
    {
        if (double.IsInfinity(minimumC)) throw Refuse($"minimum temperature{ofDay}", minimumC, "a finite number, or NaN for a missing one");
        if (double.IsInfinity(maximumC)) throw Refuse($"maximum temperature{ofDay}", maximumC, "a finite number, or NaN for a missing one");
        if (minimumC > maximumC) throw Refuse($"minimum temperature{ofDay}", minimumC, $"at most the day's maximum of {Show(maximumC)}");
    }

    /// <summary>Refuses extremes that are not known, too: one day's heat asks for a day.</summary>
    public static void KnownExtremes(double minimumC, double maximumC)
    {
        if (!double.IsFinite(minimumC)) throw Refuse("minimum temperature", minimumC, "a finite number");
        if (!double.IsFinite(maximumC)) throw Refuse("maximum temperature", maximumC, "a finite number");
        Extremes(minimumC, maximumC);
    }

    /// <summary>Whether <see cref="Extremes"/> refuses them.</summary>
    public static bool Impossible(double minimumC, double maximumC) =>
        minimumC > maximumC || double.IsInfinity(minimumC) || double.IsInfinity(maximumC);

    /// <summary>Refuses a next minimum that is missing or infinite. It may lie above the day's maximum: that is a warm front by night.</summary>
    public static void NextMinimum(double nextMinimumC)
    {
        if (!double.IsFinite(nextMinimumC)) throw Refuse("next day's minimum temperature", nextMinimumC, "a finite number");
    }

    /// <summary>Refuses a cutoff that has no name, even where it would not act.</summary>
    public static void Named(DegreeDayCutoff cutoff)
    {
        if (cutoff is < DegreeDayCutoff.None or > DegreeDayCutoff.Vertical) throw Unknown(cutoff);
    }

    /// <summary>A hole in a series that must be complete.</summary>
    public static ArgumentOutOfRangeException Hole(string name, DateOnly firstDay, int days)
    {
        string day = firstDay.ToString("dddd yyyy-MM-dd", CultureInfo.InvariantCulture);
        string which = days == 1 ? "on that day alone" : $"on {days} days in all, that one first";
        return new ArgumentOutOfRangeException(
            name, double.NaN, $"{name} of {day} [°C] was NaN (missing), {which}; allowed is a series that knows it on every day. Fill the hole first.");
    }

    /// <summary>A cutoff that has no rule.</summary>
    public static ArgumentOutOfRangeException Unknown(DegreeDayCutoff cutoff) =>
        new(nameof(cutoff), cutoff, $"There is no cutoff {(int)cutoff}; allowed is a named {nameof(DegreeDayCutoff)}.");

    /// <summary>A method that has no rule.</summary>
    public static ArgumentOutOfRangeException Unknown(DegreeDayMethod method) =>
        new(nameof(method), method, $"There is no degree-day method {(int)method}; allowed is a named {nameof(DegreeDayMethod)}.");

    private static ArgumentOutOfRangeException Refuse(string name, double value, string allowed) =>
        new(name, value, $"{name} [°C] was {Show(value)}; allowed is {allowed}.");

    private static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
