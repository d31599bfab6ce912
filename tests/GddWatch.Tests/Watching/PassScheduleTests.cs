using CsCheck;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Watching;

public sealed class PassScheduleTests
{
    private static readonly WorkerPlan Six = new(new TimeOnly(6, 0), "America/Chicago", Once: false);

    private static readonly DateTimeOffset Start = DateTimeOffset.Parse("2026-03-01T12:30:00Z");

    [Fact]
    public void A_clock_that_goes_as_it_should_gives_one_pass_a_day_through_both_changes_of_the_clocks()
    {
        var schedule = new PassSchedule(Six);
        schedule.Made(Start);
        int passes = 0;
        for (DateTimeOffset now = Start; now < Start.AddDays(300); now = now.AddMinutes(7))
        {
            if (!schedule.IsDue(now)) continue;
            schedule.Made(now);
            passes++;
        }

        Assert.Equal(300, passes);
    }

    [Fact]
    public void A_start_before_the_time_of_the_pass_does_not_replace_it()
    {
        var schedule = new PassSchedule(Six);
        DateTimeOffset night = DateTimeOffset.Parse("2026-03-02T09:00:00Z");
        schedule.Made(night);
        Assert.False(schedule.IsDue(night.AddHours(2.9)));
        Assert.True(schedule.IsDue(night.AddHours(3)));
    }

    [Fact]
    public void However_the_clock_jumps_no_pass_is_made_twice_and_the_day_on_which_it_goes_right_again_is_not_lost() =>
        Gen.Int[-60 * 24 * 20, 60 * 24 * 20].Array[1, 60].Sample(jumps =>
        {
            var schedule = new PassSchedule(Six);
            var made = new List<(DateOnly, DateOnly)>();
            var judged = new HashSet<DateOnly>();
            DateTimeOffset now = Start;
            Look(now, isStart: true);
            foreach (int minutes in jumps)
            {
                now = now.AddMinutes(minutes);
                Look(now, isStart: false);
            }

            Assert.Equal(made.Count, made.Distinct().Count());
            // From here on it goes as it should: each of the next days is judged, if it was not before.
            for (int hour = 0; hour < 72; hour++) Look(now.AddHours(hour), isStart: false);
            for (int day = 1; day <= 2; day++) Assert.Contains(Six.DayAt(now).AddDays(day), judged);

            void Look(DateTimeOffset at, bool isStart)
            {
                if (!isStart && !schedule.IsDue(at)) return;
                schedule.Made(at);
                made.Add((Six.LastPassDayAt(at), Six.DayAt(at)));
                judged.Add(Six.DayAt(at));
            }
        });
}
