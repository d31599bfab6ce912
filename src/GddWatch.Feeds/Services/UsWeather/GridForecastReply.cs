// The gridded forecast: GET /points/{latitude},{longitude} tells the grid cell, GET /gridpoints/{office}/{x},{y} has its layers under properties:
//
//   maxTemperature, minTemperature, quantitativePrecipitation: { "uom": "wmoUnit:degC", "values": [ { "validTime": "2026-05-01T12:00:00+00:00/PT13H", "value": 22.2 } ] }
//
// A maximum is of about the daytime, a minimum of about the night; precipitation is a sum over the time for which it holds. The first entry may be cut short, since
// hours that are past are taken away. A maximum counts for the day whose hours from noon to 17:00 it holds; a minimum for the day on whose morning it ends, if it holds
// from midnight to 06:00 there. A day's precipitation is only known where the entries hold all of its hours.
//
// Source: documentation of api.weather.gov, US National Weather Service (flow, layers, units, User-Agent with a contact: SEEN; a real answer of 2022: SEEN). Which hours
// make a day's extremes: common practice.
using System.Globalization;
using System.Text.Json;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services.UsWeather;

/// <summary>A reply of the gridded forecast, checked before a value of it is taken.</summary>
internal sealed class GridForecastReply(string source, Site site, DateOnly today, DateTimeOffset now, ServiceDays days, FaultList faults)
{
    private const double NearKm = 50;
    private static readonly TimeSpan Stale = TimeSpan.FromHours(36);
    private static readonly TimeSpan LongestExtreme = TimeSpan.FromHours(30);

    private readonly SiteCalendar calendar = new(TimeZoneInfo.FindSystemTimeZoneById(site.TimeZone));

    /// <summary>Takes the days of a reply, and gives the grid cell's place; null where the reply cannot be believed.</summary>
    public StationPosition? Read(JsonElement reply)
    {
        if (reply.Member("properties") is not { ValueKind: JsonValueKind.Object } properties)
        {
            faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it has no properties.", reply.Shown(), "the layers of the forecast under properties."));
            return null;
        }

        StationPosition position = MiddleOf(reply) with { ElevationM = properties.Member("elevation")?.Number("value") };
        double km = position.KilometresTo(site.Latitude, site.Longitude);
        if (!position.IsKnown || !(km <= NearKm))
        {
            faults.Add(FaultKind.Position, ReplyFaults.ElsewhereThanAsked(source, site, position, km));
            return null;
        }

        if (!DateTimeOffset.TryParse(properties.Text("updateTime"), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset updated) || now - updated > Stale || updated - now > Stale)
        {
            faults.Add(FaultKind.Date, ReplyFaults.Refused(
                source, "The forecast is not of today. Nothing of it is used.", properties.Text("updateTime") ?? "no updateTime", $"a forecast made in the {Stale.TotalHours:0} hours before now."));
            return null;
        }

        if (LayerOf(properties, "maxTemperature", isTemperature: true, isRequired: true) is not { } maximum) return null;
        if (LayerOf(properties, "minTemperature", isTemperature: true, isRequired: true) is not { } minimum) return null;
        TakeExtremes(maximum, WeatherVariable.MaximumAirC, DayOfMaximum);
        TakeExtremes(minimum, WeatherVariable.MinimumAirC, DayOfMinimum);
        if (LayerOf(properties, "quantitativePrecipitation", isTemperature: false, isRequired: false) is { } precipitation) TakePrecipitation(precipitation);
        return position;
    }

    private Layer? LayerOf(JsonElement properties, string name, bool isTemperature, bool isRequired)
    {
        if (properties.Member(name) is not { ValueKind: JsonValueKind.Object } layer || layer.Member("values") is not { ValueKind: JsonValueKind.Array } values)
        {
            faults.Add(FaultKind.Reply, isRequired ? ReplyFaults.NotAsDocumented(source, $"it has no {name}.", null, "a layer with its unit and values.") : ReplyFaults.FieldAbsent(source, name));
            return null;
        }

        string? unit = layer.Text("uom");
        bool isFahrenheit = isTemperature && unit == "wmoUnit:degF";
        if (isFahrenheit || unit == (isTemperature ? "wmoUnit:degC" : "wmoUnit:mm")) return new Layer(name, isFahrenheit, EntriesOf(name, values));
        string wanted = isTemperature ? "wmoUnit:degC or wmoUnit:degF" : "wmoUnit:mm";
        faults.Add(FaultKind.Unit, isRequired ? ReplyFaults.WrongUnit(source, name, unit, wanted) : ReplyFaults.WrongUnitOfOne(source, name, unit, wanted));
        return null;
    }

    private List<(ValidTime Time, double Value)> EntriesOf(string name, JsonElement values)
    {
        List<(ValidTime, double)> entries = [];
        foreach (JsonElement entry in values.EnumerateArray())
        {
            if (ValidTime.Read(entry.Text("validTime")) is not { } time)
            {
                faults.Add(FaultKind.Date, NotATime(name, entry));
                continue;
            }

            if (entry.Member("value") is not { } value || value.ValueKind == JsonValueKind.Null) continue;
            if (value.AsNumber() is { } number) entries.Add((time, number));
            else faults.Add(FaultKind.NotANumber, ReplyFaults.NotANumber(source, name, DayText.Of(calendar.DayOf(time.Start)), value.Shown()));
        }

        return entries;
    }

    private void TakeExtremes(Layer layer, WeatherVariable variable, Func<ValidTime, DateOnly?> dayOf)
    {
        Dictionary<DateOnly, double> taken = [];
        foreach ((ValidTime time, double value) in layer.Entries)
        {
            if (time.End - time.Start > LongestExtreme || dayOf(time) is not { } day || day < today) continue;
            double celsius = layer.IsFahrenheit ? Temperature.FromFahrenheit(value).Celsius : value;
            if (taken.TryAdd(day, celsius)) days.Put(source, day, variable, layer.Name, celsius);
            else if (taken[day] != celsius) faults.Add(FaultKind.Duplicate, SecondOfADay(layer.Name, day));
        }
    }

    private DateOnly? DayOfMaximum(ValidTime time)
    {
        DateOnly day = calendar.DayOf(time.Start);
        if (time.Start > calendar.At(day, 12)) day = day.AddDays(1);
        return time.Start <= calendar.At(day, 12) && time.End >= calendar.At(day, 17) ? day : null;
    }

    private DateOnly? DayOfMinimum(ValidTime time)
    {
        DateOnly day = calendar.DayOf(time.End);
        return time.Start <= calendar.Start(day) && time.End >= calendar.At(day, 6) ? day : null;
    }

    private void TakePrecipitation(Layer layer)
    {
        SortedDictionary<DateOnly, (double Mm, TimeSpan Known)> sums = [];
        DateTimeOffset before = DateTimeOffset.MinValue;
        foreach ((ValidTime time, double mm) in layer.Entries.OrderBy(entry => entry.Time.Start))
        {
            if (time.Start < before || mm < 0)
            {
                faults.Add(FaultKind.Duplicate, ReplyFaults.NotAsDocumented(source, "two sums of precipitation overlap, or one is negative.", null, "one sum for each time.") with { Severity = FaultSeverity.LeftOut, Column = layer.Name });
                return;
            }

            before = time.End;
            for (DateOnly day = calendar.DayOf(time.Start); calendar.Start(day) < time.End; day = day.AddDays(1))
            {
                TimeSpan part = time.OverlapWith(calendar.Start(day), calendar.Start(day.AddDays(1)));
                (double sum, TimeSpan known) = sums.GetValueOrDefault(day);
                sums[day] = (sum + (mm * (part / (time.End - time.Start))), known + part);
            }
        }

        foreach ((DateOnly day, (double mm, TimeSpan known)) in sums)
        {
            if (day >= today && known == calendar.Start(day.AddDays(1)) - calendar.Start(day)) days.Put(source, day, WeatherVariable.PrecipitationMm, layer.Name, mm);
        }
    }

    // The corners of the cell's outline; the last is the first again.
    private static StationPosition MiddleOf(JsonElement reply)
    {
        List<(double Longitude, double Latitude)> corners = [];
        if (reply.Member("geometry")?.Member("coordinates") is { ValueKind: JsonValueKind.Array } rings && rings.GetArrayLength() > 0 && rings[0].ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement corner in rings[0].EnumerateArray())
            {
                if (corner.ValueKind == JsonValueKind.Array && corner.GetArrayLength() >= 2 && corner[0].AsNumber() is { } longitude && corner[1].AsNumber() is { } latitude) corners.Add((longitude, latitude));
            }
        }

        return corners.Count == 0
            ? new StationPosition(double.NaN, double.NaN, null)
            : new StationPosition(corners.Average(each => each.Latitude), corners.Average(each => each.Longitude), null);
    }

    private Fault NotATime(string name, JsonElement entry) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = name,
        Problem = "The time of a value cannot be read. The value is left out.",
        Found = (entry.Member("validTime") ?? entry).Shown(),
        Accepted = $"a start and a duration such as 2026-05-01T12:00:00+00:00/PT13H. {ReplyFaults.Again}",
    };

    private Fault SecondOfADay(string name, DateOnly day) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = name,
        Problem = $"{DayText.Of(day)} has a second value that is another. The first one stands.",
        Accepted = $"one value for each day. {ReplyFaults.Again}",
    };

    private sealed record Layer(string Name, bool IsFahrenheit, List<(ValidTime Time, double Value)> Entries);
}
