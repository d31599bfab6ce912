using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Watching;

public sealed class WorkerPlanTests
{
    private static readonly WorkerPlan Six = new(new TimeOnly(6, 0), "America/Chicago", Once: false);

    [Theory]
    [InlineData("2026-01-15T11:59:00Z", "2026-01-15T12:00:00Z")] // 06:00 in winter is 12:00 UTC
    [InlineData("2026-01-15T12:00:00Z", "2026-01-16T12:00:00Z")]
    [InlineData("2026-03-07T13:00:00Z", "2026-03-08T11:00:00Z")] // the clocks went forward in the night
    [InlineData("2026-10-31T12:00:00Z", "2026-11-01T12:00:00Z")] // and back
    public void The_daily_pass_comes_at_its_time_of_day_in_the_region(string now, string next) =>
        Assert.Equal(DateTimeOffset.Parse(next), Six.NextPassAfter(DateTimeOffset.Parse(now)));

    [Fact]
    public void A_time_of_day_that_the_clocks_skip_comes_when_they_have_been_put_forward()
    {
        // Clocks in Chicago go from 02:00 to 03:00 on 8 March 2026 (time-zone database).
        WorkerPlan halfPastTwo = Six with { PassAt = new TimeOnly(2, 30) };
        Assert.Equal(DateTimeOffset.Parse("2026-03-08T08:00:00Z"), halfPastTwo.NextPassAfter(DateTimeOffset.Parse("2026-03-08T00:00:00-06:00")));
    }

    [Fact]
    public void The_pause_after_a_refusal_grows_to_six_hours_and_varies_by_a_quarter()
    {
        Assert.Equal(TimeSpan.FromMinutes(5), RetryPause.After(1, 0));
        Assert.Equal(TimeSpan.FromMinutes(20), RetryPause.After(3, 0));
        Assert.Equal(TimeSpan.FromHours(6), RetryPause.After(40, 0));
        Assert.Equal(TimeSpan.FromHours(7.5), RetryPause.After(40, 1));
    }
}
