using System.Diagnostics;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Notices.Composing;

/// <summary>A notice as templates see it; a template writes the names in lower case with underscores (notice.since_short).</summary>
internal sealed record NoticeView
{
    /// <summary>The word for the kind, such as "opened".</summary>
    public required string Kind { get; init; }

    /// <summary>The word over the headline, such as "Open".</summary>
    public required string Label { get; init; }

    /// <summary>What stands before the date, such as "Open since".</summary>
    public required string SinceLabel { get; init; }

    /// <summary>What happened, without a full stop at the end.</summary>
    public required string Headline { get; init; }

    public required string Treatment { get; init; }

    public required string Site { get; init; }

    /// <summary>The day whose judging made it, with weekday and year.</summary>
    public required string Day { get; init; }

    /// <summary>The day it began, with weekday and year.</summary>
    public required string Since { get; init; }

    /// <summary>The day it began, with weekday and without the year.</summary>
    public required string SinceShort { get; init; }

    public required bool FoundSo { get; init; }

    public required string Reason { get; init; }

    public required IReadOnlyList<FigureView> Figures { get; init; }

    /// <summary>Whether any figure was held against a limit.</summary>
    public required bool HasLimits { get; init; }

    public required string ExpectedEnd { get; init; }

    public required IReadOnlyList<string> Do { get; init; }

    public required IReadOnlyList<string> DoNot { get; init; }

    public required IReadOnlyList<string> Choices { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public required IReadOnlyList<string> DataRemarks { get; init; }

    /// <summary>Whether there is a picture of the chart.</summary>
    public required bool HasChart { get; init; }

    /// <summary>The address of the picture inside the mail, such as "cid:chart-0@notice".</summary>
    public required string ChartLink { get; init; }

    /// <summary>The chart in words; empty where there is nothing to draw.</summary>
    public required string ChartWords { get; init; }

    /// <summary>Whether the usual range of earlier years is drawn.</summary>
    public required bool HasUsualRange { get; init; }

    /// <summary>Whether the days are drawn on which the window is likely to open.</summary>
    public required bool HasLikelyDays { get; init; }

    /// <summary>The width at which the picture is shown, in CSS pixels.</summary>
    public required int ChartWidth { get; init; }

    /// <summary>The height at which the picture is shown, in CSS pixels.</summary>
    public required int ChartHeight { get; init; }

    public static NoticeView Of(Notice notice, int index, bool withPictures) => new()
    {
        Kind = NoticeKinds.Word(notice.Key.Kind),
        Label = LabelOf(notice.Key.Kind),
        SinceLabel = SinceLabelOf(notice.Key.Kind),
        Headline = OneLine.Of(notice.Headline).TrimEnd('.'),
        Treatment = OneLine.Of(notice.TreatmentName),
        Site = OneLine.Of(notice.SiteName),
        Day = Wording.Day(notice.Day),
        Since = Wording.Day(notice.Since),
        SinceShort = Wording.DayInYear(notice.Since),
        FoundSo = notice.FoundSo,
        Reason = OneLine.Of(notice.Reason),
        Figures = [.. notice.Figures.Select(FigureView.Of)],
        HasLimits = notice.Figures.Any(figure => OneLine.Of(figure.Limit).Length > 0),
        ExpectedEnd = OneLine.Of(notice.ExpectedEnd),
        Do = OneLine.OfEach(notice.Do),
        DoNot = OneLine.OfEach(notice.DoNot),
        Choices = OneLine.OfEach(notice.Choices),
        Cautions = OneLine.OfEach(notice.Cautions),
        DataRemarks = OneLine.OfEach(notice.DataRemarks),
        HasChart = notice.Chart is not null && withPictures && index < NoticePictures.Most,
        ChartLink = $"cid:{NoticePictures.ContentId(index)}",
        ChartWords = OneLine.Of(notice.Chart?.Words ?? ""),
        HasUsualRange = notice.Chart?.Panels.Any(panel => panel.Curve.Low.Count > 0) ?? false,
        HasLikelyDays = notice.Chart?.LikelyFrom is not null,
        ChartWidth = NoticePictures.ShownWidth,
        ChartHeight = notice.Chart is null ? 0 : NoticePictures.ShownHeight(notice.Chart),
    };

    private static string LabelOf(NoticeKind kind) => kind switch
    {
        NoticeKind.HeadsUp => "Heads-up",
        NoticeKind.Opened => "Open",
        NoticeKind.Closing => "Past its best",
        NoticeKind.Closed => "Closed",
        NoticeKind.Held => "Held",
        NoticeKind.Corrected => "Corrected",
        NoticeKind.Bulletin => "Bulletin",
        _ => throw new UnreachableException(),
    };

    private static string SinceLabelOf(NoticeKind kind) => kind switch
    {
        NoticeKind.HeadsUp or NoticeKind.Bulletin => "As of",
        NoticeKind.Opened => "Open since",
        NoticeKind.Closing => "Past its best since",
        NoticeKind.Closed => "Closed since",
        NoticeKind.Held => "Held since",
        NoticeKind.Corrected => "Since",
        _ => throw new UnreachableException(),
    };
}
