using System.Runtime.CompilerServices;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>A station's day in as little room as it needs: a run over many stations and years holds millions.</summary>
internal struct GhcnDay
{
    /// <summary>Stands for a value that is not known.</summary>
    public const short Unknown = short.MinValue;

    /// <summary>The values in the archive's own units, by element.</summary>
    public ValuesByElement Values;

    /// <summary>The line that named the day first, from 1; 0 where none did.</summary>
    public int Line;

    /// <summary>When the maximum was read: 0 not told, 1 in the morning, 2 at another time.</summary>
    public byte MaximumRead;

    /// <summary>A day of which nothing is known.</summary>
    public static GhcnDay At(int line)
    {
        GhcnDay day = new() { Line = line };
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
