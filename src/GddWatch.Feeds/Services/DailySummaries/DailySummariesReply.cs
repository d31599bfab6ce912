// The rows of the dataset daily-summaries, a station's day each: STATION, DATE, one member an element and one for its attributes, all of them texts, padded with blanks.
//
//   TMAX, TMIN, TAVG    °C with a decimal    (asked for in metric units; without, they are whole tenths, in the units called standard whole °F)
//   PRCP, SNWD          mm
//   …_ATTRIBUTES        measurement flag, quality flag, source flag, hour of observation, with commas between; what the flags mean stands in GhcnElements
//   LATITUDE, LONGITUDE, ELEVATION     °, °, m
//
// An element or a day without a value is not there. All temperatures of metric replies seen have a decimal point; a reply in which none has is not believed.
//
// Source: documentation of the NCEI Access Data Service and of the dataset, NOAA National Centers for Environmental Information (dataset, stations, startDate, endDate,
// dataTypes, format, units, includeAttributes: SEEN; includeStationLocation: MEMORY), and replies quoted in public (SEEN).
using System.Globalization;
using System.Text.Json;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Archives.Ghcn;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Services.DailySummaries;

/// <summary>One station's rows of a reply. Rows are counted from 1 over the whole reply; faults call them lines.</summary>
internal sealed class DailySummariesReply(string source, ServiceRequest request)
{
    private static readonly GhcnElement[] Elements = Enum.GetValues<GhcnElement>();

    private readonly FaultList faults = new();

    // Only told when the scale is right.
    private readonly FaultList valueFaults = new();
    private readonly PositionTrack positions = new();
    private readonly List<ReadDay> rows = [];
    private StationPosition? position;
    private bool hasTemperature;
    private bool hasDecimals;
    private bool hasTenths;
    private int flagged;

    /// <summary>Takes a fault that concerns the whole request.</summary>
    public void Add(Fault fault) => faults.Add(FaultKind.Reply, fault);

    /// <summary>Takes a row of this station.</summary>
    public void AddRow(JsonElement row, int number)
    {
        if (ReplyJson.AsDay(row.Text("DATE")) is not { } day)
        {
            faults.Add(FaultKind.Date, RowFaults.NotADate(source, number, "DATE", row.Member("DATE")?.Shown() ?? "nothing", "a date such as 2026-05-01."));
            return;
        }

        if (day < request.From || day >= request.Today)
        {
            faults.Add(FaultKind.Date, NotAskedFor(number, day));
            return;
        }

        ReadDay read = new(day, source, number);
        foreach (GhcnElement element in Elements) ReadElement(row, element, read);
        if (read[WeatherVariable.MinimumAirC] > read[WeatherVariable.MaximumAirC] && !read.MaximumIsOfTheDayBefore)
        {
            valueFaults.Add(FaultKind.MinimumAboveMaximum, ReplyFaults.MinimumAboveMaximum(read));
            read[WeatherVariable.MinimumAirC] = read[WeatherVariable.MaximumAirC] = double.NaN;
        }

        rows.Add(read);
        StationPosition place = new(NumberOf(row, "LATITUDE") ?? double.NaN, NumberOf(row, "LONGITUDE") ?? double.NaN, NumberOf(row, "ELEVATION"));
        if (!place.IsKnown) return;
        position = place;
        positions.Meet(place, source, number, faults);
    }

    /// <summary>What all rows together give.</summary>
    public ServiceReading Reading()
    {
        if (hasTenths || (hasTemperature && !hasDecimals))
        {
            faults.Add(FaultKind.Unit, ReplyFaults.Refused(
                source, $"The temperatures of station {request.Feed.Station} {(hasTenths ? "are ten times what is possible, as tenths are" : "are all whole numbers, as tenths of °C and °F are")}. None of its days is used.",
                null, "°C with a decimal, as units=metric asks for."));
            return Nothing();
        }

        if (IsOtherUnit()) return Nothing();
        faults.AddAll(valueFaults);
        if (flagged > 0) faults.Add(FaultKind.SetAside, SetAside());
        positions.Compare(request.Site, faults);
        ReadDays days = new(faults);
        days.AddFile([.. rows.OrderBy(row => row.Day)]);
        if (days.IsEmpty)
        {
            if (!faults.HasRefusal && request.From < request.Today) faults.Add(FaultKind.Reply, NoDays());
            return Nothing();
        }

        return new ServiceReading(request, days.ToSeries(maximumIsOfTheDayBefore: false)?.Until(request.Today.AddDays(-1)), null, position, faults.Told(refusalsAreLeftOut: false));
    }

    private ServiceReading Nothing() => new(request, null, null, position, faults.Told(refusalsAreLeftOut: false));

    private bool IsOtherUnit()
    {
        if (ReadDays.AirOf(rows) is not { } air) return false;
        TemperatureUnitVerdict verdict = TemperatureUnitCheck.Judge(air, request.Site.Latitude, request.Site.ElevationM, TemperatureScale.Celsius);
        if (verdict.Finding != TemperatureUnitFinding.OtherUnit) return false;
        faults.Add(FaultKind.Unit, SeriesFaults.WrongUnit(source, request.Site, verdict, TemperatureScale.Celsius) with { Accepted = $"a station near the site, in °C as units=metric asks for. {ReplyFaults.Again}" });
        return true;
    }

    private void ReadElement(JsonElement row, GhcnElement element, ReadDay read)
    {
        string code = element.Code();
        if (row.Member(code) is not { } cell || cell.ValueKind == JsonValueKind.Null) return;
        string text = (cell.ValueKind == JsonValueKind.Number ? cell.GetRawText() : cell.AsText() ?? "").Trim();
        if (text.Length == 0 && cell.ValueKind == JsonValueKind.String) return;
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value))
        {
            faults.Add(FaultKind.NotANumber, ReplyFaults.NotANumber(source, code, DayText.Of(read.Day), cell.Shown()));
            return;
        }

        if (value == GhcnElements.Missing) return;
        if (element.IsExtreme())
        {
            hasTemperature = true;
            bool isWhole = !text.Contains('.', StringComparison.Ordinal);
            hasDecimals |= !isWhole;
            hasTenths |= isWhole && !element.Possible().Contains(value) && element.Possible().Contains(value / 10);
        }

        string[] flags = (row.Text($"{code}_ATTRIBUTES") ?? "").Split(',', StringSplitOptions.TrimEntries);
        if (!IsGood(element, flags))
        {
            flagged++;
            return;
        }

        if (!element.Possible().Contains(value))
        {
            valueFaults.Add(FaultKind.OutsideRecords, ReplyFaults.OutsideRecords(source, code, read.Day, value, element.Possible()));
            return;
        }

        read[element.Variable()] = value;
        if (element == GhcnElement.Maximum) read.MaximumIsOfTheDayBefore = IsReadInTheMorning(flags);
    }

    private static bool IsGood(GhcnElement element, string[] flags)
    {
        string measurement = flags[0];
        string quality = flags.ElementAtOrDefault(1) ?? "";
        string origin = flags.ElementAtOrDefault(2) ?? "";
        if (quality.Length > 0) return false;
        return element switch
        {
            GhcnElement.Precipitation or GhcnElement.SnowDepth => measurement != "P",
            GhcnElement.Average => measurement != "L" && origin != "S",
            _ => measurement != "L",
        };
    }

    // From 01:00 to 12:00, as in the archive's files.
    private static bool IsReadInTheMorning(string[] flags) => int.TryParse(flags.ElementAtOrDefault(3), CultureInfo.InvariantCulture, out int hour) && hour is >= 100 and <= 1200;

    private static double? NumberOf(JsonElement row, string name) =>
        row.Number(name) ?? (double.TryParse(row.Text(name), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null);

    private Fault NotAskedFor(int number, DateOnly day) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Line = number,
        Column = "DATE",
        Problem = "The day is not one that was asked for. It is left out.",
        Found = DayText.Of(day),
        Accepted = $"days from {DayText.Of(request.From)} to {DayText.Of(request.Today.AddDays(-1))}.",
    };

    private Fault SetAside() => new()
    {
        Severity = FaultSeverity.Remark,
        File = source,
        Problem = $"{DayText.Count(flagged, "value of station", "values of station")} {request.Feed.Station} failed a check of the archive or was not measured as its day needs, and is not taken.",
        Accepted = "values without such a flag; nothing to do, since days are filled and marked where they can be.",
    };

    // The archive comes some days late: so few days without any are usual.
    private Fault NoDays() => new()
    {
        Severity = request.Today.DayNumber - request.From.DayNumber <= 10 ? FaultSeverity.Remark : FaultSeverity.LeftOut,
        File = source,
        Problem = $"The service has no day of station {request.Feed.Station} from {DayText.Of(request.From)} on.",
        Accepted = $"a station that still reports; its days come some days late. {ReplyFaults.Again}",
    };
}
