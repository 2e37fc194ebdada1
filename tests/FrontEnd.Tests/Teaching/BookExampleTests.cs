using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>The examples of the reference tables put through the templates: a book's numbers give the book's answer, within its printed digits,
/// and what was worked out apart from this program comes out the same.</summary>
public class BookExampleTests
{
    // By the tables' name of the calculation: the template, and each of its symbols with the table's input, or "=" and a value that leaves it out.
    private static readonly Dictionary<string, (string Template, (string Symbol, string Input)[] Inputs)> Map = new(StringComparer.Ordinal)
    {
        ["thermal"] = ("noise-thermal", [("R", "R"), ("T", "T"), ("f₁", "f1"), ("f₂", "f2")]),
        ["amplifier"] = ("noise-amplifier", [("e", "e"), ("f_c", "fc"), ("f₁", "f1"), ("f₂", "f2")]),
        ["flicker-corner"] = ("noise-corner", [("e", "e"), ("e₁", "e1"), ("f₁", "f")]),
        ["peak-to-peak"] = ("noise-peak-to-peak", [("σ", "σ")]),
        ["four-resistors"] = ("cmrr-resistors", [("G", "G"), ("tol", "tol")]),
        ["residue"] = ("cmrr-residue", [("V_cm", "V"), ("CMRR", "CMRR")]),
        ["divider"] = ("cmrr-divider", [("f", "f"), ("Z", "dZ"), ("ΔZ", "dZ"), ("C_in", "Cin")]),
        ["shared-reference"] = ("cmrr-shared-reference", [("f", "f"), ("C", "Cin"), ("Z_e", "R"), ("N", "N")]),
        ["ideal-ratio"] = ("converter-ideal-ratio", [("N", "N"), ("A", "=0")]),
        ["enob"] = ("converter-enob", [("SINAD", "SINAD")]),
        ["noise-free-bits"] = ("converter-noise-free-bits", [("span", "span"), ("σ", "rms")]),
        ["gain-one-resistor"] = ("gain-stage", [("Rf", "Rf"), ("Rg", "RG")]),
        ["first-stage-limit"] = ("gain-first-stage", [("V_s", "Vs"), ("h", "h"), ("V_off", "Voff"), ("V_sig", "Vsig")]),
        ["inner-node-limit"] = ("gain-inner-nodes", [("V_s", "Vs"), ("h", "h"), ("V_cm", "Vcm"), ("V_d", "Vd")]),
        ["supply-ripple"] = ("gain-supply-ripple", [("V", "V"), ("PSRR", "PSRR")]),
        ["settling"] = ("gain-settling", [("R", "R"), ("C", "C"), ("V₀", "V0"), ("V_tol", "Vtol")]),
        ["rc-corner"] = ("filter-rc", [("R", "R"), ("C", "C")]),
        ["displacement-current"] = ("cmrr-body-current", [("V", "V"), ("C_p", "Cp")]),
        ["rejection-needed"] = ("cmrr-needed", [("V_cm", "V"), ("V", "residue")]),
        ["loop-gain"] = ("drive-loop-gain", [("f_u", "fu"), ("f", "f")]),
        ["data-rate"] = ("converter-data-rate", [("N", "N"), ("f_s", "fs"), ("b", "b"), ("overhead", "overhead")]),
        ["loop-voltage"] = ("cmrr-loop", [("f", "f"), ("B", "B"), ("A", "A")]),
        ["sweeps"] = ("noise-sweeps", [("S", "S"), ("σ", "σ"), ("A", "A")]),
        ["current"] = ("noise-current", [("i", "i"), ("R", "R"), ("f₁", "f1"), ("f₂", "f2")]),
        ["plate-capacitance"] = ("electrode-plate", [("A", "A"), ("d", "d"), ("εr", "εr")]),
        ["electrode-size"] = ("electrode-impedance", [("R_s", "=0"), ("R_d", "R"), ("C_d", "C"), ("f", "f")]),
        ["electrode-pair"] = ("electrode-pair-noise", [("R_d", "R"), ("C_d", "C"), ("T", "T"), ("f₁", "f1"), ("f₂", "f2")]),
        ["contact-reading"] = ("electrode-contact-check", [("I", "I"), ("Z₁", "R"), ("Z₂", "=0")]),
        ["ohm"] = ("electrode-bias", [("I_b", "i"), ("R", "R")]),
        ["step"] = ("converter-step", [("FS", "FS"), ("N", "N"), ("G", "=1")]),
        ["quantisation"] = ("converter-quantisation", [("FS", "FS"), ("N", "N"), ("G", "=1")]),
        ["fold-frequency"] = ("sampling-fold-frequency", [("f_s", "fs"), ("f₂", "f2")]),
        ["skew-rejection"] = ("sampling-skew", [("f", "f"), ("Δt", "Δt")]),
        ["driven-resistance"] = ("drive-resistance", [("R_o", "Ro"), ("R_f", "Rf"), ("R_a", "Ra")]),
        ["driven-common-mode"] = ("drive-common-mode", [("i", "i"), ("R_o", "R"), ("R_e", "=0"), ("T", "T")]),
        ["fault-current"] = ("safety-current", [("V_bat", "=0"), ("V_max", "V"), ("R", "R"), ("R_skin", "=0")]),
        ["notch-ring"] = ("notch-ring", [("f₀", "f0"), ("Q", "Q"), ("f_s", "fs"), ("share", "share")]),
    };

    public static TheoryData<string> Books => [.. ReferenceTable.All().Where(row => Fits(row) && row.Status == "published").Select(row => row.Id)];

    public static TheoryData<string> Others => [.. ReferenceTable.All().Where(row => Fits(row) && row.Status != "published").Select(row => row.Id)];

    [Theory]
    [MemberData(nameof(Books))]
    public void Template_WithABooksNumbers_HasTheBooksAnswer(string id) => AssertAnswer(id);

    [Theory]
    [MemberData(nameof(Others))]
    public void Template_WithATablesNumbers_HasTheFigureWorkedOutApart(string id) => AssertAnswer(id);

    private static void AssertAnswer(string id)
    {
        ReferenceRow row = ReferenceTable.All().First(one => one.Id == id && Fits(one));
        (string template, (string Symbol, string Input)[] inputs) = Map[row.Formula];
        Problem problem = TemplateSet.Find(template)!.With(Draw.Fixed(inputs.ToDictionary(input => input.Symbol, input => Si(row, input.Input))));
        QuantityAnswer answer = Assert.IsType<QuantityAnswer>(problem.Answer);

        // The table has the sweeps before they are rounded up to a whole number.
        double expected = row.Formula == "sweeps" ? Math.Ceiling(row.ExpectedSi - 1e-9) : row.ExpectedSi;
        double tolerance = Math.Max(row.ToleranceSi(expected), 1e-9 * Math.Abs(expected));
        Assert.True(Math.Abs(answer.Value - expected) <= tolerance, $"{row.Id} ({row.Source} {row.Place}): {answer.Value} instead of {expected} ± {tolerance}");
    }

    [Fact]
    public void Examples_ComeFromSeveralBooks()
    {
        ReferenceRow[] rows = [.. ReferenceTable.All().Where(Fits)];
        Assert.True(90 <= rows.Length, $"{rows.Length} examples");
        Assert.True(6 <= rows.Where(row => row.Status == "published").Select(row => row.Source).Distinct().Count());
    }

    private static bool Fits(ReferenceRow row) => row.Status != "differs" && Map.TryGetValue(row.Formula, out var entry) && entry.Inputs.All(input => input.Input[0] == '=' || row.Has(input.Input));

    /// <summary>The value in the SI unit, whichever quantity it is.</summary>
    private static double Si(ReferenceRow row, string name)
    {
        if (name[0] == '=')
        {
            return double.Parse(name[1..], System.Globalization.CultureInfo.InvariantCulture);
        }

        // "298 K" would also be read as 298 kΩ.
        QuantityKind[] kinds = name == "T" && row.Text(name).EndsWith('K')
            ? [QuantityKind.Of<Temperature>()]
            : [QuantityKind.Of<Ratio>(), .. QuantityKind.All.Where(kind => !kind.Is<VoltageRms>() && !kind.Is<VoltagePeakToPeak>())];
        foreach (QuantityKind kind in kinds)
        {
            if (QuantityText.TryParse(kind, row.Text(name), out IQuantity? value, out _))
            {
                return value!.SiValue;
            }
        }

        throw new InvalidDataException($"{row}: {row.Text(name)}");
    }
}
