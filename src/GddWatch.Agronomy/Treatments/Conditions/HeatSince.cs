using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Heat of the air gathered since a record, from the day after it on.</summary>
/// <param name="Reaches">The value.</param>
/// <param name="Base">The temperature below which nothing develops.</param>
/// <param name="Method">How a day's heat is reckoned.</param>
public sealed record HeatSince(DegreeDays Reaches, Temperature Base, DegreeDayMethod Method);
