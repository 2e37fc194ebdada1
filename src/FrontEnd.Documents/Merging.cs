using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>Two changes to one file: what each has changed since both began with the same text, and both in one where they are about different
/// keys.</summary>
/// <param name="Rows">The keys that one of the two has changed, in the order of the catalogue; what both have changed alike is no row.</param>
/// <param name="Merged">The other's text with one's own changes in it; null where both have changed one key, or where the file's form leaves no place
/// for the changes.</param>
internal sealed record Merging(IReadOnlyList<MergeRow> Rows, DesignDocument? Merged)
{
    /// <summary>True where both have changed the same key, each in another way.</summary>
    public bool Collides => Rows.Any(row => row is { TheirsChanged: true, MineChanged: true });

    /// <summary>Compares two documents with the one that both come from.</summary>
    /// <param name="before">What the file said.</param>
    /// <param name="theirs">What it says now.</param>
    /// <param name="mine">The document with one's own changes.</param>
    public static Merging Of(DesignDocument before, DesignDocument theirs, DesignDocument mine)
    {
        List<MergeRow> rows = [];
        foreach (string key in Keys(before, theirs, mine))
        {
            string? was = Value(before, key), their = Value(theirs, key), my = Value(mine, key);
            if (their != my)
            {
                rows.Add(new MergeRow(key, was, their, my));
            }
        }

        return new Merging(rows, Merge(before, theirs, mine, rows));
    }

    /// <summary>What a document says for a key, in words; null where it has no such field.</summary>
    private static string? Value(DesignDocument document, string key) =>
        document.Unread.Any(one => one.Key == key) ? document.WrittenAt(key)
        : document.PartlyKnown?.Find(key) is not null ? document.OriginOf(key)?.Text
        : DesignFields.Find(document.Design, key) is { } field && DesignFields.IsPresent(document.Design, key)
            ? FieldText.Format(field, field.Get(document.Design))
            : null;

    private static IEnumerable<string> Keys(params DesignDocument[] documents) =>
        documents.SelectMany(document => DesignFields.Of(document.Design)).Select(field => field.Key).Distinct(StringComparer.Ordinal);

    private static DesignDocument? Merge(DesignDocument before, DesignDocument theirs, DesignDocument mine, List<MergeRow> rows)
    {
        if (theirs.HasErrors || mine.HasErrors || theirs.Format != mine.Format || rows.Exists(row => row is { TheirsChanged: true, MineChanged: true })
            || theirs.PartlyKnown is not null || mine.PartlyKnown is not null)
        {
            return null;
        }

        DesignDocument next = theirs.WithCards(theirs.Cards.And(mine.Cards));
        foreach (DesignList list in DesignFields.Lists.Where(list => !Shape(list, mine).SequenceEqual(Shape(list, before))))
        {
            // Elements put in, taken out or moved: that only goes together with a list that the other has left alone.
            if (!Values(list, theirs).SequenceEqual(Values(list, before)))
            {
                return null;
            }

            if (Edits.TakeOver(next, list.With(next.Design, list.Elements(mine.Design))) is not { Finding: null, Comments: null or 0 } taken)
            {
                return null;
            }

            next = taken.Document;
        }

        // A list that only the other has put in order anew has one's own changes at other numbers.
        if (DesignFields.Lists.Any(list => !Shape(list, theirs).SequenceEqual(Shape(list, before)) && !Values(list, mine).SequenceEqual(Values(list, before))))
        {
            return null;
        }

        // Cards first: what follows from them is then in place, and is not written out.
        foreach (MergeRow row in rows.Where(row => row.MineChanged).OrderBy(row => !row.Key.EndsWith("card", StringComparison.Ordinal)))
        {
            next = Put(next, mine, row);
        }

        return rows.TrueForAll(row => Value(next, row.Key) == (row.MineChanged ? row.Mine : row.Theirs))
            && Keys(next, theirs, mine).All(key => rows.Exists(row => row.Key == key) || Value(next, key) == Value(theirs, key))
            && !next.HasErrors ? next : null;
    }

    private static DesignDocument Put(DesignDocument next, DesignDocument mine, MergeRow row)
    {
        if (row.Mine is null || Value(next, row.Key) == row.Mine)
        {
            return next;
        }

        bool stated = mine.OriginOf(row.Key)?.Kind == OriginKind.Given;
        DesignDocument cleared = stated ? next : next.Clear(row.Key).Document;
        return Value(cleared, row.Key) == row.Mine ? cleared : next.Set(row.Key, row.Mine).Document;
    }

    /// <summary>The elements' kinds and names, in order.</summary>
    private static IEnumerable<string> Shape(DesignList list, DesignDocument document) =>
        list.Elements(document.Design).Select(element => $"{list.VariantOf(element).Kind} {list.VariantOf(element).Topology} {list.NameOf(element)}");

    private static IEnumerable<string?> Values(DesignList list, DesignDocument document) =>
        DesignFields.Of(document.Design).Where(field => field.Key.StartsWith(list.Key + "[", StringComparison.Ordinal))
            .Select(field => $"{field.Key} {Value(document, field.Key)}");
}

/// <summary>One key that at least one of two has changed. Values in words; null where a document has no such field.</summary>
/// <param name="Before">What both began with.</param>
/// <param name="Theirs">What the file says now.</param>
/// <param name="Mine">What one's own document says.</param>
internal sealed record MergeRow(string Key, string? Before, string? Theirs, string? Mine)
{
    /// <summary>True where the other has changed it.</summary>
    public bool TheirsChanged => Theirs != Before;

    /// <summary>True where one has changed it oneself.</summary>
    public bool MineChanged => Mine != Before;
}
