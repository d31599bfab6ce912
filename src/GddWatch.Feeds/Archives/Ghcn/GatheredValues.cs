namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Gathers values by station, each station's in their order, and hands them over some hundred at a time. Rows in any order would otherwise fetch a day from far
/// memory for each value: the benchmark of files by year shows that this makes them several times as fast.
/// </summary>
internal sealed class GatheredValues
{
    private const int MostValues = 1 << 20;
    private const int FewestAtATime = 32;
    private const int MostAtATime = 4096;
    private const int FirstRoom = 1 << 13;

    private readonly IReadOnlyList<GhcnStationDays> stations;
    private readonly int room;
    private readonly GhcnValue[] values;
    private readonly int[] counts;
    // How many of a station are handed over at once. In rows of any order all stations would be full at about the same time, and then again: each begins with another number.
    private readonly int[] atOnce;
    // The values as they came since the last were put: those are on their way to their stations while these are read.
    private (int Station, GhcnValue Value)[] coming = new (int, GhcnValue)[FirstRoom];
    private (int Station, GhcnValue Value)[] before = new (int, GhcnValue)[FirstRoom];
    private int comingCount;
    private Task putting = Task.CompletedTask;

    public GatheredValues(IReadOnlyList<GhcnStationDays> stations)
    {
        this.stations = stations;
        room = Math.Clamp(MostValues / Math.Max(stations.Count, 1), FewestAtATime, MostAtATime);
        values = new GhcnValue[stations.Count * room];
        counts = new int[stations.Count];
        atOnce = [.. stations.Select((_, station) => 1 + (int)((long)station * (room - 1) / stations.Count))];
    }

    /// <summary>Takes a value of the station at a place in the list.</summary>
    public void Add(int station, in GhcnValue value)
    {
        int place = comingCount;
        if (place == coming.Length) Array.Resize(ref coming, place * 2);
        coming[place] = (station, value);
        comingCount = place + 1;
    }

    /// <summary>Begins to put what was taken to its stations, while others are taken.</summary>
    public async Task PutAsync()
    {
        await putting;
        ((int, GhcnValue)[] some, int count) = (coming, comingCount);
        (coming, before) = (before, coming);
        comingCount = 0;
        putting = Task.Run(() => PutToStations(some.AsSpan(0, count)));
    }

    /// <summary>Hands over what was gathered of one station: before anything else is told to it.</summary>
    public void HandOver(int station)
    {
        PutAll();
        HandOverGathered(station);
    }

    /// <summary>Hands over everything.</summary>
    public void HandOverAll()
    {
        PutAll();
        for (int station = 0; station < counts.Length; station++) HandOverGathered(station);
    }

    private void PutAll()
    {
        putting.GetAwaiter().GetResult();
        PutToStations(coming.AsSpan(0, comingCount));
        comingCount = 0;
    }

    private void PutToStations(ReadOnlySpan<(int Station, GhcnValue Value)> some)
    {
        foreach (ref readonly (int Station, GhcnValue Value) each in some)
        {
            int station = each.Station;
            int count = counts[station];
            values[(station * room) + count] = each.Value;
            counts[station] = ++count;
            if (count == atOnce[station]) HandOverGathered(station);
        }
    }

    private void HandOverGathered(int station)
    {
        stations[station].Take(values.AsSpan(station * room, counts[station]));
        counts[station] = 0;
        atOnce[station] = room;
    }
}
