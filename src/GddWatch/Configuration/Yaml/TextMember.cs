using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Reflection;
using System.Text.Json;
using GddWatch.Configuration.Texts;

namespace GddWatch.Configuration.Yaml;

/// <summary>One key of a group, as its type describes it. Reading and the editors' schemas both go by this.</summary>
/// <param name="Key">The key, in lower case with hyphens.</param>
/// <param name="Property">Where its value goes.</param>
/// <param name="Description">What it means, in a sentence.</param>
/// <param name="IsRequired">Whether the group is incomplete without it.</param>
/// <param name="MayBeEmpty">Whether its texts are taken exactly as written.</param>
public sealed record TextMember(string Key, PropertyInfo Property, string Description, bool IsRequired, bool MayBeEmpty)
{
    /// <summary>The keys of a type of group, in the order of its file.</summary>
    public static IReadOnlyList<TextMember> Of(Type group) =>
    [
        .. group.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(property => property.GetCustomAttribute<DescriptionAttribute>() is not null)
            .Select(property => new TextMember(
                JsonNamingPolicy.KebabCaseLower.ConvertName(property.Name),
                property,
                property.GetCustomAttribute<DescriptionAttribute>()!.Description,
                property.GetCustomAttribute<RequiredAttribute>() is not null,
                property.GetCustomAttribute<MayBeEmptyAttribute>() is not null)),
    ];
}
