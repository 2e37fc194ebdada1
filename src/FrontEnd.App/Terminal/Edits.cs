using System.Text;
using FrontEnd.Documents;
using FrontEnd.Fields;

namespace FrontEnd.App.Terminal;

/// <summary>Changes to a design's file beyond one value: a card with its values, an element more or less, a whole other design.</summary>
public static class Edits
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

        Finding? broken = edit.Document.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error && !document.Findings.Contains(finding));
        if (broken is not null)
        {
            return new EditResult(document, broken);
        }

        string part = field.Key[..(field.Key.LastIndexOf('.') + 1)];
        foreach (FieldOrigin origin in edit.Document.Origins.Where(origin => origin.Kind == OriginKind.Given && origin.Key.StartsWith(part, StringComparison.Ordinal) && origin.Key != field.Key).ToList())
        {
            // A value that cannot be taken out, such as one inside a shared line, stays and goes on holding.
            EditResult cleared = edit.Document.Clear(origin.Key);
            edit = cleared.Finding is null ? cleared : edit;
        }

        return edit;
    }

    /// <summary>Writes into a document what another design has different, field by field, so that its comments stay.</summary>
    public static EditResult TakeOver(DesignDocument document, Design wanted)
    {
        DesignDocument next = document;
        foreach (Field<Design> field in DesignFields.Of(wanted))
        {
            string text = FieldText.Format(field, field.Get(wanted));
            Field<Design>? mine = DesignFields.Find(next.Design, field.Key);
            if (mine is not null && DesignFields.IsPresent(next.Design, field.Key) && string.Equals(FieldText.Format(mine, mine.Get(next.Design)), text, StringComparison.Ordinal))
            {
                continue;
            }

            EditResult edit = mine is null ? new EditResult(next, null) : next.Set(field.Key, text);
            if (edit.Finding is not null)
            {
                return Rewritten(document, wanted);
            }

            next = edit.Document;
        }

        return DesignFields.Lists.Any(list => list.Count(next.Design) != list.Count(wanted)) ? Rewritten(document, wanted) : new EditResult(next, null);
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

        StringBuilder text = new(document.Text);
        if (text.Length > 0 && text[^1] != '\n')
        {
            text.Append('\n');
        }

        IReadOnlyList<object> now = list.Elements(document.Design);
        if (now.Count > 0 && !HasHeaders(document.Text, list.Key))
        {
            // The default list is in no file yet: it is written out, or it would be gone once one element stands there.
            text.Append(WholeList(list, document.Design));
        }

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

        if (variant.Topology is { } topology)
        {
            text.Append($"topology = \"{topology}\"\n");
        }

        text.Append($"name = \"{name}\"\n");
        foreach (Field<object> field in variant.Fields.Where(field => !list.HasKinds && field.Key is "low" or "high"))
        {
            text.Append($"{field.Key} = \"{FieldText.Format(field, field.Get(variant.Create()))}\"\n");
        }

        DesignDocument next = document.WithText(text.ToString());
        Finding? broken = next.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error && !document.Findings.Contains(finding));
        return broken is not null || list.Count(next.Design) != now.Count + 1 ? new EditResult(document, broken ?? OnlyToml(list.Key)) : new EditResult(next, null);
    }

    /// <summary>Takes an element out of its list, with the comments inside it.</summary>
    public static EditResult Remove(DesignDocument document, DesignList list, int index)
    {
        if (document.Format != DocumentFormat.Toml)
        {
            return new EditResult(document, OnlyToml(list.Key));
        }

        string start = document.Text;
        if (!HasHeaders(start, list.Key))
        {
            start += (start.Length == 0 || start.EndsWith('\n') ? "" : "\n") + WholeList(list, document.Design);
        }

        List<string> kept = [];
        int seen = -1;
        bool inside = false;
        foreach (string line in start.Split('\n'))
        {
            string bare = line.TrimStart();
            if (bare.StartsWith('['))
            {
                bool own = bare.StartsWith($"[[{list.Key}]]", StringComparison.Ordinal);
                seen += own ? 1 : 0;
                inside = own ? seen == index : inside && (bare.StartsWith($"[{list.Key}.", StringComparison.Ordinal) || bare.StartsWith($"[[{list.Key}.", StringComparison.Ordinal) || !IsHeader(bare));
            }

            if (!inside)
            {
                kept.Add(line);
            }
        }

        string text = string.Join('\n', kept);
        if (list.Count(document.Design) == 1)
        {
            text = $"{list.Key} = []\n" + text;
        }

        DesignDocument next = document.WithText(text);
        return list.Count(next.Design) == list.Count(document.Design) - 1 && next.Findings.Count(finding => finding.Severity == Severity.Error) <= document.Findings.Count(finding => finding.Severity == Severity.Error)
            ? new EditResult(next, null)
            : new EditResult(document, OnlyToml(list.Key));
    }

    private static bool HasHeaders(string text, string key) => text.Split('\n').Any(line => line.TrimStart().StartsWith($"[[{key}]]", StringComparison.Ordinal));

    // A row of a list of numbers begins with a bracket too; a header holds no comma.
    private static bool IsHeader(string bare) => bare.IndexOf(']') is var close and > 1 && !bare.AsSpan(0, close).Contains(',') && char.IsLetter(bare.TrimStart('[')[0]);

    /// <summary>The list's part of the file that the writer makes of the design.</summary>
    private static string WholeList(DesignList list, Design design)
    {
        // Only this list differs from the defaults in the design that is written, so nothing else is in the text.
        Design only = list.With(new Design(), [.. list.Elements(design)]);
        Design other = list.With(new Design(), [.. list.Elements(design), list.Variants[0].Create()]);
        string written = DesignWriter.ToToml(only);
        if (written.Contains($"[[{list.Key}]]", StringComparison.Ordinal))
        {
            return "\n" + written;
        }

        // The default list is not written by itself; one element more makes the writer name them all, and that one is cut off again.
        string longer = DesignWriter.ToToml(other);
        int first = longer.IndexOf($"[[{list.Key}]]", StringComparison.Ordinal), last = longer.LastIndexOf($"[[{list.Key}]]", StringComparison.Ordinal);
        return "\n" + longer[first..last];
    }

    // Where the file's form leaves no place for a change, the design is written out whole: its comments are lost, its values are not.
    private static EditResult Rewritten(DesignDocument document, Design wanted) => document.Format == DocumentFormat.Toml
        ? new EditResult(document.WithText(DesignWriter.ToToml(wanted)), null)
        : new EditResult(document, OnlyToml(""));

    private static Finding OnlyToml(string key) => new(
        "FE0190", Severity.Error, key, "this file's form does not allow the change here", "lists are changed in TOML files with one [[table]] an element", "save as a .toml file first, or change the file in an editor");
}
