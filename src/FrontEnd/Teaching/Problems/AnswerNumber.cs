using System.Text;

namespace FrontEnd.Teaching.Problems;

/// <summary>The first number of a line: 110 000, 2,7·10⁻⁸, −34.5, (27 ± 1).</summary>
/// <param name="Digits">As every program writes it: 110000, 2.7e-8, -34.5.</param>
/// <param name="Before">What stands in front of it.</param>
/// <param name="After">What stands behind it: the unit and what is said of it.</param>
/// <param name="Problem">Why it is no number; "" where it is one.</param>
internal sealed record AnswerNumber(string Digits, string Before, string After, string Problem)
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /// <summary>True where a letter stands close in front, as in q1: no number, but a name.</summary>
    public bool IsAttached { get; private init; }

    /// <summary>Null where there is no digit.</summary>
    public static AnswerNumber? Find(string line)
    {
        int first = line.IndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']);
        if (first < 0)
        {
            return null;
        }

        int start = first;
        if (0 < start && line[start - 1] is '.' or ',' && (start == 1 || !char.IsLetterOrDigit(line[start - 2])))
        {
            start--;
        }

        int signed = start;
        while (0 < signed && line[signed - 1] == ' ')
        {
            signed--;
        }

        signed = 0 < signed && line[signed - 1] is '+' or '-' ? signed - 1 : start;
        bool isNegative = signed < start && line[signed] == '-';

        // x13 is a gain of 13, and q13 a name.
        bool isAttached = 0 < signed && char.IsLetter(line[signed - 1]) && !(signed == 1 && line[0] is 'x' or 'X');
        string before = line[..signed].Trim();
        if (before.EndsWith("minus", StringComparison.OrdinalIgnoreCase))
        {
            (isNegative, before) = (!isNegative, before[..^5].TrimEnd());
        }

        int at = start;
        string mantissa = Mantissa(line, ref at, out string problem);
        string power = Power(line, ref at, ref mantissa);

        // Nobody parts thousands in front of a power of ten: 5,562·10⁻¹.
        problem = power.Length > 0 && mantissa.IndexOf('.') == 1 ? "" : problem;
        string after = Spread(line[at..].Trim());
        if (before.Length > 0 && before[^1] is '(' or '[')
        {
            char end = before[^1] == '(' ? ')' : ']';
            before = before[..^1].TrimEnd();
            after = after.IndexOf(end) is var close and >= 0 ? after.Remove(close, 1).Trim() : after;
        }

        return new AnswerNumber((isNegative ? "-" : "") + mantissa + power, before, after, problem) { IsAttached = isAttached };
    }

    /// <summary>Digits with one decimal point and without what parts thousands.</summary>
    private static string Mantissa(string line, ref int at, out string problem)
    {
        int start = at;
        bool isGrouped = false;
        StringBuilder text = new();
        while (at < line.Length)
        {
            char letter = line[at];
            if (char.IsAsciiDigit(letter) || (letter is '.' or ',' && IsDigit(line, at + 1)))
            {
                text.Append(letter);
                at++;
            }
            else if (letter is ' ' or '\'' or '_' && IsGroup(line, at + 1) && MayPart(text.ToString(), isGrouped))
            {
                isGrouped = true;
                at++;
            }
            else
            {
                break;
            }
        }

        // "27." ends a sentence.
        at += at < line.Length && line[at] is '.' or ',' && text.Length > 0 ? 1 : 0;
        string written = text.ToString();
        int points = written.Count(one => one == '.'), commas = written.Count(one => one == ',');
        problem = "";
        if (commas == 0 && points <= 1)
        {
            return written;
        }

        if (commas == 1 && points == 0)
        {
            int comma = written.IndexOf(','), decimals = written.Length - comma - 1;
            bool mayPartThousands = decimals == 3 && comma is >= 1 and <= 3 && written[0] != '0' && !isGrouped;
            problem = mayPartThousands
                ? $"`{written}` has a comma that may part thousands or be a decimal sign: write `{written.Replace(',', '.')}` or `{written.Replace(",", "", StringComparison.Ordinal)}`"
                : "";
            return written.Replace(',', '.');
        }

        // The last sign is the decimal one, where it stands once; the other parts thousands.
        char last = written[written.LastIndexOfAny(['.', ','])], other = last == '.' ? ',' : '.';
        bool hasDecimals = written.Count(one => one == last) == 1;
        string whole = hasDecimals ? written[..written.IndexOf(last)] : written, rest = hasDecimals ? "." + written[(whole.Length + 1)..] : "";
        string[] groups = whole.Split(hasDecimals ? other : last);
        if ((!hasDecimals && written.Contains(other)) || groups[0].Length is 0 or > 3 || groups.Skip(1).Any(group => group.Length != 3 || group.Contains(last)))
        {
            problem = $"`{written}` is no number";
        }

        return string.Concat(groups) + rest;
    }

    /// <summary>True where a blank may part thousands: behind one to three digits, behind a group, and behind threes of decimals.</summary>
    private static bool MayPart(string written, bool isGrouped) => written.IndexOfAny(['.', ',']) switch
    {
        < 0 => isGrouped || written.Length <= 3,
        var point => (written.Length - point - 1) % 3 == 0,
    };

    private static bool IsDigit(string line, int at) => at < line.Length && char.IsAsciiDigit(line[at]);

    /// <summary>Three digits and no fourth.</summary>
    private static bool IsGroup(string line, int at) =>
        IsDigit(line, at) && IsDigit(line, at + 1) && IsDigit(line, at + 2) && !IsDigit(line, at + 3);

    /// <summary>A power of ten behind the digits: E-8, ×10^-8, ·10⁻⁸; or 10^-8 alone, whose digits become 1.</summary>
    private static string Power(string line, ref int at, ref string mantissa)
    {
        int from = Skip(line, at);
        if (from < line.Length && line[from] is 'e' or 'E' && Exponent(line, from + 1, false) is { } plain)
        {
            at = plain.End;
            return "e" + plain.Digits;
        }

        if (mantissa == "10" && Exponent(line, at, true) is { } alone)
        {
            (at, mantissa) = (alone.End, "1");
            return "e" + alone.Digits;
        }

        bool isTimes = from < line.Length && line[from] is '×' or 'x' or 'X' or '*' or '·' or '⋅' or '∙' or '•' or '⨯' or '✕' or '✖';
        int ten = Skip(line, isTimes ? from + 1 : from);
        if ((isTimes || at < from) && string.CompareOrdinal(line, ten, "10", 0, 2) == 0
            && Exponent(line, ten + 2, true, isTimes) is { } times)
        {
            at = times.End;
            return "e" + times.Digits;
        }

        return "";
    }

    private static int Skip(string line, int at)
    {
        while (at < line.Length && line[at] == ' ')
        {
            at++;
        }

        return at;
    }

    /// <summary>The exponent that begins here; null for none.</summary>
    /// <param name="isOfTen">It needs a sign that it is one: ^, raised digits, or a sign where <paramref name="mayLoseCaret"/>.</param>
    /// <param name="mayLoseCaret">×10-8 is what is left of ×10⁻⁸ when text is copied.</param>
    private static (string Digits, int End)? Exponent(string line, int at, bool isOfTen, bool mayLoseCaret = false)
    {
        int from = Skip(line, at);
        bool isRaised = false;
        if (isOfTen && from < line.Length && line[from] == '^')
        {
            (isRaised, from) = (true, Skip(line, from + 1));
        }
        else if (isOfTen && string.CompareOrdinal(line, from, "**", 0, 2) == 0)
        {
            (isRaised, from) = (true, Skip(line, from + 2));
        }

        bool isOpen = from < line.Length && line[from] is '(' or '{';
        from += isOpen ? 1 : 0;
        StringBuilder digits = new();
        if (from < line.Length && line[from] is '-' or '+' or '⁻' or '⁺')
        {
            isRaised |= line[from] is '⁻' or '⁺' || mayLoseCaret;
            digits.Append(line[from] is '-' or '⁻' ? "-" : "");
            from = Skip(line, from + 1);
        }

        int before = digits.Length;
        for (; from < line.Length; from++)
        {
            int raised = Superscripts.IndexOf(line[from]);
            if (raised < 0 && !char.IsAsciiDigit(line[from]))
            {
                break;
            }

            isRaised |= 0 <= raised;
            digits.Append(0 <= raised ? (char)('0' + raised) : line[from]);
        }

        from += isOpen && from < line.Length && line[from] is ')' or '}' ? 1 : 0;
        return before < digits.Length && digits.Length <= 5 && (isRaised || !isOfTen) ? (digits.ToString(), from) : null;
    }

    /// <summary>Without what the value is said to be uncertain by: ± 1 in front of the unit, ± 5 % behind it.</summary>
    private static string Spread(string after)
    {
        int sign = after.IndexOf('±');
        if (sign < 0)
        {
            return after;
        }

        if (0 < sign && after[..sign].Trim(' ', '(').Length > 0)
        {
            return after[..sign].Trim();
        }

        return Find(after[(sign + 1)..]) is { Before: "", Problem: "" } spread ? spread.After : after;
    }
}
