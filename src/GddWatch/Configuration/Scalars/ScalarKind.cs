using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Scalars;

/// <summary>A kind of single value: how its text is read, and what an editor should know of it.</summary>
/// <param name="Accepted">What is accepted, with examples.</param>
/// <param name="Form">The form in JSON.</param>
/// <param name="Pattern">The pattern of the text, null where the form says enough.</param>
/// <param name="Words">The words it is one of, null where it is not one of a few.</param>
/// <param name="Read">Reads a text.</param>
public sealed record ScalarKind(string Accepted, ScalarForm Form, string? Pattern, IReadOnlyList<string>? Words, Func<string, ScalarReading> Read)
{
    /// <summary>A kind that is one of a few words.</summary>
    public static ScalarKind OneOf<T>(IReadOnlyDictionary<string, T> words)
        where T : notnull
    {
        string[] known = [.. words.Keys];
        return new ScalarKind($"one of {string.Join(", ", known)}", ScalarForm.Text, null, known, text => words.TryGetValue(text, out T? value)
            ? ScalarReading.Of(value)
            : ScalarReading.Refused($"\"{text}\" is not a word that is known here.", NearestWord.Hint(text, known)));
    }
}
