using System.Globalization;

namespace GddWatch.Validation.Hindcasts;

/// <summary>The figures of many issues with the same lead.</summary>
/// <param name="Issues">How many.</param>
/// <param name="NeverOpened">Of them, seasons that never opened, scored as the day after the season's end.</param>
/// <param name="ClimateDays">Mean score of the other seasons' dates [days].</param>
/// <param name="Days">Mean score of what was said [days].</param>
/// <param name="Skill">1 less their ratio.</param>
/// <param name="PlainSkill">The same with the score that is not corrected for few futures.</param>
/// <param name="Held">Share of the 80 % ranges that held the date.</param>
/// <param name="Stated">The chance that these ranges state, in the mean: whole days seldom hold 80 % to the point.</param>
/// <param name="Middle">The same without the play of whole days.</param>
/// <param name="WidthDays">Mean width of the range [days].</param>
internal sealed record HindcastFigures(int Issues, int NeverOpened, double ClimateDays, double Days, double Skill, double PlainSkill, double Held, double Stated, double Middle, double WidthDays)
{
    public static HindcastFigures? Of(IReadOnlyCollection<ScoredIssue> issues)
    {
        if (issues.Count == 0) return null;
        double climate = issues.Average(issue => issue.ClimateCrps), said = issues.Average(issue => issue.Crps);
        return new HindcastFigures(
            issues.Count,
            issues.Count(issue => issue.Truth is null),
            climate,
            said,
            1 - said / climate,
            1 - issues.Average(issue => issue.PlainCrps) / climate,
            issues.Count(issue => issue.IsHeld) / (double)issues.Count,
            issues.Average(issue => issue.Stated),
            issues.Average(issue => issue.MiddleShare),
            issues.Average(issue => issue.Width));
    }

    /// <summary>One row of a table.</summary>
    public string Row() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Issues} | {NeverOpened} | {ClimateDays:0.00} | {Days:0.00} | {Skill:0.000} | {PlainSkill:0.000} | {Held:0.00} | {Stated:0.00} | {Middle:0.00} | {WidthDays:0.0}");

    /// <summary>Skill, held and stated: "0.212, 75 % (83 %)".</summary>
    public string InShort() => string.Create(CultureInfo.InvariantCulture, $"{Skill:0.000}, {Held * 100:0} % ({Stated * 100:0} %)");

    public const string Heads = "issues | never opened | climate [days] | said [days] | skill | skill, not fair | 80 % range held | stated | middle 80 % | width [days]";
    public const string Rule = "---|---|---|---|---|---|---|---|---|---";

    /// <summary>How often it came where about so much was said.</summary>
    public static string CameTrue(IEnumerable<ScoredIssue> issues, double about)
    {
        (double Stated, bool Came)[] said =
        [
            .. from issue in issues
               from days in (int[])[7, 14]
               let stated = issue.Said.By(days)
               where Math.Abs(stated - about) <= 0.1
               select (stated, issue.CameWithin(days)),
        ];
        return said.Length == 0
            ? "-"
            : string.Create(CultureInfo.InvariantCulture, $"{said.Average(each => each.Stated):0.00} → {said.Count(each => each.Came) / (double)said.Length:0.00} ({said.Length})");
    }
}
