using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A message as JSON text, and back: equal in every field.</summary>
internal static class MessageText
{
    // Not the generated reader: it sets a field that the text lacks to null, whatever its default, so a message queued before an update that adds a field would be
    // read with a null in it. This one keeps the default.
    private static readonly JsonSerializerOptions Json = new()
    {
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new NoticeKindWords() },
        // The text stands in the database alone, never inside a page; a degree sign is better read as one than as an escape.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(Message message) => JsonSerializer.Serialize(message, Json);

    /// <exception cref="JsonException">The text is not a message.</exception>
    public static Message Read(string text) => JsonSerializer.Deserialize<Message>(text, Json) ?? throw new JsonException("null where a message belongs");
}

/// <summary>Kinds of notice by their words.</summary>
internal sealed class NoticeKindWords : JsonConverter<NoticeKind>
{
    public override NoticeKind Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        try
        {
            return StoredText.Kind(reader.GetString() ?? "");
        }
        catch (Exception fault) when (fault is FormatException or InvalidOperationException)
        {
            throw new JsonException(fault.Message, fault);
        }
    }

    public override void Write(Utf8JsonWriter writer, NoticeKind value, JsonSerializerOptions options) => writer.WriteStringValue(NoticeKinds.Word(value));
}
