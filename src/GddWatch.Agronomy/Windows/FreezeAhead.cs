namespace GddWatch.Agronomy.Windows;

/// <summary>A usual freeze that lies ahead.</summary>
/// <param name="What">Which one.</param>
/// <param name="Words">When, and where that is known from.</param>
public sealed record FreezeAhead(string What, string Words);
