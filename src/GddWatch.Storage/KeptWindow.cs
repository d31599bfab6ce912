using GddWatch.Agronomy.Windows;

namespace GddWatch.Storage;

/// <summary>A window as it was judged last.</summary>
public sealed record KeptWindow
{
    /// <summary>The site's id.</summary>
    public required string Site { get; init; }

    /// <summary>The treatment's id.</summary>
    public required string Treatment { get; init; }

    /// <summary>The year in which the season begins.</summary>
    public required int Season { get; init; }

    /// <summary>Its state.</summary>
    public required WindowState State { get; init; }

    /// <summary>Since when it is in that state.</summary>
    public required DateOnly Since { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>The day it first opened this season, or null.</summary>
    public DateOnly? Opened { get; init; }

    /// <summary>The day it went past its best, or null.</summary>
    public DateOnly? PastBest { get; init; }

    /// <summary>The day it closed last after opening, or null.</summary>
    public DateOnly? ClosedOn { get; init; }

    /// <summary>The day as of which it was judged.</summary>
    public required DateOnly JudgedOn { get; init; }

    /// <summary>The last day whose weather was known then; null where there was none.</summary>
    public DateOnly? WeatherThrough { get; init; }

    /// <summary>The fingerprint of the configuration under which it was judged.</summary>
    public required string Configuration { get; init; }

    /// <summary>What the last change of configuration changed here, or null.</summary>
    public string? ConfigurationNote { get; init; }
}
