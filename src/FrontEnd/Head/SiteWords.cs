namespace FrontEnd.Head;

/// <summary>How sites and references are called besides their names on the scalp.</summary>
internal static class SiteWords
{
    /// <summary>Both ear lobes, each by half.</summary>
    public const string Ears = "ears";

    /// <summary>Both mastoids, each by half.</summary>
    public const string Mastoids = "mastoids";

    /// <summary>The mean of all recorded sites.</summary>
    public const string Average = "average";

    /// <summary>No site: the mean of the whole sphere, which stands for far away.</summary>
    public const string Far = "far";

    private static readonly Dictionary<string, string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["ear-left"] = "A1", ["ear-right"] = "A2", ["left-ear"] = "A1", ["right-ear"] = "A2",
        ["mastoid-left"] = "M1", ["mastoid-right"] = "M2", ["left-mastoid"] = "M1", ["right-mastoid"] = "M2",
    };

    private static readonly Dictionary<string, string[]> Several = new(StringComparer.OrdinalIgnoreCase)
    {
        [Ears] = ["A1", "A2"], ["linked-ears"] = ["A1", "A2"], [Mastoids] = ["M1", "M2"], ["linked-mastoids"] = ["M1", "M2"], [Far] = [],
    };

    /// <summary>Every word that one site may be called by, for telling which one is near.</summary>
    public static IEnumerable<string> Names =>
        [.. Sites.All.SelectMany(site => new[] { site.Name, site.Alias }).Where(name => name.Length > 0), .. Words.Keys];

    /// <summary>The site's name that a word was probably meant to be: of two that are equally near the one that the 10-20 system has; null for
    /// none.</summary>
    public static string? NearestSite(string word) => Nearest.Of(word, InOrder(Names));

    /// <summary>The same, with the words that stand for several sites.</summary>
    public static string? NearestReference(string word) => Nearest.Of(word, InOrder(All));

    /// <summary>Those, and the words that stand for several sites or none.</summary>
    public static IEnumerable<string> All => [.. Names, .. Several.Keys, Average];

    private static readonly Lazy<string[]> NamesInOrder = new(() => [.. InOrder(Names)]);

    /// <summary>What sites that are joined are called together: <c>ears</c>, <c>mastoids</c>, or their names with plus signs.</summary>
    public static string Joined(IReadOnlyList<string> sites)
    {
        string[] names = [.. sites.Select(word => Site(word)?.Name ?? word)];
        return Several.Keys.FirstOrDefault(word => Several[word].Length == names.Length && names.Length > 1 && Several[word].All(names.Contains))
            ?? string.Join('+', sites);
    }

    /// <summary>The known name that a word differs from by one letter, or by letters of another script: of several the one that begins alike, then the one that the 10-20
    /// system has; null for a known word, and for one that is near none.</summary>
    public static string? OneLetterFrom(string word)
    {
        string name = word.Trim().Replace(' ', '-');
        return name.Length < 2 || Site(name) is not null ? null : Site(Lookalikes.ToLatin(name))?.Name
            ?? NamesInOrder.Value.Where(known => Nearest.IsOneLetterFrom(name, known) && IsMeant(name, known)).OrderBy(known => !IsSame(known[0], name[0])).FirstOrDefault();
    }

    /// <summary>Of two signs one is half the name: L1 and E2 are names of somebody's own, and no slips for A1 and A2. A slip begins alike, has its two signs swapped, or
    /// a sign of the same shape as an O.</summary>
    private static bool IsMeant(string name, string known) =>
        name.Length > 2 || IsSame(name[0], known[0]) || (IsSame(name[0], known[1]) && IsSame(name[1], known[0])) || (name[0] is '0' or 'Q' && known[0] == 'O');

    private static bool IsSame(char one, char other) => char.ToUpperInvariant(one) == char.ToUpperInvariant(other);

    private static IEnumerable<string> InOrder(IEnumerable<string> words) => words.OrderBy(word => Site(word)?.Set ?? SiteSet.TenTwenty);

    /// <summary>The site of a name or word, in any case, blanks for hyphens; null for none.</summary>
    public static Site? Site(string word)
    {
        string name = word.Trim().Replace(' ', '-');
        return Sites.Find(Words.GetValueOrDefault(name, name));
    }

    /// <summary>What a reference is made of, each share of it; null for a word that is none.</summary>
    /// <param name="average">The sites whose mean <see cref="Average"/> is; where there are none the word is unknown.</param>
    public static IReadOnlyList<SiteWeight>? Reference(string word, IReadOnlyList<Site> average)
    {
        string name = word.Trim().Replace(' ', '-');
        if (Site(name) is { } site)
        {
            return [new SiteWeight(site, 1)];
        }

        if (Several.TryGetValue(name, out string[]? sites))
        {
            return [.. sites.Select(one => new SiteWeight(Sites.Find(one)!, 1.0 / sites.Length))];
        }

        return average.Count > 0 && string.Equals(name, Average, StringComparison.OrdinalIgnoreCase)
            ? [.. average.Select(one => new SiteWeight(one, 1.0 / average.Count))] : null;
    }
}
