using CsCheck;
using GddWatch.Agronomy.Places;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

public sealed class QuietHoursTests
{
    private static readonly QuietHours Night = new(new TimeOnly(21, 0), new TimeOnly(7, 0));

    // Clocks in Chicago: put forward at 2:00 on 8 March 2026 (UTC-6 to UTC-5), back at 2:00 on 1 November 2026 (tz database, SEEN).
    private static readonly TimeZoneInfo Chicago = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");

    [Theory]
    [InlineData("2026-04-12T12:00:00-05:00", null)]
    [InlineData("2026-04-12T07:00:00-05:00", null)]
    [InlineData("2026-04-12T20:59:59-05:00", null)]
    [InlineData("2026-04-12T21:00:00-05:00", "2026-04-13T07:00:00-05:00")]
    [InlineData("2026-04-13T06:59:59-05:00", "2026-04-13T07:00:00-05:00")]
    [InlineData("2026-04-13T11:30:00Z", "2026-04-13T07:00:00-05:00")]
    [InlineData("2026-03-07T23:00:00-06:00", "2026-03-08T07:00:00-05:00")]
    [InlineData("2026-10-31T23:00:00-05:00", "2026-11-01T07:00:00-06:00")]
    public void A_night_ends_by_the_readers_own_clock(string at, string? end) =>
        Assert.Equal(end is null ? null : DateTimeOffset.Parse(end), Night.EndAfter(DateTimeOffset.Parse(at), Chicago));

    [Fact]
    public void Quiet_hours_within_a_day_end_on_it() =>
        Assert.Equal(
            new DateTimeOffset(2026, 4, 12, 14, 0, 0, TimeSpan.FromHours(-5)),
            new QuietHours(new TimeOnly(12, 0), new TimeOnly(14, 0)).EndAfter(new DateTimeOffset(2026, 4, 12, 13, 0, 0, TimeSpan.FromHours(-5)), Chicago));

    [Fact]
    public void An_end_that_the_clocks_skip_comes_when_they_have_been_put_forward() =>
        Assert.Equal(
            new DateTimeOffset(2026, 3, 8, 3, 0, 0, TimeSpan.FromHours(-5)),
            new QuietHours(new TimeOnly(21, 0), new TimeOnly(2, 30)).EndAfter(new DateTimeOffset(2026, 3, 8, 1, 0, 0, TimeSpan.FromHours(-6)), Chicago));

    [Fact]
    public void An_end_that_the_clocks_show_twice_is_the_later_one() =>
        Assert.Equal(
            new DateTimeOffset(2026, 11, 1, 1, 30, 0, TimeSpan.FromHours(-6)),
            new QuietHours(new TimeOnly(21, 0), new TimeOnly(1, 30)).EndAfter(new DateTimeOffset(2026, 11, 1, 0, 15, 0, TimeSpan.FromHours(-5)), Chicago));

    [Fact]
    public void The_end_is_later_within_a_day_and_by_then_it_is_no_longer_quiet()
    {
        string[] zones = ["America/Chicago", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Kathmandu", "America/Sao_Paulo", "UTC"];
        Gen.Select(Gen.Int[0, 1439], Gen.Int[0, 1439], Gen.Int[0, 366 * 1440], Gen.Int[0, 5]).Where(each => each.Item1 != each.Item2).Sample(
            (from, until, minutes, place) =>
            {
                TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById(zones[place]);
                var quiet = new QuietHours(new TimeOnly(from / 60, from % 60), new TimeOnly(until / 60, until % 60));
                DateTimeOffset at = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(minutes);
                if (quiet.EndAfter(at, zone) is not { } end) return true;
                // Where the clocks change the end may fall into a quiet that begins at once again; it is over a day later in any case.
                return end > at && end - at <= TimeSpan.FromHours(25) && (quiet.EndAfter(end, zone) is not { } again || again - end <= TimeSpan.FromHours(25));
            },
            iter: 2000);
    }
}
