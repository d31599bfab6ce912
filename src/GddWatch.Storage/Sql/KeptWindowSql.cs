namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>kept_window</c>.</summary>
internal static class KeptWindowSql
{
    public const string LoadAll = """
        select site as Site, treatment as Treatment, season as Season, state as State, since as Since, reason as Reason,
               opened as Opened, past_best as PastBest, closed_on as ClosedOn, judged_on as JudgedOn, weather_through as WeatherThrough,
               configuration as Configuration, configuration_note as ConfigurationNote
        from kept_window
        order by site, treatment, season
        """;

    public const string LoadOfSite = """
        select site as Site, treatment as Treatment, season as Season, state as State, since as Since, reason as Reason,
               opened as Opened, past_best as PastBest, closed_on as ClosedOn, judged_on as JudgedOn, weather_through as WeatherThrough,
               configuration as Configuration, configuration_note as ConfigurationNote
        from kept_window
        where site = @site
        order by treatment, season
        """;

    public const string Keep = """
        insert into kept_window (
            site, treatment, season, state, since, reason, opened, past_best, closed_on, judged_on, weather_through, configuration, configuration_note)
        values (
            @Site, @Treatment, @Season, @State, @Since, @Reason, @Opened, @PastBest, @ClosedOn, @JudgedOn, @WeatherThrough, @Configuration, @ConfigurationNote)
        on conflict (site, treatment, season) do update set
            state = excluded.state,
            since = excluded.since,
            reason = excluded.reason,
            opened = excluded.opened,
            past_best = excluded.past_best,
            closed_on = excluded.closed_on,
            judged_on = excluded.judged_on,
            weather_through = excluded.weather_through,
            configuration = excluded.configuration,
            configuration_note = excluded.configuration_note
        """;
}
