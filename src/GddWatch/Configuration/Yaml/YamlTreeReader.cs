using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace GddWatch.Configuration.Yaml;

/// <summary>
/// Turns the text of a YAML file into a tree that knows its places. It takes the plain part of YAML that configuration needs: references to other parts
/// (which a hostile file can multiply without end), tags and several documents in one file are refused.
/// </summary>
public sealed class YamlTreeReader
{
    /// <summary>How deep lists and groups may lie within each other; the deepest that a treatment needs is about ten.</summary>
    public const int DeepestNesting = 32;

    private readonly Parser parser;
    private readonly FaultList faults;

    private YamlTreeReader(string text, FaultList faults)
    {
        parser = new Parser(new StringReader(text));
        this.faults = faults;
    }

    /// <summary>The tree of a text, or null where it is not YAML or is refused; the faults then say why.</summary>
    public static YamlTree? Read(string text, FaultList faults)
    {
        var reader = new YamlTreeReader(text, faults);
        int before = faults.Count;
        try
        {
            YamlTree? tree = reader.ReadDocument();
            return faults.Count == before ? tree : null;
        }
        catch (YamlException exception)
        {
            reader.RefuseText(text, exception.Start, exception.Message);
            return null;
        }
        catch (InvalidOperationException)
        {
            // The parser's own way of stopping at some braces that are never closed.
            reader.RefuseText(text, reader.parser.Current?.End ?? Mark.Empty, "A brace, a bracket or a quotation mark is not closed where it should be");
            return null;
        }
    }

    private YamlTree? ReadDocument()
    {
        YamlTree? tree = null;
        int documents = 0;
        while (parser.MoveNext())
        {
            switch (parser.Current)
            {
                case DocumentStart start:
                    if (++documents == 1) break;
                    faults.Add(PlaceOf(start), "---", "A second document begins here.", "one document a file; remove the line with three dashes");
                    return null;
                case NodeEvent node:
                    tree = ReadNode(node, 1);
                    if (tree is null) return null;
                    break;
            }
        }

        return tree;
    }

    private YamlTree? ReadNode(NodeEvent node, int depth)
    {
        if (!IsPlain(node)) return null;
        if (depth > DeepestNesting)
        {
            faults.Add(PlaceOf(node), null, "Lists and groups lie too deep within each other here.", $"at most {DeepestNesting} levels");
            return null;
        }

        return node switch
        {
            Scalar scalar => ValueOf(scalar),
            SequenceStart start => ReadList(start, depth),
            MappingStart start => ReadGroup(start, depth),
            _ => null,
        };
    }

    private YamlList? ReadList(SequenceStart start, int depth)
    {
        var items = new List<YamlTree>();
        while (parser.MoveNext() && parser.Current is not SequenceEnd)
        {
            if (ReadCurrent(depth) is not { } item) return null;
            items.Add(item);
        }

        return new YamlList(PlaceOf(start), items);
    }

    private YamlGroup? ReadGroup(MappingStart start, int depth)
    {
        var entries = new List<KeyValuePair<YamlValue, YamlTree>>();
        var seen = new Dictionary<string, Place>();
        while (parser.MoveNext() && parser.Current is not MappingEnd)
        {
            if (ReadCurrent(depth) is not { } key) return null;
            parser.MoveNext();
            if (ReadCurrent(depth) is not { } value) return null;
            if (key is not YamlValue word)
            {
                faults.Add(key.Place, null, $"A key cannot be {key.Kind}.", "a word, as in \"name: North Common\"");
            }
            else if (seen.TryGetValue(word.Text, out Place? first))
            {
                faults.Add(word.Place, $"The key \"{word.Text}\" stands twice in this group, first in line {first.Line}.", "each key once; remove one of the two");
            }
            else
            {
                seen.Add(word.Text, word.Place);
                entries.Add(new(word, value));
            }
        }

        return new YamlGroup(PlaceOf(start), entries);
    }

    private YamlTree? ReadCurrent(int depth) => parser.Current is NodeEvent node ? ReadNode(node, depth + 1) : ReadAlias();

    private YamlTree? ReadAlias()
    {
        if (parser.Current is AnchorAlias alias)
        {
            faults.Add(PlaceOf(alias), $"*{alias.Value}", "References to other parts of the file are not taken.", "the text itself, written out; quotation marks around a text that begins with *");
        }

        return null;
    }

    private bool IsPlain(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            faults.Add(PlaceOf(node), $"&{node.Anchor.Value}", "Names for references are not taken.", "the text without it; quotation marks around a text that begins with &");
            return false;
        }

        if (node.Tag.IsEmpty || node is Scalar { IsQuotedImplicit: true }) return true;
        faults.Add(PlaceOf(node), node.Tag.ToString(), "Tags are not taken.", "the value without it; quotation marks around a text that begins with !");
        return false;
    }

    private void RefuseText(string text, Mark mark, string message)
    {
        string[] lines = text.Split('\n');
        int tab = Array.FindIndex(lines, line => line.TakeWhile(char.IsWhiteSpace).Contains('\t') && !string.IsNullOrWhiteSpace(line));
        if (tab >= 0)
        {
            var indentation = new Place(tab + 1, lines[tab].IndexOf('\t') + 1, lines[tab].Trim());
            faults.Add(indentation, "A tab stands in the indentation, which YAML does not take.", "spaces in its place");
            return;
        }

        string found = lines.ElementAtOrDefault((int)mark.Line - 1)?.Trim() ?? "";
        string sentence = message.TrimEnd().EndsWith('.') ? message.TrimEnd() : $"{message.TrimEnd()}.";
        faults.Add(
            new Place((int)mark.Line, (int)mark.Column, found),
            $"This is not YAML that can be read: {sentence}",
            "keys and values as in \"name: North Common\", indented with spaces; put quotation marks around text with a colon, a # or a leading * or &");
    }

    private static YamlValue ValueOf(Scalar scalar)
    {
        Place place = PlaceOf(scalar) with { Text = scalar.Value };
        return new YamlValue(place, scalar.Value, scalar.Style != ScalarStyle.Plain);
    }

    private static Place PlaceOf(ParsingEvent node) => new((int)node.Start.Line, (int)node.Start.Column, null);
}
