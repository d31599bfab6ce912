namespace GddWatch.Configuration.Yaml;

/// <summary>Finds the known word that a mistyped one was probably meant to be.</summary>
public static class NearestWord
{
    /// <summary>The nearest of the known words, or null where none is near: at most a third of the letters, and at least two, may differ.</summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        string? nearest = null;
        int fewest = Math.Max(2, written.Length / 3) + 1;
        foreach (string word in known)
        {
            if (Math.Abs(word.Length - written.Length) >= fewest) continue;
            int edits = Edits(written.ToUpperInvariant(), word.ToUpperInvariant());
            if (edits >= fewest || edits >= word.Length) continue;
            fewest = edits;
            nearest = word;
        }

        return nearest;
    }

    /// <summary>Says the nearest known word where there is one, and all of them.</summary>
    public static string Hint(string written, IReadOnlyCollection<string> known)
    {
        string all = known.Count == 0 ? "none is known here" : $"one of {string.Join(", ", known)}";
        return Of(written, known) is { } nearest ? $"\"{nearest}\" is the nearest; {all}" : all;
    }

    /// <summary>
    /// How many letters must be inserted, left out, replaced or swapped with their neighbour to turn one word into the other
    /// (optimal string alignment; F. J. Damerau, 1964, A technique for computer detection and correction of spelling errors, Communications of the ACM
    /// 7:171-176, MEMORY).
    /// </summary>
    public static int Edits(string left, string right)
    {
        var edits = new int[left.Length + 1, right.Length + 1];
        for (int i = 0; i <= left.Length; i++) edits[i, 0] = i;
        for (int j = 0; j <= right.Length; j++) edits[0, j] = j;
        for (int i = 1; i <= left.Length; i++)
        {
            for (int j = 1; j <= right.Length; j++)
            {
                int replaced = edits[i - 1, j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                edits[i, j] = Math.Min(replaced, Math.Min(edits[i - 1, j], edits[i, j - 1]) + 1);
                bool swapped = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
                if (swapped) edits[i, j] = Math.Min(edits[i, j], edits[i - 2, j - 2] + 1);
            }
        }

        return edits[left.Length, right.Length];
    }
}
