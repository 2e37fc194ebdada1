namespace FrontEnd.Text;

/// <summary>How a quantity is written, as a regular expression (ECMA 262) for an editor that checks a file while it is typed.</summary>
/// <remarks>It lets through everything that <see cref="QuantityText"/> reads, but for bare ohms, which files do not take; what it lets through beyond that, such as a number too large, the
/// program refuses.</remarks>
internal static class QuantityPattern
{
    private const string Sign = @"[+\-−]?", Number = @"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+\-−]?[0-9]+)?";

    /// <summary>Blanks and dots may stand inside a unit: V rms, nA·m.</summary>
    private const string Between = @"[\s·]*";

    /// <summary>The expression for one kind of quantity.</summary>
    public static string Of(QuantityKind kind)
    {
        List<string> units = [.. kind.Units.Select(Prefixed)];
        if (kind.BarePrefixes.Length > 0)
        {
            // m alone is asked about where it may be meant for mega.
            units.Add(Prefixes(kind.Is<Resistance>() ? kind.BarePrefixes.Replace("m", "", StringComparison.Ordinal) : kind.BarePrefixes, isInFull: false));
        }

        string unit = string.Join('|', units), start = @"^\s*(?:";
        string signed = (kind.Form is NumberForm.Fraction or NumberForm.Percent ? "±?" : "") + Sign + Number;
        List<string> forms = [$@"{signed}\s*(?:{unit})"];
        if (kind.Bare && !kind.Is<Resistance>())
        {
            forms.Add(signed);
        }
        else if (kind.ZeroNeedsNoUnit)
        {
            forms.Add(Sign + @"(?:0+\.?0*|\.0+)(?:[eE][+\-−]?[0-9]+)?");
        }

        if (kind.CodeLetters is { } letters)
        {
            forms.Add($@"{Sign}[0-9]*(?:{string.Join('|', letters.Keys.Select(letter => Letter(letter, anyCase: false)))})[0-9]+\s*(?:{Spellings(kind.Units[0])})?");
        }

        return start + string.Join('|', forms) + @")\s*$";
    }

    private static string Prefixed(Unit unit) =>
        (unit.Prefixes.Length == 0 ? "" : $"(?:{Prefixes(unit.Prefixes, isInFull: true)})?{Between}") + $"(?:{Spellings(unit)})";

    /// <param name="isInFull">True where the prefix may also be written in full, as before a unit: kilo, and kil before ohm.</param>
    private static string Prefixes(string letters, bool isInFull) => string.Join('|', letters.Select(letter => letter switch
    {
        'k' => "[kK]",
        'M' => "M|[Mm]eg|MEG",
        _ => Letter(letter, anyCase: false),
    }).Concat(isInFull ? letters.Select(InFull) : []));

    private static string InFull(char prefix)
    {
        string word = string.Concat(global::FrontEnd.Text.Prefixes.Word(prefix).Select(letter => Letter(letter, anyCase: true)));
        return prefix is 'k' or 'M' ? word + "?" : word;
    }

    private static string Spellings(Unit unit) =>
        string.Join('|', unit.Spellings.Select(spelling => string.Join(Between, spelling.Select(letter => Letter(letter, anyCase: true)))));

    /// <summary>A letter in all the forms in which it is read.</summary>
    private static string Letter(char letter, bool anyCase) => letter switch
    {
        'µ' => "[µ\u03BCu]",
        'Ω' => "[\u03A9\u2126]",
        '°' => "[°\u00BA\u02DA]",
        '²' => @"(?:²|\^2)",
        '-' => "[\\-\u2011\u2012\u2013\u2212]",
        _ when anyCase && char.IsAsciiLetter(letter) => $"[{char.ToLowerInvariant(letter)}{char.ToUpperInvariant(letter)}]",
        _ when ".^$|?*+()[]{}/\\".Contains(letter, StringComparison.Ordinal) => "\\" + letter,
        _ => letter.ToString(),
    };
}
