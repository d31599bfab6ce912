namespace GddWatch.Agronomy.Weather;

/// <summary>The days to come as one service saw them when it was asked. A later forecast never changes an earlier one.</summary>
/// <param name="IssuedOn">The day on which it was asked, in the site's own calendar.</param>
/// <param name="IssuedAt">The instant at which it was asked.</param>
/// <param name="Days">The days, none before <paramref name="IssuedOn"/>; that day itself is still a forecast.</param>
public sealed record Forecast(DateOnly IssuedOn, DateTimeOffset IssuedAt, DailySeries Days);
