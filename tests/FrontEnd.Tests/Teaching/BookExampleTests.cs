using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>The examples of the reference tables put through the templates: a book's numbers give the book's answer, within its printed digits.</summary>
public class BookExampleTests
{
    // By the tables' name of the calculation: the template, and each of its symbols with the table's input or a value that plays no part.
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
        ["ideal-ratio"] = ("converter-ideal-ratio", [("N", "N")]),
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
        ["notch-ring"] = ("notch-ring", [("f₀", "f0"), ("Q", "Q"), ("f_s", "fs"), ("share", "share")]),
    };

    public static TheoryData<string> Rows => [.. ReferenceTable.All().Where(Fits).Select(row => row.Id)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Template_WithABooksNumbers_HasTheBooksAnswer(string id)
    {
        ReferenceRow row = ReferenceTable.All().First(one => one.Id == id);
        (string template, (string Symbol, string Input)[] inputs) = Map[row.Formula];
        Problem problem = TemplateSet.Find(template)!.With(Draw.Fixed(inputs.ToDictionary(input => input.Symbol, input => Si(row, input.Input))));
        QuantityAnswer answer = Assert.IsType<QuantityAnswer>(problem.Answer);
        double tolerance = Math.Max(row.ToleranceSi(row.ExpectedSi), 1e-9 * Math.Abs(row.ExpectedSi));
        Assert.True(Math.Abs(answer.Value - row.ExpectedSi) <= tolerance, $"{row.Id} ({row.Source} {row.Place}): {answer.Value} instead of {row.ExpectedSi} ± {tolerance}");
    }

    [Fact]
    public void Examples_ComeFromSeveralBooks()
    {
        ReferenceRow[] rows = [.. ReferenceTable.All().Where(Fits)];
        Assert.True(50 <= rows.Length, $"{rows.Length} examples");
        Assert.True(6 <= rows.Where(row => row.Status == "published").Select(row => row.Source).Distinct().Count());
    }

    private static bool Fits(ReferenceRow row) => row.Status != "differs" && Map.TryGetValue(row.Formula, out var entry) && entry.Inputs.All(input => row.Has(input.Input));

    /// <summary>The value in the SI unit, whichever quantity it is.</summary>
    private static double Si(ReferenceRow row, string name)
    {
        // "298 K" would also be read as 298 kΩ.
        QuantityKind[] kinds = name == "T" ? [QuantityKind.Temperature] : [QuantityKind.Ratio, QuantityKind.Resistance, QuantityKind.Capacitance, QuantityKind.Frequency, QuantityKind.Temperature, QuantityKind.Decibels, QuantityKind.Voltage, QuantityKind.VoltageNoiseDensity, QuantityKind.BitCount, QuantityKind.MagneticFluxDensity, QuantityKind.Area];
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
