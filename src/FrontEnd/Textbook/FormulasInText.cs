namespace FrontEnd.Textbook;

/// <summary>A piece of a sentence: words, or a formula.</summary>
/// <param name="Text">As written.</param>
/// <param name="Formula">Null for words.</param>
internal sealed record TextPiece(string Text, Formula? Formula);

/// <summary>Finds the formulas in a sentence, so that they can be set as formulas.</summary>
/// <remarks>A formula is the longest row of words, as parted by blanks, that reads as one and shows something that letters do not: a fraction, an
/// index, a power, a root, a product, a sum. Numbers with units stay words.</remarks>
internal static class FormulasInText
{
    /// <summary>Words of the longest formula that is looked for.</summary>
    private const int Longest = 16;

    private const string Opening = "(„“\"'", Closing = ".,;:?!)”\"'";

    private static readonly HashSet<string> NoFormulas = new(StringComparer.Ordinal) { "A/D", "D/A", "I/O", "AC/DC" };

    /// <param name="symbols">Names of values beside the sentence, which are formulas even alone; null for none.</param>
    public static IReadOnlyList<TextPiece> Of(string text, IReadOnlyCollection<string>? symbols = null)
    {
        List<(int From, int To)> words = [.. Words(text)];
        List<TextPiece> pieces = [];
        int written = 0;
        for (int first = 0; first < words.Count; first++)
        {
            for (int last = Math.Min(words.Count, first + Longest) - 1; first <= last; last--)
            {
                if (Find(text, words[first].From, words[last].To, symbols) is not var (from, to, formula))
                {
                    continue;
                }

                Words(pieces, text[written..from]);
                pieces.Add(new TextPiece(text[from..to], formula));
                (written, first) = (to, last);
                break;
            }
        }

        Words(pieces, text[written..]);
        return pieces;
    }

    private static void Words(List<TextPiece> pieces, string words)
    {
        if (words.Length > 0)
        {
            pieces.Add(new TextPiece(words, null));
        }
    }

    /// <summary>A formula between two places, or a little within, without the sentence's own brackets and stops.</summary>
    private static (int From, int To, Formula Formula)? Find(string text, int from, int to, IReadOnlyCollection<string>? symbols)
    {
        for (int begin = from; ; begin++)
        {
            for (int end = to; begin < end; end--)
            {
                string piece = text[begin..end];
                if (!NoFormulas.Contains(piece) && MayBe(piece) && FormulaUnits.Length(piece, 0) < piece.Length && FormulaReader.FindInSentence(piece, symbols) is { } formula
                    && (!formula.IsPlain || symbols?.Contains(piece) == true && piece.Length > 1))
                {
                    return (begin, end, formula);
                }

                if (!Closing.Contains(text[end - 1], StringComparison.Ordinal))
                {
                    break;
                }
            }

            if (to <= begin || !Opening.Contains(text[begin], StringComparison.Ordinal))
            {
                return null;
            }
        }
    }

    /// <summary>Most words are told from formulas by their letters.</summary>
    private static bool MayBe(string piece)
    {
        bool isAllSmall = true;
        foreach (char letter in piece)
        {
            isAllSmall &= char.IsAsciiLetterLower(letter);
        }

        return !isAllSmall || piece.Length < 3;
    }

    private static IEnumerable<(int From, int To)> Words(string text)
    {
        for (int at = 0; at < text.Length;)
        {
            while (at < text.Length && char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            int from = at;
            while (at < text.Length && !char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            if (from < at)
            {
                yield return (from, at);
            }
        }
    }
}
