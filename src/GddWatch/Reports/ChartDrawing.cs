namespace GddWatch.Reports;

/// <summary>Draws a chart for a light and for a dark page.</summary>
internal sealed class ChartDrawing(Action done, CancellationToken stop)
{
    private static readonly ReportCharts Light = new(ChartTheme.Light);
    private static readonly ReportCharts Dark = new(ChartTheme.Dark);

    public ChartView Draw(Func<ReportCharts, byte[]> draw, string words, string caption)
    {
        stop.ThrowIfCancellationRequested();
        var chart = new ChartView(Address(draw(Light)), Address(draw(Dark)), words, caption);
        done();
        return chart;
    }

    private static string Address(byte[] png) => $"data:image/png;base64,{Convert.ToBase64String(png)}";
}
