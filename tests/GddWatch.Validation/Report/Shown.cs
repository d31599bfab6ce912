namespace GddWatch.Validation.Report;

/// <summary>How figures are written in the report.</summary>
internal static class Shown
{
    public static string Plain(double value, int digits = 2) => double.IsNaN(value) ? "–" : value.ToString("F" + digits);

    /// <summary>With its sign always shown.</summary>
    public static string Signed(double value, int digits = 2)
    {
        if (double.IsNaN(value)) return "–";
        string text = Math.Abs(value).ToString("F" + digits);
        return (value < 0 && text.Trim('0', '.').Length > 0 ? "−" : "+") + text;
    }

    public static string Share(double share) => double.IsNaN(share) ? "–" : (share * 100).ToString("F0") + "\u00a0%";
}
