namespace GddWatch.Feeds.Reading;

/// <summary>A line of a text and its number from 1.</summary>
internal readonly ref struct NumberedLine(ReadOnlySpan<byte> text, int number)
{
    public ReadOnlySpan<byte> Text { get; } = text;

    public int Number { get; } = number;
}
