using System.Runtime.CompilerServices;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>A station's day in as little room as it needs, sixteen bytes: a run over many stations and years holds millions.</summary>
internal struct GhcnDay
{
    /// <summary>Stands for a value that is not known.</summary>
    public const short Unknown = short.MinValue;

    /// <summary>The values in the archive's own units, by element.</summary>
    public ValuesByElement Values;

    private byte maximumRead;

    /// <summary>The line that named the day first, from 1; 0 where none did.</summary>
    public int Line;

    /// <summary>When the maximum was read.</summary>
    public TimeOfReading MaximumRead
    {
        readonly get => (TimeOfReading)maximumRead;
        set => maximumRead = (byte)value;
    }

    /// <summary>A day of which nothing is known.</summary>
    public static GhcnDay Nothing()
    {
        GhcnDay day = default;
        for (int i = 0; i < GhcnElements.Count; i++) day.Values[i] = Unknown;
        return day;
    }

    /// <summary>One value an element.</summary>
    [InlineArray(GhcnElements.Count)]
    public struct ValuesByElement
    {
        private short first;
    }
}
