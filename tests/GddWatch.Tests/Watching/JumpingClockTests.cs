using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>A clock that is put back and forward while the service runs: no day twice, none lost, nothing taken back, nothing stuck.</summary>
public sealed class JumpingClockTests
{
    private static readonly DateOnly Day = new(2025, 4, 25);

    [Fact]
    public async Task Put_back_over_the_time_of_the_pass_the_clock_makes_no_second_pass_of_that_day()
    {
        using Workshop workshop = Lawn();
        await using LiveWatch watch = await LiveWatch.StartAsync(workshop, Local(Day, 7));
        Assert.Equal(1, watch.Passes);
        await watch.PutClockAsync(Local(Day, 5));
        Assert.Contains("warning: The clock of this machine went back from Friday 25 April 2025", watch.Said, StringComparison.Ordinal);
        await watch.PutClockAsync(Local(Day, 6).AddMinutes(1));
        Assert.Equal(1, watch.Passes);
        await watch.PutClockAsync(Local(Day.AddDays(1), 6).AddMinutes(1));
        Assert.Equal(2, watch.Passes);
    }

    [Fact]
    public async Task A_clock_that_runs_years_ahead_for_a_while_costs_no_day_and_takes_nothing_back()
    {
        using Workshop workshop = Lawn();
        await using LiveWatch watch = await LiveWatch.StartAsync(workshop, Local(Day, 7));
        string opened = Assert.Single(workshop.Mails.Keys, name => name.Contains("opened.spring-pre-emergent", StringComparison.Ordinal));
        await watch.PutClockAsync(Local(new DateOnly(2031, 5, 1), 7));
        Assert.Equal(2, watch.Passes);
        await watch.PutClockAsync(Local(Day, 8));
        Assert.Equal(2, watch.Passes);
        await watch.PutClockAsync(Local(Day.AddDays(1), 6).AddMinutes(1));
        Assert.Equal(3, watch.Passes);
        Assert.Single(workshop.Mails.Keys, name => name == opened);
        Assert.DoesNotContain(workshop.Mails.Keys, name => name.Contains("corrected", StringComparison.Ordinal));
        Assert.Equal(0, await watch.StopAsync());
    }

    [Fact]
    public async Task Put_back_by_days_it_does_not_unsay_what_was_told_but_says_that_the_clock_is_wrong()
    {
        using Workshop workshop = Lawn();
        await using LiveWatch watch = await LiveWatch.StartAsync(workshop, Local(Day, 7));
        string[] told = [.. workshop.Mails.Keys];
        await watch.PutClockAsync(Local(Day.AddDays(-40), 7));
        Assert.Contains("The Lawn was not judged: the clock of this machine says that it is Sunday 16 March 2025", watch.Said, StringComparison.Ordinal);
        Assert.DoesNotContain(workshop.Mails.Keys, name => name.Contains("corrected", StringComparison.Ordinal));
        Assert.Equal(told, workshop.Mails.Keys.Intersect(told));
        await watch.PutClockAsync(Local(Day.AddDays(1), 7));
        Assert.Equal(3, watch.Passes);
        Assert.DoesNotContain(workshop.Mails.Keys, name => name.Contains("corrected", StringComparison.Ordinal));
    }

    private static Workshop Lawn() => Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2023, 1, 1), Day));

    /// <summary>In Chicago's summer.</summary>
    private static DateTimeOffset Local(DateOnly day, int hour) => new(day.ToDateTime(new TimeOnly(hour, 0)), TimeSpan.FromHours(-5));
}
