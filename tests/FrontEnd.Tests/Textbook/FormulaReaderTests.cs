using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Textbook;
using Xunit;

namespace FrontEnd.Tests.Textbook;

/// <summary>The notation of formulas: what binds how, and that everything the program writes in it is read.</summary>
public class FormulaReaderTests
{
    [Theory]
    [InlineData("1/(2πRC)", "frac(1; 2 π R C)")]
    [InlineData("V_max/I/(1 − tol)", "frac(V[max]; I·(1 − tol))")]
    [InlineData("√((2kT/πC)·(atan 2πf₂RC − atan 2πf₁RC))", "root((frac(2 k T; π C))·(atan(2 π f[2] R C) − atan(2 π f[1] R C)))")]
    [InlineData("|f_u/(jf)·Π 1/(1 + jf/f_p)| = 1", "|frac(f[u]; j f)·Π{frac(1; 1 + frac(j f; f[p]))}| = 1")]
    [InlineData("−20·log10 |1/(1 + jωC·Z_e) − 1/(1 + jωN·C·Z_e)|", "−20·log[10](|frac(1; 1 + j ω C·Z[e]) − frac(1; 1 + j ω N·C·Z[e])|)")]
    [InlineData("10·log10(1 + (f/f_c)^2n)", "10·log[10]((1 + (frac(f; f[c]))^{2 n}))")]
    [InlineData("Σc·d·e²/√(Σc²e²·Σd²e²)", "frac(Σ{c}·d·e^{2}; root(Σ{c^{2} e^{2}}·Σ{d^{2} e^{2}}))")]
    [InlineData("√(4kT·Σ∫Re Z df)", "root(4 k T·Σ{∫{Re(Z) d:f}})")]
    [InlineData("∫dx/(1 + x²)ⁿ / √(2^(1/n) − 1)", "frac(∫{frac(d:x; (1 + x^{2})^{n})}; root(2^{frac(1; n)} − 1))")]
    [InlineData("√(K·∫f^-α df)", "root(K·∫{f^{−α} d:f})")]
    [InlineData("RC·ln(V0/V_tol)", "R C·ln((frac(V[0]; V[tol])))")]
    [InlineData("|Rs + Rd/(1 + jωRdCd)|", "|R[s] + frac(R[d]; 1 + j ω R[d] C[d])|")]
    [InlineData("√(4kTRB)", "root(4 k T R B)")]
    [InlineData("2√2·σ", "2 root(2)·σ")]
    [InlineData("I·|Z1 + Z2|", "I·|Z[1] + Z[2]|")]
    [InlineData("V_cm·|ΔZ|/|Z_c|", "frac(V[cm]·|ΔZ|; |Z[c]|)")]
    [InlineData("(SINAD − 1.76)/6.02", "frac(SINAD − 1.76; 6.02)")]
    [InlineData("(√2·f0²·GBW·R1/Ro)^⅓", "(frac(root(2)·f[0]^{2}·GBW·R[1]; R[o]))^{frac(1; 3)}")]
    [InlineData("2·min(V_s − h − V_cm, V_cm − h)/V_d", "frac(2·min((V[s] − h − V[cm], V[cm] − h)); V[d])")]
    [InlineData("12 nV/√Hz · √39.5 Hz = 75.4 nV", "12 nV/√Hz·root(39.5 Hz) = 75.4 nV")]
    [InlineData("5 V/50 µA/(1 − 1 %)", "frac(5 V; 50 µA·(1 − 1 %))")]
    [InlineData("(40.7 kΩ∠-37.0°)²", "(40.7 kΩ∠−37.0 °)^{2}")]
    [InlineData("0…f_s/2", "0…frac(f[s]; 2)")]
    [InlineData("½·√(C1/C2)", "frac(1; 2)·root(frac(C[1]; C[2]))")]
    [InlineData("ε0·εr·A/d", "frac(ε[0]·ε[r]·A; d)")]
    public void Read_AFormula_BindsAsItsReaderWould(string text, string expected) => Assert.Equal(expected, Plain(FormulaReader.Read(text)));

    [Theory]
    [InlineData("")]
    [InlineData("1/")]
    [InlineData("(1 + x")]
    [InlineData("|x")]
    [InlineData("f^")]
    [InlineData("√")]
    [InlineData("a + + b")]
    [InlineData("x)")]
    public void Find_NoFormula_IsNull(string text) => Assert.Null(FormulaReader.Find(text));

    [Fact]
    public void Read_EveryTextbookFormula_IsRead()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            Random random = new(seed);
            foreach (TextbookFigure figure in TextbookLaws.Formulas.Select(formula => (TextbookFigure)formula.Invoke(null, TextbookLaws.Inputs(formula, random))!))
            {
                IsWhole(figure.Formula);
                IsWhole(figure.Substituted);
            }
        }
    }

    [Fact]
    public void Read_EveryStepOfEveryTemplate_IsRead()
    {
        foreach (Problem problem in TemplateSet.All.SelectMany(template => Enumerable.Range(1, template.Level == 3 ? 4 : 25).Select(seed => template.For((ulong)seed, "s1"))))
        {
            foreach (Step step in problem.Steps.Where(step => step.Formula.Length > 0))
            {
                IsWhole(step.Formula);
                IsWhole(step.Substituted);
            }

            Assert.All(problem.Givens, given => IsWhole(given.Symbol));
        }
    }

    [Theory]
    [InlineData("At f₁ the flicker part of the variance is e₁² − e²; it falls with 1/f and equals e² at the corner", "f₁|e₁² − e²|1/f|e²")]
    [InlineData("The two inner nodes sit at V_cm ± G·V_d/2. How large may its gain be?", "V_cm ± G·V_d/2")]
    [InlineData("After N sweeps the noise is σ/√N; solve A/(σ/√N) = S for N", "σ/√N|A/(σ/√N) = S")]
    [InlineData("Its integral is (atan 2πf₂R_dC_d − atan 2πf₁R_dC_d)/(2πC_d) for each electrode", "(atan 2πf₂R_dC_d − atan 2πf₁R_dC_d)/(2πC_d)")]
    [InlineData("makes noise: Re Z = R_d/(1 + (2πf·R_d·C_d)²)", "Re Z = R_d/(1 + (2πf·R_d·C_d)²)")]
    [InlineData("10·log10 is for powers; a ratio of voltages takes 20·log10", "10·log10|20·log10")]
    [InlineData("small this is −20·log10((N − 1)·2πf·C·Z_e)", "−20·log10((N − 1)·2πf·C·Z_e)")]
    [InlineData("The nearest of the E12 series by ratio is 100 nF, and the A/D converter has 24 bit and/or 0.1 % at −3 dB", "")]
    [InlineData("As drawn, alias.fold_attenuation is 13.0 dB (worst case, at 50 Hz) in Re-run 2, 3 or 4.", "")]
    [InlineData("A blink makes a notch ring. I is it. An ac-coupled stage of a peak-to-peak value (1 µF, 1 MΩ) at 27 nV/√Hz", "")]
    [InlineData("noise over 0…f_s/2, referred", "0…f_s/2")]
    [InlineData("needs ln(1/share) time constants of sheet RGP6M36V", "ln(1/share)")]
    public void Of_ASentence_FindsItsFormulas(string text, string expected)
    {
        IReadOnlyList<TextPiece> pieces = FormulasInText.Of(text, ["share"]);
        Assert.Equal(text, string.Concat(pieces.Select(piece => piece.Text)));
        Assert.Equal(expected, string.Join('|', pieces.Where(piece => piece.Formula is not null).Select(piece => piece.Text)));
    }

    [Fact]
    public void Of_AnyTemplatesSentences_LeavesNoRawFormula()
    {
        foreach (Problem problem in TemplateSet.All.Select(template => template.For(3, "s1")))
        {
            foreach (string text in problem.Steps.Select(step => step.Says).Append(problem.Text).Concat(problem.Slips.Select(slip => slip.Kind.Remark)))
            {
                string words = string.Concat(FormulasInText.Of(text, [.. problem.Givens.Select(given => given.Symbol)]).Where(piece => piece.Formula is null).Select(piece => piece.Text));
                Assert.DoesNotMatch(@"[·√²³₀₁₂₃^∫Σ|=]|[A-Za-zσf]_[a-z]+\b(?<!\.\w+)|\w/\(|\b\w/\w|ln\(", words.Replace("/√Hz", "").Replace("offset_survived", "").Replace("fold_attenuation", ""));
            }
        }
    }

    /// <summary>It is read, and every letter and digit of it stands in the tree, in order.</summary>
    private static void IsWhole(string text)
    {
        Formula? formula = FormulaReader.Find(text);
        Assert.True(formula is not null, text);
        Assert.Equal(Letters(text), Letters(Plain(formula!)));
    }

    private static string Letters(string text)
    {
        const string Small = "₀₁₂₃₄₅₆₇₈₉⁰¹²³⁴⁵⁶⁷⁸⁹";
        string plain = string.Concat(text.Replace("frac", "").Replace("root", "").Replace("d:", "d").Replace("⅓", "13").Replace("ⁿ", "n")
            .Select(letter => Small.IndexOf(letter) is var at and >= 0 ? (char)('0' + (at % 10)) : letter));
        return string.Concat(plain.Where(char.IsLetterOrDigit));
    }

    /// <summary>A tree with all brackets written out.</summary>
    private static string Plain(Formula formula) => formula switch
    {
        Formula.Number number => number.Digits,
        Formula.Quantity quantity => $"{quantity.Digits} {quantity.Unit}",
        Formula.Symbol symbol => symbol.Low.Length == 0 ? symbol.Name : $"{symbol.Name}[{symbol.Low}]",
        Formula.Function function => function.Low.Length == 0 ? function.Name : $"{function.Name}[{function.Low}]",
        Formula.Differential small => $"d:{small.Variable}",
        Formula.Product product => string.Join(product.IsTight ? " " : "·", product.Factors.Select(Plain)),
        Formula.Quotient quotient => $"frac({Plain(quotient.Over)}; {Plain(quotient.Under)})",
        Formula.Sum sum => string.Concat(sum.Terms.Select((term, at) => $"{(at == 0 ? term.Sign : $" {term.Sign} ")}{Plain(term.Value)}")),
        Formula.Power power => $"{Plain(power.Base)}^{{{Plain(power.Exponent)}}}",
        Formula.Root root => $"root({Plain(root.Inner)})",
        Formula.Group group => $"{group.Open}{Plain(group.Inner)}{group.Close}",
        Formula.Call call => $"{Plain(call.Of)}({Plain(call.Argument)})",
        Formula.Overall overall => $"{overall.Sign}{{{Plain(overall.Body)}}}",
        Formula.Polar polar => $"{Plain(polar.Size)}∠{Plain(polar.Angle)}",
        Formula.Relation relation => $"{Plain(relation.Left)} {relation.Sign} {Plain(relation.Right)}",
        Formula.Row row => Plain(row.Items[0]) + string.Concat(row.Separators.Select((separator, at) => $"{separator}{(separator is " " or "…" ? "" : " ")}{Plain(row.Items[at + 1])}")),
        _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "Formula is not handled."),
    };
}
