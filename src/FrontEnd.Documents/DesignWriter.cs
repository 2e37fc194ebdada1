using System.Text;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>Writes a design as a TOML file: what differs from the defaults, and everything of a part that has a card; or as JSON.</summary>
public static class DesignWriter
{
    /// <summary>The design as TOML; reading it gives the same design back.</summary>
    /// <param name="stated">Keys that are written even where their value is the default: the user has stated them.</param>
    /// <exception cref="ArgumentException">A number is none, which no file can hold: <see cref="DesignCheck"/> names it.</exception>
    public static string ToToml(Design design, IReadOnlyCollection<string>? stated = null) => ToToml(design, stated, null);

    /// <summary>A design of which something is not known, as TOML: unknown values as the word or the ends that were given. In a bought device what
    /// is left out is unknown, and what is known stands there.</summary>
    public static string ToToml(PartlyKnownDesign design) => ToToml(design, []);

    /// <summary>A document's design as TOML, whatever form it is written in: all that it states is stated.</summary>
    internal static string ToToml(DesignDocument document) =>
        document.PartlyKnown is { } partly ? ToToml(partly, document.Stated) : ToToml(document.Design, document.Stated);

    /// <summary>The keys at which a design has what another one has stated: the elements of its lists may have other places.</summary>
    /// <param name="stated">Keys of the other design.</param>
    /// <param name="was">The other design.</param>
    /// <param name="design">The design that is to be written.</param>
    internal static IReadOnlyCollection<string> Stated(IEnumerable<string> stated, Design was, Design design)
    {
        HashSet<string> keys = new(stated, StringComparer.Ordinal);
        foreach (DesignList list in DesignFields.Lists)
        {
            string[] mine = [.. keys.Where(key => key.StartsWith(list.Key + "[", StringComparison.Ordinal))];
            keys.ExceptWith(mine);
            IReadOnlyList<object> old = list.Elements(was), elements = list.Elements(design);
            int?[] from = Origins(list, old, elements);
            for (int at = 0; at < elements.Count; at++)
            {
                string before = $"{list.Key}[{from[at] + 1}].", after = $"{list.Key}[{at + 1}].";
                keys.UnionWith(mine.Where(key => key.StartsWith(before, StringComparison.Ordinal)).Select(key => after + key[before.Length..]));
            }
        }

        return keys;
    }

    /// <summary>Which element of a list each of another one was: the next one of its name, else the one in its place; null for a new one.</summary>
    private static int?[] Origins(DesignList list, IReadOnlyList<object> old, IReadOnlyList<object> elements)
    {
        HashSet<int> taken = [];
        int?[] from = [.. elements.Select(element => Enumerable.Range(0, old.Count).Where(at =>
            string.Equals(list.NameOf(old[at]), list.NameOf(element), StringComparison.Ordinal) && taken.Add(at)).Select(at => (int?)at).FirstOrDefault())];
        for (int at = 0; at < from.Length; at++)
        {
            from[at] ??= at < old.Count && list.VariantOf(old[at]) == list.VariantOf(elements[at]) && taken.Add(at) ? at : null;
        }

        return from;
    }

    private static string ToToml(PartlyKnownDesign design, IEnumerable<string> stated) => ToToml(design.Given.Design,
        [.. stated, .. design.Given.Bought is null ? [] : DesignFields.Of(design.Given.Design).Where(field => field.Usual is not null && design.Find(field.Key) is null).Select(field => field.Key)],
        design);

    private static string ToToml(Design design, IReadOnlyCollection<string>? stated, PartlyKnownDesign? partly)
    {
        RequireNumbers(design);
        StringBuilder text = new();
        Design start = new();
        HashSet<string> kept = new(stated ?? [], StringComparer.Ordinal);
        foreach (IGrouping<string, Field<Design>> table in DesignFields.Fixed.Where(field =>
            DesignFields.IsPresent(design, field.Key)).GroupBy(field => Parent(field.Key), StringComparer.Ordinal))
        {
            bool whole = HasCard(design, table.Key);
            List<Field<Design>> fields =
                [.. table.Where(field => whole || partly?.Find(field.Key) is not null || Differs(field, design, start) || IsBitsBesideStep(field, design)
                || (kept.Contains(field.Key) && CanBeSaid(field, field.Get(design))))];
            if (table.Key.Length > 0 && (fields.Count > 0 || IsBarePart(design, table.Key)))
            {
                text.Append("\n[").Append(table.Key).Append("]\n");
            }

            foreach (Field<Design> field in fields)
            {
                text.Append(Last(field.Key)).Append(" = ").Append(Literal(field, field.Get(design), partly?.Find(field.Key))).Append('\n');
            }

            if (table.Key.Length == 0)
            {
                EmptyLists(text, design, start);
            }
        }

        if (partly?.Given is { Bought: not null } draft)
        {
            text.Append($"\n[{PartlyKnownDesign.BoughtKey}]\n");
            foreach (Field<DeviceDraft> field in PartlyKnownDesign.OfBought)
            {
                text.Append(Last(field.Key)).Append(" = ").Append(Literal(field, field.Get(draft), partly.Find(field.Key))).Append('\n');
            }
        }

        foreach (DesignList list in DesignFields.Lists)
        {
            if (!SameList(list, design, start) || kept.Any(key => key.StartsWith(list.Key + "[", StringComparison.Ordinal)) || partly?.Unknowns.Any(one => one.Key.StartsWith(list.Key + "[", StringComparison.Ordinal)) == true)
            {
                text.Append(ListText(list, design, partly, kept));
            }
        }

        return text.ToString().TrimStart('\n');
    }

    /// <summary>The design as JSON in the plain-number form, every field; reading it gives the same design back.</summary>
    /// <exception cref="ArgumentException">A number is none, which no file can hold: <see cref="DesignCheck"/> names it.</exception>
    public static string ToJson(Design design)
    {
        RequireNumbers(design);
        return PlainDesign.Text(design) + "\n";
    }

    private static void RequireNumbers(Design design)
    {
        foreach (Field<Design> field in DesignFields.Of(design))
        {
            object? value = field.Get(design);
            if (value is IReadOnlyList<double> list ? list.Any(one => !double.IsFinite(one)) : FieldKinds.SiValue(value) is { } si && !double.IsFinite(si))
            {
                throw new ArgumentException($"{field.Key} is no finite number, and no file can hold it.", nameof(design));
            }
        }
    }

    /// <summary>The same for a design of which something is not known.</summary>
    public static string ToJson(PartlyKnownDesign design) => PlainDesign.Text(design.Given.Design, design) + "\n";

    /// <summary>The design in the form that a file's name asks for.</summary>
    /// <param name="path">What ends in .json is JSON, anything else TOML.</param>
    /// <param name="stated">Keys that are written even where their value is the default.</param>
    public static string ForFile(string path, Design design, IReadOnlyCollection<string>? stated = null) =>
        DesignDocument.FormatOf(path, "") == DocumentFormat.Json ? ToJson(design) : ToToml(design, stated);

    /// <summary>One list of a design with all its elements; nothing for an empty one.</summary>
    /// <param name="list">The list.</param>
    /// <param name="design">The design that has it.</param>
    /// <param name="partly">What is not known of the design; null where all is.</param>
    /// <param name="stated">Keys that are written even where their value is the default; null for none.</param>
    internal static string ListText(DesignList list, Design design, PartlyKnownDesign? partly = null, IReadOnlyCollection<string>? stated = null)
    {
        StringBuilder text = new();
        int number = 0;
        foreach (object element in list.Elements(design))
        {
            string prefix = $"{list.Key}[{++number}].";
            Variant variant = list.VariantOf(element);
            object start = variant.Create();
            text.Append("\n[[").Append(list.Key).Append("]]\n");
            if (list.HasKinds)
            {
                text.Append("kind = ").Append(Literals.Quoted(variant.Kind)).Append('\n');
            }

            if (variant is { Topology: { } topology, IsDefault: false })
            {
                text.Append("topology = ").Append(Literals.Quoted(topology)).Append('\n');
            }

            bool hasCard = variant.Fields.Any(field => field.Kind == FieldKind.Card && field.Get(element) is string { Length: > 0 });
            foreach (ElementPart refused in variant.Parts.Where(part => part.IsRefused(element)))
            {
                text.Append(refused.Key).Append(" = ").Append(Literals.Quoted(TableReader.NoPart)).Append('\n');
            }

            foreach (Field<object> field in variant.Fields)
            {
                if (!variant.IsPresent(element, field))
                {
                    continue;
                }

                UnknownField? unknown = partly?.Find(prefix + field.Key);
                bool always = (!list.HasKinds && field.Key is "low" or "high" or "name") || unknown is not null
                    || (stated?.Contains(prefix + field.Key) == true && CanBeSaid(field, field.Get(element)))
                    || (variant.Topology is not null && IsPartValue(field) && field.Get(element) is not null)
                    || (variant.Parts.Any(part => part.IsWhole && part.Has(field.Key)) && field.Get(element) is not ("" or PartRanges { All.Count: 0 }));
                if (always || (hasCard && field.Key.StartsWith("opamp.", StringComparison.Ordinal))
                    || !string.Equals(Text(field, element), Text(field, start), StringComparison.Ordinal))
                {
                    text.Append(field.Key).Append(" = ").Append(Literal(field, field.Get(element), unknown)).Append('\n');
                }
            }
        }

        return text.ToString();
    }

    private static string Literal(FieldDescription field, object? value, UnknownField? unknown) =>
        unknown is null ? Literals.Of(field, value, DocumentFormat.Toml) : UnknownValue.Literal(unknown, DocumentFormat.Toml);

    private static string Text<TOwner>(Field<TOwner> field, TOwner owner) => FieldText.Format(field, field.Get(owner));

    private static bool Differs(Field<Design> field, Design design, Design start) =>
        !string.Equals(Text(field, design), Text(field, start), StringComparison.Ordinal)
        && !(field.Kind == FieldKind.Flag && field.Get(design) is null);

    private static bool CanBeSaid(FieldDescription field, object? value) =>
        value is not null || (field.Kind != FieldKind.Flag && field.NullWord is { Length: > 0 });

    // A step size alone would be read as saying the word length too.
    private static bool IsBitsBesideStep(Field<Design> field, Design design) =>
        design.Converter.Lsb is not null && string.Equals(field.Key, DesignKeys.Converter.Bits, StringComparison.Ordinal);

    private static bool HasCard(Design design, string owner)
    {
        for (string part = owner; part.Length > 0; part = Parent(part))
        {
            if (DesignFields.Find(design, part + ".card")?.Get(design) is string { Length: > 0 })
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsBarePart(Design design, string owner) =>
        DesignFields.OptionalParts.Any(part => string.Equals(part.Key, owner, StringComparison.Ordinal) && part.IsThere(design)
            && !part.IsThere(new Design()));

    /// <summary>A resistor or capacitor of a stage's circuit, which nobody can read off a default.</summary>
    private static bool IsPartValue(FieldDescription field) =>
        !field.Key.Contains('.', StringComparison.Ordinal) && (field.Holds<Resistance>() || field.Holds<Capacitance>());

    private static bool SameList(DesignList list, Design design, Design start)
    {
        IReadOnlyList<object> mine = list.Elements(design);
        IReadOnlyList<object> theirs = list.Elements(start);
        return mine.Count == theirs.Count && mine.Zip(theirs).All(pair => pair.First.Equals(pair.Second));
    }

    private static void EmptyLists(StringBuilder text, Design design, Design start)
    {
        foreach (DesignList list in DesignFields.Lists)
        {
            if (list.Count(design) == 0 && 0 < list.Count(start))
            {
                text.Append(list.Key).Append(" = []\n");
            }
        }
    }

    private static string Parent(string key)
    {
        int dot = key.LastIndexOf('.');
        return dot < 0 ? "" : key[..dot];
    }

    private static string Last(string key) => key[(key.LastIndexOf('.') + 1)..];
}
