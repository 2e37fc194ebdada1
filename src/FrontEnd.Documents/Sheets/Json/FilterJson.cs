using System.Numerics;
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;
using FrontEnd.Quantities;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>filter --json</c> and of <c>filter notch --json</c> without a rate: a filter of sections, what it does and what
/// it is built of.</summary>
/// <remarks>Digital: powers of z⁻¹, a0 = 1, a section of first order has b2 = a2 = 0. Analogue: b0·s² + b1·s + b2 over a0·s² + a1·s + a2, s
/// in rad/s, a0 = 1; a section of first order has a0 = b0 = 0 and a1 = 1.
/// The product of the sections is the whole filter, and so is gain·Π(x − zeros)/Π(x − poles); zeros at infinity are left out. The order is
/// the prototype's.</remarks>
internal sealed record FilterJson(
    IReadOnlyList<SectionJson> Sections, IReadOnlyList<double[]> Zeros, IReadOnlyList<double[]> Poles, double Gain, int Order,
    IQuantity? Rate)
{
    public required string Family { get; init; }

    public required string Shape { get; init; }

    public required IReadOnlyList<IQuantity> Corners { get; init; }

    /// <summary>What the corners are corners of, in words.</summary>
    public required string CornerMeaning { get; init; }

    public required int PoleCount { get; init; }

    /// <summary>From which the order was sought; null where it was given.</summary>
    public RequirementJson? Requirement { get; init; }

    /// <summary>Where the filter is an analogue notch.</summary>
    public NotchCentreJson? Notch { get; init; }

    public required ResponseJson Response { get; init; }

    /// <summary>Circuits of an analogue low-pass or notch; null where there are none.</summary>
    public IReadOnlyList<CircuitJson>? Parts { get; init; }

    public AsBuiltJson? AsBuilt { get; init; }

    public NoiseJson? Noise { get; init; }

    public TolerancesJson? Tolerances { get; init; }

    /// <summary>What finite words do to a digital filter; null for an analogue one.</summary>
    public IReadOnlyList<WordJson>? Words { get; init; }

    /// <summary>From the input to each section's output of a digital filter.</summary>
    public IReadOnlyList<GrowthJson>? Growth { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static FilterJson From(DesignedSections filter)
    {
        FilterAnswer answer = filter.Answer;
        ZeroPoleGain roots = answer.ZeroPoleGain!;
        var json = new FilterJson(
            SectionJson.From(answer, filter.Figures), Pairs(roots.Zeros), Pairs(roots.Poles), roots.Gain, answer.Prototype!.Order,
            answer.Wish.Rate)
        {
            Family = FilterWords.Of(answer.Wish.Family),
            Shape = FilterWords.Of(answer.Wish.Shape),
            Corners = [.. answer.Response!.Corners],
            CornerMeaning = answer.Prototype.CornerMeaning,
            PoleCount = roots.Order,
            Requirement = RequirementJson.From(answer),
            Notch = answer.AnalogNotch is { } notch ? new NotchCentreJson(notch.Centre, notch.Q) : null,
            Response = ResponseJson.From(filter.Figures),
            Noise = NoiseJson.Of(filter.LowPass?.Noise ?? filter.Notch?.Noise),
            Words = WordJson.From(filter.Words),
            Growth = GrowthJson.From(filter.Words),
            Findings = FindingJson.From(filter.Findings),
        };
        return filter switch
        {
            { LowPass: { } built } => json with { Parts = CircuitJson.From(built), AsBuilt = LowPassBuiltJson.From(built),
                Tolerances = TolerancesJson.From(built) },
            { Notch: { } built } => json with { Parts = [CircuitJson.From(built)], AsBuilt = NotchBuiltJson.From(built),
                Tolerances = TolerancesJson.From(built) },
            _ => json,
        };
    }

    private static double[][] Pairs(IReadOnlyList<Complex> roots) =>
        [.. roots.Select(root => new[] { SectionJson.Unsigned(root.Real), SectionJson.Unsigned(root.Imaginary) })];
}

/// <summary>One section: coefficients, its number from 1, and in words of the trade.</summary>
internal sealed record SectionJson(
    IReadOnlyList<double> B, IReadOnlyList<double> A, int Number, IQuantity F0, double? Q, string ZerosLie, IQuantity? ZerosAt)
{
    public static IReadOnlyList<SectionJson> From(FilterAnswer answer, FilterFigures figures)
    {
        IEnumerable<CoefficientsJson> coefficients = answer.Digital is { } digital
            ? CoefficientsJson.From(digital.Sections)
            : CoefficientsJson.From(answer.Analog!.Sections);
        return [.. coefficients.Zip(figures.Sections).Select((both, i) => From(both.First, both.Second, i + 1))];
    }

    private static SectionJson From(CoefficientsJson c, SectionFigures one, int number) => new(
        c.B, c.A, number, one.Pole, one.Q, one.Zeros.At is null ? FilterPage.Zeros(one.Zeros) : "at a frequency", one.Zeros.At);

    /// <summary>−0 is a number of its own in JSON text and surprises readers.</summary>
    internal static double Unsigned(double value) => value == 0 ? 0.0 : value;
}

/// <summary>Coefficients of one section.</summary>
internal sealed record CoefficientsJson(IReadOnlyList<double> B, IReadOnlyList<double> A)
{
    public static IEnumerable<CoefficientsJson> From(SecondOrderSections sections) =>
        sections.Sections.Select(s => Of([s.B0, s.B1, s.B2], [1, s.A1, s.A2]));

    public static IEnumerable<CoefficientsJson> From(AnalogSections sections) =>
        sections.Sections.Select(s => Of([s.B0, s.B1, s.B2], [s.A0, s.A1, s.A2]));

    private static CoefficientsJson Of(IEnumerable<double> b, IEnumerable<double> a) =>
        new([.. b.Select(SectionJson.Unsigned)], [.. a.Select(SectionJson.Unsigned)]);
}

/// <summary>What was asked of a filter whose order was sought; the exact order is null where it was found by trying.</summary>
internal sealed record RequirementJson(
    IReadOnlyList<IQuantity> PassEdges, IReadOnlyList<IQuantity> StopEdges, double RippleDb, double AttenuationDb, double? ExactOrder)
{
    public static RequirementJson? From(FilterAnswer answer) => answer.Requirement is { } r
        ? new RequirementJson([.. r.Pass.Corners], [.. r.Stop.Corners], r.Ripple.Value, r.Attenuation.Value, answer.Choice!.Exact)
        : null;
}

/// <summary>An analogue notch: centre, and centre over −3 dB width.</summary>
internal sealed record NotchCentreJson(IQuantity Centre, double Q);

/// <summary>What the filter does. Losses are against the greatest gain.</summary>
internal sealed record ResponseJson(
    IReadOnlyList<IQuantity> HalfPower, IReadOnlyList<LossJson> AtCorners, IReadOnlyList<LossJson> AtStopEdges,
    IQuantity GroupDelayAt, IQuantity GroupDelay, IQuantity LargestGroupDelayAt, IQuantity LargestGroupDelay)
{
    public static ResponseJson From(FilterFigures f) => new(
        [.. f.HalfPower], LossJson.From(f.AtCorners), LossJson.From(f.AtStopEdges), f.Middle, f.DelayAtMiddle, f.LargestDelayAt,
        f.LargestDelay);
}

/// <summary>A loss at one frequency; null without bound.</summary>
internal sealed record LossJson(IQuantity Frequency, double? LossDb)
{
    public static IReadOnlyList<LossJson> From(IEnumerable<LossAt> losses) => [.. losses.Select(at => new LossJson(at.At, at.Loss?.Value))];
}
