namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>Everything that was seen, found by the site and by what it was.</summary>
public sealed class ObservedDates
{
    private readonly ILookup<(string Site, string What), ObservedDate> bySiteAndWhat;

    /// <summary>Takes what was seen, in any order.</summary>
    public ObservedDates(IEnumerable<ObservedDate> dates)
    {
        All = [.. dates];
        bySiteAndWhat = All.ToLookup(each => (each.Site, each.What));
    }

    /// <summary>Nothing was seen.</summary>
    public static ObservedDates None { get; } = new([]);

    /// <summary>All of it.</summary>
    public IReadOnlyList<ObservedDate> All { get; }

    /// <summary>What was seen of one kind at one site.</summary>
    public IEnumerable<ObservedDate> Of(string site, string what) => bySiteAndWhat[(site, what)];
}
