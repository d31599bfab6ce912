using System.Net;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>What came of a request: a body that may be looked into, or a fault.</summary>
/// <param name="Body">The JSON, not yet looked into; empty where there is a fault.</param>
/// <param name="Fault">Why there is none; null where there is.</param>
/// <param name="Status">What the service answered last; null where it did not.</param>
/// <param name="Address">Where the body came from in the end; null where there is none.</param>
internal sealed record FetchedReply(ReadOnlyMemory<byte> Body, Fault? Fault, HttpStatusCode? Status, Uri? Address = null);
