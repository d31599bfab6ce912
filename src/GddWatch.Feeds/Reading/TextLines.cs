using System.Buffers;

namespace GddWatch.Feeds.Reading;

/// <summary>The lines of a text that are not empty. A line ends with LF, CR or both together.</summary>
internal ref struct TextLines(ReadOnlySpan<byte> text)
{
    private static readonly SearchValues<byte> LineEnds = SearchValues.Create("\r\n"u8);

    private ReadOnlySpan<byte> rest = text;
    private int number;

    public NumberedLine Current { get; private set; }

    public readonly TextLines GetEnumerator() => this;

    public bool MoveNext()
    {
        while (!rest.IsEmpty)
        {
            number++;
            int end = rest.IndexOfAny(LineEnds);
            ReadOnlySpan<byte> line = end < 0 ? rest : rest[..end];
            bool isPair = end >= 0 && rest[end] == '\r' && end + 1 < rest.Length && rest[end + 1] == '\n';
            rest = end < 0 ? [] : rest[(end + (isPair ? 2 : 1))..];
            if (line.IsEmpty) continue;
            Current = new NumberedLine(line, number);
            return true;
        }

        return false;
    }
}
