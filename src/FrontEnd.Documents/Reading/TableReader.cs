using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>Puts the values of one table, its inner tables and its part card into a record, by the record's fields.</summary>
internal sealed class TableReader(ReadingLog log, DocumentFormat format, CardShelf shelf)
{
    /// <summary>The word for a part that is not there: <c>ground = "none"</c>.</summary>
    public const string NoPart = "none";

    /// <summary>A key that is no field; true where it was taken.</summary>
    public delegate bool Special<TOwner>(Entry entry, ref TOwner owner);

    /// <summary>Reads one of the design's lists, wherever its table stands.</summary>
    public required Func<DesignList, Entry, Design, Design> List { get; init; }

    /// <summary>True where the file says that there is no ground electrode; decided when all of it is read.</summary>
    public bool GroundLeftOut { get; private set; }

    /// <summary>Puts what a table says into its owner.</summary>
    /// <param name="special">Keys that are no fields; true where it took the entry.</param>
    public void Walk<TOwner>(TablePlace<TOwner> place, TableNode table, ref TOwner owner, Special<TOwner>? special = null)
    {
        if (place.Set.CardOf(place.Path) is { } card && table.Find("card") is { } named)
        {
            ApplyCard(place, named.Value, card, ref owner);
        }

        Dictionary<string, string> spelt = new(StringComparer.Ordinal);
        foreach (Entry entry in table.Entries)
        {
            string full = place.Path.Length == 0 ? entry.Key : $"{place.Path}.{entry.Key}";
            if (special is not null && special(entry, ref owner))
            {
                continue;
            }

            DesignList? list = owner is Design ? DesignFields.Lists.FirstOrDefault(list => string.Equals(list.Key, KeyOf(full), StringComparison.Ordinal)) : null;

            // The channels are a number or a list.
            if (place.Set.Find(full) is { } field && !(list is not null && entry.Value is ListNode { Items: not [NumberNode or TextNode] }))
            {
                // The plain-number form has two spellings for some keys.
                if (!spelt.TryAdd(field.Key, entry.Key))
                {
                    log.Report(place.Text, ReadingMessages.BothForms(place.Display + field.Key, place.Prefix + spelt[field.Key], place.Prefix + entry.Key),
                        entry.KeySpan);
                    continue;
                }

                if (field.Kind != FieldKind.Card)
                {
                    SetField(place, entry, field, ref owner);
                }
            }
            else if (list is not null)
            {
                owner = (TOwner)(object)List(list, entry, (Design)(object)owner!);
            }
            else if (place.Set.IsTable(full))
            {
                Inner(place.At(full), entry, ref owner);
            }
            else if (!ExcessReader.Takes(place, entry.Key))
            {
                Unknown(place, table, entry, owner);
            }
        }

        foreach (Slip slip in table.Slips)
        {
            Misread(place, table, slip);
        }

        if (new ExcessReader(log, format).Read(place, table, ref owner) is { } density)
        {
            DropRange(place, density, ref owner);
        }
    }

    private void Inner<TOwner>(TablePlace<TOwner> place, Entry entry, ref TOwner owner)
    {
        string key = place.Display + KeyOf(place.Path);
        if (place.Card is null)
        {
            log.Places.TryAdd(key, entry.KeySpan);
        }

        Func<TOwner, bool, TOwner>? part = place.Card is null ? place.Set.PartOf(place.Path) : null;
        Field<TOwner>? site = place.Set.Find(place.Path + ".site");
        Field<TOwner>? card = place.Set.CardOf(place.Path);
        bool leftOut = part is not null && entry.Value is (TextNode { Value: NoPart } or FlagNode { Value: false } or NullNode);
        bool described = !leftOut && (entry.Value is TableNode || (entry.Value is TextNode && (card is not null || site is not null)));
        if (part is not null && (leftOut || described))
        {
            owner = part(owner, described);
        }

        if (leftOut)
        {
            return;
        }

        switch (entry.Value)
        {
            case TableNode inner:
                Walk(place, inner, ref owner);
                break;
            case TextNode when card is not null:
                ApplyCard(place, entry.Value, card, ref owner);
                break;
            case TextNode when site is not null:
                SetField(place, entry, site, ref owner);
                break;
            case NullNode:
                break;   // as if not given
            default:
                log.Unread.Add(key);
                log.Report(place.Text, ReadingMessages.NoTable(key, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                break;
        }
    }

    /// <summary>Puts the value of one key into its owner.</summary>
    public void SetField<TOwner>(TablePlace<TOwner> place, Entry entry, Field<TOwner> field, ref TOwner owner)
    {
        string key = place.Display + field.Key;
        if (place.Card is null)
        {
            log.Places[key] = entry.Value.Span;
        }

        if (entry.Value is NullNode && field.NullWord is null)
        {
            return;   // as if not given
        }

        if (place.Card is null && owner is not AntiAliasWish && UnknownValue.Is(field, entry.Value))
        {
            Unknown(place, entry, field, key);
            return;
        }

        if (NodeValue.Read(field, key, entry.Value, place.FormatOf(format), out object? value, out Node where) is { } finding)
        {
            log.Unread.Add(key);
            log.Report(place.Text, finding, where.Span);
            return;
        }

        if (owner is Design && string.Equals(key, DesignKeys.Electrodes.GroundElectrode, StringComparison.Ordinal))
        {
            GroundLeftOut = value is false;   // decided when all of the file is read
        }
        else
        {
            // Ranges in the file stand before the card's, field by field.
            if (value is PartRanges ranges)
            {
                value = ((PartRanges)field.Get(owner)!).With(ranges);
                string part = place.Display + field.Key[..(field.Key.LastIndexOf('.') + 1)];
                log.Ranged.UnionWith(place.Card is null ? ranges.All.Select(range => part + range.Key) : []);
            }

            owner = field.Set(owner, value);
        }

        log.Remember(place.Card, field, key, value);
        DropRange(place, field, ref owner);
    }

    /// <summary>A line that could not be read, where it is plain whose value stands in it: the field is one that could not be read, and what is wrong with
    /// the line is said of it.</summary>
    private void Misread<TOwner>(TablePlace<TOwner> place, TableNode table, Slip slip)
    {
        string full = place.Path.Length == 0 ? slip.Key : $"{place.Path}.{slip.Key}";
        int found = log.Findings.FindIndex(one => ReferenceEquals(one, slip.Problem));
        if (place.Card is null && (slip.Key.Length == 0 || (!slip.NeedsKey && place.Set.Find(full) is null && !place.Set.IsTable(full))))
        {
            Undecided(place, table, null);
            return;
        }

        if (place.Card is null && 0 <= found && slip.NeedsKey && place.Set.Find(full) is null && !place.Set.IsTable(full))
        {
            // A key that cannot be written so, and is none in other letters either.
            IReadOnlyList<string> known = place.Set.Children(place.Path);
            string? nearest = Nearest.Of(slip.Key, known);
            log.Findings[found] = KeyMeant(place, table, slip.Key, slip.Meant) is { } remedy ? slip.Problem with { Help = remedy }
                : nearest is not null && slip.Meant is not null ? slip.Problem with { Help = $"write {nearest} = {slip.Meant} if that is intended, or remove the line" }
                : ReadingMessages.Unlisted(slip.Problem, known);
            Undecided(place, table, nearest);
            return;
        }

        if (place.Card is not null && 0 <= found && place.Set.Find(full) is { } onCard)
        {
            log.Unread.Add(place.Display + onCard.Key);
            log.Findings[found] = SlipRemedy.Of(slip, onCard, place.Display + onCard.Key, DocumentFormat.Toml) with { Field = place.Display + onCard.Key };
            return;
        }

        if (place.Card is not null || found < 0 || place.Set.Find(full) is not { } field || field.Kind == FieldKind.Card
            || log.Places.ContainsKey(place.Display + field.Key))
        {
            return;
        }

        // Nothing else may say that the design has the part.
        for (int dot = full.LastIndexOf('.'); place.Path.Length < dot; dot = full.LastIndexOf('.', dot - 1))
        {
            if (place.Set.PartOf(full[..dot]) is not null)
            {
                return;
            }
        }

        string key = place.Display + field.Key;
        log.Unread.Add(key);
        log.Places[key] = slip.NeedsKey ? slip.Whole : slip.Value;
        log.Findings[found] = SlipRemedy.Of(slip, field, key, place.FormatOf(format)) with { Field = key };
    }

    /// <summary>A value that the file says is not known; what its owner holds stays.</summary>
    private void Unknown<TOwner>(TablePlace<TOwner> place, Entry entry, Field<TOwner> field, string key)
    {
        if (UnknownValue.Read(field, key, entry.Value, place.FormatOf(format), out UnknownValue? value, out Node where) is { } finding)
        {
            log.Unread.Add(key);
            log.Report(place.Text, finding, where.Span);
            return;
        }

        log.Unknown[key] = value!;
        log.Origins[key] = new FieldOrigin(key, OriginKind.Given, value!.ToString(), "design file");
    }

    /// <summary>A value that the file gives is another part's than the card's: the card's range does not hold for it.</summary>
    private void DropRange<TOwner>(TablePlace<TOwner> place, FieldDescription given, ref TOwner owner)
    {
        string parent = Parent(given.Key), key = parent.Length == 0 ? "ranges" : parent + ".ranges";
        // The file's own range stays, whichever of the two stands first.
        if (place.Card is null && !log.Ranged.Contains(place.Display + given.Key) && place.Set.AsToml.Find(key) is { Kind: FieldKind.Ranges } field && field.Get(owner) is PartRanges ranges)
        {
            owner = field.Set(owner, ranges.Without(given.Key[(parent.Length == 0 ? 0 : parent.Length + 1)..]));
        }
    }

    private void ApplyCard<TOwner>(TablePlace<TOwner> place, Node node, Field<TOwner> field, ref TOwner owner)
    {
        string key = place.Display + field.Key;
        if (place.Card is null)
        {
            log.Places[key] = node.Span;
        }

        if (node is NullNode)
        {
            return;
        }

        if (node is not TextNode named)
        {
            log.Unread.Add(key);
            log.Report(place.Text, ReadingMessages.Type(key, ReadingMessages.Noun(node), FieldKinds.Noun(field),
                Literals.Quoted(CardShelf.Names(field.CardClass!.Value)[0]), node is ListNode { Items: [TextNode only] } ? Literals.Quoted(only.Value) : null), node.Span);
            return;
        }

        string name = named.Value;
        owner = field.Set(owner, name);
        log.Origins[key] = new FieldOrigin(key, place.Card is null ? OriginKind.Given : OriginKind.Card, name,
            place.Card is null ? "design file" : place.Card.SourceOf(field));
        if (name.Length == 0)
        {
            return;
        }

        PartCard? card = shelf.Find(field.CardClass!.Value, name, key, out Finding? finding, out IReadOnlyList<Finding> inside);
        log.Findings.AddRange(inside);
        if (finding is not null)
        {
            // Without the card nothing is known about the part: neither complain that nothing is said, nor judge its defaults.
            log.Unread.Add(Parent(key));
            log.ReportCard(place.Text, finding, (field.CardClass!.Value, name), node.Span);
        }

        if (card is not null)
        {
            // Cards are TOML whatever the design file is.
            TablePlace<TOwner> onCard = new(card.Text, card, place.Set.AsToml, KeyOf(place.Path), place.Display);
            Walk(onCard, card.Values, ref owner);
            CheckUsual(onCard, card.Usual, owner);
        }
    }

    /// <summary>The usual ranges of a card's class decide nothing in a design whose values are known, but what stands there must be fields' values, two each.</summary>
    private void CheckUsual<TOwner>(TablePlace<TOwner> place, TableNode usual, TOwner owner)
    {
        foreach (Entry entry in usual.Entries)
        {
            string full = place.Path.Length == 0 ? entry.Key : $"{place.Path}.{entry.Key}";
            if (place.Set.Find(full) is not { } field)
            {
                Unknown(place, usual, entry, owner);
            }
            else if (entry.Value is not ListNode { Items: [Node low, Node high] })
            {
                log.Report(place.Text, ReadingMessages.Type($"usual.{entry.Key}", ReadingMessages.Noun(entry.Value),
                    "two values, low and high", $"[{FieldKinds.Example(field)}, {FieldKinds.Example(field)}]"), entry.Value.Span);
            }
            else
            {
                List<double> ends = [];
                foreach (Node end in (Node[])[low, high])
                {
                    if (NodeValue.Read(field, $"usual.{entry.Key}", end, place.FormatOf(format), out object? value, out Node where) is { } finding)
                    {
                        log.Report(place.Text, finding, where.Span);
                    }
                    else if (FieldKinds.SiValue(value) is { } si)
                    {
                        ends.Add(si);
                    }
                }

                if (ends.Count == 2)
                {
                    log.UsualOfCards[place.Display + field.Key] = (ends[0], ends[1]);
                }
            }
        }
    }

    /// <summary>The line to write in place of one whose key a table does not know but holds another: with a unit behind it, with words before it, with dots for hyphens,
    /// with the table's own name. Null for none.</summary>
    /// <param name="value">The value in TOML; null for none.</param>
    private static string? KeyMeant<TOwner>(TablePlace<TOwner> place, TableNode table, string key, string? value)
    {
        if (LongestKey < key.Length)
        {
            return null;
        }

        FieldDescription? Field(string name) => place.Set.Find(place.Path.Length == 0 ? name : $"{place.Path}.{name}");
        string own = place.Path[(place.Path.LastIndexOf('.') + 1)..];
        string[] others = [key.Replace('.', '-'), key.Replace('_', '-'), key.Replace("-", "", StringComparison.Ordinal), own.Length > 0 && key.StartsWith(own + ".", StringComparison.Ordinal) ? key[(own.Length + 1)..] : key];
        if (Array.Find(others, other => other != key && Field(other) is not null) is { } spelt)
        {
            return table.Find(spelt) is not null ? $"`{spelt}` is set in this table already: remove one of the two" : $"write {spelt}{(value is null ? "" : $" = {value}")}";
        }

        // A key with its unit: the unit stands with the value.
        for (int i = key.Length - 1; 0 < i; i--)
        {
            bool isSign = key[i] is '-' or '_', isWord = char.IsAsciiLetterUpper(key[i]) && char.IsAsciiLetterLower(key[i - 1]);
            string unit = key[(isSign ? i + 1 : i)..];
            string head = key[..i];
            if ((isSign || isWord) && value is not null && (Field(head) ?? (isSign ? Field(head.Replace('_', '-')) ?? (Nearest.Of(head, place.Set.Children(place.Path)) is { } near ? Field(near) : null) : null)) is { } field && WithUnit(field, value.Trim('"', '\''), unit) is { } remedy)
            {
                return $"write {field.Key[(field.Key.LastIndexOf('.') + 1)..]} = {remedy}: a unit stands with its value, not in the key";
            }
        }

        return null;
    }

    /// <summary>Longest key of which is asked what it was meant to be, in characters: it is taken apart at every one of them.</summary>
    private const int LongestKey = 100;

    private static string? WithUnit(FieldDescription field, string number, string unit)
    {
        if (!NumberMeant.IsNumber(number))
        {
            return null;
        }

        string text = $"{number} {unit}";
        return field.HasUnit || field.Holds<Ratio>() ? FieldText.TryParse(field, text, out _, out _) ? $"\"{text}\"" : null
            : field.Kind == FieldKind.Number && QuantityText.TryParse(text, out Decibels level, out _) ? NumberMeant.Factor(level) : null;
    }

    private void Unknown<TOwner>(TablePlace<TOwner> place, TableNode table, Entry entry, TOwner owner)
    {
        IReadOnlyList<string> known = place.Set.Children(place.Path);
        string prefix = place.Prefix;
        bool isTable = entry.Value is TableNode or ListNode { Items: [TableNode, ..] };
        bool isSpeltOtherwise = known.Any(one => string.Equals(one, entry.Key.Replace('_', '-'), StringComparison.OrdinalIgnoreCase));
        if (owner is not Design && place.Display.Length > 0 && place.Path.Length == 0 && !isSpeltOtherwise && VariantWith(owner!, entry.Key) is { } mine)
        {
            OfOtherKind(place, entry, mine, known);
            return;
        }

        IEnumerable<string> candidates = owner is Design && place.Path.Length == 0
            ? known.Concat(DesignFields.Lists.Select(list => list.Key)).Append(DesignFields.AntiAliasKey).Append(PartlyKnownDesign.BoughtKey).Concat(Besides) : known;
        (string dotted, Node value) = entry.Value is TableNode { Form: TableForm.Dotted, Entries: [var only] } ? ($"{entry.Key}.{only.Key}", only.Value) : (entry.Key, entry.Value);
        string? written = value switch { NumberNode number => number.Written, TextNode text => Literals.Quoted(text.Value), _ => null };
        if (format == DocumentFormat.Toml && KeyMeant(place, table, dotted, written) is { } remedy)
        {
            log.Report(place.Text, ReadingMessages.Unknown(prefix + entry.Key, null, known, isTable) with { Help = remedy }, entry.KeySpan);
            Undecided(place, table, null);
            return;
        }

        string? nearest = Nearest.Of(entry.Key, isTable ? candidates.Where(one => IsTableOrList(place, one)) : candidates);
        if (nearest is not null && owner is Design && !Nearest.IsOneLetterFrom(entry.Key, nearest) && place.Set.Paths.Any(other => other.EndsWith("." + entry.Key, StringComparison.Ordinal)))
        {
            nearest = null;   // written as the key of another table is
        }

        Undecided(place, table, nearest);
        if (nearest is null && owner is Design)
        {
            // A key in the wrong table: the same last word elsewhere.
            string? elsewhere = place.Set.Paths.FirstOrDefault(other => other.EndsWith("." + entry.Key, StringComparison.Ordinal)
                || string.Equals(other, entry.Key, StringComparison.Ordinal)) ?? (isTable ? place.Set.Tables.FirstOrDefault(other => other.EndsWith("." + entry.Key, StringComparison.Ordinal)) : null);
            if (elsewhere is not null)
            {
                string other = Parent(elsewhere);
                if (!isTable && other.Length > 0 && _moved is var (before, home) && ReferenceEquals(log.Findings[^1], before) && string.Equals(home, other, StringComparison.Ordinal))
                {
                    // One after the other of the same table: its head is missing.
                    log.Findings[^1] = before with { Help = $"write [{other}] before them, the keys from here to `{entry.Key}`, or move them to that table" };
                    _moved = (log.Findings[^1], other);
                    return;
                }

                Finding moved = ReadingMessages.Unknown(prefix + entry.Key, elsewhere, known, isTable);
                log.Report(place.Text, moved with { Help = isTable ? $"write [{elsewhere}] if that is intended, or remove it" : $"move it to its table if `{elsewhere}` is intended, or remove it" },
                    entry.KeySpan);
                _moved = isTable || log.Findings.Count == 0 ? null : (log.Findings[^1], other);
                return;
            }
        }

        log.Report(place.Text, ReadingMessages.Unknown(prefix + entry.Key, nearest is null ? null : prefix + nearest,
            [.. isTable ? candidates.Where(one => IsTableOrList(place, one)) : candidates], isTable), entry.KeySpan);
    }

    /// <summary>What was said last of a key that belongs to another table, and that table.</summary>
    private (Finding Said, string Table)? _moved;

    /// <summary>Tables that the file may have besides a design's.</summary>
    public IReadOnlyList<string> Besides { get; init; } = [];

    /// <summary>Keys of another kind of element: all of an element's are told together, as its kind may be what is wrong.</summary>
    private void OfOtherKind<TOwner>(TablePlace<TOwner> place, Entry entry, Variant mine, IReadOnlyList<string> known)
    {
        string key = place.Prefix + entry.Key;
        int first = log.Findings.FindIndex(one => string.Equals(one.Code, ReadingMessages.KeyOfOtherKind, StringComparison.Ordinal) && string.Equals(Parent(one.Field), Parent(key), StringComparison.Ordinal));
        if (first < 0)
        {
            log.Report(place.Text, ReadingMessages.OtherKind(key, mine.Noun, [entry.Key], known), entry.KeySpan);
            _otherKind[Parent(key)] = [entry.Key];
            return;
        }

        List<string> names = _otherKind[Parent(key)];
        names.Add(entry.Key);
        log.Findings[first] = log.Findings[first] with { Message = ReadingMessages.OtherKind(key, mine.Noun, names, known).Message };
    }

    private readonly Dictionary<string, List<string>> _otherKind = new(StringComparer.Ordinal);

    private bool IsTableOrList<TOwner>(TablePlace<TOwner> place, string name) =>
        place.Set.IsTable(place.Path.Length == 0 ? name : $"{place.Path}.{name}") || (place.Path.Length == 0 && (TomlHeaders.Lists.Contains(name)
            || name is DesignFields.AntiAliasKey or PartlyKnownDesign.BoughtKey || Besides.Contains(name, StringComparer.Ordinal)));

    /// <summary>A key that nobody knows may be meant for any of the table that the file does not give: what rests on those is not judged.</summary>
    private void Undecided<TOwner>(TablePlace<TOwner> place, TableNode table, string? nearest)
    {
        foreach (string name in nearest is not null ? [nearest] : place.Set.Children(place.Path))
        {
            string path = place.Path.Length == 0 ? name : $"{place.Path}.{name}";
            if (table.Find(name) is null && place.Set.Find(path) is { } field)
            {
                log.Unread.Add(place.Display + field.Key);
            }
        }
    }

    /// <summary>The element's own variant where another variant of its list knows the key; null where none does.</summary>
    private static Variant? VariantWith(object element, string key)
    {
        foreach (DesignList list in DesignFields.Lists.Where(list => list.HasKinds))
        {
            Variant? mine = list.Variants.FirstOrDefault(variant => variant.Matches(element));
            bool other = list.Variants.Any(variant => variant.Fields.Any(field =>
                string.Equals(field.Key, key, StringComparison.Ordinal) || field.Key.StartsWith(key + ".", StringComparison.Ordinal)
                || string.Equals(field.JsonKey, key, StringComparison.Ordinal)));
            if (mine is not null && other)
            {
                return mine;
            }
        }

        return null;
    }

    private static string KeyOf(string path) => path.Replace('_', '-');

    private static string Parent(string key) => key[..Math.Max(0, key.LastIndexOf('.'))];
}
