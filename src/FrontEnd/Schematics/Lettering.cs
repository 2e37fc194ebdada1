namespace FrontEnd.Schematics;

/// <summary>How much room letters take, whatever sans-serif font they are drawn in: rather too much than too little.</summary>
internal static class Lettering
{
    /// <summary>What capitals reach above the line that they stand on, over the letters' size.</summary>
    public const double Above = 0.76;

    /// <summary>What a g reaches below it.</summary>
    public const double Below = 0.24;

    /// <summary>Bold letters are wider.</summary>
    private const double Bold = 1.12;

    /// <summary>6.5 points is the least that is read easily in print; a step is 7.09 points.</summary>
    public const double Small = 0.93, Usual = 0.96, Large = 1.2, Largest = 1.6;

    public static double Width(string text, double size, bool bold)
    {
        double width = 0;
        foreach (char letter in text)
        {
            width += letter switch
            {
                ' ' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' or 'i' or 'j' or 'l' or '(' or ')' => 0.4,
                'm' or 'w' or 'M' or 'W' or '%' or '@' or '…' => 1.03,
                '+' or '−' or '=' or '<' or '>' or '~' => 0.85,
                (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-' or '/' => 0.65,
                (>= 'A' and <= 'Z') or 'Ω' or 'µ' or 'μ' => 0.79,
                _ => 1.1,
            };
        }

        return width * size * (bold ? Bold : 1);
    }

    /// <summary>The text, cut where it is wider than there is room, with an ellipsis in place of the rest; line breaks and other signs that are
    /// no letters become blanks.</summary>
    public static string Shortened(string text, double size, bool bold, double room)
    {
        string clean = string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));
        if (Width(clean, size, bold) <= room)
        {
            return clean;
        }

        int length = clean.Length;
        while (0 < length && room < Width(clean[..length] + "…", size, bold))
        {
            length--;
        }

        // Half a letter of two is none.
        return (0 < length && char.IsHighSurrogate(clean[length - 1]) ? clean[..(length - 1)] : clean[..length]) + "…";
    }
}
