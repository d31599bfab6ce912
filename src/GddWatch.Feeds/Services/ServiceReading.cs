using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services;

/// <summary>What one service answered for one site.</summary>
/// <param name="Request">What was wanted.</param>
/// <param name="Observed">The good days before today; null where there is none.</param>
/// <param name="Forecast">The days from today on; null where the service has none, or none that can be believed.</param>
/// <param name="Position">Where the service says that its values are of; null where it does not tell.</param>
/// <param name="Faults">What was wrong.</param>
public sealed record ServiceReading(ServiceRequest Request, DailySeries? Observed, Forecast? Forecast, StationPosition? Position, IReadOnlyList<Fault> Faults);
