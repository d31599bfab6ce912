using System.Text.Encodings.Web;
using System.Text.Unicode;
using Fluid;

namespace GddWatch.Reports;

/// <summary>Puts a report into its page. All that is shown is encoded.</summary>
internal static class ReportTemplate
{
    private const string Resource = "season.html.liquid";

    public static string Render(ReportView report)
    {
        var options = new TemplateOptions { StrictVariables = true, TimeZone = TimeZoneInfo.Utc, Now = () => DateTimeOffset.UnixEpoch };
        options.MemberAccessStrategy.MemberNameStrategy = MemberNameStrategies.SnakeCase;
        options.MemberAccessStrategy.Register<ReportView>();
        options.MemberAccessStrategy.Register<TreatmentView>();
        options.MemberAccessStrategy.Register<SiteView>();
        options.MemberAccessStrategy.Register<ChartView>();
        options.MemberAccessStrategy.Register<TableView>();
        options.MemberAccessStrategy.Register<RowView>();
        options.MemberAccessStrategy.Register<WordView>();
        if (!new FluidParser(new FluidParserOptions { AllowFunctions = true }).TryParse(Source(), out IFluidTemplate template, out string error)) throw new InvalidOperationException($"The template of the report is broken: {error}");
        var context = new TemplateContext(options);
        context.SetValue("report", report);
        return template.Render(context, HtmlEncoder.Create(UnicodeRanges.All)).ReplaceLineEndings("\n");
    }

    private static string Source()
    {
        using Stream stream = typeof(ReportTemplate).Assembly.GetManifestResourceStream(Resource) ?? throw new InvalidOperationException("The template of the report is not in the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
