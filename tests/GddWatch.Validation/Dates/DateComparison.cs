using GddWatch.Validation.Weather;
using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Dates;

/// <summary>Compares the dates of a passage between the measured soil temperature and whatever stands in for it, at humid stations.</summary>
internal sealed class DateComparison
{
    private const int SeasonsNeeded = 6;

    private readonly IReadOnlyList<MeasuredStation> stations;
    private readonly TemperatureCourse[] measured;
    private readonly int slowDays;

    public DateComparison(IReadOnlyList<MeasuredStation> stations, int slowDays)
    {
        this.stations = stations;
        this.slowDays = slowDays;
        measured = Courses([.. stations.Select(station => station.MeasuredC[5])]);
    }

    /// <summary>The differences in days over all <see cref="Pairs"/>.</summary>
    public DateErrors Between(double[][] dailyC, Passage passage, HoldingRule rule) =>
        DateErrors.Of([.. Pairs(dailyC, passage, rule).Select(pair => pair.Stood - pair.Measured)]);

    /// <summary>Days of the year wherever both series have a date and neither is past the threshold when the search begins.</summary>
    public IReadOnlyList<(double Measured, double Stood)> Pairs(double[][] dailyC, Passage passage, HoldingRule rule)
    {
        TemperatureCourse[] stood = Courses(dailyC);
        List<(double, double)> pairs = [];
        foreach ((int i, int year) in HumidSeasons())
        {
            if (measured[i].IsPastAtStart(passage, year) || stood[i].IsPastAtStart(passage, year)) continue;
            if (measured[i].FirstDay(passage, rule, year) is not { } truth || stood[i].FirstDay(passage, rule, year) is not { } date) continue;
            pairs.Add((truth.DayOfYear, date.DayOfYear));
        }

        return pairs;
    }

    /// <summary>A fixed date for each station: the median of its measured dates, of all years or of the other years only; a station needs six seasons.</summary>
    public DateErrors FixedDate(Passage passage, HoldingRule rule, bool otherYearsOnly)
    {
        List<double> differences = [];
        foreach (double[] days in MeasuredDays(passage, rule).Where(days => days.Length >= SeasonsNeeded))
        {
            for (int n = 0; n < days.Length; n++)
            {
                double[] from = otherYearsOnly ? [.. days.Where((_, other) => other != n)] : days;
                differences.Add(from.Median() - days[n]);
            }
        }

        return DateErrors.Of(differences);
    }

    /// <summary>One date for every station and year: the median of all.</summary>
    public DateErrors OneDate(Passage passage, HoldingRule rule)
    {
        double[] all = [.. MeasuredDays(passage, rule).Where(days => days.Length >= SeasonsNeeded).SelectMany(days => days)];
        double median = all.Median();
        return DateErrors.Of([.. all.Select(day => median - day)]);
    }

    /// <summary>By how much a rule is later than another in the measured series [days]: mean and median.</summary>
    public (double Mean, double Median) Delay(Passage passage, HoldingRule rule, HoldingRule than)
    {
        List<double> delays = [];
        foreach ((int i, int year) in HumidSeasons())
        {
            if (measured[i].IsPastAtStart(passage, year)) continue;
            if (measured[i].FirstDay(passage, rule, year) is not { } late || measured[i].FirstDay(passage, than, year) is not { } early) continue;
            delays.Add(late.DayNumber - early.DayNumber);
        }

        return delays.Count == 0 ? (double.NaN, double.NaN) : (delays.Average(), delays.Median());
    }

    private IEnumerable<double[]> MeasuredDays(Passage passage, HoldingRule rule) =>
        from season in HumidSeasons()
        where !measured[season.Station].IsPastAtStart(passage, season.Year)
        let date = measured[season.Station].FirstDay(passage, rule, season.Year)
        where date is not null
        group (double)date.Value.DayOfYear by season.Station into days
        select days.ToArray();

    private IEnumerable<(int Station, int Year)> HumidSeasons() =>
        from i in Enumerable.Range(0, stations.Count)
        where stations[i].IsHumid
        from year in Enumerable.Range(stations[i].Series.FirstDay.Year, stations[i].Series.LastDay.Year - stations[i].Series.FirstDay.Year + 1)
        select (i, year);

    private TemperatureCourse[] Courses(double[][] dailyC) =>
        [.. dailyC.Select((column, i) => new TemperatureCourse(stations[i].Series.FirstDay, column, slowDays))];
}
