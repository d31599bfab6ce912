using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Services;

/// <summary>Collects the values of one site out of replies, and takes none that cannot be. The first value given for a day and variable stands.</summary>
internal sealed class ServiceDays(FaultList faults)
{
    private readonly SortedDictionary<DateOnly, ReadDay> days = [];

    /// <summary>Takes a value where it is possible; says so where it is not.</summary>
    public void Put(string source, DateOnly day, WeatherVariable variable, string field, double value)
    {
        PossibleValues possible = PossibleValues.Of(variable);
        if (!possible.Contains(value))
        {
            faults.Add(FaultKind.OutsideRecords, ReplyFaults.OutsideRecords(source, field, day, value, possible));
            return;
        }

        if (!days.TryGetValue(day, out ReadDay? row)) days[day] = row = new ReadDay(day, source, 0);
        if (double.IsNaN(row[variable])) row[variable] = value;
    }

    /// <summary>The days before a day as they were observed.</summary>
    public DailySeries? Before(DateOnly today) => Build(days.Values.Where(row => row.Day < today));

    /// <summary>The days from a day on as a forecast issued on it, each temperature marked as forecast.</summary>
    public Forecast? From(DateOnly today, DateTimeOffset now)
    {
        if (Build(days.Values.Where(row => row.Day >= today)) is not { } series) return null;
        var marks = new Mark[series.Count];
        Array.Fill(marks, Mark.Forecast);
        return new Forecast(today, now, series.WithAirTemperature(series.MinimumAirC.ToArray(), series.MaximumAirC.ToArray(), marks, [.. marks]));
    }

    /// <summary>Leaves out both extremes of a day where the minimum is above the maximum. Once, after the last value.</summary>
    public void LeaveOutContradictions()
    {
        foreach (ReadDay row in days.Values)
        {
            if (!(row[WeatherVariable.MinimumAirC] > row[WeatherVariable.MaximumAirC])) continue;
            faults.Add(FaultKind.MinimumAboveMaximum, ReplyFaults.MinimumAboveMaximum(row));
            row[WeatherVariable.MinimumAirC] = row[WeatherVariable.MaximumAirC] = double.NaN;
        }
    }

    private static DailySeries? Build(IEnumerable<ReadDay> rows)
    {
        DailySeriesBuilder builder = new();
        foreach (ReadDay row in rows)
        {
            for (int variable = 0; variable < ReadDay.VariableCount; variable++)
            {
                double value = row[(WeatherVariable)variable];
                if (!double.IsNaN(value)) builder.Put(row.Day, (WeatherVariable)variable, value);
            }
        }

        return builder.Build();
    }
}
