using System.Numerics;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Finds the place of a station by its id: a table that lies in the processor's nearest memory, since a yearly file has tens of millions of lines and each is looked up.
/// </summary>
internal sealed class StationPlaces
{
    private const ulong Spread = 0x9E3779B97F4A7C15;
    private const int None = -1;

    private readonly Slot[] slots;
    private readonly int shift;

    /// <summary>Gives each key its place in the list.</summary>
    public StationPlaces(IReadOnlyList<StationKey> stations)
    {
        // At most half full, so that most stations lie where they are looked for.
        int bits = BitOperations.Log2(BitOperations.RoundUpToPowerOf2((uint)Math.Max(stations.Count, 1))) + 1;
        shift = 64 - bits;
        slots = new Slot[1 << bits];
        Array.Fill(slots, new Slot(0, 0, None));
        for (int place = 0; place < stations.Count; place++)
        {
            int slot = SlotOf(stations[place]);
            while (slots[slot].Place != None) slot = Next(slot);
            slots[slot] = new Slot(stations[place].Beginning, stations[place].End, place);
        }
    }

    /// <summary>The station's place; −1 where it is not in the list.</summary>
    public int Of(StationKey station)
    {
        int slot = SlotOf(station);
        while (!slots[slot].Is(station) && slots[slot].Place != None) slot = Next(slot);
        return slots[slot].Place;
    }

    private int SlotOf(StationKey station) => (int)(((station.Beginning ^ ((ulong)station.End << 32) ^ station.End) * Spread) >> shift);

    private int Next(int slot) => (slot + 1) & (slots.Length - 1);

    // Sixteen bytes: a key as it is, with a place beside it, would take twenty-four.
    private readonly struct Slot(ulong beginning, uint end, int place)
    {
        public readonly int Place = place;

        public bool Is(StationKey key) => key.Beginning == beginning && key.End == end;
    }
}
