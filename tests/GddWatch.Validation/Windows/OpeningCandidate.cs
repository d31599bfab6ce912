using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Validation.Windows;

/// <summary>An opening of the spring pre-emergent that could stand in the treatments file.</summary>
/// <param name="Name">In words.</param>
/// <param name="Opens">The condition.</param>
internal sealed record OpeningCandidate(string Name, Condition Opens)
{
    private static readonly Depth AtFive = Depth.FromCentimetres(5);

    /// <summary>As it stands in the treatments file.</summary>
    private static readonly WhereAlreadySo InMildWinters = new(28, Temperature.FromFahrenheit(55), AnnualDay.Of(2, 15), 31);

    /// <summary>The guard by the usual date on every day of the season and not only in mild winters.</summary>
    private static readonly WhereAlreadySo Always = InMildWinters with { StartDays = 212 };

    /// <summary>The opening in use before the air had a say: what a candidate must not be later than.</summary>
    public static OpeningCandidate Before { get; } = new("50 °F 3 days, soil 15 days 46.4", new AllOf([Crossing(5, 50, new(3, 3)), Soil(15, 46.4)]));

    /// <summary>What is tried, the simple ones first.</summary>
    public static IEnumerable<OpeningCandidate> All()
    {
        yield return Before;
        yield return new("50 °F 3 days alone", Crossing(5, 50, new(3, 3)));
        foreach (OpeningCandidate each in OneCondition().Concat(Companions()).Concat(OrWarmItself()).Concat(Guarded())) yield return each;
    }

    private static IEnumerable<OpeningCandidate> OneCondition()
    {
        foreach (int days in (int[])[5, 7, 10, 14, 21])
        {
            foreach (int held in (int[])[1, 3, 5, 7])
            {
                foreach (int fahrenheit in (int[])[48, 49, 50, 51])
                {
                    if ((days, held, fahrenheit) != (5, 3, 50)) yield return new($"{days}-day mean {fahrenheit} °F {held} days", Crossing(days, fahrenheit, new(held, held)));
                }
            }
        }

        foreach ((int held, int of) in ((int, int)[])[(5, 7), (7, 10), (10, 14)]) yield return new($"50 °F {held} of {of} days", Crossing(5, 50, new(held, of)));
    }

    private static IEnumerable<OpeningCandidate> Companions()
    {
        foreach (int crossing in (int[])[48, 49, 50])
        {
            foreach (int days in (int[])[10, 15, 21, 30])
            {
                foreach (int fahrenheit in (int[])[43, 44, 45, 46, 47, 48, 49, 50]) yield return With(crossing, $"soil {days} days {fahrenheit}", Soil(days, fahrenheit));
                foreach (int fahrenheit in (int[])[40, 42, 43, 44, 45, 46, 47, 48]) yield return With(crossing, $"air {days} days {fahrenheit}", Air(days, fahrenheit));
            }

            foreach (int sum in (int[])[25, 50, 75, 100, 125, 150, 200]) yield return With(crossing, $"soil sum {sum} above 5 °C", Sum(5, sum));
            foreach (int sum in (int[])[5, 10, 20, 30]) yield return With(crossing, $"soil sum {sum} above 10 °C", Sum(10, sum));
        }

        foreach (int sum in (int[])[75, 100, 125, 150, 200]) yield return new($"soil sum {sum} above 5 °C alone", Sum(5, sum));
    }

    /// <summary>The air has its say only until the soil is so warm by itself that there is nothing to wait for.</summary>
    private static IEnumerable<OpeningCandidate> OrWarmItself()
    {
        foreach (int crossing in (int[])[48, 49, 50])
        {
            foreach (int days in (int[])[15, 21, 30])
            {
                foreach (int fahrenheit in (int[])[43, 44, 45, 46, 47])
                {
                    foreach (int warm in (int[])[53, 54, 55])
                    {
                        Condition itself = new SoilTemperatureCondition(AtFive, 5, Passing.RisesAbove, Temperature.FromFahrenheit(warm), new(3, 3));
                        yield return With(crossing, $"air {days} days {fahrenheit} or soil {warm} 3 days", new AnyOf([Air(days, fahrenheit), itself]));
                    }
                }
            }
        }
    }

    private static IEnumerable<OpeningCandidate> Guarded()
    {
        foreach (int before in (int[])[14, 21, 28, 35])
        {
            yield return new($"50 °F 3 days, always within {before} days of usual", Crossing(5, 50, new(3, 3), Always with { DaysBeforeUsual = before }));
            yield return new($"50 °F 3 days, soil 15 days 46.4, always within {before} days of usual", new AllOf([Crossing(5, 50, new(3, 3), Always with { DaysBeforeUsual = before }), Soil(15, 46.4)]));
            yield return new($"50 °F 3 days, air 21 days 44, always within {before} days of usual", new AllOf([Crossing(5, 50, new(3, 3), Always with { DaysBeforeUsual = before }), Air(21, 44)]));
        }
    }

    private static OpeningCandidate With(int crossing, string name, Condition companion) =>
        new($"{crossing} °F 3 days, {name}", new AllOf([Crossing(5, crossing, new(3, 3)), companion]));

    private static SoilTemperatureCondition Crossing(int days, double fahrenheit, Holding holding, WhereAlreadySo? already = null) =>
        new(AtFive, days, Passing.RisesAbove, Temperature.FromFahrenheit(fahrenheit), holding, already ?? InMildWinters);

    private static SoilTemperatureCondition Soil(int days, double fahrenheit) => new(AtFive, days, Passing.RisesAbove, Temperature.FromFahrenheit(fahrenheit), new(1, 1));

    private static AirTemperatureCondition Air(int days, double fahrenheit) => new(AirValue.Mean, days, Temperature.FromFahrenheit(fahrenheit), null, new(1, 1));

    private static HeatSumCondition Sum(double baseC, double celsiusDays) =>
        new(new HeatSumDefinition(Temperature.FromCelsius(baseC), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), AtFive), DegreeDays.FromCelsiusDays(celsiusDays));
}
