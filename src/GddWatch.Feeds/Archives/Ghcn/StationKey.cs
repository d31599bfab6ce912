using System.Runtime.InteropServices;
using System.Text;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>An id of eleven bytes as two numbers: a yearly file has tens of millions of lines, and each is looked up.</summary>
internal readonly record struct StationKey(ulong Beginning, uint End)
{
    /// <summary>The key of an id of eleven bytes.</summary>
    public static StationKey Of(ReadOnlySpan<byte> id) => new(MemoryMarshal.Read<ulong>(id), id[8] | ((uint)id[9] << 8) | ((uint)id[10] << 16));

    /// <summary>The key of a station's name; null where no station can be called so.</summary>
    public static StationKey? Of(string id) => Encoding.UTF8.GetBytes(id) is { Length: GhcnLongLine.IdLength } bytes ? Of(bytes) : null;
}
