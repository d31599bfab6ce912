using System.ComponentModel;
using System.Reflection;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;
using NJsonSchema;

namespace GddWatch.Configuration.Schemas;

/// <summary>
/// The JSON Schemas by which editors complete and check the two YAML files. They come from the same types and the same table of single values by which
/// the files are read, so that an editor and the program accept the same.
/// </summary>
public static class ConfigurationSchemas
{
    /// <summary>Each schema's file, inside the configuration folder, with its text.</summary>
    public static IReadOnlyDictionary<string, string> All => new Dictionary<string, string>
    {
        ["schemas/region.schema.json"] = Of<RegionFileText>("region.yaml"),
        ["schemas/treatments.schema.json"] = Of<TreatmentsFileText>("treatments.yaml"),
    };

    private static string Of<T>(string title)
        where T : TextGroup
    {
        var root = new JsonSchema { Title = title };
        var groups = new Dictionary<Type, JsonSchema> { [typeof(T)] = root };
        Fill(root, typeof(T), groups, root);
        return root.ToJson().ReplaceLineEndings("\n") + "\n";
    }

    private static void Fill(JsonSchema schema, Type group, Dictionary<Type, JsonSchema> groups, JsonSchema root)
    {
        schema.Type = JsonObjectType.Object;
        schema.Description = group.GetCustomAttribute<DescriptionAttribute>()?.Description;
        schema.AllowAdditionalProperties = false;
        if (group == typeof(ConditionText))
        {
            schema.MinProperties = 1;
            schema.MaxProperties = 1;
        }

        foreach (TextMember member in TextMember.Of(group))
        {
            var property = new JsonSchemaProperty { Description = member.Description };
            Describe(property, member.Property.PropertyType, groups, root);
            schema.Properties.Add(member.Key, property);
            if (member.IsRequired) schema.RequiredProperties.Add(member.Key);
        }
    }

    private static void Describe(JsonSchema schema, Type type, Dictionary<Type, JsonSchema> groups, JsonSchema root)
    {
        if (type.IsSubclassOf(typeof(TextGroup)))
        {
            // A reference drops what stands beside it in this version of JSON Schema, hence the detour that keeps the description.
            schema.OneOf.Add(new JsonSchema { Reference = GroupOf(type, groups, root) });
            return;
        }

        if (type == typeof(AllOrSome))
        {
            var all = new JsonSchema { Type = JsonObjectType.String };
            all.Enumeration.Add("all");
            schema.OneOf.Add(all);
            schema.OneOf.Add(ListOf(typeof(Placed<string>), groups, root));
            return;
        }

        Type inner = type.GetGenericArguments()[0];
        if (type.GetGenericTypeDefinition() == typeof(Placed<>))
        {
            DescribeValue(schema, ScalarKinds.Of(inner));
        }
        else if (type.GetGenericTypeDefinition() == typeof(PlacedList<>))
        {
            schema.Type = JsonObjectType.Array;
            schema.Item = ItemOf(inner, groups, root);
        }
        else
        {
            schema.Type = JsonObjectType.Object;
            schema.AdditionalPropertiesSchema = ItemOf(inner, groups, root);
        }
    }

    private static void DescribeValue(JsonSchema schema, ScalarKind kind)
    {
        schema.Type = kind.Form switch
        {
            ScalarForm.Number => JsonObjectType.Number,
            ScalarForm.Truth => JsonObjectType.Boolean,
            _ => JsonObjectType.String,
        };
        schema.Pattern = kind.Pattern;
        foreach (string word in kind.Words ?? []) schema.Enumeration.Add(word);
    }

    private static JsonSchema ListOf(Type item, Dictionary<Type, JsonSchema> groups, JsonSchema root) =>
        new() { Type = JsonObjectType.Array, Item = ItemOf(item, groups, root) };

    private static JsonSchema ItemOf(Type item, Dictionary<Type, JsonSchema> groups, JsonSchema root)
    {
        if (item.IsSubclassOf(typeof(TextGroup))) return new JsonSchema { Reference = GroupOf(item, groups, root) };
        var schema = new JsonSchema();
        Describe(schema, item, groups, root);
        return schema;
    }

    private static JsonSchema GroupOf(Type group, Dictionary<Type, JsonSchema> groups, JsonSchema root)
    {
        if (groups.TryGetValue(group, out JsonSchema? known)) return known;
        var schema = new JsonSchema();
        groups.Add(group, schema);
        root.Definitions.Add(group.Name[..^"Text".Length], schema);
        Fill(schema, group, groups, root);
        return schema;
    }
}
