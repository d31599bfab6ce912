namespace GddWatch.Storage.Sql;

/// <summary>The statements that look for what cannot be true together.</summary>
internal static class InspectionSql
{
    public const string ToldWithoutWindow = """
        select site as Site, treatment as Treatment, season as Season, kind as Kind, revision as Revision, address as Address, day as Day, fact as Fact,
               configuration as Configuration, message_id as MessageId
        from told
        where not exists (
            select 1 from kept_window
            where kept_window.site = told.site and kept_window.treatment = told.treatment and kept_window.season = told.season)
        order by site, treatment, season, kind, address, revision
        """;

    public const string ToldBackwards = """
        select site as Site, treatment as Treatment, season as Season, kind as Kind, revision as Revision, address as Address, day as Day, fact as Fact,
               configuration as Configuration, message_id as MessageId
        from (
            select told.*, lag(day) over (partition by site, treatment, season, kind, address order by revision) as day_before
            from told) as told
        where day < day_before
        order by site, treatment, season, kind, address, revision
        """;

    public const string Messages = """
        select message_id as MessageId, address as Address, day as Day, state as State, claimed_until as ClaimedUntil, attempts as Attempts,
               settled_at as SettledAt, body as Body
        from message
        order by queue_order
        """;

    public const string WindowsJudgedOtherwise = """
        select kept_window.site as Site, kept_window.treatment as Treatment, kept_window.season as Season, kept_window.judged_on as JudgedOn,
               judged_site.judged_on as SiteJudgedOn
        from kept_window left join judged_site on judged_site.site = kept_window.site
        where judged_site.judged_on is null or judged_site.judged_on < kept_window.judged_on
        order by kept_window.site, kept_window.treatment, kept_window.season
        """;

    public const string HistoryOutOfOrder = """
        select site as Site, feed as Feed, day as Day, variable as Variable, value as Value, seen_at as SeenAt, replaced_at as ReplacedAt
        from (
            select daily_value.*, lead(seen_at) over (partition by site, feed, day, variable order by seen_at) as next_seen_at
            from daily_value) as history
        where replaced_at is distinct from next_seen_at
        order by site, feed, day, variable, seen_at
        """;

    // More than any value of a day can be in its unit; what is no number at all fails the comparison too.
    public const string ImpossibleValues = """
        select site as Site, feed as Feed, day as Day, variable as Variable, value as Value, seen_at as SeenAt, replaced_at as ReplacedAt
        from daily_value
        where not (abs(value) < 100000)
        order by site, feed, day, variable, seen_at
        """;

    // A site's day may have begun before the day of the same instant in UTC, but never a whole day before.
    public const string SeenBeforeTheirDay = """
        select site as Site, feed as Feed, day as Day, variable as Variable, value as Value, seen_at as SeenAt, replaced_at as ReplacedAt
        from daily_value
        where day > substr(seen_at, 1, 10)
        order by site, feed, day, variable, seen_at
        """;

    public const string VariablesOfDays = "select distinct variable from daily_value order by variable";

    public const string VariablesOfForecasts = "select distinct variable from forecast_value order by variable";

    public const string ForecastsOfThePast = """
        select site as Site, feed as Feed, issued_at as IssuedAt, issued_on as IssuedOn, min(day) as Day
        from forecast_value
        where day < issued_on
        group by site, feed, issued_at, issued_on
        order by site, feed, issued_at
        """;

    public const string ForecastsIssuedOnAnotherDay = """
        select distinct site as Site, feed as Feed, issued_at as IssuedAt, issued_on as IssuedOn, '' as Day
        from forecast_value
        where issued_on <> substr(issued_at, 1, 10)
        order by site, feed, issued_at
        """;

    public const string PositionsOffTheEarth = """
        select site as Site, feed as Feed, seen_at as SeenAt, latitude as Latitude, longitude as Longitude, elevation_m as ElevationM
        from feed_position
        where not (abs(latitude) <= 90 and abs(longitude) <= 180)
        order by site, feed, seen_at
        """;

    public const string CountValues = "select count(*) from daily_value";

    public const string CountForecasts = "select count(*) from forecast_value";
}
