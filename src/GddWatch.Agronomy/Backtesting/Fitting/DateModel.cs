using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>
/// A way to foretell a date that has two constants: a threshold, and one more (a base temperature, or over how many days is averaged). The date is the first day of the season on
/// which a course has reached the threshold. One case a file.
/// </summary>
public abstract record DateModel
{
    private protected DateModel()
    {
    }

    /// <summary>The values of the second constant that are tried, ascending.</summary>
    public abstract IReadOnlyList<double> Grid { get; }

    /// <summary>What the second constant is, with its unit, such as "base [°C]".</summary>
    public abstract string GridName { get; }

    /// <summary>The steps in which the threshold is tried, in its own unit.</summary>
    public abstract double ThresholdStep { get; }

    /// <summary>The unit of the threshold, such as "°C-days".</summary>
    public abstract string ThresholdUnit { get; }

    /// <summary>Whether the course is a heat sum, so that the published criteria apply.</summary>
    public bool IsHeatSum => this is HeatSumModel;

    /// <summary>Whether the date comes when the course falls to the threshold rather than rises to it.</summary>
    public abstract bool Falls { get; }

    /// <summary>The course at the end of each day of the site's weather; NaN where it is not known. What must be held for several days is held in it already.</summary>
    public abstract double[] Column(SiteMetrics metrics, double gridValue);

    /// <summary>The condition that has these constants.</summary>
    public abstract Condition ToCondition(double gridValue, double threshold);
}
