using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Windows;

/// <summary>The reason of a day, made when it is read.</summary>
internal sealed record WhyLater(Condition Condition, SeasonView View, DateOnly Day, Because? Before) : Because
{
    private Because Whole => Before is null ? Condition.Why(View, Day) : SeveralBecause.Of([Before, Condition.Why(View, Day)]);

    public override bool RestsOnSoil => Whole.RestsOnSoil;

    public override bool RestsOnFallback => Whole.RestsOnFallback;

    internal override Because Made() => Whole.Made();

    public override string Sentence(ReadersUnits units) => Whole.Sentence(units);

    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => Whole.Figures(units);
}
