using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Reading;

/// <summary>Puts the rows of a feed's files together: one row a day, in order, its holes told, columns in the end.</summary>
internal sealed class ReadDays(FaultList faults)
{
    private readonly Dictionary<int, ReadDay> kept = [];
    private readonly Dictionary<int, ReadDay> mentioned = [];

    /// <summary>Whether no row can be used.</summary>
    public bool IsEmpty => kept.Count == 0;

    /// <summary>Adds the rows of one file in the order in which it has them. The first row of a day stands.</summary>
    public void AddFile(IReadOnlyList<ReadDay> rows)
    {
        RemarkOnOrder(rows);
        foreach (ReadDay row in rows)
        {
            mentioned.TryAdd(row.Day.DayNumber, row);
            if (!row.IsUsable || kept.TryAdd(row.Day.DayNumber, row)) continue;
            ReadDay first = kept[row.Day.DayNumber];
            faults.Add(FaultKind.Duplicate, row.HasSameValuesAs(first) ? RowFaults.Repeated(row, first) : RowFaults.Contradicted(row, first));
        }
    }

    /// <summary>
    /// The days as columns. With <paramref name="maximumIsOfTheDayBefore"/>, or where a row says so itself, a maximum goes to the day before its row: read in the
    /// morning, it is yesterday afternoon's. The minimum is of the same morning and stays; so does precipitation, of which only a part fell on the day before.
    /// </summary>
    public DailySeries? ToSeries(bool maximumIsOfTheDayBefore)
    {
        RemarkOnGaps();
        DailySeriesBuilder builder = new();
        foreach (ReadDay row in kept.Values.OrderBy(row => row.Day))
        {
            // A day whose values are all missing still belongs to the series.
            if (row.IsBlank) builder.Add(new DailyRecord { Day = row.Day });
            ReadDay? maximumRow = MaximumRowOf(row, maximumIsOfTheDayBefore);
            double minimumC = row[WeatherVariable.MinimumAirC];
            double maximumC = maximumRow?[WeatherVariable.MaximumAirC] ?? double.NaN;
            if (minimumC > maximumC)
            {
                // Only a shifted maximum can contradict here: within a row this was tested.
                faults.Add(FaultKind.MinimumAboveMaximum, RowFaults.MorningContradiction(row, maximumRow!, minimumC, maximumC));
                minimumC = maximumC = double.NaN;
            }

            Put(builder, row.Day, WeatherVariable.MinimumAirC, minimumC);
            Put(builder, row.Day, WeatherVariable.MaximumAirC, maximumC);
            for (int variable = (int)WeatherVariable.MeanAirC; variable < ReadDay.VariableCount; variable++)
            {
                Put(builder, row.Day, (WeatherVariable)variable, row[(WeatherVariable)variable]);
            }

            // The first row of a run tells the maximum of a day that has no row of its own.
            if (IsShifted(row, maximumIsOfTheDayBefore) && !kept.ContainsKey(row.Day.DayNumber - 1))
            {
                Put(builder, row.Day.AddDays(-1), WeatherVariable.MaximumAirC, row[WeatherVariable.MaximumAirC]);
            }
        }

        return builder.Build();
    }

    private static bool IsShifted(ReadDay row, bool allAre) => allAre || row.MaximumIsOfTheDayBefore;

    // Where a station's hour of reading changes, a day can have a maximum of its own evening and one of the next morning: its own stands.
    private ReadDay? MaximumRowOf(ReadDay row, bool allAreShifted)
    {
        bool isOwn = !IsShifted(row, allAreShifted);
        ReadDay? next = kept.GetValueOrDefault(row.Day.DayNumber + 1);
        bool nextIsShifted = next is not null && IsShifted(next, allAreShifted);
        if (!isOwn || (nextIsShifted && double.IsNaN(row[WeatherVariable.MaximumAirC]))) return nextIsShifted ? next : null;
        if (nextIsShifted && !double.IsNaN(next![WeatherVariable.MaximumAirC])) faults.Add(FaultKind.Order, RowFaults.TwoMaxima(row, next));
        return row;
    }

    /// <summary>The air temperatures of rows, doubtful ones too, as columns: what the unit is judged by.</summary>
    public static DailySeries? AirOf(IEnumerable<ReadDay> rows)
    {
        DailySeriesBuilder builder = new();
        foreach (ReadDay row in rows)
        {
            Put(builder, row.Day, WeatherVariable.MinimumAirC, row[WeatherVariable.MinimumAirC]);
            Put(builder, row.Day, WeatherVariable.MaximumAirC, row[WeatherVariable.MaximumAirC]);
        }

        return builder.Build();
    }

    private void RemarkOnOrder(IReadOnlyList<ReadDay> rows)
    {
        int times = 0;
        int first = 0;
        for (int i = 1; i < rows.Count; i++)
        {
            if (rows[i].Day >= rows[i - 1].Day) continue;
            if (times++ == 0) first = i;
        }

        if (times == 0) return;
        faults.Add(FaultKind.Order, SeriesFaults.OutOfOrder(rows[first].File, rows[first].Line, rows[first].Day, rows[first - 1].Day, times));
    }

    private void RemarkOnGaps()
    {
        ReadDay? before = null;
        foreach (ReadDay row in mentioned.Values.OrderBy(row => row.Day))
        {
            if (before is not null && row.Day > before.Day.AddDays(1))
            {
                faults.Add(FaultKind.Gap, SeriesFaults.Gap(row.File, row.Line, before.Day.AddDays(1), row.Day.AddDays(-1)));
            }

            before = row;
        }
    }

    private static void Put(DailySeriesBuilder builder, DateOnly day, WeatherVariable variable, double value)
    {
        if (!double.IsNaN(value)) builder.Put(day, variable, value);
    }
}
