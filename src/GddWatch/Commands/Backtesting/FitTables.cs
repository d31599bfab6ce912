using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Quantities;
using GddWatch.Commands.Output;

namespace GddWatch.Commands.Backtesting;

/// <summary>Fits as tables for programs.</summary>
internal static class FitTables
{
    public static ProgramTable Fits(string name, IReadOnlyList<DateFit> fits) => new(
        "fits",
        ["name", "model", "criterion", "dates", "seasons", "sites", "second", "secondValue", "secondLow", "secondHigh", "thresholdUnit", "threshold", "thresholdLow", "thresholdHigh",
            "fittedErrorDays", "yearLeftOutErrorDays", "yearLeftOutBiasDays", "siteLeftOutErrorDays", "meanDateYearLeftOutErrorDays", "meanDateSiteLeftOutErrorDays",
            "nearerThanMeanDateLow", "nearerThanMeanDateHigh", "flatWithinDays", "flatSecondLow", "flatSecondHigh", "flatThresholdLow", "flatThresholdHigh", "closedFormBaseC", "level", "draws", "seed", "snippet"],
        fits.SelectMany(fit => fit.ByCriterion.Select(each =>
        {
            bool best = each == fit.Best;
            return (object?[])
            [
                name, FitModels.InWords(fit.Model, ReadersUnits.Metric), FitModels.InWords(each.Criterion), fit.Events.Count, fit.Years, fit.Sites,
                fit.Model.GridName, each.GridValue, each.GridInterval?.Low, each.GridInterval?.High, fit.Model.ThresholdUnit, each.Threshold, each.ThresholdInterval?.Low, each.ThresholdInterval?.High,
                each.FittedErrorDays, each.YearLeftOutErrorDays, each.YearLeftOutBiasDays, each.SiteLeftOutErrorDays, fit.MeanDate.YearLeftOutErrorDays, fit.MeanDate.SiteLeftOutErrorDays,
                best ? fit.NearerThanMeanDate?.Low : null, best ? fit.NearerThanMeanDate?.High : null,
                best ? fit.Flat.WithinDays : null, best ? fit.Flat.LowestGridValue : null, best ? fit.Flat.HighestGridValue : null, best ? fit.Flat.LowestThreshold : null, best ? fit.Flat.HighestThreshold : null,
                ClosedForm(fit, each.Criterion), Bootstrap.UsualLevel, Bootstrap.UsualDraws, PastSeasons.Seed, FitSnippet.Of(fit.Model.ToCondition(each.GridValue, each.Threshold), ReadersUnits.Metric),
            ];
        })));

    private static double? ClosedForm(DateFit fit, FitCriterion criterion) => criterion switch
    {
        FitCriterion.LeastCoefficientOfVariation => fit.ClosedForm?.LeastCoefficientOfVariationC,
        FitCriterion.LeastDeviationInHeat => fit.ClosedForm?.LeastDeviationInHeatC,
        FitCriterion.LeastDeviationInDays => fit.ClosedForm?.LeastDeviationInDaysC,
        FitCriterion.NoSlope => fit.ClosedForm?.NoSlopeC,
        _ => null,
    };

    public static ProgramTable Events(IReadOnlyList<DateFit> fits) => new(
        "events",
        ["model", "site", "season", "observed", "daysLateWhenLeftOut", "meanDateDaysLateWhenLeftOut"],
        fits.SelectMany(fit => fit.Events.Select((each, i) => (object?[])
        [
            FitModels.InWords(fit.Model, ReadersUnits.Metric), each.Site, each.Season.Year, each.Day, fit.Best.YearLeftOutErrors[i], fit.MeanDate.YearLeftOutErrors[i],
        ])));
}
