namespace FrontEnd.Text;

/// <summary>The known word that a misspelt one was probably meant to be.</summary>
internal static class Nearest
{
    /// <summary>The nearest of the known words by edit distance, counting a swap of neighbours as one, else the only one that holds the word or is held by it; null where
    /// none is near: more than a third of the letters wrong, at least two, in a word of three letters more than one.</summary>
    public static string? Of(string word, IEnumerable<string> known)
    {
        if (MaxLength < word.Length)
        {
            return null;   // the distance takes time with the square of the length, and no key is that long
        }

        string lower = Plain(word);
        string? best = null;
        int bestDistance = (word.Length < 4 ? 1 : Math.Max(2, word.Length / 3)) + 1;
        IReadOnlyCollection<string> all = known as IReadOnlyCollection<string> ?? [.. known];
        foreach (string candidate in all)
        {
            int distance = Distance(lower, Plain(candidate), bestDistance);
            if (distance < bestDistance)
            {
                (best, bestDistance) = (candidate, distance);
            }
        }

        return best is not null && bestDistance < Math.Max(1, best.Length) ? best : Containing(lower, all);
    }

    /// <summary>The only known word that begins with the written one, has all of its parts between hyphens, or is one of them; null for none and for several.</summary>
    private static string? Containing(string lower, IReadOnlyCollection<string> known)
    {
        string[] parts = lower.Split(Between, StringSplitOptions.RemoveEmptyEntries);
        string? found = null;
        foreach (string candidate in known)
        {
            string[] others = Plain(candidate).Split(Between, StringSplitOptions.RemoveEmptyEntries);
            bool isNear = lower.Length >= 3 && parts.Length > 0 && others.Length > 0
                && (Plain(candidate).StartsWith(lower, StringComparison.Ordinal) || (parts.All(part => others.Contains(part, StringComparer.Ordinal)))
                    || (others is [{ Length: > 3 } only] && parts.Contains(only, StringComparer.Ordinal)));
            if (isNear && found is not null && !string.Equals(found, candidate, StringComparison.Ordinal))
            {
                return null;
            }

            found = isNear ? candidate : found;
        }

        return found;
    }

    private static readonly char[] Between = ['-', ' ', '.', '_'];

    /// <summary>True for words that differ by one letter: another one, one more, one less, or two neighbours swapped.</summary>
    public static bool IsOneLetterFrom(string word, string known) =>
        word.Length <= MaxLength && Distance(Plain(word), Plain(known), 2) == 1;

    private const int MaxLength = 100;

    // Capitals, underscores and hyphens are the commonest slips and count as none.
    private static string Plain(string text) => text.ToLowerInvariant().Replace('_', '-');

    private static int Distance(string a, string b, int limit)
    {
        if (limit <= Math.Abs(a.Length - b.Length))
        {
            return limit;
        }

        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + cost);
                if (1 < i && 1 < j && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
