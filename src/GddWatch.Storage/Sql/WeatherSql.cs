namespace GddWatch.Storage.Sql;

/// <summary>The statements over <c>daily_value</c>, <c>forecast_value</c> and <c>feed_position</c>.</summary>
internal static class WeatherSql
{
    public const string LoadDays = """
        select site, feed, day, variable, value, replaced_at
        from daily_value
        order by site, feed, day, variable, seen_at
        """;

    public const string LoadReplaced = """
        select site as Site, feed as Feed, day as Day, variable as Variable, value as Value, seen_at as SeenAt, replaced_at as ReplacedAt
        from daily_value
        where site = @site and replaced_at is not null
        order by day, variable, feed, seen_at
        """;

    public const string Replace = """
        update daily_value set replaced_at = @SeenAt
        where site = @Site and feed = @Feed and day = @Day and variable = @Variable and replaced_at is null
        """;

    public const string Insert = """
        insert into daily_value (site, feed, day, variable, value, seen_at)
        values (@Site, @Feed, @Day, @Variable, @Value, @SeenAt)
        """;

    public const string LoadForecasts = """
        select site as Site, feed as Feed, issued_at as IssuedAt, issued_on as IssuedOn, day as Day, variable as Variable, value as Value
        from forecast_value
        order by site, feed, issued_at, day, variable
        """;

    public const string KeepForecast = """
        insert into forecast_value (site, feed, issued_at, issued_on, day, variable, value)
        values (@Site, @Feed, @IssuedAt, @IssuedOn, @Day, @Variable, @Value)
        on conflict (site, feed, issued_at, day, variable) do nothing
        """;

    public const string LastPosition = """
        select site as Site, feed as Feed, seen_at as SeenAt, latitude as Latitude, longitude as Longitude, elevation_m as ElevationM
        from feed_position
        where site = @site and feed = @feed
        order by seen_at desc
        limit 1
        """;

    public const string KeepPosition = """
        insert into feed_position (site, feed, seen_at, latitude, longitude, elevation_m)
        values (@Site, @Feed, @SeenAt, @Latitude, @Longitude, @ElevationM)
        on conflict (site, feed, seen_at) do nothing
        """;
}
