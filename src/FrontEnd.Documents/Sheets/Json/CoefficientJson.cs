using System.Globalization;
using System.Text.Json.Serialization;
using FrontEnd.Digital;
using FrontEnd.Filters;
using static System.Text.Json.Serialization.JsonIgnoreCondition;

namespace FrontEnd.Documents.Sheets;

/// <summary>The filters for programs: sections, taps or a comb's lengths as the machine holds them, powers of z⁻¹, a0 = 1; for fixed point
/// also the whole numbers.</summary>
internal sealed record CoefficientJson(
    string Design, double Rate, string Word, string Form, int StateFractionBits, int HeadroomBits, string Checksum)
{
    /// <summary>Coefficients of one section, and the same as words with a number of fraction bits.</summary>
    internal sealed record Section(
        string Filter, double[] B, double[] A,
        [property: JsonIgnore(Condition = WhenWritingNull)] int? FractionBits,
        [property: JsonIgnore(Condition = WhenWritingNull)] IReadOnlyList<long>? Words);

    /// <summary>What a program can check its own run with.</summary>
    internal sealed record Test(double[] Input, double[] Output, double Tolerance);

    [JsonIgnore(Condition = WhenWritingNull)]
    public IReadOnlyList<Section>? Sections { get; init; }

    /// <summary>The name of the one filter where there are no sections.</summary>
    [JsonIgnore(Condition = WhenWritingNull)]
    public string? Filter { get; init; }

    [JsonIgnore(Condition = WhenWritingNull)]
    public double[]? Taps { get; init; }

    [JsonIgnore(Condition = WhenWritingNull)]
    public int? FractionBits { get; init; }

    [JsonIgnore(Condition = WhenWritingNull)]
    public IReadOnlyList<long>? Words { get; init; }

    /// <summary>Samples of a comb's period.</summary>
    [JsonIgnore(Condition = WhenWritingNull)]
    public int? Period { get; init; }

    [JsonIgnore(Condition = WhenWritingNull)]
    public int? Periods { get; init; }

    public required Test SelfTest { get; init; }

    public static string Of(FilterExport export, string design)
    {
        DigitalArithmetic arithmetic = export.Arithmetic;
        CoefficientJson head = new(
            design, export.Rate.Hertz, DigitalArithmetic.WordOf(arithmetic.Word), DigitalArithmetic.FormOf(arithmetic.Form),
            arithmetic.IsFixed
                ? arithmetic.StateFraction
                : 0, export.HeadroomBits, export.Checksum.ToString("x8", CultureInfo.InvariantCulture))
        {
            SelfTest = new(Numbers(export.TestInput), Numbers(export.TestOutput), export.Tolerance),
        };
        return AnswerJson.Plain(export switch
        {
            SectionsExport sections => head with
            {
                Sections = [.. sections.Filter.Details.Select((section, i) => SectionOf(export.Names[i], section))],
            },
            TapsExport { Taps: var taps } => head with
            {
                Filter = export.Names[0], Taps = Numbers(taps.Rounded.Taps.ToArray()),
                FractionBits = taps.FractionBits, Words = WordsOf(taps.FractionBits, taps.Words),
            },
            CombExport { Comb: var comb } => head with { Filter = export.Names[0], Period = comb.Period, Periods = comb.Periods },
            _ => throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled."),
        });
    }

    private static Section SectionOf(string name, QuantisedSection section)
    {
        Biquad s = section.Rounded;
        return new(name, Numbers([s.B0, s.B1, s.B2]), Numbers([1, s.A1, s.A2]), section.FractionBits,
            WordsOf(section.FractionBits, section.Words));
    }

    private static IReadOnlyList<long>? WordsOf(int? fraction, IReadOnlyList<long> words) => fraction is null ? null : words;

    // Adding zero takes the sign off a negative zero.
    private static double[] Numbers(IReadOnlyList<double> values) => [.. values.Select(value => value + 0.0)];
}
