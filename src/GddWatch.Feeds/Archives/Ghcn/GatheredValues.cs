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
    private const int LastValues = 256;

    private readonly IReadOnlyList<GhcnStationDays> stations;
    private readonly int room;
    private readonly GhcnValue[] values;
    private readonly int[] counts;
    // The last values as they came: put to their stations in one go, many are on their way to far memory at the same time.
    private readonly GhcnValue[] last = new GhcnValue[LastValues];
    private readonly int[] lastStations = new int[LastValues];
    private int lastCount;

    public GatheredValues(IReadOnlyList<GhcnStationDays> stations)
    {
        this.stations = stations;
        room = Math.Clamp(MostValues / Math.Max(stations.Count, 1), FewestAtATime, MostAtATime);
        values = new GhcnValue[stations.Count * room];
        counts = new int[stations.Count];
    }

    /// <summary>Takes a value of the station at a place in the list.</summary>
    public void Add(int station, in GhcnValue value)
    {
        int place = lastCount;
        last[place] = value;
        lastStations[place] = station;
        lastCount = place + 1;
        if (lastCount == LastValues) PutToStations();
    }

    /// <summary>Hands over what was gathered of one station: before anything else is told to it.</summary>
    public void HandOver(int station)
    {
        PutToStations();
        HandOverGathered(station);
    }

    /// <summary>Hands over everything.</summary>
    public void HandOverAll()
    {
        PutToStations();
        for (int station = 0; station < counts.Length; station++) HandOverGathered(station);
    }

    private void PutToStations()
    {
        for (int i = 0; i < lastCount; i++)
        {
            int station = lastStations[i];
            int count = counts[station];
            values[(station * room) + count] = last[i];
            counts[station] = ++count;
            if (count == room) HandOverGathered(station);
        }

        lastCount = 0;
    }

    private void HandOverGathered(int station)
    {
        stations[station].Take(values.AsSpan(station * room, counts[station]));
        counts[station] = 0;
    }
}
