using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>A formula, or a piece of one, as it is drawn. Lengths in points.</summary>
/// <param name="Above">What it reaches above the line that its letters stand on.</param>
/// <param name="Below">What it reaches below that line.</param>
/// <param name="Draw">Draws it with its left end at a place of that line.</param>
internal sealed record DrawnFormula(double Width, double Above, double Below, Action<Picture, double, double> Draw)
{
    private const string Ink = "#111";

    /// <summary>Over the letters' size: where a fraction's line lies above the letters' line, how thick lines are, room about them.</summary>
    private const double Axis = 0.29, Thickness = 0.055, Room = 0.15;

    /// <summary>Sizes of what is set low or raised, and of fractions in fractions, over what is around them.</summary>
    private const double Small = 0.72, Inner = 0.86;

    private static readonly DrawnFormula Nothing = new(0, 0, 0, (_, _, _) => { });

    /// <param name="size">Of its letters; what is smaller in it is never smaller than what can be read.</param>
    public static DrawnFormula Of(Formula formula, double size) => Set(formula, size, isRaised: false);

    /// <summary>The largest that fits into a width, down to a size that can still be read.</summary>
    public static DrawnFormula Within(Formula formula, double size, double width)
    {
        DrawnFormula drawn = Of(formula, size);
        return drawn.Width <= width ? drawn : Of(formula, Math.Max(PrintStyle.LeastSize, size * width / drawn.Width));
    }

    /// <summary>A text in the line.</summary>
    public static DrawnFormula Letters(string text, double size, bool isBold = false, string colour = Ink) => text.Length == 0
        ? Nothing
        : new DrawnFormula(TextWidth.Of(text, size, isBold), 0.74 * size, 0.22 * size, (page, x, y) => page.Text(x, y, text, Anchor.Start, size, isBold, colour));

    /// <summary>Things one after the other.</summary>
    public static DrawnFormula Row(params IReadOnlyList<DrawnFormula> parts) => new(
        parts.Sum(part => part.Width), parts.Max(part => part.Above), parts.Max(part => part.Below), (page, x, y) =>
        {
            foreach (DrawnFormula part in parts)
            {
                part.Draw(page, x, y);
                x += part.Width;
            }
        });

    private static DrawnFormula Space(double width) => Nothing with { Width = width };

    private static double Smaller(double size) => Math.Max(Math.Min(size, PrintStyle.LeastSize), size * Small);

    private static DrawnFormula Set(Formula formula, double size, bool isRaised) => formula switch
    {
        Formula.Number number => Letters(number.Digits, size),
        Formula.Quantity { Unit: "°" } angle => Letters(angle.Digits + angle.Unit, size),
        Formula.Quantity quantity => Row(Letters(quantity.Digits, size), Space(0.2 * size), Letters(quantity.Unit, size)),
        Formula.Symbol symbol => Low(symbol.Name, symbol.Low, size),
        Formula.Function function => Low(function.Name, function.Low, size),
        Formula.Differential small => Row(Space(0.15 * size), Letters("d" + small.Variable, size)),
        Formula.Product { IsTight: true } product => Row([.. product.Factors.Select(factor => Set(factor, size, isRaised))]),
        Formula.Product product => Joined([.. product.Factors.Select(factor => Set(factor, size, isRaised))], Signed("·", size, 0.14)),
        Formula.Quotient quotient when isRaised =>
            Row(Set(Closed(quotient.Over), size, isRaised), Letters("/", size), Set(Closed(quotient.Under), size, isRaised)),
        Formula.Quotient quotient => Fraction(quotient, size),
        Formula.Sum sum => Row([.. sum.Terms.SelectMany((term, at) => (DrawnFormula[])
            [at > 0 ? Signed(term.Sign, size, 0.22) : Letters(term.Sign, size), Set(term.Value, size, isRaised)])]),
        Formula.Power power => Raised(Set(power.Base, size, isRaised), Set(power.Exponent, Smaller(size), isRaised: true), size),
        Formula.Root root => Root(Set(root.Inner, size, isRaised), size),
        Formula.Group group => Bracketed(group.Open, Set(group.Inner, size, isRaised), size),
        Formula.Call { Argument: Formula.Group } call => Row(Set(call.Of, size, isRaised), Space(call.Argument is Formula.Group { Open: '|' } ? 0.12 * size : 0), Set(call.Argument, size, isRaised)),
        Formula.Call call => Row(Set(call.Of, size, isRaised), Space(0.18 * size), Set(call.Argument, size, isRaised)),
        Formula.Overall overall => Row(Overall(overall.Sign, size), Space(0.1 * size), Set(overall.Body, size, isRaised)),
        Formula.Polar polar => Row(Set(polar.Size, size, isRaised), Letters("∠", size), Set(polar.Angle, size, isRaised)),
        Formula.Relation relation => Row(Set(relation.Left, size, isRaised), Signed(relation.Sign, size, 0.3), Set(relation.Right, size, isRaised)),
        Formula.Row row => Row([Set(row.Items[0], size, isRaised), .. row.Separators.SelectMany((separator, at) => (DrawnFormula[])
            [Separator(separator, size), Set(row.Items[at + 1], size, isRaised)])]),
        _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "Formula is not handled."),
    };

    private static Formula Closed(Formula formula) =>
        formula is Formula.Sum or Formula.Product { IsTight: false } ? new Formula.Group('(', formula) : formula;

    private static DrawnFormula Separator(string separator, double size) => separator switch
    {
        " " => Space(0.5 * size),
        "…" => Letters(separator, size),
        _ => Row(Letters(separator, size), Space(0.4 * size)),
    };

    private static DrawnFormula Signed(string sign, double size, double room) => Row(Space(room * size), Letters(sign, size), Space(room * size));

    private static DrawnFormula Joined(IReadOnlyList<DrawnFormula> parts, DrawnFormula sign) =>
        Row([.. parts.SelectMany((part, at) => at == 0 ? [part] : (DrawnFormula[])[sign, part])]);

    private static DrawnFormula Low(string name, string low, double size)
    {
        if (low.Length == 0)
        {
            return Letters(name, size);
        }

        DrawnFormula letters = Letters(name, size), index = Letters(low, Smaller(size));
        double down = 0.2 * size;
        return new DrawnFormula(letters.Width + index.Width + (0.05 * size), letters.Above, Math.Max(letters.Below, index.Below + down), (page, x, y) =>
        {
            letters.Draw(page, x, y);
            index.Draw(page, x + letters.Width + (0.02 * size), y + down);
        });
    }

    private static DrawnFormula Raised(DrawnFormula under, DrawnFormula exponent, double size)
    {
        double up = Math.Max(0.36 * size, under.Above - (0.42 * size));
        return new DrawnFormula(under.Width + exponent.Width + (0.06 * size), Math.Max(under.Above, up + exponent.Above), Math.Max(under.Below, exponent.Below - up), (page, x, y) =>
        {
            under.Draw(page, x, y);
            exponent.Draw(page, x + under.Width + (0.04 * size), y - up);
        });
    }

    private static DrawnFormula Fraction(Formula.Quotient quotient, double size)
    {
        double inner = Math.Max(Math.Min(size, PrintStyle.LeastSize), size * Inner);
        DrawnFormula over = Set(quotient.Over, inner, isRaised: false), under = Set(quotient.Under, inner, isRaised: false);
        double width = Math.Max(over.Width, under.Width) + (0.3 * size), axis = Axis * size, room = Room * size;
        return new DrawnFormula(width + (0.12 * size), axis + room + over.Below + over.Above, room + under.Above + under.Below - axis, (page, x, y) =>
        {
            double left = x + (0.06 * size);
            page.Line(left, y - axis, left + width, y - axis, new Pen(Ink, Thickness * size));
            over.Draw(page, left + ((width - over.Width) / 2), y - axis - room - over.Below);
            under.Draw(page, left + ((width - under.Width) / 2), y - axis + room + under.Above);
        });
    }

    private static DrawnFormula Root(DrawnFormula inner, double size)
    {
        double sign = 0.62 * size, room = 0.12 * size, above = inner.Above + room, below = Math.Max(inner.Below, 0.12 * size);
        return new DrawnFormula(sign + inner.Width + (0.12 * size), above + (Thickness * size), below, (page, x, y) =>
        {
            Outline outline = new Outline().Move(x + (0.04 * size), y - (0.28 * size)).Line(x + (0.16 * size), y - (0.36 * size))
                .Line(x + (0.32 * size), y + below - (0.04 * size)).Line(x + (0.54 * size), y - above).Line(x + sign + inner.Width + (0.06 * size), y - above);
            page.Path(outline, new Pen(Ink, Thickness * size, IsRound: true));
            inner.Draw(page, x + sign, y);
        });
    }

    /// <summary>Brackets are letters where they are as high as letters, and drawn where they are higher.</summary>
    private static DrawnFormula Bracketed(char open, DrawnFormula inner, double size)
    {
        const double AsLetters = 1.12;
        if (open != '|' && inner.Above + inner.Below <= AsLetters * size)
        {
            return Row(Letters(open.ToString(), size), inner, Letters(open == '(' ? ")" : "]", size));
        }

        double room = 0.05 * size, above = Math.Max(inner.Above, 0.74 * size) + room, below = Math.Max(inner.Below, 0.14 * size) + room, depth = open == '|' ? 0 : 0.2 * size, side = depth + (0.16 * size);
        return new DrawnFormula(inner.Width + (2 * side), above, below, (page, x, y) =>
        {
            Pen pen = new(Ink, (open == '|' ? Thickness : 0.07) * size, IsRound: true);
            double left = x + (0.08 * size), right = x + side + inner.Width + (0.08 * size) + depth;
            page.Path(Side(open, left, depth, y - above, y + below), pen);
            page.Path(Side(open, right, -depth, y - above, y + below), pen);
            inner.Draw(page, x + side, y);
        });
    }

    /// <param name="x">The outermost place of it.</param>
    /// <param name="depth">How far its ends stand inwards; negative to the left.</param>
    private static Outline Side(char open, double x, double depth, double top, double bottom)
    {
        if (open == '|')
        {
            return new Outline().Move(x, top).Line(x, bottom);
        }

        if (open == '[')
        {
            return new Outline().Move(x + depth, top).Line(x, top).Line(x, bottom).Line(x + depth, bottom);
        }

        const int Pieces = 16;
        Outline outline = new();
        for (int at = 0; at <= Pieces; at++)
        {
            double share = (2.0 * at / Pieces) - 1, y = top + ((bottom - top) * at / Pieces);
            double inwards = x + (depth * Math.Pow(Math.Abs(share), 2.6));
            _ = at == 0 ? outline.Move(inwards, y) : outline.Line(inwards, y);
        }

        return outline;
    }

    private static DrawnFormula Overall(char sign, double size)
    {
        double large = size * (sign == '∫' ? 1.35 : 1.2), down = 0.14 * size;
        DrawnFormula letter = Letters(sign switch { 'Σ' => "∑", 'Π' => "∏", _ => "∫" }, large);
        return new DrawnFormula(letter.Width, (0.8 * large) - down, (0.2 * large) + down, (page, x, y) => letter.Draw(page, x, y + down));
    }
}
