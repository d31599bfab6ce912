using GddWatch.Watching;
using GddWatch.Watching.Health;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Watching;

public sealed class PulseTests
{
    private readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 5, 4, 11, 0, 0, TimeSpan.Zero));

    [Fact]
    public void It_is_not_ready_before_the_first_pass_and_ready_after_it()
    {
        Pulse pulse = Fresh();
        Assert.Equal(new HealthReport(false, "The first pass is not made yet."), pulse.Readiness());
        pulse.PassBegun();
        Assert.False(pulse.Readiness().IsWell);
        pulse.PassMade(Report());
        Assert.Equal(new HealthReport(true, "The last pass was made at Monday 4 May 2026 06:00 -05:00; no message waits."), pulse.Readiness());
    }

    [Fact]
    public void A_pass_that_went_wrong_is_told_until_the_next_goes_well()
    {
        Pulse pulse = Fresh();
        pulse.PassMade(Report("The Lawn could not be judged: no."));
        Assert.Equal(new HealthReport(false, "The last pass did not go well: The Lawn could not be judged: no."), pulse.Readiness());
        pulse.PassMade(Report());
        Assert.True(pulse.Readiness().IsWell);
        pulse.PassFailed("The disk is full.");
        Assert.Equal("The last pass did not go well: The disk is full.", pulse.Readiness().Words);
    }

    [Fact]
    public void A_pass_that_does_not_come_or_does_not_end_is_told_after_an_hour()
    {
        Pulse pulse = Fresh();
        pulse.PassMade(Report());
        pulse.NextPassAt(clock.GetUtcNow().AddDays(1));
        clock.Advance(TimeSpan.FromHours(24.9));
        Assert.True(pulse.Readiness().IsWell);
        clock.Advance(TimeSpan.FromHours(0.2));
        Assert.Equal(new HealthReport(false, "The pass of Tuesday 5 May 2026 06:00 -05:00 is overdue; the last one was made at Monday 4 May 2026 06:00 -05:00."), pulse.Readiness());
        pulse.PassBegun();
        Assert.True(pulse.Readiness().IsWell);
        clock.Advance(TimeSpan.FromHours(1.1));
        Assert.Equal(new HealthReport(false, "The pass that began at Tuesday 5 May 2026 07:06 -05:00 has not ended yet."), pulse.Readiness());
    }

    private static PassReport Report(params string[] failures) => new(new DateOnly(2026, 5, 4), [], 0, failures);

    private Pulse Fresh() => new(clock, TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"));
}
