using System.Text;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Which station's lines are read: the one that was named, or else the first that is met.</summary>
internal sealed class StationChoice(string? named)
{
    private const int OthersShown = 5;

    private readonly byte[]? wanted = named is null ? null : Encoding.UTF8.GetBytes(named);
    private readonly SortedSet<string> others = new(StringComparer.Ordinal);
    private byte[]? taken;

    /// <summary>The station whose lines were taken; null where none was.</summary>
    public string? Taken => taken is null ? null : Encoding.UTF8.GetString(taken);

    /// <summary>Whether there were lines of more than one station, and nobody had said which one is meant.</summary>
    public bool IsAmbiguous => wanted is null && others.Count > 0;

    /// <summary>Some of the stations whose lines were not taken.</summary>
    public IReadOnlyCollection<string> Others => others;

    /// <summary>Whether a line of this station is to be read.</summary>
    public bool Takes(ReadOnlySpan<byte> station)
    {
        if (taken is not null && station.SequenceEqual(taken)) return true;
        if (taken is null && (wanted is null || station.SequenceEqual(wanted)))
        {
            taken = station.ToArray();
            return true;
        }

        if (others.Count < OthersShown) others.Add(Encoding.UTF8.GetString(station));
        return false;
    }
}
