namespace GddWatch.Agronomy.Windows;

/// <summary>A window's change to another state.</summary>
/// <param name="Day">The day from which the state holds.</param>
/// <param name="State">The state.</param>
/// <param name="Because">The reason.</param>
public sealed record Transition(DateOnly Day, WindowState State, Because Because);
