using GddWatch.Agronomy.Changes;

namespace GddWatch.Notices.Composing;

/// <summary>The weekly overview as templates see it.</summary>
internal sealed record BulletinView
{
    public required IReadOnlyList<BulletinSiteView> Sites { get; init; }

    public required IReadOnlyList<BulletinLineView> Reasons { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public static BulletinView Of(Bulletin bulletin, bool withPictures) => new()
    {
        Sites = [.. bulletin.Sites.Select((site, index) => BulletinSiteView.Of(site, index, withPictures))],
        Reasons = BulletinLineView.OfEach(bulletin.Reasons),
        Cautions = OneLine.OfEach(bulletin.Cautions),
    };
}

/// <summary>One site of the overview as templates see it.</summary>
internal sealed record BulletinSiteView
{
    public required string Name { get; init; }

    public required IReadOnlyList<BulletinLineView> Open { get; init; }

    public required IReadOnlyList<BulletinLineView> Nearing { get; init; }

    /// <summary>What all that is said of the days ahead rests on; empty where nothing is said of them.</summary>
    public required string DaysAhead { get; init; }

    public required IReadOnlyList<BulletinLineView> Waits { get; init; }

    public required IReadOnlyList<BulletinLineView> Care { get; init; }

    public required IReadOnlyList<BulletinLineView> Done { get; init; }

    /// <summary>Whether there is a chart.</summary>
    public required bool HasChart { get; init; }

    /// <summary>The address of the chart inside the mail, such as "cid:chart-0@example.org".</summary>
    public required string ChartLink { get; init; }

    /// <summary>The chart in a sentence.</summary>
    public required string ChartWords { get; init; }

    public static BulletinSiteView Of(BulletinSite site, int index, bool withPictures) => new()
    {
        Name = OneLine.Of(site.Name),
        Open = BulletinLineView.OfEach(site.Open),
        Nearing = BulletinLineView.OfEach(site.Nearing),
        DaysAhead = site.Open.Count + site.Nearing.Count + site.Waits.Count > 0 ? OneLine.Of(site.DaysAhead) : "",
        Waits = BulletinLineView.OfEach(site.Waits),
        Care = BulletinLineView.OfEach(site.Care),
        Done = BulletinLineView.OfEach(site.Done),
        HasChart = site.Chart is not null && withPictures,
        ChartLink = $"cid:{BulletinPictures.ContentId(index)}",
        ChartWords = OneLine.Of(site.Chart?.Words ?? ""),
    };
}

/// <summary>One line of the overview as templates see it.</summary>
internal sealed record BulletinLineView(string What, string Text)
{
    public static IReadOnlyList<BulletinLineView> OfEach(IReadOnlyList<BulletinLine> lines) =>
        [.. lines.Select(line => new BulletinLineView(OneLine.Of(line.What), OneLine.Of(line.Text)))];
}
