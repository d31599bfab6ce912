using System.Globalization;
using System.Text.Json;

namespace GddWatch.Feeds.Services.UsWeather;

/// <summary>A cell of a forecast office's grid.</summary>
internal sealed record GridCell(string Office, int X, int Y)
{
    /// <summary>Its path below the service's address.</summary>
    public string Path => string.Create(CultureInfo.InvariantCulture, $"gridpoints/{Office}/{X},{Y}");

    /// <summary>The cell that a reply about a point names; null where it names none.</summary>
    public static GridCell? Of(JsonElement reply) =>
        reply.Member("properties") is { } properties && properties.Text("gridId") is { Length: > 0 and <= 8 } office && office.All(char.IsAsciiLetterOrDigit)
            && WholeOf(properties, "gridX") is { } x && WholeOf(properties, "gridY") is { } y
            ? new GridCell(office, x, y)
            : null;

    /// <summary>Whether a reply is about this cell.</summary>
    public bool IsOf(JsonElement reply) => Of(reply) == this;

    // Some replies have them as texts.
    private static int? WholeOf(JsonElement properties, string name) => properties.Member(name) switch
    {
        { ValueKind: JsonValueKind.Number } number when number.TryGetInt32(out int whole) => whole,
        { ValueKind: JsonValueKind.String } text when int.TryParse(text.AsText(), NumberStyles.None, CultureInfo.InvariantCulture, out int whole) => whole,
        _ => null,
    };
}
