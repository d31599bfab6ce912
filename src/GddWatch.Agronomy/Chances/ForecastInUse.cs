using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Chances;

/// <summary>What can be used of a forecast on a day, how sure it is, and what is to be said of it.</summary>
/// <param name="Days">The forecast days; null where none can be used.</param>
/// <param name="First">The place of the first day used among them.</param>
/// <param name="Count">How many days in a row are used [days].</param>
/// <param name="IssuedOn">The day on which it was issued.</param>
/// <param name="Errors">How far it is off by days ahead.</param>
/// <param name="Remarks">What a reader should know of it, a sentence each.</param>
public sealed record ForecastInUse(DailySeries? Days, int First, int Count, DateOnly IssuedOn, ForecastErrors Errors, IReadOnlyList<string> Remarks)
{
    /// <summary>The mean of a day's two temperatures that changes by more than so many standard deviations between two issues contradicts the earlier one; DESIGN.</summary>
    private const double ContradictionDeviations = 2.5;

    /// <summary>By how much the errors are taken larger where a forecast contradicts the one before it; DESIGN.</summary>
    private const double WiderWhenContradicting = 1.5;

    /// <summary>A forecast issued so long before the one in use is still held against it [days].</summary>
    private const int EarlierIssueDays = 3;

    /// <summary>What is said where no forecast was ever kept.</summary>
    internal const string NoForecast = "There is no forecast: this site's own earlier years stand in.";

    /// <summary>Without any forecast.</summary>
    public static ForecastInUse None { get; } = new(null, 0, 0, default, ForecastErrors.Stated, []);

    /// <summary>What can be used of what is known on a day. The forecast begins on the day after the last known one and ends before its first day that is missing or impossible.</summary>
    /// <param name="weather">The weather as known on that day, with the forecasts issued by then.</param>
    /// <param name="day">The day.</param>
    public static ForecastInUse Of(KnownWeather weather, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(weather);
        if (weather.Forecast is not { } forecast)
        {
            string why = weather.Issued.Count > 0
                ? $"The last forecast is from {Wording.Day(weather.Issued[^1].IssuedOn)}, too old to be used on {Wording.Day(day)}: this site's own earlier years stand in."
                : NoForecast;
            return None with { Remarks = [why] };
        }

        ForecastErrors errors = ForecastErrors.Learn([.. weather.Issued.Where(each => each.IssuedOn < forecast.IssuedOn)], weather.Series);
        var remarks = new List<string>();
        DailySeries days = forecast.Days;
        DateOnly next = weather.Series.LastDay.AddDays(1);
        DateOnly last = forecast.IssuedOn.AddDays(ForecastErrors.LongestLeadDays);
        if (last > days.LastDay) last = days.LastDay;
        DateOnly end = next;
        while (end <= last && IsWhole(days, end)) end = end.AddDays(1);
        if (end <= last)
        {
            string missing = days.Holds(end) && days.MinimumAirC[days.IndexOf(end)] > days.MaximumAirC[days.IndexOf(end)] ? "gives an impossible temperature for" : "lacks";
            remarks.Add($"The forecast of {Wording.Day(forecast.IssuedOn)} {missing} {Wording.Day(end)}: from that day on this site's own earlier years stand in.");
        }

        int count = end.DayNumber - next.DayNumber;
        if (count <= 0)
        {
            if (remarks.Count == 0) remarks.Add($"The forecast of {Wording.Day(forecast.IssuedOn)} says nothing of the days after {Wording.Day(weather.Series.LastDay)}: this site's own earlier years stand in.");
            return None with { Errors = errors, Remarks = remarks };
        }

        if (Contradiction(weather, forecast, next, end, errors) is { } contradiction)
        {
            remarks.Add(contradiction);
            errors = errors with { AirC = [.. errors.AirC.Select(error => error * WiderWhenContradicting)] };
        }

        return new ForecastInUse(days, days.IndexOf(next), count, forecast.IssuedOn, errors, remarks);
    }

    /// <summary>How many days ahead of its issue a day in use lies, from place 0 [days].</summary>
    internal int[] Leads() => [.. Enumerable.Range(0, Count).Select(i => Days!.DayAt(First + i).DayNumber - IssuedOn.DayNumber)];

    private static bool IsWhole(DailySeries days, DateOnly day)
    {
        if (!days.Holds(day)) return false;
        int place = days.IndexOf(day);
        return double.IsFinite(days.MinimumAirC[place]) && double.IsFinite(days.MaximumAirC[place]) && days.MinimumAirC[place] <= days.MaximumAirC[place];
    }

    private static string? Contradiction(KnownWeather weather, Forecast forecast, DateOnly next, DateOnly end, ForecastErrors errors)
    {
        Forecast? earlier = weather.Issued.LastOrDefault(each => each.IssuedOn < forecast.IssuedOn && each.IssuedOn >= forecast.IssuedOn.AddDays(-EarlierIssueDays));
        if (earlier is null) return null;
        for (DateOnly day = next; day < end; day = day.AddDays(1))
        {
            if (!IsWhole(earlier.Days, day)) continue;
            double change = Mean(forecast.Days, day) - Mean(earlier.Days, day);
            int lead = Math.Clamp(day.DayNumber - earlier.IssuedOn.DayNumber, 0, errors.AirC.Count - 1);
            if (Math.Abs(change) <= ContradictionDeviations * errors.AirC[lead]) continue;
            return $"The forecast of {Wording.Day(forecast.IssuedOn)} contradicts the one of {Wording.Day(earlier.IssuedOn)}: {Wording.Day(day)} is now {(change > 0 ? "warmer" : "colder")} by far; it is trusted less.";
        }

        return null;
    }

    private static double Mean(DailySeries days, DateOnly day) => (days.MinimumAirC[days.IndexOf(day)] + days.MaximumAirC[days.IndexOf(day)]) / 2;
}
