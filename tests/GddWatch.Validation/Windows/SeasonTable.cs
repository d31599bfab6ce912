using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>Every season of every treatment as one row, for programs.</summary>
internal static class SeasonTable
{
    public static void Header(TextWriter output) => output.Write(
        "station,climate,treatment,season,opens_estimated,opens_measured,estimated_late_by_days,compared,left_out_because,reopened_estimated,reopened_measured,let_go_estimated,came_back_estimated,let_go_measured,came_back_measured,week_at_55_f_from,first_emergence\n");

    public static void Write(TextWriter output, IEnumerable<OpeningPair> pairs)
    {
        foreach (OpeningPair pair in pairs)
        {
            LetGo estimated = LetGo.Of(pair.Estimated, pair.Station.Estimated);
            LetGo measured = LetGo.Of(pair.Measured, pair.Station.Measured);
            string late = pair.Estimated.FirstOpening is null || pair.Measured.FirstOpening is null ? "" : FormattableString.Invariant($"{pair.LateBy}");
            string why = WhyLeftOut(pair);
            CrabgrassDates dates = pair.Estimated.Treatment.Id == CrabgrassDates.Treatment ? CrabgrassDates.Of(pair.Station, pair.Estimated) : default;
            output.Write(FormattableString.Invariant(
                $"{pair.Station.Name},{(pair.Station.IsHumid ? "humid" : "dry")},{pair.Estimated.Treatment.Id},{pair.Estimated.Season.Year},{Opens(pair.Estimated)},{Opens(pair.Measured)},{late},{(why.Length == 0 ? "yes" : "no")},{why},{pair.Estimated.Reopenings},{pair.Measured.Reopenings},{estimated.Times},{estimated.CameBack},{measured.Times},{measured.CameBack},{Day(dates.SoilAt55)},{Day(dates.FirstEmergence)}\n"));
        }
    }

    private static string Opens(Window window) => Day(window.FirstOpening?.Day);

    private static string Day(DateOnly? day) => day is { } known ? FormattableString.Invariant($"{known:yyyy-MM-dd}") : "";

    private static string WhyLeftOut(OpeningPair pair)
    {
        if (!pair.IsWhole) return "a hole in the measured soil";
        if (pair.Estimated.FirstOpening is null && pair.Measured.FirstOpening is null) return "opened by neither";
        if (pair.OneOpened) return "opened by one alone";
        return pair.BothOpened ? "" : "may have opened earlier";
    }
}
