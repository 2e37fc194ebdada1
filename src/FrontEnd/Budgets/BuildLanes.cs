using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Inputs;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>
/// What may differ from build to build, for every lane of a group, in SI units. The design as it stands is one build on all lanes; a
/// spread puts another one on each. Everything that is not here is the same on all lanes and read from the design.
/// </summary>
internal sealed class BuildLanes
{
    private readonly double _leadToMains;

    /// <summary>One build on all lanes.</summary>
    /// <param name="model">The path of the design; its stages, amplifier, mains and converter are taken as they stand.</param>
    /// <param name="built">What stands in the leads, and the size of the electrodes.</param>
    /// <param name="surroundings">Another mains than the design's; null for its own.</param>
    public BuildLanes(PathModel model, BuiltParts built, Mains? surroundings = null)
    {
        Design design = model.Design;
        ElectrodeSet set = design.Electrodes;
        DifferentialAmplifier amplifier = design.Amplifier;
        Mains mains = surroundings ?? design.Mains;
        _leadToMains = mains.LeadToMains.Farads * (1 - design.Input.DrivenShield.Fraction);
        SetLeads([built]);
        GroundSiemens = new(1 / design.GroundDrive.SeriesResistor.Ohms);
        ElectrodeBuffer[] buffers = [.. new[] { set.ActiveBuffer, set.ReferenceBuffer }.OfType<ElectrodeBuffer>()];
        SkinSiemens = [.. buffers.Select(buffer => new Vector<double>(1 / buffer.SkinResistor.Ohms))];
        BufferOpAmps = [.. buffers.Select(buffer => new OpAmpLanes(buffer.OpAmp))];
        Excess =
            [.. new[] { set.Active, set.Reference, set.Ground }.Select(
                one => new Vector<double>(one?.ExcessNoise.VoltsSquaredPerHertz ?? 0))];
        ElectrodeOffset = new(set.Offset.Volts);
        Gain = new(amplifier.Gain);
        Cmrr = new(amplifier.Cmrr.VoltageRatio);
        InputNoise = new(amplifier.InputNoise.VoltsPerRootHertz);
        OutputNoise = new(amplifier.OutputNoise.VoltsPerRootHertz);
        CurrentNoise = new(amplifier.CurrentNoise.AmperesPerRootHertz);
        BiasCurrent = new(amplifier.BiasCurrent.Amperes);
        OffsetVoltage = new(amplifier.OffsetVoltage.Volts);
        MainsVolts = new(mains.Voltage.Volts);
        BodyToMains = new(mains.BodyToMains.Farads);
        BodyToEarth = new(mains.BodyToEarth.Farads);
        CommonToMains = new(mains.AmplifierToMains.Farads);
        CommonToEarth = new(mains.AmplifierToEarth.Farads);
        LoopFlux = new(mains.Field.Teslas * mains.LoopArea.SquareMetres);
        ConverterNoise = new(design.Converter.NoiseVolts);
        FullScale = new(design.Converter.FullScale.Volts);
        Step = new(design.Converter.LsbVolts);
        Stages = [.. model.Stages.Select(stage => new StageBuildLanes(stage))];
    }

    /// <summary>Conductance of the protection resistor in the active lead [S].</summary>
    public Vector<double> ActiveSiemens { get; set; }

    public Vector<double> ReferenceSiemens { get; set; }

    /// <summary>Shunt capacitor at the active input [F].</summary>
    public Vector<double> ActiveFarads { get; set; }

    public Vector<double> ReferenceFarads { get; set; }

    /// <summary>Conductance of the bias resistor at the active input [S]; of no meaning where there is none.</summary>
    public Vector<double> ActiveBiasSiemens { get; set; }

    public Vector<double> ReferenceBiasSiemens { get; set; }

    /// <summary>The active electrode's impedance over its nominal one.</summary>
    public Vector<double> ActiveFactor { get; set; }

    public Vector<double> ReferenceFactor { get; set; }

    public Vector<double> GroundFactor { get; set; }

    /// <summary>Conductance of the resistor between the ground electrode and common or the driving amplifier [S].</summary>
    public Vector<double> GroundSiemens { get; set; }

    /// <summary>Conductance of the skin resistors of the buffers at the electrodes that are there, active before reference [S]; infinite
    /// for none.</summary>
    public Vector<double>[] SkinSiemens { get; }

    /// <summary>The same buffers' op-amps.</summary>
    public OpAmpLanes[] BufferOpAmps { get; }

    /// <summary>Excess noise of the active, the reference and the ground electrode at 1 Hz [V²/Hz].</summary>
    public Vector<double>[] Excess { get; }

    /// <summary>Offset between the electrodes [V], of either sign.</summary>
    public Vector<double> ElectrodeOffset { get; set; }

    /// <summary>The amplifier's gain.</summary>
    public Vector<double> Gain { get; set; }

    /// <summary>The amplifier's rejection at dc, as a voltage ratio.</summary>
    public Vector<double> Cmrr { get; set; }

    /// <summary>White input and output noise [V/√Hz], input current noise [A/√Hz].</summary>
    public Vector<double> InputNoise { get; set; }

    public Vector<double> OutputNoise { get; set; }

    public Vector<double> CurrentNoise { get; set; }

    /// <summary>Bias current [A] and offset voltage [V] of the amplifier's inputs.</summary>
    public Vector<double> BiasCurrent { get; set; }

    public Vector<double> OffsetVoltage { get; set; }

    /// <summary>Voltage of the mains [V rms].</summary>
    public Vector<double> MainsVolts { get; set; }

    /// <summary>Couplings [F]; the leads' as their shield leaves it.</summary>
    public Vector<double> BodyToMains { get; set; }

    public Vector<double> BodyToEarth { get; set; }

    public Vector<double> CommonToMains { get; set; }

    public Vector<double> CommonToEarth { get; set; }

    /// <summary>The active lead's coupling to the mains [F].</summary>
    public Vector<double> ActiveLeadToMains { get; set; }

    /// <summary>The reference lead's.</summary>
    public Vector<double> ReferenceLeadToMains { get; set; }

    /// <summary>Field times the area of the leads' loop [Wb rms], at the fundamental.</summary>
    public Vector<double> LoopFlux { get; set; }

    /// <summary>The converter's own noise [V rms], its full scale [V p-p] and its step [V].</summary>
    public Vector<double> ConverterNoise { get; set; }

    public Vector<double> FullScale { get; set; }

    public Vector<double> Step { get; set; }

    public StageBuildLanes[] Stages { get; }

    /// <summary>Puts a build's leads and electrodes on each lane; the last one given is on the lanes that are left.</summary>
    public void SetLeads(ReadOnlySpan<BuiltParts> built)
    {
        Span<double> row = stackalloc double[Vector<double>.Count];
        ActiveSiemens = Row(built, row, one => 1 / one.ActiveOhms);
        ReferenceSiemens = Row(built, row, one => 1 / one.ReferenceOhms);
        ActiveFarads = Row(built, row, one => one.ActiveFarads);
        ReferenceFarads = Row(built, row, one => one.ReferenceFarads);
        ActiveBiasSiemens = Row(built, row, one => 1 / one.ActiveBiasOhms);
        ReferenceBiasSiemens = Row(built, row, one => 1 / one.ReferenceBiasOhms);
        ActiveFactor = Row(built, row, one => one.ActiveFactor);
        ReferenceFactor = Row(built, row, one => one.ReferenceFactor);
        GroundFactor = Row(built, row, one => one.GroundFactor);
        ActiveLeadToMains = _leadToMains * Row(built, row, one => one.ActiveLeadFactor);
        ReferenceLeadToMains = _leadToMains * Row(built, row, one => one.ReferenceLeadFactor);

        static Vector<double> Row(ReadOnlySpan<BuiltParts> built, Span<double> row, Func<BuiltParts, double> value)
        {
            for (int lane = 0; lane < row.Length; lane++)
            {
                row[lane] = value(built[Math.Min(lane, built.Length - 1)]);
            }

            return new Vector<double>(row);
        }
    }
}

/// <summary>An op-amp's values that may differ from build to build.</summary>
internal sealed class OpAmpLanes
{
    public OpAmpLanes(OpAmp? opAmp)
    {
        VoltageNoise = new(opAmp?.VoltageNoise.VoltsPerRootHertz ?? 0);
        CurrentNoise = new(opAmp?.CurrentNoise.AmperesPerRootHertz ?? 0);
        OffsetVoltage = new(opAmp?.OffsetVoltage.Volts ?? 0);
        BiasCurrent = new(opAmp?.BiasCurrent.Amperes ?? 0);
    }

    /// <summary>White voltage noise [V/√Hz].</summary>
    public Vector<double> VoltageNoise { get; set; }

    /// <summary>White current noise [A/√Hz].</summary>
    public Vector<double> CurrentNoise { get; set; }

    /// <summary>Offset voltage [V].</summary>
    public Vector<double> OffsetVoltage { get; set; }

    /// <summary>Bias current [A].</summary>
    public Vector<double> BiasCurrent { get; set; }
}

/// <summary>One stage's values that may differ from build to build.</summary>
internal sealed class StageBuildLanes
{
    private readonly StageModel _model;
    private readonly CircuitDc _dc;
    private readonly Func<string, double, Vector<double>> _value;

    public StageBuildLanes(StageModel model)
    {
        _model = model;
        _dc = new CircuitDc(model.Circuit);
        _value = Value;
        Factor = [.. model.Parts.Select(_ => Vector<double>.One)];
        OpAmp = new OpAmpLanes(model.OpAmp);
    }

    /// <summary>Each resistor's and capacitor's value over its nominal one, by its number among the model's parts.</summary>
    public Vector<double>[] Factor { get; }

    public OpAmpLanes OpAmp { get; }

    /// <summary>The stage at dc: gains by size, and what its own op-amps make at its nodes.</summary>
    public CircuitDc Dc() => _dc.Solve(_value);

    private Vector<double> Value(string part, double nominal)
    {
        switch (part)
        {
            case "opamp.offset-voltage":
                return OpAmp.OffsetVoltage;
            case "opamp.bias-current":
                return OpAmp.BiasCurrent;
        }

        for (int i = 0; i < Factor.Length; i++)
        {
            if (string.Equals(_model.Parts[i].Part, part, StringComparison.Ordinal))
            {
                return Factor[i] * nominal;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(part), part, "Part is not one of the stage's.");
    }
}
