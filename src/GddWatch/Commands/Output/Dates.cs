using System.Globalization;

namespace GddWatch.Commands.Output;

/// <summary>Dates as tables and programs show them.</summary>
internal static class Dates
{
    /// <summary>Such as "2026-04-12".</summary>
    public static string Iso(DateOnly day) => day.ToString("O", CultureInfo.InvariantCulture);

    /// <summary>Such as "Sun 12 Apr".</summary>
    public static string Short(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>Such as "Sun 12 Apr 2026".</summary>
    public static string ShortWithYear(DateOnly day) => day.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture);
}
