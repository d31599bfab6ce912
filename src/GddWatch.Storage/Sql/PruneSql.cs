namespace GddWatch.Storage.Sql;

/// <summary>The statements that take out what is old and no longer needed. Messages go with their notices, so those go first.</summary>
internal static class PruneSql
{
    public const string Told = "delete from told where message_id in (select message_id from message where state <> 'queued' and settled_at < @before)";

    public const string Messages = "delete from message where state <> 'queued' and settled_at < @before";

    public const string ReplacedValues = "delete from daily_value where replaced_at < @before";

    // Of each day the last word on its temperatures stays: where a day was never measured, or its measurement is doubted, the judging takes it.
    public const string Forecasts = """
        delete from forecast_value
        where issued_on < @before
            and (variable not in ('MinimumAirC', 'MaximumAirC')
                or exists (
                    select 1 from forecast_value as later
                    where later.site = forecast_value.site and later.feed = forecast_value.feed and later.day = forecast_value.day
                        and later.variable = forecast_value.variable and later.issued_at > forecast_value.issued_at))
        """;
}
