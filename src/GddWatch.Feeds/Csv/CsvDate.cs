using System.Globalization;
using System.Text;

namespace GddWatch.Feeds.Csv;

/// <summary>Reads dates of one pattern. A year of two digits is the latest such year up to today.</summary>
internal sealed class CsvDate
{
    private const int LongestDate = 64;
    private readonly string format;
    private readonly bool hasTime;
    private readonly DateTimeFormatInfo culture;

    public CsvDate(string format, DateOnly today)
    {
        this.format = format;
        hasTime = format.AsSpan().IndexOfAny('H', 'h') >= 0;
        culture = (DateTimeFormatInfo)DateTimeFormatInfo.InvariantInfo.Clone();
        culture.Calendar = new GregorianCalendar { TwoDigitYearMax = Math.Max(today.Year, 100) };
    }

    /// <summary>What is accepted, in words.</summary>
    public string Accepted => $"a date of the calendar in the form {format}.";

    /// <summary>Whether a date survives being written and read in this form. .NET would read "yyyy-mm-dd" without a word, minutes for months, all days in January.</summary>
    public bool IsWholeDate
    {
        get
        {
            DateOnly lateLastYear = new(culture.Calendar.TwoDigitYearMax - 1, 11, 25);
            try
            {
                return TryRead(lateLastYear.ToDateTime(TimeOnly.MinValue).ToString(format, culture), out DateOnly again) && again == lateLastYear;
            }
            catch (FormatException)
            {
                return false;
            }
        }
    }

    public bool TryRead(ReadOnlySpan<byte> text, out DateOnly day)
    {
        day = default;
        if (text.Length is 0 or > LongestDate) return false;
        Span<char> letters = stackalloc char[LongestDate];
        int count = Encoding.UTF8.GetChars(text, letters);
        return TryRead(letters[..count], out day);
    }

    /// <summary>The year of a text that would be a date if its year were a leap year: 29 February of a common year.</summary>
    public int? YearOfImpossible29February(string text)
    {
        for (int at = text.IndexOf("29", StringComparison.Ordinal); at >= 0; at = text.IndexOf("29", at + 1, StringComparison.Ordinal))
        {
            string earlier = $"{text[..at]}28{text[(at + 2)..]}";
            if (TryRead(earlier, out DateOnly day) && day is { Month: 2, Day: 28 }) return day.Year;
        }

        return null;
    }

    private bool TryRead(ReadOnlySpan<char> text, out DateOnly day)
    {
        if (!hasTime) return DateOnly.TryParseExact(text, format, culture, DateTimeStyles.None, out day);
        bool isDate = DateTime.TryParseExact(text, format, culture, DateTimeStyles.None, out DateTime time);
        day = DateOnly.FromDateTime(time);
        return isDate;
    }
}
