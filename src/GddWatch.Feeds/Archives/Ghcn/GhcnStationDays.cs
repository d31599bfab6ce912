using System.Runtime.InteropServices;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What one file knows of one station, put together from values in any order.</summary>
internal sealed class GhcnStationDays(string file)
{
    private const int PagesAtHand = 64;
    private const int ValuesAtATime = 64;

    private readonly Dictionary<int, GhcnPage> pages = [];
    // The pages of the last 45 years that were met, each at its number's place: in rows of any order the next day is on any of them.
    private readonly GhcnPage?[] atHand = new GhcnPage?[PagesAtHand];
    private readonly GhcnSetAside setAside = new();
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
    public void Take(in GhcnValue value) => Take(new ReadOnlySpan<GhcnValue>(in value));

    /// <summary>Takes values one after the other.</summary>
    public void Take(ReadOnlySpan<GhcnValue> values)
    {
        while (!values.IsEmpty)
        {
            ReadOnlySpan<GhcnValue> next = values[..Math.Min(values.Length, ValuesAtATime)];
            NameDays(next);
            foreach (ref readonly GhcnValue value in next) TakeOfNamedDay(value);
            values = values[next.Length..];
        }
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
        foreach (GhcnPage page in pages.Values)
        {
            foreach (ref readonly GhcnDay day in page.All)
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
        foreach (GhcnPage page in InOrder())
        {
            Span<GhcnDay> all = page.All;
            for (int i = 0; i < all.Length; i++)
            {
                if (all[i].Line == 0) continue;
                int day = page.DayNumberAt(i);
                if (day > last + 1) faults.Add(FaultKind.Gap, SeriesFaults.Gap(File, all[i].Line, DateOnly.FromDayNumber(last + 1), DateOnly.FromDayNumber(day - 1)));
                last = day;
            }

            Put(builder, page);
        }

        // A day whose values are all missing still belongs to the series.
        builder.Add(new DailyRecord { Day = DateOnly.FromDayNumber(FirstDayNumber) });
        builder.Add(new DailyRecord { Day = DateOnly.FromDayNumber(last) });
        return last;
    }

    /// <summary>The days up to today in their order, with their faults. A maximum whose time the file does not tell was read when <paramref name="otherwise"/> says.</summary>
    public List<ReadDay> ToRows(DateOnly today, ObservationTime? otherwise, FaultList faults)
    {
        List<ReadDay> rows = [];
        foreach (GhcnPage page in InOrder())
        {
            Span<GhcnDay> all = page.All;
            for (int i = 0; i < all.Length; i++)
            {
                if (all[i].Line == 0) continue;
                var date = DateOnly.FromDayNumber(page.DayNumberAt(i));
                if (date > today) faults.Add(FaultKind.Date, RowFaults.InTheFuture(File, all[i].Line, "DATE", DayText.Of(date), today));
                else rows.Add(ToRow(date, all[i], otherwise, faults));
            }
        }

        return rows;
    }

    // Nothing in here depends on what is found, so that many days are on their way from far memory at the same time: in rows of any order nearly every day is there.
    private void NameDays(ReadOnlySpan<GhcnValue> values)
    {
        (int first, int last) = (FirstDayNumber, LastDayNumber);
        foreach (ref readonly GhcnValue value in values)
        {
            int dayNumber = value.DayNumber;
            ref GhcnDay day = ref DayOf(dayNumber);
            day.Line |= value.Line & IfNaught(day.Line);
            first = Math.Min(first, dayNumber);
            last = Math.Max(last, dayNumber);
        }

        (FirstDayNumber, LastDayNumber) = (first, last);
    }

    // All bits where the line is 0, none otherwise: a branch here would often be guessed wrongly, and then wait until the day has come.
    private static int IfNaught(int line) => (line - 1) >> 31;

    private void TakeOfNamedDay(in GhcnValue value)
    {
        if (value.Value == GhcnElements.Missing || setAside.Takes(value)) return;
        GhcnElement element = value.Element;
        if (!element.IsPossible(value.Value))
        {
            Faults.Add(FaultKind.OutsideRecords, GhcnFaults.OutsideRecords(File, value));
            return;
        }

        ref GhcnDay day = ref DayOf(value.DayNumber);
        ref short place = ref day.Values[(int)element];
        if (place != GhcnDay.Unknown)
        {
            Faults.Add(FaultKind.Duplicate, GhcnFaults.Again(File, value, isTheSame: place == value.Value));
            return;
        }

        place = (short)value.Value;
        KnowsValues = true;
        if (element != GhcnElement.Maximum || value.ReadAt == TimeOfReading.NotTold) return;
        KnowsTimes = true;
        day.MaximumRead = value.ReadAt;
        hasMornings |= value.ReadAt == TimeOfReading.Morning;
    }

    private ref GhcnDay DayOf(int dayNumber)
    {
        int number = dayNumber >>> GhcnPage.DaysAsPower;
        GhcnPage page = atHand[number & (PagesAtHand - 1)] is { } one && one.Number == number ? one : Open(number);
        return ref page.All[dayNumber & (GhcnPage.Days - 1)];
    }

    private GhcnPage Open(int number)
    {
        ref GhcnPage? page = ref CollectionsMarshal.GetValueRefOrAddDefault(pages, number, out _);
        return atHand[number & (PagesAtHand - 1)] = page ??= new GhcnPage(number);
    }

    private IEnumerable<GhcnPage> InOrder() => pages.Values.OrderBy(page => page.Number);

    private static void Put(DailySeriesBuilder builder, GhcnPage page)
    {
        Span<double> column = stackalloc double[GhcnPage.Days];
        var first = DateOnly.FromDayNumber(page.DayNumberAt(0));
        foreach (GhcnElement element in Enum.GetValues<GhcnElement>())
        {
            bool isBlank = true;
            Span<GhcnDay> all = page.All;
            for (int i = 0; i < column.Length; i++)
            {
                bool isKnown = all[i].Values[(int)element] != GhcnDay.Unknown;
                column[i] = isKnown ? element.ToRecordUnit(all[i].Values[(int)element]) : double.NaN;
                isBlank &= !isKnown;
            }

            if (!isBlank) builder.Put(first, element.Variable(), column);
        }
    }

    private ReadDay ToRow(DateOnly date, GhcnDay day, ObservationTime? otherwise, FaultList faults)
    {
        ReadDay row = new(date, File, day.Line)
        {
            MaximumIsOfTheDayBefore = day.MaximumRead == TimeOfReading.Morning || (day.MaximumRead == TimeOfReading.NotTold && otherwise == ObservationTime.Morning),
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
