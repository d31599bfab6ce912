using System.Runtime.InteropServices;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What one file knows of one station, put together from values in any order.</summary>
internal sealed class GhcnStationDays(string file)
{
    private readonly Dictionary<int, GhcnDay> days = [];
    private readonly GhcnSetAside setAside = new();

    /// <summary>The file as people call it.</summary>
    public string File { get; } = file;

    /// <summary>What was wrong in lines of this station.</summary>
    public FaultList Faults { get; } = new();

    /// <summary>Whether the file holds no line of the station.</summary>
    public bool IsEmpty => days.Count == 0 && Faults.IsEmpty;

    /// <summary>Whether any value came with the time at which it was read.</summary>
    public bool KnowsTimes { get; private set; }

    /// <summary>Takes a value, or sets it aside where its flags say so. The first value of a day and element stands.</summary>
    public void Take(in GhcnValue value)
    {
        ref GhcnDay day = ref CollectionsMarshal.GetValueRefOrAddDefault(days, value.Day.DayNumber, out bool isThere);
        if (!isThere) day = GhcnDay.At(value.Line);
        if (value.Value == GhcnElements.Missing || setAside.Takes(value)) return;
        GhcnElement element = value.Element;
        if (!element.Possible().Contains(element.ToRecordUnit(value.Value)))
        {
            Faults.Add(FaultKind.OutsideRecords, GhcnFaults.OutsideRecords(File, value));
            return;
        }

        ref short place = ref day.Values[(int)element];
        if (place != GhcnDay.Unknown)
        {
            Faults.Add(FaultKind.Duplicate, GhcnFaults.Again(File, value, isTheSame: place == value.Value));
            return;
        }

        place = (short)value.Value;
        if (element != GhcnElement.Maximum || value.ObservedAt is null) return;
        KnowsTimes = true;
        day.MaximumRead = (byte)(value.IsOfTheMorning ? 1 : 2);
    }

    /// <summary>The days up to today in their order, with their faults. A maximum whose time the file does not tell was read when <paramref name="otherwise"/> says.</summary>
    public List<ReadDay> ToRows(DateOnly today, ObservationTime? otherwise, FaultList faults)
    {
        faults.AddAll(Faults);
        setAside.Tell(File, faults);
        List<ReadDay> rows = [];
        foreach (KeyValuePair<int, GhcnDay> each in days.OrderBy(each => each.Key))
        {
            var date = DateOnly.FromDayNumber(each.Key);
            if (date > today)
            {
                faults.Add(FaultKind.Date, RowFaults.InTheFuture(File, each.Value.Line, "DATE", DayText.Of(date), today));
                continue;
            }

            rows.Add(ToRow(date, each.Value, otherwise, faults));
        }

        return rows;
    }

    private ReadDay ToRow(DateOnly date, GhcnDay day, ObservationTime? otherwise, FaultList faults)
    {
        ReadDay row = new(date, File, day.Line)
        {
            MaximumIsOfTheDayBefore = day.MaximumRead == 1 || (day.MaximumRead == 0 && otherwise == ObservationTime.Morning),
        };
        for (int i = 0; i < GhcnElements.Count; i++)
        {
            var element = (GhcnElement)i;
            if (day.Values[i] != GhcnDay.Unknown) row[element.Variable()] = element.ToRecordUnit(day.Values[i]);
        }

        if (row[WeatherVariable.MinimumAirC] > row[WeatherVariable.MaximumAirC])
        {
            faults.Add(FaultKind.MinimumAboveMaximum, GhcnFaults.MinimumAboveMaximum(row));
            row[WeatherVariable.MinimumAirC] = row[WeatherVariable.MaximumAirC] = double.NaN;
        }

        return row;
    }
}
