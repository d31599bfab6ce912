using System.Collections.Frozen;
using Fluid;
using Fluid.Ast;
using Fluid.Values;

namespace GddWatch.Notices.Composing;

/// <summary>
/// What a mail template may do. Templates are edited by people, and what they show comes from feeds, journals and names: so no file is read, work and length are
/// limited, and everything shown is encoded, lists too (left to itself the template engine writes a list out unencoded).
/// </summary>
internal static class TemplateRules
{
    public const int MostSteps = 100_000;
    public const int LongestText = 100_000;

    /// <summary>So much text may go through filters while one part of a mail is made. A mail needs a few ten thousand letters; this many take well under a second.</summary>
    public const int MostWork = 20_000_000;

    private const string Shown = "shown";
    private const string Work = "work";

    public static readonly FrozenSet<string> Tags = FrozenSet.Create("assign", "if", "unless", "case", "for", "break", "continue", "comment", "raw", "#");

    public static readonly FrozenSet<string> Filters = FrozenSet.Create(
        "append", "at_least", "at_most", "capitalize", "default", "divided_by", "downcase", "first", "join", "last", "minus", "modulo", "plus", "prepend", "remove",
        "replace", "size", "slice", "strip", "times", "truncate", "truncatewords", "unbroken", "upcase");

    public static FluidParser Parser()
    {
        var parser = new FluidParser(new FluidParserOptions { AllowFunctions = false, AllowLiquidTag = false });
        foreach (string tag in parser.RegisteredTags.Keys.Where(tag => !Tags.Contains(tag)).ToList()) parser.RegisteredTags.Remove(tag);
        return parser;
    }

    public static TemplateOptions Options()
    {
        var options = new TemplateOptions
        {
            MaxSteps = MostSteps,
            MaxRecursion = 20,
            StrictVariables = true,
            StrictFilters = true,
            TimeZone = TimeZoneInfo.Utc,
            // The same message must give the same mail: no template reads the clock.
            Now = () => DateTimeOffset.UnixEpoch,
        };
        options.MemberAccessStrategy.MemberNameStrategy = MemberNameStrategies.SnakeCase;
        options.MemberAccessStrategy.Register<MailView>();
        options.MemberAccessStrategy.Register<NoticeView>();
        options.MemberAccessStrategy.Register<FigureView>();
        options.MemberAccessStrategy.Register<BulletinView>();
        options.MemberAccessStrategy.Register<BulletinSiteView>();
        options.MemberAccessStrategy.Register<BulletinLineView>();
        foreach ((string name, FilterDelegate filter) in options.Filters.ToList())
        {
            options.Filters.Remove(name);
            if (Filters.Contains(name)) options.Filters.AddFilter(name, Limited(filter));
        }
        options.Filters.AddFilter("unbroken", (input, _, _) => new ValueTask<FluidValue>(new StringValue(Unbroken.Of(input.ToStringValue()))));
        options.Filters.AddFilter(Shown, (input, _, _) => new ValueTask<FluidValue>(AsShown(input)));
        return options;
    }

    /// <summary>The template with every output led through the one filter that turns lists and objects into text, which is then encoded.</summary>
    public static IFluidTemplate Guarded(IFluidTemplate template, out bool countsThroughRange)
    {
        var guard = new OutputGuard();
        IFluidTemplate guarded = guard.VisitTemplate(template);
        countsThroughRange = guard.MetRange;
        return guarded;
    }

    private static FilterDelegate Limited(FilterDelegate filter) => async (input, arguments, context) =>
    {
        FluidValue value = await filter(input, arguments, context);
        if (value.Type != FluidValues.String) return value;
        int length = value.ToStringValue().Length;
        // Doubling a text over and over grows faster than any limit on steps.
        if (length > LongestText) throw new InvalidOperationException($"A text grew beyond {LongestText} characters.");
        // A long text, handled at every step, takes its time within any limit on steps.
        long work = length + (context.AmbientValues.TryGetValue(Work, out object? done) ? (long)done : 0);
        context.AmbientValues[Work] = work;
        return work > MostWork ? throw new InvalidOperationException($"The template worked through more than {MostWork / 1_000_000} million characters.") : value;
    };

    private static FluidValue AsShown(FluidValue value) => value switch
    {
        ArrayValue list => new StringValue(string.Join(", ", list.Values.Select(each => each.ToStringValue()))),
        _ when value.Type is FluidValues.String or FluidValues.Number or FluidValues.Boolean or FluidValues.Nil or FluidValues.Blank or FluidValues.Empty => value,
        _ => new StringValue(value.ToStringValue()),
    };

    private sealed class OutputGuard : AstRewriter
    {
        public bool MetRange { get; private set; }

        protected override Statement VisitOutputStatement(OutputStatement outputStatement) =>
            new OutputStatement(new FilterExpression(outputStatement.Expression, Shown, []));

        protected override Expression VisitRangeExpression(RangeExpression rangeExpression)
        {
            // A range is laid out in memory before the first step is counted.
            MetRange = true;
            return rangeExpression;
        }
    }
}
