using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Configuration.Reading;

/// <summary>What guards by the date do to an opening: whether they suffice alone, and whether they leave any day at all.</summary>
public static class OpeningByDate
{
    // Neither a leap year nor its neighbour: every season has the same days in it.
    private const int AnyYear = 2022;

    /// <summary>Whether a condition can be met by the date alone.</summary>
    public static bool Suffices(Condition condition) => condition switch
    {
        CalendarGuard => true,
        AllOf all => all.Parts.All(Suffices),
        AnyOf any => any.Parts.Any(Suffices),
        Not not => FailsByDate(not.Part),
        _ => false,
    };

    /// <summary>Whether the guards that must be met leave no day of the season.</summary>
    public static bool NeverComes(Condition condition, SeasonRule season)
    {
        DateSpan span = season.BeginningIn(AnyYear, Hemisphere.Northern).Span;
        for (DateOnly day = span.First; day <= span.Last; day = day.AddDays(1))
        {
            if (MayBeMet(condition, day, span)) return false;
        }

        return true;
    }

    /// <summary>Whether a condition can fail by the date alone, so that its "not" is met by it.</summary>
    private static bool FailsByDate(Condition condition) => condition switch
    {
        CalendarGuard => true,
        AllOf all => all.Parts.Any(FailsByDate),
        AnyOf any => any.Parts.All(FailsByDate),
        Not not => Suffices(not.Part),
        _ => false,
    };

    private static bool MayBeMet(Condition condition, DateOnly day, DateSpan season) => condition switch
    {
        CalendarGuard guard => Allows(guard, day, season),
        AllOf all => all.Parts.All(part => MayBeMet(part, day, season)),
        AnyOf any => any.Parts.Any(part => MayBeMet(part, day, season)),
        Not { Part: CalendarGuard guard } => !Allows(guard, day, season),
        _ => true,
    };

    private static bool Allows(CalendarGuard guard, DateOnly day, DateSpan season) =>
        (guard.NotBefore is not { } notBefore || day >= Nearest(notBefore, season)) && (guard.NotAfter is not { } notAfter || day <= Nearest(notAfter, season));

    // As the judge places a day of the year: where it lies nearest to the middle of the season.
    private static DateOnly Nearest(AnnualDay day, DateSpan season)
    {
        int middle = season.First.DayNumber + season.Days / 2;
        return Enumerable.Range(-1, 3).Select(offset => day.In(season.First.Year + offset)).MinBy(date => Math.Abs(date.DayNumber - middle));
    }
}
