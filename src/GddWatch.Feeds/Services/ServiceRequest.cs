using GddWatch.Agronomy.Places;

namespace GddWatch.Feeds.Services;

/// <summary>What one site wants of one service: the observed days from <paramref name="From"/> to the day before <paramref name="Today"/>, and the forecast from today on.</summary>
/// <param name="Site">The site.</param>
/// <param name="Feed">The service.</param>
/// <param name="From">The first observed day that is wanted; today or later where none is.</param>
/// <param name="Today">Today in the site's calendar.</param>
public sealed record ServiceRequest(Site Site, ServiceFeedDefinition Feed, DateOnly From, DateOnly Today);
