using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Counts the values of a file that its flags forbid to use.</summary>
internal sealed class GhcnSetAside
{
    private readonly int[] failed = new int[GhcnElements.Count];
    private int presumed;
    private int lagged;
    private int utcMeans;
    private GhcnValue? firstFailed;

    /// <summary>Whether the value's flags forbid its use; then it is counted.</summary>
    public bool Takes(in GhcnValue value)
    {
        if (value.Quality != ' ')
        {
            failed[(int)value.Element]++;
            firstFailed ??= value;
            return true;
        }

        switch (value)
        {
            case { Measurement: 'P', Element: GhcnElement.Precipitation or GhcnElement.SnowDepth }:
                presumed++;
                return true;
            case { Measurement: 'L', Element: GhcnElement.Maximum or GhcnElement.Minimum }:
                lagged++;
                return true;
            case { Source: 'S', Element: GhcnElement.Average }:
                utcMeans++;
                return true;
            default:
                return false;
        }
    }

    /// <summary>One remark a reason.</summary>
    public void Tell(string file, FaultList faults)
    {
        if (firstFailed is { } first)
        {
            string each = string.Join(", ", Enum.GetValues<GhcnElement>().Where(element => failed[(int)element] > 0).Select(element => $"{failed[(int)element]:N0} of {element.Code()}"));
            Add(file, faults, failed.Sum(), "failed the archive's own quality control", $"{each}; the first is {first.Element.Code()} of {DayText.Of(first.Day)}, which failed {CheckOf(first.Quality)}");
        }

        if (presumed > 0) Add(file, faults, presumed, "of rain or snow were not measured but presumed to be zero", "measurement flag P");
        if (lagged > 0) Add(file, faults, lagged, "of temperature seem to be of another day than their hour of reading says", "measurement flag L");
        if (utcMeans > 0) Add(file, faults, utcMeans, "of mean temperature are of a day that ends at midnight in Greenwich", "TAVG with source flag S");
    }

    private static void Add(string file, FaultList faults, int count, string why, string found) => faults.Add(FaultKind.SetAside, new Fault
    {
        Severity = FaultSeverity.Remark,
        File = file,
        Problem = $"{DayText.Count(count, "value", "values")} {why}. Not used.",
        Found = found,
        Accepted = "values without such a flag; nothing to do, the days count as unknown in this feed.",
    });

    private static string CheckOf(char flag) => flag switch
    {
        'D' => "the duplicate check (D)",
        'G' => "the gap check (G)",
        'I' => "the check of internal consistency (I)",
        'K' => "the check of streaks and frequent values (K)",
        'L' => "the check of the length of several days (L)",
        'M' => "the check against the station's extremes (M)",
        'N' => "the check for false zeros (N)",
        'O' => "the check for climatological outliers (O)",
        'R' => "the check of the range over three days (R)",
        'S' => "the check against neighbours (S)",
        'T' => "the check against the days beside it (T)",
        'W' => "the check of snow against warmth (W)",
        'X' => "the check of bounds (X)",
        'Z' => "an investigation of the archive's keepers (Z)",
        _ => $"a check that this program has no name for ({flag})",
    };
}
