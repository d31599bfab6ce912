using System.Globalization;
using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Writes a site's part of the weekly overview: short enough to be read on a phone, every number with its unit and every date with its weekday.</summary>
/// <param name="treatments">All treatments, for what is waited for.</param>
/// <param name="notYet">What is often done too early.</param>
/// <param name="region">The local rules, and the units that people read.</param>
public sealed class BulletinWriter(IReadOnlyList<Treatment> treatments, IReadOnlyList<NotYet> notYet, Region region)
{
    /// <summary>A window that usually opens within so many days is nearing [days].</summary>
    private const int NearingDays = 21;

    private const int DaysOfWeek = 7;

    /// <summary>A growth potential below which nothing needs mowing.</summary>
    private const double HardlyGrowing = 0.08;

    /// <summary>What usually is cut to where the grass is not known [mm]: 3 inches and 1.5 inches (common practice).</summary>
    private const double UsualCoolHeightMm = 76.2, UsualWarmHeightMm = 38.1;

    private readonly ReadersUnits units = region.Units;

    /// <summary>The site's part.</summary>
    /// <param name="site">The site.</param>
    /// <param name="standing">Where its windows stand.</param>
    /// <param name="metrics">Its weather and journal as of the same day; null where there is no weather.</param>
    /// <param name="ahead">What the days ahead may bring.</param>
    /// <param name="wants">Whether the reader asked for a treatment, by its id.</param>
    public BulletinSite Write(Site site, Standing standing, SiteMetrics? metrics, DaysAhead ahead, Func<string, bool> wants)
    {
        ArgumentNullException.ThrowIfNull(standing);
        Window[] windows = [.. standing.Windows.Where(window => wants(window.Treatment.Id) && window.Treatment.IsToldAt(site))];
        DateOnly day = standing.Day;
        if (metrics is null) return new BulletinSite { Name = site.Name, Waits = [new BulletinLine("Everything", windows.FirstOrDefault()?.Because.Sentence(units) ?? "There is no weather.")] };
        return new BulletinSite
        {
            Name = site.Name,
            Open = [.. windows.Where(window => window.IsOpen && !IsSilent(window, standing) && !IsCare(window.Treatment)).Select(window => new BulletinLine(window.Treatment.Name, $"{OpenWords(window, metrics, ahead, day)}{Rivals(window, standing)}{NotChecked(window)}"))],
            Nearing = [.. windows.Where(window => window.State == WindowState.Waiting && !IsSilent(window, standing)).SelectMany(window => NearingWords(window, ahead.Of(window), metrics, day))],
            DaysAhead = ahead.InWords(),
            Waits = [.. windows.SelectMany(window => MustWait(window, standing)), .. TooEarly(site, standing, metrics, ahead, wants).Where(each => each.When.Length > 0).Select(each => new BulletinLine(each.What.Name, each.When))],
            Always = [.. TooEarly(site, standing, metrics, ahead, wants).Where(each => each.When.Length == 0).Select(each => each.What.Name)],
            Care = [.. Care(site, metrics, day), .. windows.Where(window => window.IsOpen && IsCare(window.Treatment) && window.Treatment.Work == WorkKind.Mowing).Select(window => new BulletinLine(window.Treatment.Name, window.Treatment.Do.Count > 0 ? window.Treatment.Do[0].TrimEnd('.') : OpenWords(window, metrics, ahead, day)))],
            Done = [.. metrics.Journal.Entries.OfType<TreatmentDone>().Where(done => done.On > day.AddDays(-DaysOfWeek)).Select(done => new BulletinLine(NameOf(done.Treatment), $"recorded for {Wording.DayInYear(done.On)}"))],
            Chart = BulletinCharts.Of(metrics, day, units),
        };
    }

    /// <summary>What is named as too early at a site on a day, and when it is likely to be time; empty where no window is waited for.</summary>
    /// <param name="site">The site.</param>
    /// <param name="standing">Where its windows stand.</param>
    /// <param name="metrics">Its weather and journal as of the same day.</param>
    /// <param name="ahead">What the days ahead may bring.</param>
    /// <param name="wants">Whether the reader asked for a treatment, by its id.</param>
    public IEnumerable<(NotYet What, string When)> TooEarly(Site site, Standing standing, SiteMetrics metrics, DaysAhead ahead, Func<string, bool> wants)
    {
        ArgumentNullException.ThrowIfNull(standing);
        ArgumentNullException.ThrowIfNull(ahead);
        foreach (NotYet each in notYet.Where(each => each.IsNamed(site, standing.Day)))
        {
            Treatment? awaited = treatments.FirstOrDefault(treatment => treatment.Id == each.WaitFor);
            if (awaited is not null && !wants(awaited.Id)) continue;
            if (awaited is null || !awaited.IsFor(site)) yield return (each, "");
            else if (Awaited(awaited, standing, metrics, ahead) is { } when) yield return (each, when);
        }
    }

    /// <summary>When a window that is waited for is likely to open; null where it has opened this season.</summary>
    private static string? Awaited(Treatment awaited, Standing standing, SiteMetrics metrics, DaysAhead ahead)
    {
        DateOnly day = standing.Day;
        Window window = standing.Windows.First(each => each.Treatment.Id == awaited.Id);
        if (window.FirstOpening is not null) return null;
        if (window.Holds.Count > 0) return $"{awaited.Name} is held until {Wording.Day(window.Holds.Max(hold => hold.FreeFrom))} at the latest by what is recorded";
        if (ahead.Of(window) is { OfClosing: false } chances) return $"wait for {awaited.Name}, {ChancesWords.Likely(chances)}";
        UsualDate usual = UsualOpening.In(window.Season, awaited, metrics);
        if (usual.Day is not { } date) return $"wait for {awaited.Name}";
        return date > day ? $"wait for {awaited.Name}, usually about {Wording.DayInYear(date)}" : $"wait for {awaited.Name}, which is later than usual this season";
    }

    private bool IsSilent(Window window, Standing standing) => NoticePlan.IsBanned(window, region, standing.Day) || NoticePlan.IsSettledAgainst(window, standing);

    private static string OpenWords(Window window, SiteMetrics metrics, DaysAhead ahead, DateOnly day)
    {
        string since = $"open since {Wording.DayInYear(window.FirstOpening!.Day)}";
        if (window.State == WindowState.Closing) since = $"past its best since {Wording.DayInYear(window.PastBest!.Day)}";
        string left = new Expectation(window, metrics, ahead, day).Left();
        return left.Length > 0 ? $"{since}; {left}" : since;
    }

    private static IEnumerable<BulletinLine> NearingWords(Window window, WindowChances? chances, SiteMetrics metrics, DateOnly day)
    {
        if (chances is { OfClosing: false, Median: { } median })
        {
            if (window.FirstOpening is null && (median <= day.AddDays(NearingDays) || Nearing.IsNearing(chances))) yield return new BulletinLine(window.Treatment.Name, ChancesWords.Likely(chances));
            yield break;
        }

        // Too few years for chances, or a season that is still some way off: what is usual stands in.
        if (chances is not null) yield break;

        if (window.FirstOpening is not null || window.Treatment.BulletinOnly || window.Season.Span.First > day.AddDays(NearingDays)) yield break;
        UsualDate usual = UsualOpening.In(window.Season, window.Treatment, metrics);
        if (usual.Day is not { } date || date > day.AddDays(NearingDays)) yield break;
        string when = date > day ? $"usually opens about {Wording.DayInYear(date)}" : $"usually open by {Wording.DayInYear(date)}, later this season";
        yield return new BulletinLine(window.Treatment.Name, $"{when} ({usual.Source})");
    }

    /// <summary>What the bulletin alone tells is no task with a window to use: it is care of the week, or a pause that must be kept.</summary>
    private static bool IsCare(Treatment treatment) => treatment.BulletinOnly;

    /// <summary>What stands open beside it and forbids it.</summary>
    private static string Rivals(Window window, Standing standing)
    {
        string[] open = [.. standing.Windows.Where(other => other.IsOpen && window.Treatment.Excludes.Any(exclusion => exclusion.Treatment == other.Treatment.Id)).Select(other => other.Treatment.Name)];
        return open.Length == 0 ? "" : $"; choose for each area: not together with {Wording.List(open)}";
    }

    private string NotChecked(Window window) => window.Treatment.Work == WorkKind.Feeding && !region.RulesAbout(window.Site, WorkKind.Feeding).Any()
        ? "; local rules on feeding were not checked, none is configured"
        : "";

    private IEnumerable<BulletinLine> MustWait(Window window, Standing standing)
    {
        if (window.IsOpen && IsCare(window.Treatment) && window.Treatment.Work is null)
        {
            yield return new BulletinLine(window.Treatment.Name, $"since {Wording.DayInYear(window.Since)}; {(window.Treatment.DoNot.Count > 0 ? window.Treatment.DoNot[0] : window.Because.Sentence(units))}");
        }
        else if (window.IsOpen && IsSilent(window, standing))
        {
            LocalRule? ban = region.RulesAbout(window.Site, window.Treatment.Work).FirstOrDefault(rule => rule.Bans(standing.Day));
            string why = ban is null
                ? $"open, but this site prefers {NoticePlan.PreferredRival(window, standing)!.Treatment.Name}"
                : $"a local rule bans it until {Wording.AnnualDay(ban.Until)} ({ban.Source})";
            yield return new BulletinLine(window.Treatment.Name, why);
        }
        else if (window.State is WindowState.Held or WindowState.Unknown && window.Season.Span.Contains(standing.Day))
        {
            yield return new BulletinLine(window.Treatment.Name, $"{WindowStates.Word(window.State)}: {window.Because.Sentence(units)}");
        }
        else if (window.State == WindowState.Waiting && window.FirstOpening is not null && !window.Treatment.BulletinOnly)
        {
            yield return new BulletinLine(window.Treatment.Name, $"open since {Wording.DayInYear(window.FirstOpening.Day)}, but not on days like these: {window.Because.Sentence(units)}");
        }
    }

    private IEnumerable<BulletinLine> Care(Site site, SiteMetrics metrics, DateOnly day)
    {
        foreach (TurfType turf in site.Turf)
        {
            string which = site.Turf.Count > 1 ? $" ({TreatmentSentence.TurfWord(turf)})" : "";
            if ((Ban(site, WorkKind.Mowing, day) ?? MowingWords(site, metrics, turf, day)) is { } mowing) yield return new BulletinLine($"Mowing{which}", mowing);
            if ((Ban(site, WorkKind.Watering, day) ?? WateringWords(site, metrics, turf, day)) is { } watering) yield return new BulletinLine($"Watering{which}", watering);
        }

        if (metrics.Climate.FreezeAhead(day) is { } freeze) yield return new BulletinLine(freeze.What, freeze.Words);
    }

    private string? Ban(Site site, WorkKind work, DateOnly day) => region.RulesAbout(site, work).FirstOrDefault(rule => rule.Bans(day)) is { } rule
        ? $"a local rule bans it until {Wording.AnnualDay(rule.Until)} ({rule.Source})"
        : null;

    private string? MowingWords(Site site, SiteMetrics metrics, TurfType turf, DateOnly day)
    {
        double growth = At(metrics.GrowthMeans(turf, DaysOfWeek), metrics, day);
        if (double.IsNaN(growth)) return null;
        if (growth < HardlyGrowing) return "the grass hardly grows; none is needed";
        double high = At(metrics.AirMeans(AirValue.Maximum, DaysOfWeek), metrics, day);
        (string grass, double height) = Height(site, turf, high);
        double days = MowingInterval.Days(height, MowingInterval.GrowthMmPerDay(growth, MowingInterval.BestGrowthMmPerDay(turf)));
        string interval = days >= 21 ? "every three weeks or less often" : $"about every {Math.Max(3, Math.Round(days)).ToString(CultureInfo.InvariantCulture)} days";
        return $"{interval} at {Height(height)}{grass}; never more than a third of the leaf";
    }

    /// <summary>Within what suits all of the configured grasses of the turf.</summary>
    private (string Grass, double HeightMm) Height(Site site, TurfType turf, double highC)
    {
        string[] grasses = [.. site.Grass.Where(grass => MowingHeight.TurfOf(grass) == turf)];
        if (grasses.Length == 0) return ("", turf == TurfType.CoolSeason ? UsualCoolHeightMm : UsualWarmHeightMm);
        MowingHeight[] ranges = [.. grasses.Select(grass => MowingHeight.Of(grass)!.Value)];
        double lowest = ranges.Max(range => range.LowestMm);
        double highest = Math.Max(lowest, ranges.Min(range => range.HighestMm));
        string names = Wording.List([.. grasses.Select(grass => grass.Replace('-', ' '))]);
        return ($" ({names}: {Height(lowest, unit: false)} to {Height(highest)}, higher in heat)", new MowingHeight(lowest, highest).AdvisedMm(highC));
    }

    private string Height(double millimetres, bool unit = true)
    {
        if (units == ReadersUnits.Metric) return $"{Math.Round(millimetres).ToString(CultureInfo.InvariantCulture)}{(unit ? " mm" : "")}";
        string inches = (Math.Round(millimetres / 25.4 * 4) / 4).ToString("0.##", CultureInfo.InvariantCulture);
        return $"{inches}{(unit ? inches == "1" ? " inch" : " inches" : "")}";
    }

    private string? WateringWords(Site site, SiteMetrics metrics, TurfType turf, DateOnly day)
    {
        if (At(metrics.GrowthMeans(turf, 14), metrics, day) is not >= 0.2) return null;
        if (site.Soil is not { } soil) return "not known: the soil's texture is not configured";
        (double depletion, double allowed) = metrics.RootZoneAt(turf, day <= metrics.Series.LastDay ? day : metrics.Series.LastDay);
        if (double.IsNaN(depletion)) return "not known yet: a soaking rain, or a recorded watering, tells where the soil stands";
        double ahead = metrics.ForecastRainAt(day.AddDays(1)) + metrics.ForecastRainAt(day.AddDays(2));
        if (Watering.Due(depletion, allowed, double.IsNaN(ahead) ? 0 : ahead, soil) is { } due)
        {
            string parts = due.Cycles > 1 ? $", in {due.Cycles} parts with pauses" : "";
            return $"due: {Wording.Water(due.GrossMm, units)} from the sprinklers for {Wording.Water(due.NetMm, units)} in the soil{parts}; then not until it is due again. Local watering rules come first";
        }

        double use = TurfWater.Coefficient(turf) * At(metrics.ReferenceEvapotranspirationMm, metrics, day);
        string next = use > 0.3 && depletion < allowed ? $"; without rain due in about {Wording.Days((int)Math.Ceiling((allowed - depletion) / use))}" : "";
        return $"not due: the root zone lacks {Wording.Water(depletion, units)}, and {Wording.Water(allowed, units)} may be missing{next}";
    }

    private string NameOf(string treatmentId) => treatments.FirstOrDefault(treatment => treatment.Id == treatmentId)?.Name ?? treatmentId;

    private static double At(double[] values, SiteMetrics metrics, DateOnly day)
    {
        int index = Math.Min(metrics.Series.IndexOf(day), values.Length - 1);
        return index < 0 ? double.NaN : values[index];
    }
}
