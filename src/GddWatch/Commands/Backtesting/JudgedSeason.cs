using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Commands.Backtesting;

/// <summary>That a season of a treatment was judged at a site.</summary>
internal readonly record struct JudgedSeason(Site Site, Treatment Treatment, Season Season)
{
    public static JudgedSeason Of(Window window) => new(window.Site, window.Treatment, window.Season);
}
