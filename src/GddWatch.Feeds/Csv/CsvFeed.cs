using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Csv;

/// <summary>A CSV file, or all CSV files of a folder in the order of their names; each as it is, or packed as .gz or .zip.</summary>
/// <param name="definition">How to read it.</param>
/// <param name="baseFolder">The folder at which a relative path starts.</param>
/// <param name="clock">Tells whether a file was changed just now.</param>
public sealed class CsvFeed(CsvFeedDefinition definition, string baseFolder, TimeProvider clock) : IWeatherFeed
{
    // Codes for missing values that nobody listed must not pass for temperatures when the unit is judged.
    private const double AnyTemperatureC = 150;

    /// <inheritdoc/>
    public string Name => definition.Path;

    private TemperatureScale Stated => definition.TemperatureUnit == FileTemperatureUnit.Fahrenheit ? TemperatureScale.Fahrenheit : TemperatureScale.Celsius;

    /// <inheritdoc/>
    public async Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(site);
        FaultList faults = new();
        ReadDays days = new(faults);
        List<(string Path, string Name)> files = FindFiles(faults);
        List<ReadDay> tooShortToTell = [];
        foreach ((string path, string name) in files)
        {
            stop.ThrowIfCancellationRequested();
            if (await WeatherFile.ReadAsync(path, name, clock, faults, stop) is not { } file) continue;
            CsvFileReader reader = new(definition, file, today, faults);
            if (reader.Read() is not { } rows) continue;
            TemperatureUnitFinding unit = JudgeUnit(rows, name, site, faults, isAlone: files.Count == 1);
            if (unit == TemperatureUnitFinding.OtherUnit) continue;
            if (unit is TemperatureUnitFinding.TooShort or TemperatureUnitFinding.EitherUnit) tooShortToTell.AddRange(rows);
            faults.AddAll(reader.UnitDependent);
            if (!rows.Exists(row => row.IsUsable)) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(name));
            days.AddFile(rows);
        }

        // Files of a few days each say nothing alone, but together.
        bool isRefused = files.Count > 1 && tooShortToTell.Count > 0
            && JudgeUnit(tooShortToTell, Name, site, faults, isAlone: true) == TemperatureUnitFinding.OtherUnit;
        if (days.IsEmpty || isRefused) return new FeedReading(null, faults.Told(refusalsAreLeftOut: false));
        DailySeries? series = days.ToSeries(definition.ObservedAt == ObservationTime.Morning);
        return new FeedReading(series, faults.Told(refusalsAreLeftOut: true));
    }

    private List<(string Path, string Name)> FindFiles(FaultList faults)
    {
        string path = Path.GetFullPath(definition.Path, Path.GetFullPath(baseFolder));
        if (!definition.Path.EndsWith('/')) return [(path, definition.Path)];
        try
        {
            List<(string Path, string Name)> files =
            [
                .. Directory.EnumerateFiles(path)
                    .Where(IsTable)
                    .Order(StringComparer.Ordinal)
                    .Select(file => (file, definition.Path + Path.GetFileName(file))),
            ];
            if (files.Count == 0) faults.Add(FaultKind.Files, FileFaults.NoCsvFiles(Name));
            return files;
        }
        catch (DirectoryNotFoundException)
        {
            faults.Add(FaultKind.Files, FileFaults.NoFolder(Name));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            faults.Add(FaultKind.Files, FileFaults.Unreadable(Name));
        }

        return [];
    }

    private static bool IsTable(string file) =>
        file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) || file.EndsWith(".csv.gz", StringComparison.OrdinalIgnoreCase) || PackedFile.IsZip(file);

    private TemperatureUnitFinding JudgeUnit(List<ReadDay> rows, string file, Site site, FaultList faults, bool isAlone)
    {
        DailySeries? air = ReadDays.AirOf(rows.Where(row =>
            Math.Abs(row[WeatherVariable.MinimumAirC]) < AnyTemperatureC && Math.Abs(row[WeatherVariable.MaximumAirC]) < AnyTemperatureC));
        if (air is null) return TemperatureUnitFinding.TooShort;
        TemperatureUnitVerdict verdict = TemperatureUnitCheck.Judge(air, site.Latitude, site.ElevationM, Stated);
        Fault? fault = verdict.Finding switch
        {
            TemperatureUnitFinding.OtherUnit => SeriesFaults.WrongUnit(file, site, verdict, Stated),
            TemperatureUnitFinding.NeitherUnit => SeriesFaults.UnlikelyPlace(file, site, verdict),
            TemperatureUnitFinding.EitherUnit when isAlone => SeriesFaults.EitherUnit(file, verdict, Stated),
            _ => null,
        };
        if (fault is not null) faults.Add(FaultKind.Unit, fault);
        return verdict.Finding;
    }
}
