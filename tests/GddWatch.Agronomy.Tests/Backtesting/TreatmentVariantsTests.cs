using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

public sealed class TreatmentVariantsTests
{
    private static readonly Treatment Task = Some.Treatment(new AllOf([new AnyOf([Some.Heat(100), Some.SoilRises(10)]), new CalendarGuard(AnnualDay.Of(3, 1), null)]));

    [Theory]
    [InlineData(VariedPart.SoilThreshold, 10, 12)]
    [InlineData(VariedPart.AveragingDays, 5, 3)]
    [InlineData(VariedPart.SoilDepth, 5, 10)]
    [InlineData(VariedPart.Heat, 100, 150)]
    [InlineData(VariedPart.BaseTemperature, 10, 8)]
    public void One_part_of_the_opening_is_varied_and_nothing_else(VariedPart part, double now, double then)
    {
        Assert.Equal(now, TreatmentVariants.InUse(Task, part)!.Value, 1e-9);
        Treatment variant = TreatmentVariants.With(Task, [new Variation(part, then)])!;
        Assert.Equal(then, TreatmentVariants.InUse(variant, part)!.Value, 1e-9);
        Assert.Equal(Task.Opens.Explain(ReadersUnits.Metric), TreatmentVariants.With(variant, [new Variation(part, now)])!.Opens.Explain(ReadersUnits.Metric));
        Assert.NotEqual(Task.Opens.Explain(ReadersUnits.Metric), variant.Opens.Explain(ReadersUnits.Metric));
    }

    [Fact]
    public void Several_parts_are_varied_together()
    {
        Treatment variant = TreatmentVariants.With(Task, [new Variation(VariedPart.SoilThreshold, 9), new Variation(VariedPart.Heat, 80)])!;
        Assert.Equal(9, TreatmentVariants.InUse(variant, VariedPart.SoilThreshold)!.Value, 1e-9);
        Assert.Equal(80, TreatmentVariants.InUse(variant, VariedPart.Heat)!.Value, 1e-9);
    }

    [Fact]
    public void What_an_opening_does_not_have_cannot_be_varied()
    {
        Assert.Null(TreatmentVariants.InUse(Task, VariedPart.AirThreshold));
        Assert.Null(TreatmentVariants.With(Task, [new Variation(VariedPart.AirThreshold, 10)]));
        Assert.Null(TreatmentVariants.With(Task, [new Variation(VariedPart.Heat, 0)]));
    }

    [Fact]
    public void A_higher_threshold_never_opens_a_rising_window_earlier()
    {
        var years = Some.SmoothYears(2001, 3, anomalyC: day => 4 * Math.Sin(day.DayNumber * 0.35));
        Treatment task = Some.Treatment(Some.SoilRises(10));
        DateOnly[] openings = [.. Enumerable.Range(6, 10).Select(c =>
            Some.Judge(TreatmentVariants.With(task, [new Variation(VariedPart.SoilThreshold, c)])!, years, Some.Site(), 2002).FirstOpening!.Day)];
        Assert.Equal(openings.Order(), openings);
        Assert.NotEqual(openings[0], openings[^1]);
    }
}
