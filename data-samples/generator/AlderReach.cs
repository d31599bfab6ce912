namespace GddWatch.InventedWeather;

/// <summary>The invented region: five sites, their years and their seed. No such places exist.</summary>
public static class AlderReach
{
    /// <summary>One of fifteen that were tried: the medians of its thirteen years lie well inside what such places see.</summary>
    public const ulong Seed = 8;

    private static readonly DayToDay Inland =
        new(SameDay: 0.72, MaxToMax: 0.61, MinToMin: 0.66, MinToNextMax: 0.50, MaxToNextMin: 0.63);

    private static readonly DayToDay NearTheGulf =
        new(SameDay: 0.48, MaxToMax: 0.60, MinToMin: 0.64, MinToNextMax: 0.34, MaxToNextMin: 0.45);

    public static DateOnly FirstDay { get; } = new(2013, 1, 1);

    public static DateOnly LastDay { get; } = new(2025, 12, 31);

    /// <summary>From the coldest to the mildest winter.</summary>
    public static IReadOnlyList<InventedClimate> Climates { get; } =
    [
        new()
        {
            Id = "quarry-park",
            Number = 2,
            MaximumOnDryDayC = new(14.3, 15.9, 201, 1.6, 114),
            MaximumOnWetDayC = new(13.2, 15.3, 203, 0.6, 118),
            MinimumOnDryDayC = new(2.8, 14.2, 203, 0.9, 121),
            MinimumOnWetDayC = new(4.9, 14.0, 205, 0.9, 121),
            SpreadOfMaximumC = new(4.9, 1.2, 10),
            SpreadOfMinimumC = new(4.7, 1.9, 10),
            Departures = Inland,
            WetAfterDry = new(0.28, 0.05, 146),
            WetAfterWet = new(0.45, 0.05, 73),
            RainOnWetDayMm = new(7.1, 3.8, 209),
        },
        new()
        {
            Id = "north-common",
            Number = 1,
            MaximumOnDryDayC = new(16.2, 15.3, 202, 1.8, 112),
            MaximumOnWetDayC = new(14.9, 15.0, 203, 1.0, 112),
            MinimumOnDryDayC = new(4.0, 14.2, 202, 0.8, 116),
            MinimumOnWetDayC = new(5.9, 14.0, 204, 0.8, 116),
            SpreadOfMaximumC = new(5.1, 1.6, 8),
            SpreadOfMinimumC = new(4.7, 1.6, 8),
            Departures = Inland,
            WetAfterDry = new(0.24, 0.06, 123),
            WetAfterWet = new(0.44, 0.06, 134),
            RainOnWetDayMm = new(8.0, 4.1, 209),
        },
        new()
        {
            Id = "mill-green",
            Number = 3,
            MaximumOnDryDayC = new(18.1, 13.1, 202, 1.2, 108),
            MaximumOnWetDayC = new(17.6, 11.7, 203, 0.6, 108),
            MinimumOnDryDayC = new(6.8, 12.1, 203, 0.5, 108),
            MinimumOnWetDayC = new(9.0, 11.3, 204, 0.4, 108),
            SpreadOfMaximumC = new(4.4, 1.2, 8),
            SpreadOfMinimumC = new(4.2, 1.2, 8),
            Departures = Inland,
            WetAfterDry = new(0.29, 0.07, 72),
            WetAfterWet = new(0.50, 0.05, 95),
            RainOnWetDayMm = new(9.9, 1.3, 170),
        },
        new()
        {
            Id = "pecan-court",
            Number = 4,
            MaximumOnDryDayC = new(24.5, 9.8, 200, 1.5, 83),
            MaximumOnWetDayC = new(24.0, 8.3, 200, 0.4, 68),
            MinimumOnDryDayC = new(11.4, 10.8, 201, 1.2, 56),
            MinimumOnWetDayC = new(14.6, 8.3, 202, 0.7, 64),
            SpreadOfMaximumC = new(3.9, 2.1, 16),
            SpreadOfMinimumC = new(4.1, 2.3, 12),
            Departures = NearTheGulf,
            WetAfterDry = new(0.23, 0.04, 106),
            WetAfterWet = new(0.47, 0.01, 352),
            RainOnWetDayMm = new(12.8, 3.0, 63),
        },
        new()
        {
            Id = "harbor-lawn",
            Number = 5,
            MaximumOnDryDayC = new(25.1, 8.4, 200, 1.0, 86),
            MaximumOnWetDayC = new(25.1, 6.7, 203, 0.6, 91),
            MinimumOnDryDayC = new(12.9, 9.7, 200, 1.1, 49),
            MinimumOnWetDayC = new(16.1, 7.2, 204, 0.7, 84),
            SpreadOfMaximumC = new(3.3, 2.0, 9),
            SpreadOfMinimumC = new(4.1, 2.6, 19),
            Departures = NearTheGulf,
            WetAfterDry = new(0.24, 0.04, 170),
            WetAfterWet = new(0.48, 0.08, 190),
            RainOnWetDayMm = new(13.4, 0.9, 208),
        },
    ];
}
