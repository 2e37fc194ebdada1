using System.Text;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>Changes to a design's file beyond one value: a card with its values, an element more or less, a whole other design.</summary>
internal static class Edits
{
    /// <summary>One field set. A card takes over from what stands in line, so that choosing it does what it says.</summary>
    public static EditResult Set(DesignDocument document, Field<Design> field, string text)
    {
        if (field.Kind != FieldKind.Card)
        {
            return document.Set(field.Key, text);
        }

        EditResult edit = document.Set(field.Key, text);
        if (edit.Finding is not null || text.Trim().Length == 0)
        {
            return edit;
        }

        if (edit.Document.CardsWanted.Except(document.CardsWanted).ToList() is { Count: > 0 } wanted)
        {
            return new EditResult(document, null) { CardsWanted = wanted };
        }

        Finding? broken = edit.Document.Findings.FirstOrDefault(
            finding => finding.Severity == Severity.Error && !document.Findings.Contains(finding));
        if (broken is not null)
        {
            return new EditResult(document, broken);
        }

        string part = field.Key[..(field.Key.LastIndexOf('.') + 1)];
        foreach (string key in Stated(edit.Document).Where(key =>
            key.StartsWith(part, StringComparison.Ordinal) && key != field.Key).ToList())
        {
            // A value that cannot be taken out, such as one inside a shared line, stays and goes on holding.
            EditResult cleared = edit.Document.Clear(key);
            edit = cleared.Finding is null ? cleared : edit;
        }

        return edit;
    }

    /// <summary>Writes into a document what another design has different: values field by field, elements of lists table by table, so that
    /// comments stay.</summary>
    /// <remarks>A value that goes and has a comment stays as a comment with it. Where the file's form leaves no place for the change it is
    /// written anew, its comments at the end, and the outcome says so.
    /// <para>A value that no file may hold, as a design made in code may have, is refused, and the document is as it was.</para></remarks>
    public static TakenOver TakeOver(DesignDocument document, Design wanted)
    {
        if (Unwritable(wanted) is { } refused)
        {
            return new TakenOver(document, document.Placed(refused), null);
        }

        DesignDocument next = DesignFields.OptionalParts
            .Where(part => part.IsThere(document.Design) && !part.IsThere(wanted))
            .Aggregate(document, (now, part) => WithoutTable(now, part.Key));
        next = DesignFields.Lists.Aggregate(next, (now, list) => WithElements(now, list, wanted));
        foreach (Field<Design> field in DesignFields.Of(wanted))
        {
            string text = FieldText.Format(field, field.Get(wanted));
            Field<Design>? mine = DesignFields.Find(next.Design, field.Key);
            bool same = mine is not null && DesignFields.IsPresent(next.Design, field.Key)
                && string.Equals(FieldText.Format(mine, mine.Get(next.Design)), text, StringComparison.Ordinal);
            if (same)
            {
                continue;
            }

            EditResult edit = mine is null ? new EditResult(next, OnlyToml(field.Key)) : next.Set(field.Key, text);
            if (edit.Finding is not null)
            {
                return Anew(document, wanted);
            }

            next = edit.Document;
        }

        return IsSame(next.Design, wanted) ? new TakenOver(next, null, null) : Anew(document, wanted);
    }

    /// <summary>The first value outside its range, or choice that is none; null where a file may hold all of them.</summary>
    private static Finding? Unwritable(Design design) => DesignFields.Of(design)
        .Select(field => (Field: field, Value: field.Get(design)))
        .Select(one => FieldText.CheckChoice(one.Field, one.Value) ?? FieldText.CheckRange(one.Field, one.Value)).FirstOrDefault(finding => finding is not null);

    /// <summary>Moves an element of a list one place, with its comments.</summary>
    /// <param name="index">From 0.</param>
    /// <param name="by">−1 or 1.</param>
    public static EditResult Move(DesignDocument document, DesignList list, int index, int by)
    {
        string text = Written(document, list);
        ListTables tables = ListTables.OfList(text, list.Key);
        int from = Math.Min(index, index + by), to = from + 1;
        List<object> elements = [.. list.Elements(document.Design)];
        if (document.Format != DocumentFormat.Toml || tables.Tables.Count != elements.Count || from < 0 || elements.Count <= to)
        {
            return new EditResult(document, OnlyToml(list.Key));
        }

        (LineRange one, LineRange other) = (tables.Tables[from], tables.Tables[to]);
        string[] lines = [.. tables.Lines];
        DesignDocument next = document.WithText(ListTables.Text([
            .. lines[..one.First], .. lines[other.First..other.End], .. lines[one.End..other.First], .. lines[one.First..one.End],
            .. lines[other.End..]]));
        (elements[from], elements[to]) = (elements[to], elements[from]);
        return IsSame(Unnamed(list, next.Design, list.Elements(next.Design)), Unnamed(list, document.Design, elements))
            ? new EditResult(next, null)
            : new EditResult(document, OnlyToml(list.Key));
    }

    /// <summary>Puts a new element at the end of its list, with a name that is free.</summary>
    public static EditResult Insert(DesignDocument document, Insertion insertion)
    {
        DesignList list = DesignFields.Lists.First(one => one.Key == insertion.ListKey);
        Variant variant = list.Variants[insertion.Variant];
        if (document.Format != DocumentFormat.Toml)
        {
            return new EditResult(document, OnlyToml(insertion.ListKey));
        }

        StringBuilder text = new(Written(document, list));
        if (text.Length > 0 && text[^1] != '\n')
        {
            text.Append('\n');
        }

        IReadOnlyList<object> now = list.Elements(document.Design);

        HashSet<string> taken = [.. now.Select(list.NameOf)];
        string name = list.DefaultName([.. now, variant.Create()], now.Count);
        for (int number = 2; taken.Contains(name); number++)
        {
            name = $"{list.DefaultName([.. now, variant.Create()], now.Count)} {number}";
        }

        text.Append($"\n[[{list.Key}]]\n");
        if (list.HasKinds)
        {
            text.Append($"kind = \"{variant.Kind}\"\n");
        }

        if (variant is { Topology: { } topology, IsDefault: false })
        {
            text.Append($"topology = \"{topology}\"\n");
        }

        object start = variant.Create(), element = list.New(document.Design, variant);
        foreach (Field<object> field in variant.Fields)
        {
            string value = FieldText.Format(field, field.Get(element));
            if (field.Key is "name")
            {
                text.Append($"name = \"{name}\"\n");
            }
            else if ((!list.HasKinds && field.Key is "low" or "high") || value != FieldText.Format(field, field.Get(start)))
            {
                text.Append($"{field.Key} = \"{value}\"\n");
            }
        }

        DesignDocument next = document.WithText(text.ToString());
        Finding? broken = next.Findings.FirstOrDefault(
            finding => finding.Severity == Severity.Error && !document.Findings.Contains(finding));
        return broken is not null || list.Count(next.Design) != now.Count + 1
            ? new EditResult(document, broken ?? OnlyToml(list.Key))
            : new EditResult(next, null);
    }

    /// <summary>Takes an element out of its list, with the comments inside it; those around it stay.</summary>
    public static EditResult Remove(DesignDocument document, DesignList list, int index)
    {
        ListTables tables = ListTables.OfList(Written(document, list), list.Key);
        int count = list.Count(document.Design);
        if (document.Format != DocumentFormat.Toml || tables.Tables.Count != count)
        {
            return new EditResult(document, OnlyToml(list.Key));
        }

        LineRange gone = tables.Tables[index];
        string[] lines = [.. tables.Lines];
        // A list inside a table has no line of its own at the top of the file.
        string text = (count == 1 && !list.Key.Contains('.') ? $"{list.Key} = []\n" : "") + ListTables.Text([.. lines[..gone.Header], .. lines[gone.End..]]);
        DesignDocument next = document.WithText(text);
        return list.Count(next.Design) == count - 1 && Errors(next) <= Errors(document)
            ? new EditResult(next, null)
            : new EditResult(document, OnlyToml(list.Key));
    }

    /// <summary>The saved document where another one says the same: every value equal, and stated or left out alike, but for one key whose
    /// value may be stated though it was not. Else that other one.</summary>
    public static DesignDocument AsSaved(DesignDocument document, DesignDocument saved, string key)
    {
        HashSet<string> before = [.. Stated(saved).Where(one => one != key)], now = [.. Stated(document).Where(one => one != key)];

        // A list at its default is written out whole for one change in it; with that taken back it needs no place in the file.
        foreach (DesignList list in DesignFields.Lists.Where(list => !States(saved, $"{list.Key}[")))
        {
            now.RemoveWhere(one => one.StartsWith($"{list.Key}[", StringComparison.Ordinal));
        }

        return IsSame(document.Design, saved.Design) && now.SetEquals(before) ? saved : document;
    }

    /// <summary>True where the document itself states the key, or one of the list's keys where the beginning is that of a list:
    /// "bands[".</summary>
    public static bool States(DesignDocument document, string key) =>
        Stated(document).Any(one => key[^1] == '[' ? one.StartsWith(key, StringComparison.Ordinal) : one == key);

    private static IEnumerable<string> Stated(DesignDocument document) =>
        document.Origins.Where(origin => origin.Kind == OriginKind.Given).Select(origin => origin.Key);

    private static int Errors(DesignDocument document) => document.Findings.Count(finding => finding.Severity == Severity.Error);

    /// <summary>The document's text with the list in it: one that is at its default is in no file yet and is written out, or it would be
    /// gone once one element stands there.</summary>
    private static string Written(DesignDocument document, DesignList list)
    {
        string text = document.Text;
        if (list.Count(document.Design) == 0)
        {
            // An empty list is a line of its own, which goes where elements come: its comment stays.
            return ListTables.Text(text.Split('\n').SelectMany(line => IsEmptyList(line, list.Key) ? ListTables.Comments([line]) : [line]));
        }

        return ListTables.OfList(text, list.Key).Tables.Count > 0
            ? text
            : text + (text.Length == 0 || text.EndsWith('\n') ? "" : "\n") + DesignWriter.ListText(list, document.Design);
    }

    /// <summary>The document with the elements that another design has, by kind and name; their values are left as they are. The same
    /// document where that cannot be done.</summary>
    private static DesignDocument WithElements(DesignDocument document, DesignList list, Design wanted)
    {
        IReadOnlyList<object> have = list.Elements(document.Design), want = list.Elements(wanted);
        if (document.Format != DocumentFormat.Toml || have.Select(list.VariantOf).SequenceEqual(want.Select(list.VariantOf)))
        {
            return document;
        }

        if (document.InOneValue(list.Key) is var (whole, spans))
        {
            return spans.Count == have.Count ? InOneValue(document, list, wanted, whole, spans) : document;
        }

        ListTables tables = ListTables.OfList(Written(document, list), list.Key);
        if (tables.Tables.Count != have.Count)
        {
            return document;
        }

        string[] lines = [.. tables.Lines];
        List<string> text = [.. have.Count > 0 ? lines[..tables.Tables[0].First] : lines];
        IReadOnlyCollection<string> stated = DesignWriter.Stated(document.Stated, document.Design, wanted);
        int mine = 0, number = 0;
        foreach (object element in want)
        {
            number++;
            int match = mine;
            while (match < have.Count && !(
                list.VariantOf(have[match]) == list.VariantOf(element) && list.NameOf(have[match]) == list.NameOf(element)))
            {
                match++;
            }

            if (match == have.Count)
            {
                Add(DesignWriter.ListText(list, list.With(new Design(), [element]), stated: Alone(list, stated, number)).Trim('\n').Split('\n'));
                continue;
            }

            for (; mine < match; mine++)
            {
                Drop(mine);
            }

            LineRange kept = tables.Tables[mine++];
            text.AddRange(lines[kept.First..kept.End]);
            Gap(mine - 1);
        }

        for (; mine < have.Count; mine++)
        {
            Drop(mine);
        }

        DesignDocument next = document.WithText((want.Count == 0 ? $"{list.Key} = []\n" : "") + ListTables.Text(text));
        return list.Elements(next.Design).Select(list.VariantOf).SequenceEqual(want.Select(list.VariantOf)) ? next : document;

        void Add(string[] element)
        {
            if (text.Count > 0 && text[^1].Trim().Length > 0)
            {
                text.AddRange(tables.Ended([""]));
            }

            text.AddRange(tables.Ended([.. element, ""]));
        }

        void Drop(int table)
        {
            LineRange gone = tables.Tables[table];
            text.AddRange(tables.Ended(ListTables.Comments(lines[gone.First..gone.End])));
            Gap(table);
        }

        void Gap(int table) =>
            text.AddRange(lines[tables.Tables[table].End..(table + 1 < have.Count ? tables.Tables[table + 1].First : lines.Length)]);
    }

    /// <summary>The same for a list that is one value: elements that stay are left as they are written.</summary>
    private static DesignDocument InOneValue(DesignDocument document, DesignList list, Design wanted, Span whole, IReadOnlyList<Span> spans)
    {
        IReadOnlyList<object> have = list.Elements(document.Design), want = list.Elements(wanted);
        IReadOnlyCollection<string> stated = DesignWriter.Stated(document.Stated, document.Design, wanted);
        List<string> elements = [];
        int mine = 0;
        foreach (object element in want)
        {
            int match = Enumerable.Range(mine, have.Count - mine).FirstOrDefault(at =>
                list.VariantOf(have[at]) == list.VariantOf(element) && list.NameOf(have[at]) == list.NameOf(element), -1);
            mine = match < 0 ? mine : match + 1;
            elements.Add(0 <= match ? document.Text[spans[match].Start..spans[match].End] : "{ " + string.Join(", ",
                DesignWriter.ListText(list, list.With(new Design(), [element]), stated: Alone(list, stated, elements.Count + 1)).Split('\n')
                    .Where(line => line.Length > 0 && !line.StartsWith("[[", StringComparison.Ordinal))) + " }");
        }

        string between = 1 < spans.Count ? document.Text[spans[0].End..spans[1].Start] : ", ";
        string text = want.Count == 0 ? "[]"
            : document.Text[whole.Start..spans[0].Start] + string.Join(between, elements) + document.Text[spans[^1].End..whole.End];
        DesignDocument next = document.WithText(string.Concat(document.Text.AsSpan(0, whole.Start), text, document.Text.AsSpan(whole.End)));
        return list.Elements(next.Design).Select(list.VariantOf).SequenceEqual(want.Select(list.VariantOf)) ? next : document;
    }

    /// <summary>The keys of one element where it is the only one of its list.</summary>
    private static string[] Alone(DesignList list, IReadOnlyCollection<string> stated, int number)
    {
        string mine = $"{list.Key}[{number}].";
        return [.. stated.Where(key => key.StartsWith(mine, StringComparison.Ordinal)).Select(key => $"{list.Key}[1].{key[mine.Length..]}")];
    }

    private static bool IsEmptyList(string line, string key) =>
        line.TrimStart().StartsWith(key, StringComparison.Ordinal)
            && line.Replace(" ", "", StringComparison.Ordinal).StartsWith($"{key}=[]", StringComparison.Ordinal);

    /// <summary>The document without an optional part's tables; the same document where it has none.</summary>
    private static DesignDocument WithoutTable(DesignDocument document, string key)
    {
        ListTables tables = ListTables.OfTable(document.Text, key);
        if (document.Format != DocumentFormat.Toml || tables.Tables.Count == 0)
        {
            return document;
        }

        List<string> text = [.. tables.Lines];
        foreach (LineRange gone in tables.Tables.Reverse())
        {
            List<string> comments = [.. tables.Ended(ListTables.Comments(text[gone.First..gone.End]))];
            text.RemoveRange(gone.First, gone.End - gone.First);
            text.InsertRange(gone.First, comments);
        }

        return document.WithText(ListTables.Text(text));
    }

    private static Design Unnamed(DesignList list, Design design, IEnumerable<object> elements) =>
        list.With(design, [.. elements.Select((element, at) => list.Renamed(element, $"{at}"))]);

    /// <summary>True where two designs have the same fields with the same values.</summary>
    private static bool IsSame(Design one, Design other) => Texts(one).SequenceEqual(Texts(other));

    private static IEnumerable<(string Key, string Text)> Texts(Design design) =>
        DesignFields.Of(design).Select(field => (field.Key, FieldText.Format(field, field.Get(design))));

    // Where the file's form leaves no place for a change, the design is written out whole. Its comments follow at the end, and the user is
    // asked first.
    internal static TakenOver Anew(DesignDocument document, Design wanted)
    {
        if (document.Format != DocumentFormat.Toml)
        {
            return new TakenOver(document, OnlyToml(""), null);
        }

        List<string> comments = [.. ListTables.Comments(document.Text.Split('\n'))];
        string end = comments.Count == 0
            ? ""
            : "\n# comments of the file as it was before:\n" + string.Concat(comments.Select(line => line + "\n"));
        return new TakenOver(document.WithText(DesignWriter.ToToml(wanted, DesignWriter.Stated(document.Stated, document.Design, wanted)) + end), null, comments.Count);
    }

    private static Finding OnlyToml(string key) => new(
        "FE0190", Severity.Error, key, "this file's layout does not allow the change here",
            "lists can be changed in TOML files with one [[table]] per element", "save as a .toml file first, or change the file in an editor");
}

/// <summary>A document with another design's values in it, or the same document and why they could not be written.</summary>
/// <param name="Comments">Comments that had to be moved to the end because the file was written anew; null where everything kept its
/// place.</param>
public sealed record TakenOver(DesignDocument Document, Finding? Finding, int? Comments);

/// <summary>An element that can be put into a list of the design.</summary>
/// <param name="ListKey">The list.</param>
/// <param name="Variant">Which of the list's variants.</param>
/// <param name="Name">What the variant is called.</param>
internal sealed record Insertion(string ListKey, int Variant, string Name);
