namespace GddWatch.InventedWeather;

/// <summary>
/// What the weather of one invented site is drawn from. Temperatures in °C, amounts in mm on a wet day, chances as
/// fractions of 1. Each number is a rounded guess near the means, spreads and day-to-day correlations of real stations in
/// such a climate, then moved towards what lawn advisers of such places expect; README.md beside the files tells more.
/// </summary>
public sealed record InventedClimate
{
    /// <summary>The site's id and the name of its file.</summary>
    public required string Id { get; init; }

    /// <summary>Chooses the streams of chance, so that sites are independent of each other.</summary>
    public required ulong Number { get; init; }

    public required SeasonalCurve MaximumOnDryDayC { get; init; }
    public required SeasonalCurve MaximumOnWetDayC { get; init; }
    public required SeasonalCurve MinimumOnDryDayC { get; init; }
    public required SeasonalCurve MinimumOnWetDayC { get; init; }

    /// <summary>Standard deviation of the maximum around its seasonal mean.</summary>
    public required SeasonalCurve SpreadOfMaximumC { get; init; }

    /// <summary>Standard deviation of the minimum around its seasonal mean.</summary>
    public required SeasonalCurve SpreadOfMinimumC { get; init; }

    public required DayToDay Departures { get; init; }

    /// <summary>Chance of a wet day after a dry one.</summary>
    public required SeasonalCurve WetAfterDry { get; init; }

    /// <summary>Chance of a wet day after a wet one.</summary>
    public required SeasonalCurve WetAfterWet { get; init; }

    public required SeasonalCurve RainOnWetDayMm { get; init; }

    /// <summary>The share of wet days to which the chain settles: p(wet after dry) / (1 + p(wet after dry) - p(wet after wet)).</summary>
    public double WetShareOn(DateOnly date) => WetAfterDry.On(date) / (1 + WetAfterDry.On(date) - WetAfterWet.On(date));

    public double MeanMaximumC(DateOnly date, bool wet) => (wet ? MaximumOnWetDayC : MaximumOnDryDayC).On(date);

    public double MeanMinimumC(DateOnly date, bool wet) => (wet ? MinimumOnWetDayC : MinimumOnDryDayC).On(date);
}
