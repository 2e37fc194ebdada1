using System.Text;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Sizing;

namespace FrontEnd.Documents;

/// <summary>The documentation of the design file's keys, made from the catalogue so that it cannot say anything else.</summary>
internal static class KeyTable
{
    /// <summary>All keys as Markdown: one table a part of the design.</summary>
    public static string ToMarkdown()
    {
        StringBuilder text = new();
        foreach (IGrouping<string, Field<Design>> group in DesignFields.Fixed.Where(field => !IsRepeated(field.Key))
            .GroupBy(field => Heading(field.Key), StringComparer.Ordinal))
        {
            Section(text, group.Key, [.. group]);
        }

        Section(text, $"[{DesignFields.AntiAliasKey}], in place of low-pass stages",
            [.. DesignFields.AntiAlias.Where(field => !field.Key.StartsWith("opamp.", StringComparison.Ordinal))]);
        text.Append("\nAlso: `opamp`, a card's name or a table, see opamp.\n");
        Section(text, $"[{PartlyKnownDesign.BoughtKey}], a device that somebody else built", PartlyKnownDesign.BoughtTable);
        text.Append("\nWith this table, every value that has a usual range and is not given counts as unknown.\n");
        foreach (DesignList list in DesignFields.Lists)
        {
            foreach (IGrouping<string, Variant> kind in list.Variants.GroupBy(variant => variant.Kind, StringComparer.Ordinal))
            {
                foreach (Variant variant in kind)
                {
                    string heading = $"[[{list.Key}]]" + (list.HasKinds ? $" with kind = \"{variant.Kind}\"" : "")
                        + (variant.Topology is null ? "" : $", topology = \"{variant.Topology}\"" + (variant.IsDefault ? " or none" : ""));
                    Section(text, heading, [.. variant.Fields.Where(field => !field.Key.StartsWith("opamp.", StringComparison.Ordinal))]);
                    if (variant.Fields.Any(field => field.Key.StartsWith("opamp.", StringComparison.Ordinal)))
                    {
                        text.Append("\nAlso: `opamp`, a card's name or a table, see opamp.\n");
                    }
                }
            }
        }

        Variant gain = DesignFields.Lists[0].Variants[0];
        Section(text, "opamp, in a stage or an electrode buffer",
            [.. gain.Fields.Where(field => field.Key.StartsWith("opamp.", StringComparison.Ordinal))]);
        Section(text, $"[{SizingFields.Table}], in a requirements file, in addition to the keys above", SizingFields.All);
        Usual(text);
        return text.ToString();
    }

    /// <summary>What is drawn from where a value is said to be unknown.</summary>
    private static void Usual(StringBuilder text)
    {
        text.Append("\n### Values that may be `\"unknown\"`, and what is usual for them\n\nAny other single value may be a range, `[\"least\", \"greatest\"]`. A part card of the class takes precedence over the usual range.\n\n| key | usual | source | who could say it |\n|---|---|---|---|\n");
        IEnumerable<FieldDescription> all = DesignFields.Fixed.Where(field => !IsRepeated(field.Key)).Cast<FieldDescription>().Concat(PartlyKnownDesign.OfBought);
        foreach (FieldDescription field in all.Where(field => field.Usual is not null))
        {
            UsualRange usual = field.Usual!;
            string between = field.IsNumeric ? $"{FieldText.Format(field, field.FromSi(usual.Least))} to {FieldText.Format(field, field.FromSi(usual.Greatest))}" : Messages.Listed(FieldText.Words(field));
            string by = usual.KnownBy switch { KnownBy.Maker => "its maker", KnownBy.Room => "the room", _ => "the contact" };
            text.Append("| `").Append(field.Key).Append("` | ").Append(Cell(between)).Append(" | ").Append(Cell(usual.Source)).Append(" | ").Append(by).Append(" |\n");
        }
    }

    // The reference and ground electrodes have the active one's keys, the reference buffer the active one's.
    private static bool IsRepeated(string key) =>
        key.StartsWith("electrodes.reference.", StringComparison.Ordinal) || key.StartsWith("electrodes.reference-buffer.", StringComparison.Ordinal) || key.StartsWith("electrodes.ground.", StringComparison.Ordinal)
            || key.StartsWith("electrodes.active-buffer.opamp.", StringComparison.Ordinal);

    private static string Heading(string key)
    {
        int dot = key.LastIndexOf('.');
        string table = dot < 0 ? "" : key[..dot];
        return table switch
        {
            "" => "top of the file",
            "electrodes.active" => "[electrodes.active], [electrodes.reference], [electrodes.ground]",
            "electrodes.active-buffer" => "[electrodes.active-buffer], [electrodes.reference-buffer]",
            _ => $"[{table}]",
        };
    }

    private static void Section(StringBuilder text, string heading, IReadOnlyList<FieldDescription> fields)
    {
        text.Append("\n### ").Append(heading).Append("\n\n| key | meaning | kind | range | default | source of the default |\n|---|---|---|---|---|---|\n");
        foreach (FieldDescription field in fields)
        {
            Row(text, field);
            if (field.Holds<ExcessNoise>())
            {
                Row(text, ExcessForms.Rms);
                Row(text, ExcessForms.Band);
            }
        }
    }

    private static void Row(StringBuilder text, FieldDescription field)
    {
        string name = field.Key[(field.Key.LastIndexOf('.') + 1)..];
        IReadOnlyList<string> words = FieldText.Words(field);
        string range = field.Kind switch
        {
            FieldKind.Card => Messages.Listed(CardShelf.Names(field.CardClass!.Value)) + ", or a path",
            FieldKind.Ranges => "of " + Messages.Listed([.. field.Ranged.Select(one => one.Key)]),
            FieldKind.Choice or FieldKind.Flag => Messages.Listed(words),
            _ => FieldMessages.RangeWords(field) + (words.Count == 0 ? "" : $"; {Messages.Listed(words)}"),
        };
        string standard = field.DefaultText.Length == 0
            ? "none" : field.DefaultIsValue && !words.Contains(field.DefaultText, StringComparer.Ordinal)
            ? $"`{field.DefaultText}`" : field.DefaultText;
        text.Append("| `").Append(name).Append('`').Append(field.Safety ? " (safety)" : "").Append(" | ")
            .Append(Cell(field.Meaning)).Append(" | ")
            .Append(FieldKinds.Noun(field)).Append(", `").Append(FieldKinds.Example(field)).Append("` | ").Append(Cell(range)).Append(" | ")
            .Append(Cell(standard)).Append(" | ").Append(Cell(field.DefaultSource)).Append(" |\n");
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
