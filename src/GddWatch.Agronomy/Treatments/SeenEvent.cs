namespace GddWatch.Agronomy.Treatments;

/// <summary>Something seen outdoors that says whether a window opened at the right time.</summary>
/// <param name="What">What is seen, as in the journal, such as "first-seedlings".</param>
/// <param name="OpensBeforeDays">How long before it the window should open [days]; 0 for the day itself.</param>
public sealed record SeenEvent(string What, int OpensBeforeDays);
