using System.Globalization;
using System.Text;

namespace FrontEnd.Terminal;

/// <summary>Text in columns of a terminal: its width, its ASCII form, cutting and breaking.</summary>
internal static class Lettering
{
    /// <summary>The text as a terminal can show it.</summary>
    /// <param name="ascii">True where only ASCII characters can be shown.</param>
    public static string Say(string text, bool ascii) => ascii ? ToAscii(text) : text;

    /// <summary>The text cut to a number of columns, with a mark where something is missing.</summary>
    public static string Fit(string text, int columns, bool ascii)
    {
        string said = Say(text, ascii);
        if (Columns(said) <= columns)
        {
            return said;
        }

        string mark = Mark(ascii);
        StringBuilder cut = new();
        int used = 0;
        foreach (Rune rune in said.EnumerateRunes())
        {
            used += WidthOf(rune);
            if (columns - mark.Length < used)
            {
                break;
            }

            cut.Append(rune.ToString());
        }

        return columns < mark.Length ? mark[..Math.Max(0, columns)] : cut.ToString().TrimEnd() + mark;
    }

    /// <summary>What stands at the end of a text that is cut.</summary>
    public static string Mark(bool ascii) => ascii ? ".." : "…";

    /// <summary>The text broken into lines between words, but not between a number and its unit.</summary>
    public static IReadOnlyList<string> Wrap(string text, int columns, bool ascii)
    {
        IReadOnlyList<string> lines = Broken(Say(Joined(text), ascii), Math.Max(4, columns));
        return [.. lines.Select(line => line.Replace(Tie, ' '))];
    }

    /// <summary>In place of a blank at which no line ends.</summary>
    private const char Tie = '\u00A0';

    /// <summary>The text with its numbers tied to their units.</summary>
    private static string Joined(string text)
    {
        StringBuilder? tied = null;
        for (int at = text.IndexOf(' ', StringComparison.Ordinal); 0 < at; at = text.IndexOf(' ', at + 1))
        {
            if (!char.IsAsciiDigit(text[at - 1]))
            {
                continue;
            }

            int end = text.AsSpan(at + 1).IndexOfAny(' ', '\n') is var length and >= 0 ? at + 1 + length : text.Length;
            if (at + 1 < end && Documents.Sheets.TextPage.IsUnit(text[(at + 1)..end]))
            {
                (tied ??= new StringBuilder(text))[at] = Tie;
            }
        }

        return tied?.ToString() ?? text;
    }

    private static List<string> Broken(string text, int columns)
    {
        List<string> lines = [];
        foreach (string paragraph in text.Split('\n'))
        {
            string line = "";
            foreach (string word in paragraph.Split(' '))
            {
                string rest = word;
                if (line.Length > 0 && Columns(line) + 1 + Columns(rest) <= columns)
                {
                    line += " " + rest;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                while (columns < Columns(rest))
                {
                    // A word without end, such as a path, breaks where the line ends.
                    int take = Math.Min(rest.Length, columns);
                    while (columns < Columns(rest[..take]) || (take > 1 && char.IsHighSurrogate(rest[take - 1])))
                    {
                        take--;
                    }

                    lines.Add(rest[..take]);
                    rest = rest[take..];
                }

                line = rest;
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>How many columns a text takes.</summary>
    public static int Columns(string text)
    {
        int columns = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            columns += WidthOf(rune);
        }

        return columns;
    }

    /// <summary>0 for combining marks and control characters, 2 for wide East Asian characters and pictures, else 1.</summary>
    public static int WidthOf(Rune rune)
    {
        int value = rune.Value;
        if (value < 0x300)
        {
            return value < 0x20 || value is >= 0x7F and < 0xA0 ? 0 : 1;
        }

        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
        {
            return 0;
        }

        return value is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F)
            or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD)
            ? 2
            : 1;
    }

    private static string ToAscii(string text)
    {
        if (System.Text.Ascii.IsValid(text))
        {
            return text;
        }

        StringBuilder plain = new(text.Length + 8);
        bool ends = false;
        foreach (Rune rune in text.EnumerateRunes())
        {
            string sign = rune.Value switch
            {
                < 0x80 or Tie => rune.ToString(),
                'µ' or 'μ' => "u",
                'Ω' => "ohm",
                '°' => " deg",
                '√' => "rt",
                '²' => "^2",
                '³' => "^3",
                '½' => "1/2",
                '±' => "+/-",
                '·' => "*",
                '×' => "x",
                '−' or '–' or '‑' or '─' => "-",
                '→' => "->",
                '…' => "..",
                '‖' => "||",
                'σ' => "sigma",
                'τ' => "tau",
                'π' => "pi",
                'ω' => "w",
                'Δ' or 'δ' => "d",
                'Σ' => "sum",
                '∫' => "int ",
                'α' => "alpha",
                'ρ' => "rho",
                '∞' => "inf",
                '≤' => "<=",
                '≥' => ">=",
                '≈' => "about ",
                '⁻' => "^-",
                '¹' => "1",
                _ => "?",
            };

            // A sign that brings a blank of its own needs no second one: "25 degC", not two blanks; "sum int", not "sumint".
            bool isBlank = plain.Length > 0 && plain[^1] == ' ';
            plain.Append(sign.Length > 1 && sign[0] == ' ' && isBlank ? sign[1..]
                : ends && sign == " " ? ""
                : rune.Value == '∫' && plain.Length > 0 && char.IsLetterOrDigit(plain[^1]) ? " " + sign
                : sign);
            ends = sign.Length > 1 && sign[^1] == ' ';
        }

        return plain.ToString();
    }
}
