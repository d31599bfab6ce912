using GddWatch.Agronomy.Changes;

namespace GddWatch.Notices.Composing;

/// <summary>A figure as templates see it.</summary>
internal sealed record FigureView(string Name, string Value, string Limit)
{
    public static FigureView Of(Figure figure) => new(OneLine.Of(figure.Name), OneLine.Of(figure.Value), OneLine.Of(figure.Limit));
}
