namespace GddWatch.Feeds.Faults;

/// <summary>Finds the name that somebody probably meant.</summary>
internal static class NearestName
{
    /// <summary>The known name with the fewest changed letters, or null where none is near: more than half of the letters differ.</summary>
    public static string? Of(string wanted, IEnumerable<string> known)
    {
        string? best = null;
        int least = int.MaxValue;
        foreach (string name in known)
        {
            int distance = Distance(wanted.ToUpperInvariant(), name.ToUpperInvariant());
            if (distance >= least) continue;
            (best, least) = (name, distance);
        }

        return best is not null && least <= Math.Max(wanted.Length, best.Length) / 2 ? best : null;
    }

    // Levenshtein's distance: insertions, deletions and replacements. Names longer than any column's are not worth comparing.
    private static int Distance(string left, string right)
    {
        const int LongestName = 100;
        if (left.Length > LongestName || right.Length > LongestName) return int.MaxValue;
        int[] row = [.. Enumerable.Range(0, right.Length + 1)];
        for (int i = 1; i <= left.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= right.Length; j++)
            {
                int replaced = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[right.Length];
    }
}
