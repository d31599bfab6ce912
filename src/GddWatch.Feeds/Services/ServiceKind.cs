namespace GddWatch.Feeds.Services;

/// <summary>The open weather services that can be asked; none of them needs a key.</summary>
public enum ServiceKind
{
    /// <summary>Daily summaries of GHCN-Daily stations, from the Access Data Service of NOAA's National Centers for Environmental Information.</summary>
    NoaaDailySummaries,

    /// <summary>The gridded forecast of the US National Weather Service.</summary>
    UsWeatherService,

    /// <summary>Forecasts and reanalyses for any place on earth, from Open-Meteo.</summary>
    OpenMeteo,
}
