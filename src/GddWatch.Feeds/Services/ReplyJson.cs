using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services;

/// <summary>Looks into JSON without ever throwing for what stands in it.</summary>
internal static class ReplyJson
{
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    /// <summary>The document; null with a fault where it is none.</summary>
    public static JsonDocument? Parse(string source, ReadOnlyMemory<byte> body, FaultList faults)
    {
        ReadOnlyMemory<byte> text = body.Span.StartsWith(Encoding.UTF8.Preamble) ? body[Encoding.UTF8.Preamble.Length..] : body;
        try
        {
            // The package finds bytes that are not UTF-8 only when it is asked for the text in which they stand.
            if (Utf8.IsValid(text.Span)) return JsonDocument.Parse(text, Strict);
        }
        catch (Exception failure) when (failure is JsonException or InvalidOperationException)
        {
            // Told below. The second is for names with half a surrogate pair.
        }

        faults.Add(FaultKind.Reply, ReplyFaults.NotJson(source, Start(text.Span)));
        return null;
    }

    /// <summary>The beginning of a text, for showing it.</summary>
    public static string Start(ReadOnlySpan<byte> text) => Encoding.UTF8.GetString(text[..Math.Min(text.Length, 100)]);

    /// <summary>A member, or null where the element is no object or has no such member.</summary>
    public static JsonElement? Member(this JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement member) ? member : null;

    /// <summary>A member that is a text, or null. A text that is not valid Unicode is none.</summary>
    public static string? Text(this JsonElement element, string name) => element.Member(name)?.AsText();

    /// <summary>The element as a text, or null where it is none.</summary>
    public static string? AsText(this JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.String) return null;
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            // Half of a surrogate pair, written as an escape.
            return null;
        }
    }

    /// <summary>A member that is a finite number, or null.</summary>
    public static double? Number(this JsonElement element, string name) => element.Member(name)?.AsNumber();

    /// <summary>The element as a finite number, or null where it is none; a text is none.</summary>
    public static double? AsNumber(this JsonElement element) =>
        element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double value) && double.IsFinite(value) ? value : null;

    /// <summary>The element as it is written, for showing it.</summary>
    public static string Shown(this JsonElement element)
    {
        string raw = element.GetRawText();
        return raw.Length <= 100 ? raw : raw[..100];
    }

    /// <summary>A date in the form yyyy-MM-dd, or null.</summary>
    public static DateOnly? AsDay(string? text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;
}
