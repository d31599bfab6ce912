namespace GddWatch.Storage.Sql;

/// <summary>The statements that give everything that is kept, table by table, for other programs.</summary>
internal static class ExportSql
{
    public const string JudgedSites = "select site, judged_on from judged_site order by site";

    public const string Windows = """
        select site, treatment, season, state, since, reason, opened, past_best, closed_on, judged_on, weather_through, configuration, configuration_note
        from kept_window
        order by site, treatment, season
        """;

    public const string Messages = """
        select queue_order, message_id, address, day, state, queued_at, not_before, claim_owner, claimed_until, attempts, last_outcome, last_words, settled_at, first_tried_at, withdrawn_at, body
        from message
        order by queue_order
        """;

    public const string RefusingAddresses = """
        select address, refusals, last_words, last_at, paused_at, resumed_at
        from refusing_address
        order by address
        """;

    public const string Told = """
        select site, treatment, season, kind, revision, address, day, fact, configuration, message_id
        from told
        order by site, treatment, season, kind, address, revision
        """;

    public const string RegionValues = "select name, value from region_value order by name";

    public const string DailyValues = """
        select site, feed, day, variable, value, seen_at, replaced_at
        from daily_value
        order by site, feed, day, variable, seen_at
        """;

    public const string ForecastValues = """
        select site, feed, issued_at, issued_on, day, variable, value
        from forecast_value
        order by site, feed, issued_at, day, variable
        """;

    public const string FeedPositions = """
        select site, feed, seen_at, latitude, longitude, elevation_m
        from feed_position
        order by site, feed, seen_at
        """;
}
