using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace GddWatch.Commands;

/// <summary>An option that takes a day, written as 2026-04-12 and in no other way, so that nobody's 4 December is another's 12 April.</summary>
internal static class DayOption
{
    public static Option<DateOnly?> Named(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "DATE",
        CustomParser = argument => Read(name, argument),
    };

    private static DateOnly? Read(string name, ArgumentResult argument)
    {
        string text = argument.Tokens.Count == 1 ? argument.Tokens[0].Value : "";
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)) return day;
        argument.AddError($"{name}: \"{text}\" is not a day as it is written here. Accepted: year, month and day with hyphens, such as 2026-04-12.");
        return null;
    }
}
