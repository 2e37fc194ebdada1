using System.Globalization;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>A field's value from a node of the tree.</summary>
internal static class NodeValue
{
    /// <summary>Longest list of numbers or texts that is read.</summary>
    public const int ListLimit = 1024;

    /// <param name="key">The key with its list number, for the finding.</param>
    /// <param name="place">The node that the finding is about: the value itself or a list's item.</param>
    public static Finding? Read(FieldDescription field, string key, Node node, DocumentFormat format, out object? value, out Node place)
    {
        place = node;
        Finding? finding = ReadAny(field, key, node, format, out value, ref place);
        finding ??= FieldText.CheckRange(field, value);
        if (finding is null)
        {
            return null;
        }

        if (node is NumberNode written && field.Holds<Ratio>() && string.Equals(finding.Code, Messages.OutsideRange, StringComparison.Ordinal) && format == DocumentFormat.Toml)
        {
            finding = FieldMessages.Outside(field, field.Key, written.Written);   // as it stands in the file, which need not be in per cent
        }

        if (node is TextNode two && field is { Kind: FieldKind.Quantity, Quantity: { } kind } && format == DocumentFormat.Toml && UnknownsReader.MayBeUnknown(key)
            && !QuantityText.TryParse(kind, two.Value, out _, out ParseProblem? problem) && problem.Ends is var (low, high))
        {
            finding = finding with { Help = $"{finding.Help}; what lies somewhere between the two is [{Literals.Quoted(low)}, {Literals.Quoted(high)}]" };
        }

        value = null;
        return string.Equals(finding.Field, field.Key, StringComparison.Ordinal) && !string.Equals(key, field.Key, StringComparison.Ordinal)
            ? finding with { Field = key, Message = Renamed(finding.Message, field.Key, key)!,
                Note = finding.Note?.StartsWith(field.Key + ": ", StringComparison.Ordinal) == true ? key + finding.Note[field.Key.Length..] : Renamed(finding.Note, field.Key, key) }
            : finding;
    }

    // The field of a list element does not know its number; its own short key stands at word borders in the message.
    private static string? Renamed(string? text, string from, string to)
    {
        if (text is null)
        {
            return null;
        }

        string[] words = text.Split(' ');
        for (int i = 0; i < words.Length; i++)
        {
            words[i] = string.Equals(words[i], from, StringComparison.Ordinal) ? to : words[i];
        }

        return string.Join(' ', words);
    }

    private static Finding? ReadAny(FieldDescription field, string key, Node node, DocumentFormat format, out object? value, ref Node place)
    {
        value = null;
        bool plain = format == DocumentFormat.Json;
        switch (node)
        {
            case NullNode when field.NullWord is not null:
                return null;
            case TextNode text when !plain && field.Holds<Resistance>() && IsBareNumber(text.Value):
                // What is refused without quotes is not taken for ohms with them.
                return ReadingMessages.Bare(field, key, text.Value.Trim());
            case TextNode text when IsWord(field, text.Value) || TakesText(field.Kind, plain):
                return FieldText.TryParse(field, text.Value, out value, out Finding? finding) ? null : finding;
            case NumberNode number when field.Kind == FieldKind.Number || field.Holds<Ratio>() || (plain && field.HasUnit):
                value = field.FromSi(number.Value);
                return null;
            case NumberNode number when field.Kind == FieldKind.Count:
                bool whole = Math.Floor(number.Value) == number.Value && Math.Abs(number.Value) <= int.MaxValue;
                value = whole ? (int)number.Value : null;
                return whole ? null : FieldText.TryParse(field, number.Written, out _, out Finding? notWhole) ? null : notWhole;
            case NumberNode number when field.HasUnit:
                return ReadingMessages.Bare(field, key, number.Written);
            case FlagNode flag when field.Kind == FieldKind.Flag:
                value = flag.Value;
                return null;
            case ListNode { Items.Count: > ListLimit }:
                return ReadingMessages.Many(key, ListLimit);
            case ListNode list when field.Kind == FieldKind.FrequencyRange:
                return Pair(field, key, list, plain, out value, ref place);
            case ListNode list when field.Kind == FieldKind.NumberList:
                return Numbers(key, list, out value, ref place);
            case ListNode list when field.Kind == FieldKind.TextList:
                return Texts(key, list, out value, ref place);
            case ListNode list when field.Kind == FieldKind.SectionRows:
                return Rows(key, list, out value, ref place);
            case TableNode table when field.Kind == FieldKind.Ranges:
                return Ranges(field, key, table, format, out value, ref place);
            case ListNode list when field.Kind == FieldKind.ContactOverTime:
                return Times(key, list, plain, out value, ref place);
            case TableNode table when field.Kind == FieldKind.NamedNumbers:
                return Named(key, table, out value, ref place);
            case OtherNode { IsNoNumber: true } when field.IsNumeric:
                return ReadingMessages.NotFinite(key, FieldKinds.Noun(field), Example(field, plain));
            case TextNode text when field.Kind is FieldKind.Number or FieldKind.Count:
                return ReadingMessages.TextForNumber(key, text.Value, FieldKinds.Noun(field), Example(field, plain));
            default:
                return ReadingMessages.Type(key, ReadingMessages.Noun(node), FieldKinds.Noun(field), Example(field, plain), Meant(field, key, node, format));
        }
    }

    /// <summary>The value as it is to be written, where only quotes, brackets or commas are what is wrong with it; null where there is more.</summary>
    private static string? Meant(FieldDescription field, string key, Node node, DocumentFormat format)
    {
        string? meant = (node, field.Kind) switch
        {
            (TextNode text, _) when format == DocumentFormat.Json && field.HasUnit && QuantityText.TryParse(field.Quantity!, text.Value, out IQuantity? size, out _) =>
                $"{size!.SiValue.ToString("R", CultureInfo.InvariantCulture)}, a bare number in {field.Quantity!.SiUnit}",
            (ListNode { Items: [TextNode only] }, _) => Literals.Quoted(only.Value),
            (ListNode { Items: [NumberNode only] }, _) => only.Written,
            (NumberNode number, FieldKind.Text) => Literals.Quoted(number.Written),
            (OtherNode { Written.Length: > 0 } other, FieldKind.Text) => Literals.Quoted(other.Written.Trim()),
            (FlagNode, FieldKind.Text) => Literals.Quoted(((FlagNode)node).Value ? "true" : "false"),
            (NumberNode { Value: 0 or 1 } flag, FieldKind.Flag) => flag.Value == 1 ? "true" : "false",
            (NumberNode number, FieldKind.NumberList) => $"[{number.Written}]",
            (TextNode text, FieldKind.Flag) => TomlValues.Switch(text.Value),
            (TextNode text, FieldKind.TextList) => $"[{string.Join(", ", text.Value.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Literals.Quoted))}]",
            (TextNode text, FieldKind.FrequencyRange) when format == DocumentFormat.Toml && Pair(text.Value) is var (low, high) => $"[{Literals.Quoted(low)}, {Literals.Quoted(high)}]",
            _ => null,
        };
        return meant is null || (node is ListNode { Items: [var inner] } && Read(field, key, inner, format, out _, out _) is not null) ? null : meant;
    }

    /// <summary>An edge of a pair as it is to be written: in hertz where it has no unit; null where nobody knows.</summary>
    private static string? Edge(Node item)
    {
        string text = item switch { NumberNode number => number.Written, TextNode one => one.Value.Trim(), _ => "" };
        return QuantityText.TryParse(text, out Frequency _, out ParseProblem? problem) ? text
            : NumberMeant.IsNumber(text) ? $"{text} Hz"
            : problem.Meant;
    }

    /// <summary>Two frequencies that stand in one text, with a comma or another sign between them.</summary>
    private static (string Low, string High)? Pair(string text) =>
        QuantityMeant.Ends(text.Contains(',', StringComparison.Ordinal) || text.Contains(';', StringComparison.Ordinal) ? text.Replace(", ", " - ", StringComparison.Ordinal).Replace(";", " - ", StringComparison.Ordinal) : text,
            QuantityKind.Of<Frequency>());

    /// <summary>A number and nothing else; zero needs no unit.</summary>
    private static bool IsBareNumber(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) && number != 0;

    private static bool IsWord(FieldDescription field, string text) =>
        string.Equals(text, field.NullWord, StringComparison.OrdinalIgnoreCase)
            || string.Equals(text, field.SpecialWord, StringComparison.OrdinalIgnoreCase);

    private static bool TakesText(FieldKind kind, bool plain) =>
        kind is FieldKind.Text or FieldKind.Card or FieldKind.Choice or FieldKind.Ranges || (!plain && kind == FieldKind.Quantity);

    private static string Example(FieldDescription field, bool plain) =>
        field.Kind == FieldKind.Choice ? $"one of {Messages.Listed([.. FieldText.Words(field).Select(word => $"\"{word}\"")])}"
        : field.Kind == FieldKind.Flag ? "true or false"
        : plain && field.HasUnit ? $"a bare number in {field.Quantity!.SiUnit}"
        : plain && field.Holds<Ratio>() ? "a bare number, such as 0.05"
        : plain && field.Kind == FieldKind.FrequencyRange ? "[0.5, 40]"
        : FieldKinds.Example(field);

    private static Finding? Pair(FieldDescription field, string key, ListNode list, bool plain, out object? value, ref Node place)
    {
        value = null;
        if (list.Items.Count != 2)
        {
            Finding wrong = FieldMessages.NeedsList(field, key, $"two frequencies, low and high; it has {list.Items.Count}");
            return list.Items is [TextNode only] && Pair(only.Value) is var (from, to) ? wrong with { Help = $"write [{Literals.Quoted(from)}, {Literals.Quoted(to)}]" }
                : list.Items.Zip(list.Items.Skip(1)).Any(next => next.First is NumberNode && next.Second is NumberNode && next.Second.Span.Start == next.First.Span.End + 1)
                    ? wrong with { Note = "the decimal sign is a point, and a comma stands between two values" } : wrong;
        }

        if (!plain && list.Items.Find(item => item is NumberNode || (item is TextNode text && !QuantityText.TryParse(text.Value, out Frequency _, out _))) is { } first
            && list.Items.ConvertAll(Edge) is var meant && meant.TrueForAll(one => one is not null))
        {
            // The pair as a whole, so that the next edge is not told after the first is mended.
            place = first;
            string help = $"write [{string.Join(", ", meant.Select(one => Literals.Quoted(one!)))}]";
            return first is NumberNode bare ? ReadingMessages.Bare(field, key, bare.Written) with { Help = help + " if hertz are meant" }
                : QuantityText.TryParse(((TextNode)first).Value, out Frequency _, out ParseProblem? wrong) ? null : wrong!.ToFinding(key, ((TextNode)first).Value) with { Help = help };
        }

        Frequency[] edges = new Frequency[2];
        for (int i = 0; i < 2; i++)
        {
            place = list.Items[i];
            switch (place)
            {
                case NumberNode number when plain:
                    edges[i] = Frequency.FromHertz(number.Value);
                    break;
                case NumberNode number:
                    return ReadingMessages.Bare(field, key, number.Written);
                case TextNode text when !plain:
                    if (!QuantityText.TryParse(text.Value, out edges[i], out ParseProblem? problem))
                    {
                        return problem!.ToFinding(key, text.Value);
                    }

                    break;
                default:
                    return ReadingMessages.Type($"{key}[{i + 1}]", ReadingMessages.Noun(place), "a frequency",
                        plain ? "a bare number in Hz" : FieldKinds.Example(QuantityKind.Of<Frequency>()));
            }
        }

        place = list;
        value = new FrequencyRange(edges[0], edges[1]);
        return null;
    }

    private static Finding? Ranges(FieldDescription field, string key, TableNode table, DocumentFormat format, out object? value,
        ref Node place)
    {
        value = null;
        List<PartRange> ranges = [];
        foreach (Entry entry in table.Entries)
        {
            place = entry.Value;
            string name = entry.Key.Replace('_', '-');
            if (FieldText.RangedField(field, name, out FieldDescription? ranged) is { } unknown)
            {
                return unknown;
            }

            if (entry.Value is not ListNode { Items: [var low, var high] })
            {
                return FieldMessages.NeedsList(field, $"{key}.{name}", "two values, least and greatest") with
                {
                    Help = $"write {name} = [least, greatest], each as {FieldKinds.Example(ranged!)}",
                };
            }

            double[] ends = new double[2];
            foreach ((int at, Node end) in new[] { (0, low), (1, high) })
            {
                if (Read(ranged!, $"{key}.{name}", end, format, out object? read, out place) is { } finding)
                {
                    return finding;
                }

                ends[at] = FieldKinds.SiValue(read) ?? 0;
            }

            ranges.Add(new PartRange(name, ends[0], ends[1]));
        }

        place = table;
        value = new PartRanges(ranges);
        return null;
    }

    private static Finding? Named(string key, TableNode table, out object? value, ref Node place)
    {
        value = null;
        List<NamedNumber> numbers = [];
        foreach (Entry entry in table.Entries)
        {
            place = entry.Value;
            if (entry.Value is not NumberNode number)
            {
                return ReadingMessages.Type($"{key}.{entry.Key}", ReadingMessages.Noun(entry.Value), "a number", "0.5");
            }

            numbers.Add(new NamedNumber(entry.Key, number.Value));
        }

        place = table;
        value = new NamedNumbers(numbers);
        return null;
    }

    /// <summary>Reads one item of a list; its number counts from 1.</summary>
    private delegate Finding? ItemReader<T>(Node node, int number, out T item, ref Node place);

    private static Finding? Items<T>(ListNode list, ItemReader<T> read, out object? value, ref Node place)
    {
        value = null;
        List<T> items = [];
        foreach (Node node in list.Items)
        {
            place = node;
            if (read(node, items.Count + 1, out T item, ref place) is { } finding)
            {
                return finding;
            }

            items.Add(item);
        }

        place = list;
        value = (IReadOnlyList<T>)items;
        return null;
    }

    private static Finding? Numbers(string key, ListNode list, out object? value, ref Node place) => Items(list,
        (Node node, int number, out double item, ref Node _) =>
        {
            item = node is NumberNode read ? read.Value : 0;
            return node is NumberNode ? null : Wrong(key, number, node, "a number", "a bare number, such as 0.05");
        },
        out value, ref place);

    private static Finding? Texts(string key, ListNode list, out object? value, ref Node place) => Items(list,
        (Node node, int number, out string item, ref Node _) =>
        {
            item = (node as TextNode)?.Value ?? "";
            return node is TextNode ? null : Wrong(key, number, node, "a text", "\"text\"");
        },
        out value, ref place);

    private static Finding? Rows(string key, ListNode list, out object? value, ref Node place) => Items(list,
        (Node node, int number, out IReadOnlyList<double> item, ref Node at) =>
        {
            object? numbers = null;
            Finding? finding = node is ListNode row
                ? Numbers($"{key}[{number}]", row, out numbers, ref at)
                : Wrong(key, number, node, "a row of six numbers", "[b0, b1, b2, a0, a1, a2]");
            item = (IReadOnlyList<double>?)numbers ?? [];
            return finding;
        },
        out value, ref place);

    private static readonly string[] KeysOfATime = ["after", "impedance", "excess"];

    private static Finding? Times(string key, ListNode list, bool plain, out object? value, ref Node place)
    {
        Finding? finding = Items(list, (Node node, int number, out ContactAt item, ref Node at) => Time($"{key}[{number}]", node, plain, out item, ref at),
            out value, ref place);
        value = value is IReadOnlyList<ContactAt> times ? new ContactOverTime(times) : null;
        return finding;
    }

    /// <summary><c>{ after = "10 min", impedance = 1.5, excess = 1.5 }</c>; a factor that is left out is 1.</summary>
    private static Finding? Time(string key, Node node, bool plain, out ContactAt item, ref Node place)
    {
        item = default;
        string example = plain ? "{ \"after\": 600, \"impedance\": 1.5, \"excess\": 1.5 }" : "{ after = \"10 min\", impedance = 1.5, excess = 1.5 }";
        if (node is not TableNode table)
        {
            return ReadingMessages.Type(key, ReadingMessages.Noun(node), "a time with its factors", example);
        }

        Duration? after = null;
        (double impedance, double excess) = (1, 1);
        foreach (Entry entry in table.Entries)
        {
            place = entry.Value;
            string own = $"{key}.{entry.Key}";
            switch (entry.Key, entry.Value)
            {
                case ("after", TextNode text) when !plain:
                    if (!QuantityText.TryParse(text.Value, out Duration time, out ParseProblem? problem))
                    {
                        return problem!.ToFinding(own, text.Value);
                    }

                    after = time;
                    break;
                case ("after", NumberNode seconds) when plain:
                    after = Duration.FromSeconds(seconds.Value);
                    break;
                case ("after", NumberNode bare):
                    return ReadingMessages.Type(own, $"the bare number {bare.Written}", "a time with its unit", "\"10 min\"");
                case ("impedance", NumberNode factor):
                    impedance = factor.Value;
                    break;
                case ("excess", NumberNode factor):
                    excess = factor.Value;
                    break;
                default:
                    return KeysOfATime.Contains(entry.Key, StringComparer.Ordinal)
                        ? ReadingMessages.Type(own, ReadingMessages.Noun(entry.Value), entry.Key == "after" ? "a time" : "a number", entry.Key == "after" ? plain ? "600" : "\"10 min\"" : "1.5")
                        : ReadingMessages.Unknown(own, Nearest.Of(entry.Key, KeysOfATime), KeysOfATime, entry.Value is TableNode);
            }
        }

        place = node;
        if (after is not { } known)
        {
            return ReadingMessages.Type(key, "a table without `after`", "a time with its factors", example);
        }

        item = new ContactAt(known, new ContactFactors(impedance, excess));
        return null;
    }

    private static Finding Wrong(string key, int number, Node node, string wanted, string example) =>
        ReadingMessages.Type($"{key}[{number}]", ReadingMessages.Noun(node), wanted, example);
}
