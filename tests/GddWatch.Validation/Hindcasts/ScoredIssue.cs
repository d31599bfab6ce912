using GddWatch.Agronomy.Chances;

namespace GddWatch.Validation.Hindcasts;

/// <summary>What was said of one season at one station so many days before the usual date, and what came.</summary>
/// <param name="Station">The station.</param>
/// <param name="Half">Which half of the stations it belongs to: 0 the one on which constants were chosen, 1 the other.</param>
/// <param name="IsHumid">Whether it is humid.</param>
/// <param name="Season">The year in which the season begins.</param>
/// <param name="LeadDays">How many days before the station's median of the other seasons [days].</param>
/// <param name="Said">The distribution.</param>
/// <param name="Truth">In how many days it opened; null where it never did that season.</param>
/// <param name="ClimateCrps">The fair score of the dates of the other seasons that were still to come [days].</param>
internal sealed record ScoredIssue(string Station, int Half, bool IsHumid, int Season, int LeadDays, DateDistribution Said, int? Truth, double ClimateCrps)
{
    /// <summary>The fair score of what was said [days].</summary>
    public double Crps { get; } = DateScores.Crps(Said, Truth, fair: true);

    /// <summary>The score without the correction for few futures [days].</summary>
    public double PlainCrps { get; } = DateScores.Crps(Said, Truth, fair: false);

    /// <summary>Whether the 80 % range held the date; a range that reaches "not at all" holds a season that never opened.</summary>
    public bool IsHeld
    {
        get
        {
            (int first, int? last) = Said.Range();
            return Truth is { } came ? came >= first && (last is not { } end || came <= end) : last is null;
        }
    }

    /// <summary>The chance that the 80 % range states, of whole days as it is.</summary>
    public double Stated => Said.Holding(Said.Range());

    /// <summary>The width of the range [days], to the season's end where it reaches "not at all".</summary>
    public int Width
    {
        get
        {
            (int first, int? last) = Said.Range();
            return (last ?? Said.LastPlace + 1) - first + 1;
        }
    }

    /// <summary>Which share of the chance of the very day lies in the middle 80 % of the distribution: coverage without the play of whole days.</summary>
    public double MiddleShare
    {
        get
        {
            double from = Said.By((Truth ?? Said.LastPlace + 1) - 1);
            double to = Truth is { } came ? Said.By(came) : 1;
            if (to <= from) return from is >= 0.1 and <= 0.9 ? 1 : 0;
            return Math.Max(0, Math.Min(to, 0.9) - Math.Max(from, 0.1)) / (to - from);
        }
    }

    /// <summary>Whether it came within some days.</summary>
    public bool CameWithin(int days) => Truth <= days;
}
