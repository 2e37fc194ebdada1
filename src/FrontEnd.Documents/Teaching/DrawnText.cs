using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>Sentences with formulas in them as pieces of printed pages.</summary>
internal static class DrawnText
{
    /// <summary>A paragraph.</summary>
    /// <param name="symbols">Names of values beside it, which are set as formulas; null for none.</param>
    public static Piece Of(string text, PrintStyle style, double width, IReadOnlyCollection<string>? symbols = null) =>
        Pieces.Below(Lines(text, "", 0, style, width, symbols));

    /// <summary>An entry of a list: a paragraph behind its number or letter.</summary>
    /// <param name="indent">Where the text begins, in points.</param>
    public static Piece Entry(string label, double indent, string text, PrintStyle style, double width, IReadOnlyCollection<string>? symbols = null) =>
        Pieces.Below(Lines(text, label, indent, style, width, symbols));

    private static IReadOnlyList<Piece> Lines(string text, string label, double indent, PrintStyle style, double width, IReadOnlyCollection<string>? symbols)
    {
        width -= indent;
        List<List<Word>> lines = [[]];
        double blank = style.Width(" "), at = 0;
        foreach (Word word in Words(text, style, symbols).SelectMany(word => Fitting(word, width, style)))
        {
            if (lines[^1].Count > 0 && width < at + blank + word.Drawn.Width)
            {
                lines.Add([]);
                at = 0;
            }

            at += word.Drawn.Width + (lines[^1].Count > 0 ? blank : 0);
            lines[^1].Add(word);
        }

        return [.. lines.Where(line => line.Count > 0).Select((line, number) => Line(line, style, blank, number == 0 ? label : "", indent))];
    }

    /// <summary>What is no wider than a column.</summary>
    private static IEnumerable<Word> Fitting(Word word, double width, PrintStyle style) => word.Drawn.Width <= width || word.Text is null
        ? [word]
        : PrintLines.Of(word.Text, width, style).Select(part => Plain(part, style));

    private static Word Plain(string text, PrintStyle style) => new(DrawnFormula.Letters(text, style.Size, style.IsBold, style.Colour), text);

    /// <summary>A line is as high as usual, or higher where a formula in it needs that.</summary>
    private static Piece Line(IReadOnlyList<Word> words, PrintStyle style, double blank, string label, double indent)
    {
        // Words that follow each other are drawn as one text, so that whoever copies it gets its blanks.
        List<DrawnFormula> drawn = [];
        for (int first = 0, next; first < words.Count; first = next)
        {
            next = first + 1;
            while (words[first].Text is not null && next < words.Count && words[next].Text is not null)
            {
                next++;
            }

            drawn.Add(next == first + 1 ? words[first].Drawn : Plain(string.Join(' ', words.Skip(first).Take(next - first).Select(word => word.Text)), style).Drawn);
        }

        double usual = ((style.Leading - style.Size) / 2) + (0.79 * style.Size);
        double above = Math.Max(usual, drawn.Max(word => word.Above) + 1), below = Math.Max(style.Leading - usual, drawn.Max(word => word.Below) + 1);
        return new Piece(above + below, (page, x, y) =>
        {
            page.Text(x, y + above, label, Anchor.Start, style.Size, style.IsBold, style.Colour);
            x += indent;
            foreach (DrawnFormula word in drawn)
            {
                word.Draw(page, x, y + above);
                x += word.Width + blank;
            }
        });
    }

    /// <summary>What no line is broken within: words, a number with its unit, a formula with the stop behind it.</summary>
    private static IEnumerable<Word> Words(string text, PrintStyle style, IReadOnlyCollection<string>? symbols)
    {
        List<DrawnFormula> open = [];
        string? only = null;
        foreach (TextPiece piece in FormulasInText.Of(text, symbols))
        {
            if (piece.Formula is { } formula)
            {
                open.Add(DrawnFormula.Of(formula, style.Size));
                only = null;
                continue;
            }

            string[] words = [.. TextPage.Pieces(piece.Text)];
            if (words.Length == 0)
            {
                words = [""];
            }

            bool isJoined = open.Count > 0 && !char.IsWhiteSpace(piece.Text[0]);
            for (int at = 0; at < words.Length; at++)
            {
                if (open.Count > 0 && !(at == 0 && isJoined))
                {
                    yield return new Word(DrawnFormula.Row(open), only);
                    open = [];
                }

                if (words[at].Length > 0)
                {
                    only = open.Count == 0 ? words[at] : null;
                    open.Add(Plain(words[at], style).Drawn);
                }
            }

            if (open.Count > 0 && char.IsWhiteSpace(piece.Text[^1]))
            {
                yield return new Word(DrawnFormula.Row(open), only);
                open = [];
            }
        }

        if (open.Count > 0)
        {
            yield return new Word(DrawnFormula.Row(open), only);
        }
    }

    /// <param name="Text">Null where there is a formula in it.</param>
    private sealed record Word(DrawnFormula Drawn, string? Text);
}

/// <summary>Puts pieces of printed pages together.</summary>
internal static class Pieces
{
    /// <summary>One below the other, with the room that each has above it; the first one's stays above all.</summary>
    public static Piece Below(params IReadOnlyList<Piece> pieces) => pieces.Count == 0 ? new Piece(0, (_, _, _) => { }) : new Piece(
        pieces.Sum(piece => piece.Before + piece.Height) - pieces[0].Before, (page, x, y) =>
        {
            y -= pieces[0].Before;
            foreach (Piece piece in pieces)
            {
                y += piece.Before;
                piece.Draw(page, x, y);
                y += piece.Height;
            }
        })
    {
        Before = pieces[0].Before,
    };

    /// <summary>Side by side.</summary>
    /// <param name="places">Where each begins, from the left.</param>
    public static Piece Beside(IReadOnlyList<Piece> pieces, IReadOnlyList<double> places) => new(pieces.Max(piece => piece.Height), (page, x, y) =>
    {
        for (int at = 0; at < pieces.Count; at++)
        {
            pieces[at].Draw(page, x + places[at], y);
        }
    });

    public static Piece Indented(Piece piece, double by) => piece with { Draw = (page, x, y) => piece.Draw(page, x + by, y) };
}
