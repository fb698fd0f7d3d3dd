namespace Lines.Design.Schema;

/// <summary>Finds the known name that a misspelled one most likely means.</summary>
public static class NearestName
{
    /// <summary>Longer names are not compared: nobody mistypes them.</summary>
    private const int Longest = 64;

    /// <summary>The known name with the fewest changed, missing, added or swapped letters.</summary>
    /// <remarks><b>Method.</b> Edit distance with swaps of neighbors; no more than a third of the letters may differ.</remarks>
    /// <param name="name">The name as written.</param>
    /// <param name="known">The names there are; of equally near ones the first is taken.</param>
    /// <returns>The nearest, or null where none is near.</returns>
    public static string? Of(string name, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(known);
        if (name.Length is 0 or > Longest)
            return null;
        string? best = null;
        var least = int.MaxValue;
        foreach (var candidate in known)
        {
            var changes = Changes(name.ToUpperInvariant().Replace('-', '_'), candidate.ToUpperInvariant().Replace('-', '_'));
            if (changes < least && changes * 3 <= Math.Max(3, Math.Max(name.Length, candidate.Length)))
                (best, least) = (candidate, changes);
        }

        return best;
    }

    private static int Changes(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                rows[i, j] = Math.Min(rows[i - 1, j - 1] + change, Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }

        return rows[a.Length, b.Length];
    }
}
