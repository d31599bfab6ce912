namespace GddWatch.Validation.Fitting;

/// <summary>One constant that the fit may move.</summary>
/// <param name="Name">As in code.</param>
/// <param name="InCode">Its value in code.</param>
/// <param name="PriorMean">Where it is drawn to, weakly, and where a search starts.</param>
/// <param name="PriorScale">How far it may well lie from there.</param>
/// <param name="Lowest">It is never moved below this.</param>
internal sealed record FittedConstant(string Name, double InCode, double PriorMean, double PriorScale, double Lowest = double.NegativeInfinity);
