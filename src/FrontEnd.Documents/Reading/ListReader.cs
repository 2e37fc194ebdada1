using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>Reads a design's lists: which variant each element is, and its fields.</summary>
internal sealed class ListReader(ReadingLog log, FieldSets sets, TableReader reader)
{
    /// <summary>The elements of a list, those without a name named.</summary>
    public List<object> Elements(DesignList list, ListNode nodes)
    {
        List<object> elements = [];
        for (int index = 0; index < nodes.Items.Count; index++)
        {
            string key = $"{list.Key}[{index + 1}]";
            Node node = nodes.Items[index];
            if (node is not TableNode table)
            {
                log.Unread.Add(key);
                if (nodes.Items.FindIndex(item => item is not TableNode) < index)
                {
                    continue;   // said of the first
                }

                log.Report(ReadingMessages.NoTableList(list.Key, $"a list with {ReadingMessages.Noun(node)} in it"), node.Span);
                continue;
            }

            log.Places[key] = table.Span with { End = table.Span.Start };
            if (VariantOf(list, table, key) is not { } variant)
            {
                log.Unread.Add(key);
                continue;
            }

            object element = variant.Create();
            TablePlace<object> place = new(log.Source, null, sets.Element(variant), "", key + ".");
            reader.Walk(place, table, ref element, (entry, ref _) => Discriminates(list, variant, entry));
            if (!list.HasKinds && variant.Fields.Any(field => field.Key is "low"))
            {
                Edges(table, key);
            }

            elements.Add(element);
        }

        Name(list, elements);
        return elements;
    }

    private static bool Discriminates(DesignList list, Variant variant, Entry entry) =>
        list.HasKinds && (string.Equals(entry.Key, "kind", StringComparison.Ordinal)
            || (variant.Topology is not null && string.Equals(entry.Key, "topology", StringComparison.Ordinal)));

    private void Edges(TableNode table, string key)
    {
        foreach (string edge in new[] { "low", "high" })
        {
            if (table.Find(edge) is null && !table.Slips.Exists(slip => string.Equals(slip.Key, edge, StringComparison.Ordinal)))
            {
                log.Unread.Add($"{key}.{edge}");
                log.Report(ReadingMessages.NoEdge(key, edge), table.Span);
            }
        }
    }

    private static void Name(DesignList list, List<object> elements)
    {
        HashSet<string> taken = new(elements.Select(list.NameOf), StringComparer.Ordinal);
        for (int index = 0; index < elements.Count; index++)
        {
            if (list.NameOf(elements[index]).Length > 0)
            {
                continue;
            }

            string wanted = list.DefaultName(elements, index);
            string name = wanted;
            for (int again = 2; !taken.Add(name); again++)
            {
                name = $"{wanted} {again}";
            }

            elements[index] = list.Renamed(elements[index], name);
        }
    }

    private Variant? VariantOf(DesignList list, TableNode table, string key)
    {
        if (!list.HasKinds)
        {
            return list.Variants[0];
        }

        string[] kinds = [.. list.Variants.Select(variant => variant.Kind).Distinct(StringComparer.Ordinal)];
        if (Word(table, key, "kind", kinds, () => ReadingMessages.NoKind(key, kinds, list.Key)) is not { } kind)
        {
            return null;
        }

        Variant[] candidates = [.. list.Variants.Where(variant => string.Equals(variant.Kind, kind, StringComparison.Ordinal))];
        if (candidates is [{ Topology: null } only])
        {
            return only;
        }

        if (table.Find("topology") is null && Array.Find(candidates, variant => variant.IsDefault) is { } usual)
        {
            return usual;
        }

        string[] topologies = [.. candidates.Select(variant => variant.Topology!)];
        return Word(table, key, "topology", topologies, () => ReadingMessages.NoTopology(key, topologies)) is { } topology
            ? Array.Find(candidates, variant => string.Equals(variant.Topology, topology, StringComparison.Ordinal))
            : null;
    }

    private string? Word(TableNode table, string key, string name, string[] words, Func<Finding> missing)
    {
        switch (table.Find(name))
        {
            case null when table.Slips.Exists(slip => string.Equals(slip.Key, name, StringComparison.Ordinal)):
                return null;   // it stands there and could not be read, which is said
            case null or { Value: NullNode }:
                log.Report(missing(), table.Span);
                return null;
            case { Value: TextNode text }:
                string? known = Array.Find(words, word => string.Equals(Bare(word), Bare(text.Value), StringComparison.Ordinal));
                if (known is null)
                {
                    log.Report(ReadingMessages.WrongKind($"{key}.{name}", text.Value, words, Nearest.Of(text.Value, words)), text.Span);
                }

                return known;
            case { Value: var node }:
                log.Report(ReadingMessages.Type($"{key}.{name}", ReadingMessages.Noun(node), "a word", Messages.Listed(words)), node.Span);
                return null;
        }
    }

    // "lowpass", "low-pass" and "Low pass" are the same word.
    private static string Bare(string word) =>
        word.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal)
        .Replace("_", "", StringComparison.Ordinal).ToLowerInvariant();
}
