using System.Globalization;
using System.Text.RegularExpressions;

namespace FrontEnd.Text;

/// <summary>The quantity that a text was probably meant to be which <see cref="QuantityText"/> does not read: written with other signs, letters or names of units, or
/// with words around it. Whatever is proposed here is read.</summary>
internal static partial class QuantityMeant
{
    /// <param name="Why">What keeps the text from being read.</param>
    /// <param name="Help">What to write, in backticks.</param>
    internal readonly record struct Proposal(string Why, string Help)
    {
        /// <summary>The value in it; null where there are two, or where it is one of several.</summary>
        public string? Meant { get; init; }

        /// <summary>The two values that stand in the text; null for one.</summary>
        public (string Low, string High)? Ends { get; init; }
    }

    /// <summary>What is written in place of a sign or name, in the order in which they are looked for, and why it is not read.</summary>
    private static readonly (Func<string, string> Repair, Func<string, string> Why)[] Repairs =
    [
        (Lookalikes.WithoutInvisible, text => Lookalikes.InvisibleReason(text)!),
        (Lookalikes.ToAscii, _ => "full-width letters and signs stand in it"),
        (UnitNames.FromCyrillic, _ => "a unit has its Latin letters"),
        (Lookalikes.ToLatin, text => Lookalikes.Reason(text)!),
        (NumberMeant.PlainSigns, _ => NumberMeant.Rule),
        (NumberMeant.WithoutGroups, _ => NumberMeant.Rule),
        (text => TimesPowerOfTen().Replace(text, match => "e" + Power(match.Groups["power"].Value)), _ => "a power of ten is written with an e: 2.2e3"),
        (Quotient, _ => "a value is one number, not a fraction"),
        (text => SignApart().Replace(text, ""), _ => "a sign stands close to its number"),
        (text => PlusMinus().Replace(text, "±"), _ => "plus or minus is one sign, `±`"),
        (text => text.Replace('*', '·'), _ => "units are joined by a raised dot or by nothing"),
        (text => UnitNames.Known(text), text => UnitNames.Why(text)),
        (text => LetterAsPoint().Replace(text, "${whole}.${part} ${unit}"), _ => "a unit's letter is no decimal sign here"),
        (text => UnitFirst().Replace(text, "${number} ${unit}"), _ => "the number stands before its unit"),
    ];

    /// <summary>Longest text that is looked at, in characters: no quantity is longer, and some searches take time with the square of the length.</summary>
    private const int Longest = 100;

    /// <summary>What to write, and why; null where nothing can be made out.</summary>
    public static Proposal? Of(string text, QuantityKind kind)
    {
        if (Longest < text.Length)
        {
            return null;
        }

        string meant = text;
        List<string> why = [];
        foreach ((Func<string, string> repair, Func<string, string> reason) in Repairs)
        {
            string repaired = repair(meant).Trim();
            if (string.Equals(repaired, meant, StringComparison.Ordinal))
            {
                continue;
            }

            why.Add(reason(meant));
            meant = repaired;
            if (IsRead(meant, kind))
            {
                return new(string.Join("; ", why), $"write `{meant}`") { Meant = meant };
            }
        }

        return PrefixAlone(text, kind) ?? Misspelt(text, kind) ?? Span(text, kind) ?? Around(text, kind)
            ?? (meant != text ? Span(meant, kind) ?? Around(meant, kind) : null);
    }

    /// <summary>True for what is read, and read as it is written: bare ohms are not.</summary>
    private static bool IsRead(string text, QuantityKind kind) =>
        QuantityText.IsRead(kind, text, out IQuantity? value) && (!kind.Is<Resistance>() || value!.SiValue == 0 || !NumberMeant.IsNumber(text));

    /// <summary>A prefix's letter where its unit is left out, which another kind may read without one: 0.5 µ for a voltage.</summary>
    public static Proposal? PrefixOf(string text, string unit, QuantityKind kind) =>
        unit.Length == 1 && kind.Units[0].Prefixes.Contains(unit[0] is '\u03BC' or 'u' ? 'µ' : unit[0], StringComparison.Ordinal) && IsRead(text + kind.Units[0].Spellings[0], kind)
            ? new("a prefix stands before a unit", $"write `{text}{kind.Units[0].Spellings[0]}` if that is intended") { Meant = text + kind.Units[0].Spellings[0] } : null;

    /// <summary>A prefix in full, without the unit that it belongs to: 100 nano.</summary>
    private static Proposal? PrefixAlone(string text, QuantityKind kind)
    {
        string with = text.TrimEnd() + kind.Units[0].Spellings[0];
        return text.Length > 0 && char.IsLetter(text.TrimEnd()[^1]) && !Unit().IsMatch(text) && QuantityText.IsRead(kind, with, out IQuantity? value)
            ? new("a prefix stands before a unit", $"write `{QuantityText.FormatExact(value!)}`") { Meant = QuantityText.FormatExact(value!) } : null;
    }

    /// <summary>A unit in full with one letter wrong: 60 Herz, 3 vlots.</summary>
    private static Proposal? Misspelt(string text, QuantityKind kind)
    {
        string unit = new([.. text.Reverse().TakeWhile(char.IsLetter).Reverse()]), number = text[..^unit.Length].Trim();
        string[] near = unit.Length < 4 || !NumberMeant.IsNumber(number) ? [] : [.. kind.Readings.Spellings.Where(known => known.Length > 3 && Nearest.IsOneLetterFrom(unit, known))];
        return near.Length > 0 && near.Select(one => kind.Readings.TryExact(one, out Reading reading) ? reading : default).Distinct().Count() == 1
            ? new($"the unit `{unit}` is not known", $"write `{number} {near[0]}` if that is intended") { Meant = $"{number} {near[0]}" } : null;
    }

    /// <summary>Two values and nothing but a sign or word for "to" between them, the lower first; the one that stands first may leave its unit to the other.</summary>
    public static (string Low, string High)? Ends(string text, QuantityKind kind)
    {
        Match match = text.Length <= Longest ? Between().Match(text) : Match.Empty;
        (string low, string high) = (match.Groups["low"].Value.Trim(), match.Groups["high"].Value.Trim());
        if (!match.Success || !IsRead(high, kind))
        {
            return null;
        }

        string with = NumberMeant.IsNumber(low) ? low + high[NumberLength(high)..] : low;
        return QuantityText.IsRead(kind, with, out IQuantity? from) && QuantityText.IsRead(kind, high, out IQuantity? to) && from!.SiValue != to!.SiValue
            ? from.SiValue < to.SiValue ? (with, high) : (high, with) : null;
    }

    private static Proposal? Span(string text, QuantityKind kind) => Ends(text, kind) is var (low, high)
        ? new("two values stand in it, and one is wanted", "write the one that counts") { Ends = (low, high) }
        : null;

    /// <summary>One value among words and signs that are none: about, at least, what a part is made of.</summary>
    private static Proposal? Around(string text, QuantityKind kind)
    {
        Match found = Match.Empty;
        string value = "";
        foreach (Match number in Number().Matches(text))
        {
            for (int end = text.Length; number.Index + number.Length <= end; end--)
            {
                string piece = text[number.Index..end].TrimEnd();
                if (IsWhole(text, end) && IsRead(piece, kind) && (!NumberMeant.IsNumber(piece) || !text[end..].Any(char.IsLetter)))
                {
                    if (found.Success)
                    {
                        return null;   // two values, and nobody knows which
                    }

                    (found, value) = (number, piece);
                    break;
                }
            }
        }

        if (!found.Success)
        {
            return null;
        }

        string before = text[..found.Index].Trim(), after = text[(found.Index + value.Length)..].Trim(), beside = before.Length == 0 ? after : before;
        return Lead().IsMatch(before) && !Reckoned().IsMatch(after)
            ? new($"`{beside}` beside it is not read", $"write `{value}` if that is intended{(after.Contains('%', StringComparison.Ordinal) ? "; a tolerance has a key of its own" : "")}") { Meant = value }
            : null;
    }

    /// <summary>True where no unit goes on behind the end.</summary>
    private static bool IsWhole(string text, int end) =>
        end == text.Length || !(char.IsLetterOrDigit(text[end]) || text[end] is '%' or '°' or '‰' or '√' or '^' or '²' or '·' or '*' or '_'
            || (text[end] is '/' or '.' or ',' && end + 1 < text.Length && (text[end] is '/' ? !char.IsDigit(text[end + 1]) : char.IsDigit(text[end + 1]))));

    private static int NumberLength(string text) => Number().Match(text).Length;

    private static string Power(string written) => string.Concat(written.Select(letter =>
        "⁰¹²³⁴⁵⁶⁷⁸⁹".IndexOf(letter, StringComparison.Ordinal) is >= 0 and int digit ? (char)('0' + digit) : letter is '⁻' or '−' ? '-' : letter)).TrimStart('+', '⁺');

    /// <summary>1/2 and ½ as decimals, where they have few.</summary>
    private static string Quotient(string text) => Fraction().Replace(text, match =>
    {
        double whole = match.Groups["whole"].Success ? double.Parse(match.Groups["whole"].Value, CultureInfo.InvariantCulture) : 0;
        double part = match.Groups["sign"].Success ? CharUnicodeInfo.GetNumericValue(match.Groups["sign"].Value[0])
            : double.Parse(match.Groups["over"].Value, CultureInfo.InvariantCulture) / double.Parse(match.Groups["under"].Value, CultureInfo.InvariantCulture);
        // 50/60 Hz are two values; 1/2 kΩ is one.
        bool isPart = match.Groups["sign"].Success || (part < 1 && match.Groups["under"].Value is { Length: 1 } or "10");
        return double.IsFinite(part) && isPart ? (whole + part).ToString("0.######", CultureInfo.InvariantCulture) : match.Value;
    });

    [GeneratedRegex(@"(?<=[0-9])\s*[x×*·]\s*10\s*(\^\s*\(?(?<power>[-+−]?[0-9]{1,3})\)?|(?<power>[-−][0-9]{1,2})(?![0-9.])|(?<power>[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}))|(?<=[0-9])\s+[eE](?<power>[-+−]?[0-9]{1,2})(?![0-9])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TimesPowerOfTen();

    [GeneratedRegex(@"^(?:(?<over>[0-9]{1,6})\s*/\s*(?<under>[0-9]{1,6})(?![0-9.])|(?:(?<whole>[0-9]{1,6})\s*)?(?<sign>[¼½¾⅐-⅞]))", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Fraction();

    [GeneratedRegex(@"(?<=^[-+−])\s+(?=[0-9.])", RegexOptions.None, 1000)]
    private static partial Regex SignApart();

    [GeneratedRegex(@"\+\s*/?\s*[-−]", RegexOptions.None, 1000)]
    private static partial Regex PlusMinus();

    [GeneratedRegex(@"^(?<whole>[0-9]+)(?<unit>[a-zA-ZµΩ]{1,2})(?<part>[0-9]+)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LetterAsPoint();

    [GeneratedRegex(@"^(?<unit>[^\s0-9.+−-]{1,20})\s*(?<number>[0-9]+(?:\.[0-9]+)?)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex UnitFirst();

    [GeneratedRegex(@"[0-9]\s*[^\s0-9.,]{1,3}$", RegexOptions.None, 1000)]
    private static partial Regex Unit();

    [GeneratedRegex(@"^\s*(?:from\s+|between\s+)?(?<low>[-−]?[0-9][^\s]{0,12}?(?:\s*[^\s0-9.…–—~-]{1,12})?)\s*(?:\.\.\.?|…|[–—~-]|\bto\b|\bbis\b|\band\b)\s*(?<high>[0-9].{0,30})$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Between();

    [GeneratedRegex(@"(?<![\p{L}0-9.,])[-+−]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?", RegexOptions.None, 1000)]
    private static partial Regex Number();

    // Words and signs of what is not known exactly, of what is named, and brackets. A word is taken whole: tried letter by letter, twenty of them before a sign that is none
    // of these would take seconds.
    [GeneratedRegex(@"^(?>\p{L}+[.:=]?|[~≈≃∼<>≤≥=:(≲≳±]|\s)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Lead();

    // Signs behind a value that reckon with it or make another unit of it.
    [GeneratedRegex(@"^(?:[*×x·+^²³]|/\s*(?:\p{L}|[0-9.]+\s*$)|-\s*[0-9])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reckoned();
}
