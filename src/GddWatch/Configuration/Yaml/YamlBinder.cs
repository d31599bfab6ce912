using GddWatch.Configuration.Scalars;

namespace GddWatch.Configuration.Yaml;

/// <summary>
/// Puts a YAML tree into the types that describe the files, member by member, and gathers what does not fit: unknown and missing keys, a list where a
/// single value is due, a value that cannot be read. What fits is kept, so that later checks find the rest of the faults in the same go.
/// </summary>
public sealed class YamlBinder(FaultList faults)
{
    private static readonly string[] SecretWords = ["password", "passwort", "secret", "token", "api-key", "apikey", "credential", "credentials"];

    // A region has thousands of groups, of a few types.
    private readonly Dictionary<Type, IReadOnlyList<TextMember>> membersByType = [];

    /// <summary>The file's content as its type, or null where it is no group of keys.</summary>
    public T? Bind<T>(YamlTree tree)
        where T : TextGroup => (T?)Bind(typeof(T), tree, "The file", mayBeEmpty: false);

    private object? Bind(Type type, YamlTree tree, string name, bool mayBeEmpty)
    {
        if (tree is YamlValue { IsAbsent: true })
        {
            faults.Add(tree.Place, null, $"{name} has no value.", $"{AcceptedFor(type)}, or leave the key out where it is not needed");
            return null;
        }

        if (type.IsSubclassOf(typeof(TextGroup))) return BindGroup(type, tree, name);
        if (type == typeof(AllOrSome)) return BindAllOrSome(tree, name);
        Type shape = type.GetGenericTypeDefinition();
        Type inner = type.GetGenericArguments()[0];
        if (shape == typeof(PlacedList<>)) return BindList(type, inner, tree, name, mayBeEmpty);
        return shape == typeof(PlacedNames<>) ? BindNames(type, inner, tree, name) : BindValue(type, inner, tree, name, mayBeEmpty);
    }

    private TextGroup? BindGroup(Type type, YamlTree tree, string name)
    {
        if (tree is not YamlGroup group) return Misfit<TextGroup>(tree, name, type);
        if (!membersByType.TryGetValue(type, out IReadOnlyList<TextMember>? members)) membersByType.Add(type, members = TextMember.Of(type));
        var bound = (TextGroup)Activator.CreateInstance(type)!;
        typeof(TextGroup).GetProperty(nameof(TextGroup.Place))!.SetValue(bound, group.Place);
        typeof(TextGroup).GetProperty(nameof(TextGroup.WrittenKeys))!.SetValue(bound, group.Entries.Select(entry => entry.Key.Text).ToArray());
        foreach ((YamlValue key, YamlTree value) in group.Entries)
        {
            TextMember? member = members.FirstOrDefault(each => each.Key == key.Text);
            if (member is null) RefuseKey(key, [.. members.Select(each => each.Key)]);
            else member.Property.SetValue(bound, Bind(member.Property.PropertyType, value, $"\"{member.Key}\"", member.MayBeEmpty));
        }

        foreach (TextMember member in members)
        {
            if (!member.IsRequired || group.Entries.Any(entry => entry.Key.Text == member.Key)) continue;
            faults.Add(group.Place, null, $"The key \"{member.Key}\" is missing.", $"{member.Key}: {AcceptedFor(member.Property.PropertyType)}. {member.Description}");
        }

        return bound;
    }

    private object? BindList(Type type, Type item, YamlTree tree, string name, bool mayBeEmpty)
    {
        if (tree is not YamlList list) return Misfit<object>(tree, name, type);
        Array items = Keep(item, list.Items.Select(each => Bind(item, each, $"An entry of {name}", mayBeEmpty)));
        return Activator.CreateInstance(type, items, list.Items.Count, list.Place);
    }

    private object? BindNames(Type type, Type item, YamlTree tree, string name)
    {
        if (tree is not YamlGroup group) return Misfit<object>(tree, name, type);
        Type entry = typeof(KeyValuePair<,>).MakeGenericType(typeof(Placed<string>), item);
        Array entries = Keep(entry, group.Entries.Select(each => Bind(item, each.Value, $"\"{each.Key.Text}\"", mayBeEmpty: false) is { } value
            ? Activator.CreateInstance(entry, new Placed<string>(each.Key.Text, each.Key.Place), value)
            : null));
        return Activator.CreateInstance(type, entries, group.Place);
    }

    private AllOrSome? BindAllOrSome(YamlTree tree, string name)
    {
        if (tree is YamlValue { Text: "all" }) return new AllOrSome(null, tree.Place);
        if (tree is not YamlList) return Misfit<AllOrSome>(tree, name, typeof(AllOrSome));
        var some = (PlacedList<Placed<string>>?)BindList(typeof(PlacedList<Placed<string>>), typeof(Placed<string>), tree, name, mayBeEmpty: false);
        return new AllOrSome(some, tree.Place);
    }

    private object? BindValue(Type type, Type inner, YamlTree tree, string name, bool mayBeEmpty)
    {
        if (tree is not YamlValue value) return Misfit<object>(tree, name, type);
        if (mayBeEmpty) return new Placed<string>(value.Text, value.Place);
        ScalarKind kind = ScalarKinds.Of(inner);
        ScalarReading reading = kind.Read(value.Text);
        if (reading.Value is not null) return Activator.CreateInstance(type, reading.Value, value.Place);
        faults.Add(value.Place, $"{name}: {reading.Problem}", reading.Accepted ?? kind.Accepted);
        return null;
    }

    private T? Misfit<T>(YamlTree tree, string name, Type type)
        where T : class
    {
        faults.Add(tree.Place, $"{name} is {tree.Kind}.", AcceptedFor(type));
        return null;
    }

    private void RefuseKey(YamlValue key, IReadOnlyCollection<string> known)
    {
        if (SecretWords.Any(word => key.Text.Contains(word, StringComparison.OrdinalIgnoreCase)))
        {
            faults.Add(key.Place, $"The key \"{key.Text}\" looks like a secret, which does not belong into this file.", "secrets from the environment or from a file that only the service can read; see Mail in appsettings.json");
            return;
        }

        faults.Add(key.Place, $"The key \"{key.Text}\" is not known here.", NearestWord.Hint(key.Text, known));
    }

    private static Array Keep(Type item, IEnumerable<object?> bound)
    {
        object[] kept = [.. bound.OfType<object>()];
        var items = Array.CreateInstance(item, kept.Length);
        Array.Copy(kept, items, kept.Length);
        return items;
    }

    private static string AcceptedFor(Type type)
    {
        if (type == typeof(AllOrSome)) return "the word all, or a list such as [one, another]";
        if (type.IsSubclassOf(typeof(TextGroup))) return $"a group of keys: {string.Join(", ", TextMember.Of(type).Select(member => member.Key))}";
        if (type.GetGenericTypeDefinition() == typeof(PlacedNames<>)) return "a group of names of your own, each with a text";
        Type inner = type.GetGenericArguments()[0];
        if (type.GetGenericTypeDefinition() == typeof(Placed<>)) return ScalarKinds.Of(inner).Accepted;
        return inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(Placed<>)
            ? $"a list such as [one, another], each entry {ScalarKinds.Of(inner.GetGenericArguments()[0]).Accepted}"
            : $"a list, each entry with a hyphen before it, each {AcceptedFor(inner)}";
    }
}
