using System.Globalization;

namespace FrontEnd.Fields;

/// <summary>A field's value as text and back, as it is typed in a form or stands inside the quotes of a design file.</summary>
internal static class FieldText
{
    /// <summary>The value in full precision; <see cref="TryParse"/> gives the same value back.</summary>
    public static string Format(FieldDescription field, object? value) => value switch
    {
        null => field.NullWord ?? "",
        Ratio ratio => OfRatio(field, ratio.Fraction),
        IQuantity quantity => Exact(quantity),
        double number => Number(number),
        int count => count.ToString(CultureInfo.InvariantCulture),
        bool flag => flag ? "true" : "false",
        string text => text,
        FrequencyRange range => $"{QuantityText.FormatExact(range.Low)}, {QuantityText.FormatExact(range.High)}",
        IReadOnlyList<double> numbers => string.Join(", ", numbers.Select(Number)),
        IReadOnlyList<string> texts => string.Join(", ", texts),
        IReadOnlyList<IReadOnlyList<double>> rows => string.Join("; ", rows.Select(row => string.Join(", ", row.Select(Number)))),
        NamedNumbers numbers => string.Join("; ", numbers.All.Select(one => $"{one.Name} {Number(one.Value)}")),
        ContactOverTime times => string.Join("; ", times.All.Select(one => $"{ContactOverTime.Words(one.After)} {Number(one.Factors.Impedance)} {Number(one.Factors.Excess)}")),
        PartRanges ranges => string.Join("; ", ranges.All.Select(range => $"{range.Key} {Ends(field, range, " to ")}")),
        _ => field.Choices.First(choice => choice.Value.Equals(value)).Word,
    };

    /// <summary>Reads what <see cref="Format"/> writes, and quantities in every spelling that <see cref="QuantityText"/> knows. Checks the
    /// range too.</summary>
    /// <param name="finding">What is wrong; null where the text was read.</param>
    public static bool TryParse(FieldDescription field, string text, out object? value, out Finding? finding)
    {
        finding = Read(field, text, out value) ?? CheckRange(field, value);
        if (finding is not null && value is not null && field.IsNumeric)
        {
            // What is said of a number says it as it was typed, in its own unit.
            finding = FieldMessages.Outside(field, field.Key, text.Trim());
        }

        if (finding is not null)
        {
            value = null;
        }

        return finding is null;
    }

    /// <summary>The finding for a value outside the field's legal range; null where it is inside or has none.</summary>
    public static Finding? CheckRange(FieldDescription field, object? value)
    {
        if (value is PartRanges ranges)
        {
            return CheckRanges(field, ranges);
        }

        if (value is ContactOverTime times)
        {
            return CheckTimes(field, times);
        }

        if (field.Range is not { } range)
        {
            return null;
        }

        // Texts are made for what is outside alone: every design is checked field by field.
        string? outside = value switch
        {
            null or string => null,
            FrequencyRange pair => !range.Contains(pair.Low.Hertz) ? QuantityText.FormatExact(pair.Low)
                : !range.Contains(pair.High.Hertz) ? QuantityText.FormatExact(pair.High) : null,
            IReadOnlyList<double> list => FirstOutside(range, list) is { } number ? Number(number) : null,
            _ => FieldKinds.SiValue(value) is { } si && !range.Contains(si) ? Format(field, value) : null,
        };
        return outside is null ? null : FieldMessages.Outside(field, field.Key, outside);
    }

    /// <summary>What is wrong with a choice that is none of the field's, as a number cast to one is; null for all others.</summary>
    internal static Finding? CheckChoice(FieldDescription field, object? value)
    {
        if (field.Kind != FieldKind.Choice || value is null)
        {
            return null;
        }

        for (int at = 0; at < field.Choices.Count; at++)
        {
            if (value.Equals(field.Choices[at].Value))
            {
                return null;
            }
        }

        return FieldMessages.NotAWord(field, $"{value}", null);
    }

    private static double? FirstOutside(FieldRange range, IReadOnlyList<double> numbers)
    {
        for (int i = 0; i < numbers.Count; i++)
        {
            if (!range.Contains(numbers[i]))
            {
                return numbers[i];
            }
        }

        return null;
    }

    /// <summary>All words that a field takes besides numbers: its choices, its special word, its word for no value.</summary>
    public static IReadOnlyList<string> Words(FieldDescription field) =>
    [
        .. field.Choices.Select(choice => choice.Word),
        .. field.Kind == FieldKind.Flag ? (string[])["true", "false"] : [],
        .. field.SpecialWord is { } special ? (string[])[special] : [],
        .. field.NullWord is { } none ? (string[])[none] : [],
    ];

    /// <summary>A bare number in SI units with its unit.</summary>
    internal static string FormatSi(FieldDescription field, double si) =>
        field.Holds<Ratio>() ? OfRatio(field, si) : field.Quantity is { } kind ? Exact(kind.FromSi(si)) : Number(si);

    /// <summary>The value with at most a number of significant digits, where all of them would be longer than anyone types.</summary>
    public static string FormatTrimmed(FieldDescription field, object? value, int digits) => value switch
    {
        Ratio ratio when IsShare(field) => QuantityText.FormatTrimmed(Share.FromFraction(ratio.Fraction), digits),
        Ratio ratio => QuantityText.FormatTrimmed(ratio.Fraction, "1", digits) + " ×",
        IQuantity quantity => QuantityText.FormatTrimmed(quantity, digits),
        _ => Format(field, value),
    };

    /// <summary>True for a field of a share, such as a tolerance or a mismatch: 100 % and not 1 ×; else a ratio is a factor.</summary>
    internal static bool IsShare(FieldDescription field) => field.Holds<Ratio>() && field.Range is not { Greatest: > MostOfAShare };

    /// <summary>A ratio that cannot be more is a share: a mismatch is below 2, an overhead of what is sent at most 10.</summary>
    private const double MostOfAShare = 10;

    /// <summary>A field has one unit whatever its value: a share stands in per cent, also beyond 100 %, a factor with its sign, also below 1.</summary>
    private static string OfRatio(FieldDescription field, double fraction) =>
        IsShare(field) ? QuantityText.FormatExact(Share.FromFraction(fraction)) : $"{Number(fraction)} ×";

    // 33 K in degrees Celsius has no short decimal form, 298.15 K has.
    private static string Exact(IQuantity quantity)
    {
        string text = QuantityText.FormatExact(quantity);
        return quantity is Temperature temperature && 10 < text.Length ? Number(temperature.Kelvins) + " K" : text;
    }

    private static Finding? Read(FieldDescription field, string text, out object? value)
    {
        string trimmed = text.Trim();
        value = null;
        if (field.NullWord is { } none && string.Equals(trimmed, none, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        if (field.SpecialWord is { } special && string.Equals(trimmed, special, StringComparison.OrdinalIgnoreCase))
        {
            value = special;
            return null;
        }

        switch (field.Kind)
        {
            case FieldKind.Text or FieldKind.Card:
                value = text;
                return null;
            case FieldKind.Choice:
                return Choice(field, trimmed, out value);
            case FieldKind.Flag:
                value = trimmed is "true" or "yes" ? true : trimmed is "false" or "no" ? false : null;
                return value is null ? FieldMessages.NoFlag(field, trimmed) : null;
            case FieldKind.Number:
                return ReadNumber(field, trimmed, out value);
            case FieldKind.Count:
                return ReadCount(field, trimmed, out value);
            case FieldKind.FrequencyRange:
                return Pair(field, trimmed, out value);
            case FieldKind.NumberList:
                return Numbers(field, trimmed, out value);
            case FieldKind.TextList:
                value = (IReadOnlyList<string>)[.. trimmed.Split(',',
                    StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
                return null;
            case FieldKind.SectionRows:
                return Rows(field, trimmed, out value);
            case FieldKind.Ranges:
                return Ranges(field, trimmed, out value);
            case FieldKind.NamedNumbers:
                return Named(field, trimmed, out value);
            case FieldKind.ContactOverTime:
                return Times(field, trimmed, out value);
            default:
                return ReadQuantity(field, text, out value);
        }
    }

    private static Finding? ReadQuantity(FieldDescription field, string text, out object? value)
    {
        bool read = QuantityText.TryParse(field.Quantity!, text, out IQuantity? quantity, out ParseProblem? problem);
        value = quantity;
        if (read)
        {
            return null;
        }

        IReadOnlyList<string> words = Words(field);
        Finding finding = problem!.ToFinding(field.Key, text);

        // A kind's own examples are microvolts, where a battery is asked for as well as a rhythm.
        if (problem.Code == Messages.UnitMissing && !Messages.IsInPlainUnit(text.Trim(), field.Quantity!) && FieldKinds.LikelyUnit(field, text.Trim()) is { } unit)
        {
            finding = finding with { Help = $"add a unit: `{text.Trim()} {unit}` (the default is {field.DefaultText})" };
        }

        return words.Count == 0 || problem.NamesValue ? finding : finding with { Help = finding.Help + $", or {Messages.Listed(words)}" };
    }

    private static Finding? Choice(FieldDescription field, string text, out object? value)
    {
        foreach (ChoiceWord choice in field.Choices)
        {
            if (string.Equals(choice.Word, text, StringComparison.OrdinalIgnoreCase)
                || choice.Aliases.Contains(text, StringComparer.OrdinalIgnoreCase))
            {
                value = choice.Value;
                return null;
            }
        }

        value = null;
        return FieldMessages.NotAWord(field, text, Nearest.Of(text, Words(field)));
    }

    private static Finding? ReadNumber(FieldDescription field, string text, out object? value)
    {
        bool read = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number);
        value = read ? number : null;
        return read ? null : FieldMessages.NoNumberText(field, text);
    }

    private static Finding? ReadCount(FieldDescription field, string text, out object? value)
    {
        bool read = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number);
        value = read ? number : null;
        return read ? null : FieldMessages.NotWhole(field, text);
    }

    private static Finding? Pair(FieldDescription field, string text, out object? value)
    {
        value = null;
        string[] parts = text.Split(',', StringSplitOptions.TrimEntries);
        if (parts.Length != 2)
        {
            return QuantityMeant.Ends(text, field.Quantity!) is var (from, to)
                ? FieldMessages.WrongList(field, "two frequencies, low and high") with { Help = $"write `{from}, {to}`" }
                : FieldMessages.WrongList(field, "two frequencies, low and high");
        }

        if (!QuantityText.TryParse(parts[0], out Frequency low, out ParseProblem? problem)
            || !QuantityText.TryParse(parts[1], out Frequency high, out problem))
        {
            return problem!.ToFinding(field.Key, text);
        }

        value = new FrequencyRange(low, high);
        return null;
    }

    private static Finding? Numbers(FieldDescription field, string text, out object? value)
    {
        value = null;
        List<double> numbers = [];
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (ReadNumber(field, part, out object? number) is { } finding)
            {
                return finding;
            }

            numbers.Add((double)number!);
        }

        value = (IReadOnlyList<double>)numbers;
        return null;
    }

    private static Finding? Rows(FieldDescription field, string text, out object? value)
    {
        value = null;
        List<IReadOnlyList<double>> rows = [];
        foreach (string row in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (Numbers(field, row, out object? numbers) is { } finding)
            {
                return finding;
            }

            rows.Add((IReadOnlyList<double>)numbers!);
        }

        value = (IReadOnlyList<IReadOnlyList<double>>)rows;
        return null;
    }

    /// <summary><c>O1 1; O2 -1</c>: a name may have blanks, the number is its last word.</summary>
    private static Finding? Named(FieldDescription field, string text, out object? value)
    {
        value = null;
        List<NamedNumber> numbers = [];
        foreach (string part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            int blank = part.LastIndexOf(' ');
            if (ReadNumber(field, part[(blank + 1)..], out object? number) is { } finding)
            {
                return finding;
            }

            numbers.Add(new NamedNumber(part[..Math.Max(0, blank)].Trim(), (double)number!));
        }

        value = new NamedNumbers(numbers);
        return null;
    }

    /// <summary><c>1 min 2 2; 1 h 1 1</c>: the time, then the factors of impedance and excess noise.</summary>
    private static Finding? Times(FieldDescription field, string text, out object? value)
    {
        value = null;
        List<ContactAt> times = [];
        foreach (string part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length < 3)
            {
                return FieldMessages.WrongList(field, "a time and two factors, of impedance and excess noise, for each time");
            }

            string after = string.Join(' ', words[..^2]);
            if (!QuantityText.TryParse(after, out Duration time, out ParseProblem? problem))
            {
                return problem!.ToFinding(field.Key, after);
            }

            if ((ReadNumber(field, words[^2], out object? impedance) ?? ReadNumber(field, words[^1], out _)) is { } finding)
            {
                return finding;
            }

            _ = ReadNumber(field, words[^1], out object? excess);
            times.Add(new ContactAt(time, new ContactFactors((double)impedance!, (double)excess!)));
        }

        value = new ContactOverTime(times);
        return null;
    }

    /// <summary>Longest time after an electrode was put on [s], 30 days, and largest factor of its contact; far beyond what anybody records.</summary>
    private const double LongestContact = 30 * 86400.0, LargestFactor = 1e4;

    /// <summary>Times rise, and a factor is above 0: at a factor of 0 there would be no contact to speak of.</summary>
    private static Finding? CheckTimes(FieldDescription field, ContactOverTime times)
    {
        double before = 0;
        for (int i = 0; i < times.All.Count; i++)
        {
            (Duration after, ContactFactors factors) = times.All[i];
            if (!(before < after.Seconds && after.Seconds <= LongestContact))
            {
                string written = ContactOverTime.Words(after);
                return after.Seconds <= 0 || LongestContact < after.Seconds
                    ? FieldMessages.TimeOutside(field, i + 1, written, ContactOverTime.Words(Duration.FromSeconds(LongestContact)))
                    : FieldMessages.TimeDoesNotRise(field, i + 1, written, ContactOverTime.Words(times.All[i - 1].After));
            }

            before = after.Seconds;
            foreach ((string what, double factor) in new[] { ("impedance", factors.Impedance), ("excess", factors.Excess) })
            {
                if (!(0 < factor && factor <= LargestFactor))
                {
                    return FieldMessages.FactorOutside(field, $"{i + 1}", what, Number(factor), Number(LargestFactor));
                }
            }
        }

        return null;
    }

    /// <summary>The ends of a range as they are written, in full precision.</summary>
    private static string Ends(FieldDescription field, PartRange range, string between)
    {
        FieldDescription ranged = field.Ranged.First(one => string.Equals(one.Key, range.Key, StringComparison.Ordinal));
        return FormatSi(ranged, range.Low) + between + FormatSi(ranged, range.High);
    }

    /// <summary>The field that a range is of; the finding names those that may have one.</summary>
    public static Finding? RangedField(FieldDescription field, string key, out FieldDescription? ranged)
    {
        ranged = field.Ranged.FirstOrDefault(one => string.Equals(one.Key, key, StringComparison.Ordinal));
        string[] keys = [.. field.Ranged.Select(one => one.Key)];
        return ranged is null ? FieldMessages.NotRanged(field, key, keys, Nearest.Of(key, keys)) : null;
    }

    private static Finding? CheckRanges(FieldDescription field, PartRanges ranges)
    {
        foreach (PartRange range in ranges.All)
        {
            FieldDescription ranged =
                field.Ranged.First(one =>
                string.Equals(one.Key, range.Key, StringComparison.Ordinal)) with { Key = $"{field.Key}.{range.Key}" };
            foreach (double end in (double[])[range.Low, range.High])
            {
                if (ranged.Range is { } legal && !legal.Contains(end))
                {
                    return FieldMessages.Outside(ranged, ranged.Key, FormatSi(ranged, end)) with { Field = field.Key };
                }
            }

            if (range.High < range.Low)
            {
                return FieldMessages.WrongList(field, $"the least value of {range.Key} first; it has {Ends(field, range, " before ")}");
            }
        }

        return null;
    }

    private static Finding? Ranges(FieldDescription field, string text, out object? value)
    {
        value = null;
        List<PartRange> ranges = [];
        foreach (string part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            int blank = part.IndexOf(' ');
            string key = blank < 0 ? part : part[..blank];
            if (RangedField(field, key, out FieldDescription? ranged) is { } unknown)
            {
                return unknown;
            }

            string[] ends = part[key.Length..].Split(" to ", StringSplitOptions.TrimEntries);
            if (ends.Length != 2)
            {
                return FieldMessages.WrongList(field, $"two values for {key}, least and greatest");
            }

            if (Read(ranged! with { Key = field.Key }, ends[0], out object? low) is { } first)
            {
                return first;
            }

            if (Read(ranged! with { Key = field.Key }, ends[1], out object? high) is { } second)
            {
                return second;
            }

            ranges.Add(new PartRange(key, FieldKinds.SiValue(low)!.Value, FieldKinds.SiValue(high)!.Value));
        }

        value = new PartRanges(ranges);
        return null;
    }

    private static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
