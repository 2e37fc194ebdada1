using System.Text.Json.Serialization;
using FrontEnd.AntiAlias;
using FrontEnd.DesignedFilters;
using FrontEnd.Quantities;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>One circuit of an analogue filter, of E12 capacitors and E96 resistors.</summary>
internal sealed record CircuitJson(string Name, string Topology, int OpAmps, double Gain, IReadOnlyList<PartJson> Parts)
{
    /// <summary>Three op-amps for the same pole pair, offered where its Q is high for one.</summary>
    public IReadOnlyList<PartJson>? StateVariableInstead { get; init; }

    public static IReadOnlyList<CircuitJson> From(BuiltLowPass built) => [.. built.Sections.Select(one => new CircuitJson(
        one.Section.Stage.Name, Word(one.Kind), one.Section.Stage.FittedOpAmp is null ? 0 : 1, one.Section.Stage.NominalGain,
        PartJson.From(one.Parts))
    {
        StateVariableInstead = one.StateVariableParts is { } parts ? PartJson.From(parts) : null,
    })];

    public static CircuitJson From(BuiltNotch notch)
    {
        Stage stage = notch.Circuit.Stage;
        return new(
            "analogue notch", notch.Circuit.Kind == NotchKind.TwinT ? "twin-t" : "state-variable", notch.OpAmps, stage.NominalGain,
            PartJson.From(notch.Parts));
    }

    private static string Word(SectionKind kind) =>
        kind == SectionKind.Rc ? "rc" : FilterParts.Topologies.First(pair => pair.Value == kind).Key;
}

/// <summary>One part, and where it goes where its name does not say so.</summary>
internal sealed record PartJson(string Name, IQuantity Value, string Unit, string? Place)
{
    public static IReadOnlyList<PartJson> From(IEnumerable<BuiltPart> parts) =>
        [.. parts.Select(part => new PartJson(part.Name, part.Value, part.Value.SiUnit, part.Place))];
}

/// <summary>What the parts do, with the op-amps' real gain-bandwidth product.</summary>
[JsonDerivedType(typeof(LowPassBuiltJson))]
[JsonDerivedType(typeof(NotchBuiltJson))]
internal abstract record AsBuiltJson(IQuantity GainBandwidth, double Gain);

/// <summary>A low-pass as built.</summary>
internal sealed record LowPassBuiltJson(
    IQuantity GainBandwidth, double Gain, IQuantity? HalfPower, double? LargestErrorDb, IQuantity LargestErrorAt,
    IReadOnlyList<BuiltSectionJson> Sections, StopBandJson? StopBand, IReadOnlyList<ComparisonAtJson> Response)
    : AsBuiltJson(GainBandwidth, Gain)
{
    public static LowPassBuiltJson From(BuiltLowPass built) => new(
        built.OpAmp.GainBandwidth, built.Gain, built.HalfPower, built.LargestError.Loss?.Value, built.LargestError.At,
        [.. built.Sections.Select(BuiltSectionJson.From)], StopBandJson.From(built),
        [.. built.Response.Select(at => new ComparisonAtJson(at.At, at.Ideal.Value, at.Built.Value, at.IdealDelay))]);
}

/// <summary>A section of a low-pass, wanted and built, and by the textbooks' formulas.</summary>
internal sealed record BuiltSectionJson(
    string Name, IQuantity WantedF0, double? WantedQ, IQuantity F0, double? Q, double LargestGain, FormulaJson FormulaF0,
    FormulaJson? FormulaQ)
{
    public static BuiltSectionJson From(BuiltSection built)
    {
        RealisedSection s = built.Section;
        return new(
            s.Stage.Name, s.WantedPole, s.WantedQ, s.BuiltPole, s.BuiltQ, s.PeakGain, FormulaJson.From(built.Frequency),
            built.Q is { } q ? FormulaJson.From(q) : null);
    }
}

/// <summary>A figure by a formula.</summary>
internal sealed record FormulaJson(double Value, string Unit, string Formula)
{
    public static FormulaJson From(TextbookFigure figure) => new(figure.Value, figure.Unit, figure.Formula);
}

/// <summary>Where the stop band turns up again, sought up to a frequency; <c>turns_at</c> is null where it does not. Null as a whole where
/// the op-amp's output resistance is not given.</summary>
internal sealed record StopBandJson(IQuantity SoughtTo)
{
    public IQuantity? TurnsAt { get; init; }

    public double? LossDb { get; init; }

    public double? IdealLossDb { get; init; }

    public IQuantity? LeastLossAt { get; init; }

    public double? LeastLossDb { get; init; }

    public double? IdealLossAtLeastDb { get; init; }

    /// <summary>Each Sallen–Key section by itself.</summary>
    public IReadOnlyList<SectionRiseJson> Sections { get; init; } = [];

    public static StopBandJson? From(BuiltLowPass built)
    {
        if (built.OpAmp.OutputResistance.Ohms == 0)
        {
            return null;
        }

        StopBandJson none = new(StopBandRise.Highest);
        return built.Rise is not { Built: var rise } both ? none : none with
        {
            TurnsAt = rise.TurnsAt, LossDb = rise.LossAtTurn, IdealLossDb = both.IdealAtTurn.Value,
            LeastLossAt = rise.LeastAt, LeastLossDb = rise.LeastLossBeyond, IdealLossAtLeastDb = both.IdealAtLeast.Value,
            Sections = [.. built.Sections.Where(one => one.Rise is not null).Select(one => new SectionRiseJson(
                one.Section.Stage.Name, one.Rise!.Built.TurnsAt, one.Rise.Built.LeastLossBeyond,
                FormulaJson.From(one.Rise.Turn), FormulaJson.From(one.Rise.Floor)))],
        };
    }
}

/// <summary>Where one section turns up again, by its network and by formula.</summary>
internal sealed record SectionRiseJson(
    string Name, IQuantity TurnsAt, double LeastLossDb, FormulaJson FormulaTurn, FormulaJson FormulaLeast);

/// <summary>Gain at one frequency against 0 Hz [dB], ideal and as built.</summary>
internal sealed record ComparisonAtJson(IQuantity Frequency, double IdealDb, double BuiltDb, IQuantity IdealGroupDelay);

/// <summary>A notch as built; depths are losses against the gain far below it, null without bound.</summary>
internal sealed record NotchBuiltJson(
    IQuantity GainBandwidth, double Gain, IQuantity DeepestAt, double Q, double WantedQ, double FormulaQ,
    double? DepthDb, double Deviation, double? DepthAtDeviationDb) : AsBuiltJson(GainBandwidth, Gain)
{
    public static NotchBuiltJson From(BuiltNotch notch) => new(
        notch.OpAmp.GainBandwidth, notch.Gain, notch.DeepestAt, notch.Circuit.BuiltQ, notch.WantedQ, notch.Circuit.FormulaQ,
        notch.Depth?.Value, notch.Deviation.Fraction, notch.DepthAtDeviation?.Value);
}

/// <summary>What the parts add: noise rms over a band and the largest dc error; the error is null where the op-amp gives neither offset nor
/// bias current.</summary>
internal sealed record NoiseJson(
    IQuantity Rms, IQuantity From, IQuantity To, IQuantity? DcError, bool OffsetVoltageGiven, bool BiasCurrentGiven)
{
    public static NoiseJson? Of(OwnNoise? noise) =>
        noise is null ? null : new(noise.Noise, noise.From, noise.To, noise.DcError, noise.HasOffset, noise.HasBias);
}

/// <summary>What the parts' tolerance does: corners of a notch, and what each part moves alone.</summary>
internal sealed record TolerancesJson(IReadOnlyList<CornerJson> Corners, IReadOnlyList<SensitivityJson> Sensitivities)
{
    public static TolerancesJson From(BuiltLowPass built) =>
        new([], [.. built.Sections.SelectMany(one => one.Section.Sensitivities.Select(
            s => new SensitivityJson(one.Section.Stage.Name, s.Part, s.ToFrequency, s.ToQ)))]);

    public static TolerancesJson From(BuiltNotch notch) => new(
        [.. notch.Corners.Select(
            worst => new CornerJson(worst.Tolerance, worst.LeastLoss, worst.LowestQ, worst.HighestQ, worst.CanOscillate))],
        [.. notch.Sensitivities.Select(one => new SensitivityJson("analogue notch", one.Move.Part, one.Move.ToFrequency, one.Move.ToQ)
        {
            DepthWithOnePercentDb = one.DepthWithOnePerCent?.Value,
        })]);
}

/// <summary>Every part at its tolerance, as a share, the worst way.</summary>
internal sealed record CornerJson(double Tolerance, double LeastDepthDb, double LeastQ, double GreatestQ, bool CanOscillate);

/// <summary>Relative change of f0 and of Q for a relative change of one part.</summary>
internal sealed record SensitivityJson(string Circuit, string Part, double F0, double? Q)
{
    /// <summary>Notch: loss that is left at its centre with 1 % more of the part.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? DepthWithOnePercentDb { get; init; }
}
