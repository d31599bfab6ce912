using System.Runtime.InteropServices;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What one file knows of one station, put together from values in any order.</summary>
internal sealed class GhcnStationDays(string file)
{
    private const int PageDays = 256;

    // Days lie in pages, since the values of one station come from days close to each other, and a spoiled date must cost a page, not all the years before it.
    private readonly Dictionary<int, GhcnDay[]> pages = [];
    private readonly GhcnSetAside setAside = new();
    private GhcnDay[] page = [];
    private int pageNumber = -1;
    private bool hasMornings;

    /// <summary>The file as people call it.</summary>
    public string File { get; } = file;

    /// <summary>What was wrong in lines of this station.</summary>
    public FaultList Faults { get; } = new();

    /// <summary>Whether the file holds no line of the station.</summary>
    public bool IsEmpty => pages.Count == 0 && Faults.IsEmpty;

    /// <summary>Whether any value came with the time at which it was read.</summary>
    public bool KnowsTimes { get; private set; }

    /// <summary>Whether any day has a value.</summary>
    public bool KnowsValues { get; private set; }

    /// <summary>The number of the first day that the file names.</summary>
    public int FirstDayNumber { get; private set; } = int.MaxValue;

    /// <summary>The number of the last day that the file names.</summary>
    public int LastDayNumber { get; private set; } = int.MinValue;

    /// <summary>Takes a value, or sets it aside where its flags say so. The first value of a day and element stands.</summary>
    public void Take(in GhcnValue value)
    {
        ref GhcnDay day = ref DayOf(value.Day.DayNumber, value.Line);
        if (value.Value == GhcnElements.Missing || setAside.Takes(value)) return;
        GhcnElement element = value.Element;
        if (!element.IsPossible(value.Value))
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
        KnowsValues = true;
        if (element != GhcnElement.Maximum || value.ObservedAt is null) return;
        KnowsTimes = true;
        day.MaximumRead = (byte)(value.IsOfTheMorning ? 1 : 2);
        hasMornings |= value.IsOfTheMorning;
    }

    /// <summary>Tells what was wrong in the lines, and what their flags forbade to use.</summary>
    public void Tell(FaultList faults)
    {
        faults.AddAll(Faults);
        setAside.Tell(File, faults);
    }

    /// <summary>
    /// Whether the days can go into columns as they are: none is still to come, no maximum is of the day before, and no minimum is above its maximum.
    /// </summary>
    public bool ArePlain(DateOnly today, ObservationTime? otherwise)
    {
        if (hasMornings || otherwise == ObservationTime.Morning || LastDayNumber > today.DayNumber || pages.Count == 0) return false;
        foreach (GhcnDay[] each in pages.Values)
        {
            foreach (ref readonly GhcnDay day in each.AsSpan())
            {
                if (day.Line != 0 && day.Values[(int)GhcnElement.Minimum] > day.Values[(int)GhcnElement.Maximum] && day.Values[(int)GhcnElement.Maximum] != GhcnDay.Unknown) return false;
            }
        }

        return true;
    }

    /// <summary>Puts plain days into columns, and tells the holes between them and after <paramref name="before"/>. Gives the number of the last day.</summary>
    public int PutInto(DailySeriesBuilder builder, int? before, FaultList faults)
    {
        int last = before ?? FirstDayNumber - 1;
        foreach (int number in pages.Keys.Order())
        {
            GhcnDay[] each = pages[number];
            for (int i = 0; i < each.Length; i++)
            {
                if (each[i].Line == 0) continue;
                int day = (number * PageDays) + i;
                if (day > last + 1) faults.Add(FaultKind.Gap, SeriesFaults.Gap(File, each[i].Line, DateOnly.FromDayNumber(last + 1), DateOnly.FromDayNumber(day - 1)));
                last = day;
                Put(builder, DateOnly.FromDayNumber(day), each[i]);
            }
        }

        return last;
    }

    /// <summary>The days up to today in their order, with their faults. A maximum whose time the file does not tell was read when <paramref name="otherwise"/> says.</summary>
    public List<ReadDay> ToRows(DateOnly today, ObservationTime? otherwise, FaultList faults)
    {
        List<ReadDay> rows = [];
        foreach (int number in pages.Keys.Order())
        {
            GhcnDay[] each = pages[number];
            for (int i = 0; i < each.Length; i++)
            {
                if (each[i].Line == 0) continue;
                var date = DateOnly.FromDayNumber((number * PageDays) + i);
                if (date > today) faults.Add(FaultKind.Date, RowFaults.InTheFuture(File, each[i].Line, "DATE", DayText.Of(date), today));
                else rows.Add(ToRow(date, each[i], otherwise, faults));
            }
        }

        return rows;
    }

    private ref GhcnDay DayOf(int dayNumber, int line)
    {
        if (dayNumber / PageDays != pageNumber) OpenPage(dayNumber / PageDays);
        ref GhcnDay day = ref page[dayNumber % PageDays];
        if (day.Line != 0) return ref day;
        day = GhcnDay.At(line);
        FirstDayNumber = Math.Min(FirstDayNumber, dayNumber);
        LastDayNumber = Math.Max(LastDayNumber, dayNumber);
        return ref day;
    }

    private void OpenPage(int number)
    {
        ref GhcnDay[]? there = ref CollectionsMarshal.GetValueRefOrAddDefault(pages, number, out _);
        page = there ??= new GhcnDay[PageDays];
        pageNumber = number;
    }

    private static void Put(DailySeriesBuilder builder, DateOnly date, in GhcnDay day)
    {
        bool isBlank = true;
        for (int i = 0; i < GhcnElements.Count; i++)
        {
            if (day.Values[i] == GhcnDay.Unknown) continue;
            var element = (GhcnElement)i;
            builder.Put(date, element.Variable(), element.ToRecordUnit(day.Values[i]));
            isBlank = false;
        }

        // A day whose values are all missing still belongs to the series.
        if (isBlank) builder.Add(new DailyRecord { Day = date });
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
