using System.Text;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>Formulas as MathML, which browsers and test programs set themselves.</summary>
/// <remarks>Elements of MathML Core alone. No namespace prefix, so that a page of HTML and a file of XML that declares the namespace hold the
/// same text.</remarks>
internal static class MathMl
{
    private const string Namespace = "http://www.w3.org/1998/Math/MathML";

    /// <summary>A formula in a line of its own, or in a sentence.</summary>
    /// <param name="isDisplay">True for a line of its own.</param>
    public static string Of(Formula formula, bool isDisplay = false)
    {
        StringBuilder text = new($"<math xmlns=\"{Namespace}\"{(isDisplay ? " display=\"block\"" : "")}>");
        Append(text, formula, isSmall: false);
        return text.Append("</math>").ToString();
    }

    /// <summary>A text that may be a formula, as one where it is.</summary>
    public static string OfText(string text, bool isDisplay = false) => FormulaReader.Find(text) is { } formula ? Of(formula, isDisplay) : PrintedPage.Safe(text);

    /// <summary>A sentence, escaped, with its formulas set.</summary>
    /// <param name="symbols">Names of values beside it; null for none.</param>
    public static string OfSentence(string text, IReadOnlyCollection<string>? symbols = null) =>
        string.Concat(FormulasInText.Of(text, symbols).Select(piece => piece.Formula is { } formula ? Of(formula) : PrintedPage.Safe(piece.Text)));

    /// <param name="isSmall">In a raised place, where a fraction is written with a slash.</param>
    private static void Append(StringBuilder text, Formula formula, bool isSmall)
    {
        switch (formula)
        {
            case Formula.Number number:
                Leaf(text, "mn", number.Digits);
                break;
            case Formula.Quantity quantity:
                bool isClose = quantity.Unit[0] == '°' && quantity.Unit.Length == 1;
                text.Append("<mrow>");
                Leaf(text, "mn", quantity.Digits);
                text.Append(isClose ? "" : "<mspace width=\"0.2em\"/>");
                Leaf(text, "mtext", quantity.Unit);
                text.Append("</mrow>");
                break;
            case Formula.Symbol symbol:
                Low(text, "mi", symbol.Name, symbol.Low);
                break;
            case Formula.Function function:
                Low(text, "mi", function.Name, function.Low);
                break;
            case Formula.Differential small:
                text.Append("<mspace width=\"0.15em\"/><mi mathvariant=\"normal\">d</mi>");
                Leaf(text, "mi", small.Variable);
                break;
            case Formula.Quotient quotient when isSmall:
                Row(text, () =>
                {
                    AppendClosed(text, quotient.Over);
                    Leaf(text, "mo", "/");
                    AppendClosed(text, quotient.Under);
                });
                break;
            case Formula.Quotient quotient:
                text.Append("<mfrac>");
                Row(text, () => Append(text, quotient.Over, isSmall));
                Row(text, () => Append(text, quotient.Under, isSmall));
                text.Append("</mfrac>");
                break;
            case Formula.Power power:
                text.Append("<msup>");
                Row(text, () => Append(text, power.Base, isSmall));
                Row(text, () => Append(text, power.Exponent, isSmall: true));
                text.Append("</msup>");
                break;
            case Formula.Root root:
                text.Append("<msqrt>");
                Append(text, root.Inner, isSmall);
                text.Append("</msqrt>");
                break;
            default:
                Row(text, () => AppendRow(text, formula, isSmall));
                break;
        }
    }

    /// <summary>What is a row of things.</summary>
    private static void AppendRow(StringBuilder text, Formula formula, bool isSmall)
    {
        switch (formula)
        {
            case Formula.Product product:
                for (int at = 0; at < product.Factors.Count; at++)
                {
                    // The invisible sign of a product, for whoever has the page read out.
                    text.Append(at == 0 ? "" : product.IsTight ? "<mo>&#x2062;</mo>" : "<mo>⋅</mo>");
                    Append(text, product.Factors[at], isSmall);
                }

                break;
            case Formula.Sum sum:
                for (int at = 0; at < sum.Terms.Count; at++)
                {
                    if (sum.Terms[at].Sign.Length > 0)
                    {
                        text.Append(at == 0 ? "<mo form=\"prefix\">" : "<mo>").Append(sum.Terms[at].Sign).Append("</mo>");
                    }

                    Append(text, sum.Terms[at].Value, isSmall);
                }

                break;
            case Formula.Group group:
                Leaf(text, "mo", group.Open.ToString(), group.Open == '|' ? " form=\"prefix\" stretchy=\"true\"" : "");
                Append(text, group.Inner, isSmall);
                Leaf(text, "mo", group.Close.ToString(), group.Open == '|' ? " form=\"postfix\" stretchy=\"true\"" : "");
                break;
            case Formula.Call call:
                Append(text, call.Of, isSmall);
                text.Append("<mo>&#x2061;</mo>").Append(call.Argument is Formula.Group ? "" : "<mspace width=\"0.15em\"/>");
                Append(text, call.Argument, isSmall);
                break;
            case Formula.Overall overall:
                Leaf(text, "mo", overall.Sign switch { 'Σ' => "∑", 'Π' => "∏", _ => "∫" });
                Append(text, overall.Body, isSmall);
                break;
            case Formula.Polar polar:
                Append(text, polar.Size, isSmall);
                Leaf(text, "mo", "∠");
                Append(text, polar.Angle, isSmall);
                break;
            case Formula.Relation relation:
                Append(text, relation.Left, isSmall);
                Leaf(text, "mo", relation.Sign);
                Append(text, relation.Right, isSmall);
                break;
            case Formula.Row row:
                Append(text, row.Items[0], isSmall);
                for (int at = 0; at < row.Separators.Count; at++)
                {
                    text.Append(row.Separators[at] == " " ? "<mspace width=\"0.5em\"/>" : $"<mo>{row.Separators[at]}</mo>");
                    Append(text, row.Items[at + 1], isSmall);
                }

                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(formula), formula, "Formula is not handled.");
        }
    }

    private static void AppendClosed(StringBuilder text, Formula formula) =>
        Append(text, formula is Formula.Sum or Formula.Product { IsTight: false } ? new Formula.Group('(', formula) : formula, isSmall: true);

    private static void Row(StringBuilder text, Action inside)
    {
        text.Append("<mrow>");
        inside();
        text.Append("</mrow>");
    }

    private static void Low(StringBuilder text, string element, string name, string low)
    {
        if (low.Length == 0)
        {
            Leaf(text, element, name);
            return;
        }

        text.Append("<msub>");
        Leaf(text, element, name);
        Leaf(text, low.All(char.IsAsciiDigit) ? "mn" : "mi", low, low.Length == 1 && !char.IsAsciiDigit(low[0]) ? " mathvariant=\"normal\"" : "");
        text.Append("</msub>");
    }

    private static void Leaf(StringBuilder text, string element, string letters, string more = "") =>
        text.Append('<').Append(element).Append(more).Append('>').Append(PrintedPage.Safe(letters)).Append("</").Append(element).Append('>');
}
