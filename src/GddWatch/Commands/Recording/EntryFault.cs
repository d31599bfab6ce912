namespace GddWatch.Commands.Recording;

/// <summary>What is wrong with one part of an entry.</summary>
/// <param name="Part">The part, by the name of its column; an option has two hyphens before it.</param>
/// <param name="Found">What was written; null where nothing was.</param>
/// <param name="Problem">What is wrong, in a sentence.</param>
/// <param name="Accepted">What would be accepted.</param>
internal sealed record EntryFault(string Part, string? Found, string Problem, string Accepted);
