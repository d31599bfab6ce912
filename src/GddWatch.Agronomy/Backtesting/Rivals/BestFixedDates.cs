using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>
/// The best fixed date for each season: the median, as a day of the season, of what the other years give at that site; the median makes the mean absolute error smallest. Where fewer
/// than <see cref="OwnYearsNeeded"/> other years are known at the site, the other years of all sites decide. A year is left out at every site at once.
/// <para>Source: science reference 5.3; quantile of type 8, Hyndman and Fan 1996.</para>
/// </summary>
public sealed class BestFixedDates
{
    /// <summary>From how many other years a site's own best fixed date is taken.</summary>
    public const int OwnYearsNeeded = 3;

    private readonly ILookup<string, (int Year, int Offset)> bySite;
    private readonly (int Year, int Offset)[] all;
    private readonly Dictionary<int, double?> ofAllSites = [];

    /// <summary>Takes the dates that are known.</summary>
    /// <param name="known">Site, year and day of the season, counted from 0.</param>
    public BestFixedDates(IEnumerable<(string Site, int Year, int Offset)> known)
    {
        (string Site, int Year, int Offset)[] dates = [.. known];
        bySite = dates.ToLookup(each => each.Site, each => (each.Year, each.Offset), StringComparer.Ordinal);
        all = [.. dates.Select(each => (each.Year, each.Offset))];
    }

    /// <summary>Whether no date is known.</summary>
    public bool IsEmpty => all.Length == 0;

    /// <summary>The date for one season at a site; null where no other year is known.</summary>
    public DateOnly? For(string site, Season season)
    {
        double[] own = Others(bySite[site], season.Year);
        double? offset = own.Length >= OwnYearsNeeded ? Quantiles.Median(own) : OfAllSites(season.Year);
        return offset is { } days ? season.Span.First.AddDays((int)Math.Round(days, MidpointRounding.AwayFromZero)) : null;
    }

    private double? OfAllSites(int leftOut)
    {
        if (ofAllSites.TryGetValue(leftOut, out double? known)) return known;
        double[] others = Others(all, leftOut);
        double? median = others.Length == 0 ? null : Quantiles.Median(others);
        ofAllSites.Add(leftOut, median);
        return median;
    }

    private static double[] Others(IEnumerable<(int Year, int Offset)> dates, int leftOut) =>
        [.. dates.Where(each => each.Year != leftOut).Select(each => (double)each.Offset)];
}
