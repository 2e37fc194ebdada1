using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Inputs;

namespace FrontEnd.Spread;

/// <summary>Puts what is drawn for a group of builds into their lanes.</summary>
internal sealed class DrawnBuilds
{
    private readonly Design _design;
    private readonly PartList _parts;
    private readonly int[][] _stagePart;
    private readonly bool[] _isHeld;

    /// <param name="setup">What all builds share.</param>
    /// <param name="held">Places whose parts stay at their nominal values, whatever is drawn.</param>
    public DrawnBuilds(SpreadSetup setup, params ReadOnlySpan<SpreadPlace> held)
        : this(setup.Design, setup.Parts, setup.Nominal.Path.Model, held)
    {
    }

    /// <param name="design">The design.</param>
    /// <param name="parts">What is drawn of it.</param>
    /// <param name="model">Its path.</param>
    /// <param name="held">Places whose parts stay at their nominal values, whatever is drawn.</param>
    public DrawnBuilds(Design design, PartList parts, PathModel model, params ReadOnlySpan<SpreadPlace> held)
    {
        _isHeld = new bool[parts.Parts.Count];
        for (int part = 0; part < _isHeld.Length; part++)
        {
            _isHeld[part] = held.Contains(parts.Parts[part].Place);
        }

        _design = design;
        _parts = parts;
        Nominal = new BuildLanes(model, BuiltParts.Balanced(_design));
        Lanes = new BuildLanes(model, BuiltParts.Balanced(_design));
        _stagePart = [.. model.Stages.Select((stage, i) => stage.Parts.Select(part => _parts.OfStage(i, part.Part)).ToArray())];
    }

    /// <summary>The nominal device on all lanes.</summary>
    public BuildLanes Nominal { get; }

    /// <summary>The builds last put in.</summary>
    public BuildLanes Lanes { get; }

    /// <summary>Puts in builds <paramref name="first"/> … from factors[part][build], each a value over its nominal value.</summary>
    public void Put(double[][] factors, int first)
    {
        PutInput(factors, first);
        PutAmplifier(factors, first);
        PutMains(factors, first);
        AnalogDigitalConverter converter = _design.Converter;
        Vector<double> scale = At(factors, first, _parts.FullScale);
        Lanes.FullScale = Nominal.FullScale * scale;
        Lanes.ConverterNoise = Nominal.ConverterNoise * At(factors, first, _parts.ConverterNoise);

        // A step that is given does not follow the full scale.
        Lanes.Step = converter.Lsb is null ? Nominal.Step * scale : Nominal.Step;
        for (int i = 0; i < _stagePart.Length; i++)
        {
            StageBuildLanes stage = Lanes.Stages[i];
            for (int part = 0; part < _stagePart[i].Length; part++)
            {
                stage.Factor[part] = At(factors, first, _stagePart[i][part]);
            }

            PutOpAmp(factors, first, _parts.StageOpAmps[i], Nominal.Stages[i].OpAmp, stage.OpAmp);
        }
    }

    private Vector<double> At(double[][] factors, int first, int part) =>
        part < 0 ? Vector<double>.One
        : _isHeld[part] ? new Vector<double>(_parts.Parts[part].Nominal)
        : new Vector<double>(factors[part], first);

    /// <summary>A value that may be drawn from a nominal value of zero.</summary>
    private Vector<double> Value(double[][] factors, int first, int part, Vector<double> nominal) =>
        part < 0 ? nominal : At(factors, first, part) * (nominal[0] != 0 ? nominal : new Vector<double>(_parts.FromZero(part)));

    private void PutInput(double[][] factors, int first)
    {
        Lanes.ActiveSiemens = Nominal.ActiveSiemens / At(factors, first, _parts.ActiveResistor);
        Lanes.ReferenceSiemens = Nominal.ReferenceSiemens / At(factors, first, _parts.ReferenceResistor);
        Lanes.ActiveFarads = Nominal.ActiveFarads * At(factors, first, _parts.ActiveShunt);
        Lanes.ReferenceFarads = Nominal.ReferenceFarads * At(factors, first, _parts.ReferenceShunt);
        Lanes.ActiveBiasSiemens = Nominal.ActiveBiasSiemens / At(factors, first, _parts.ActiveBias);
        Lanes.ReferenceBiasSiemens = Nominal.ReferenceBiasSiemens / At(factors, first, _parts.ReferenceBias);
        Lanes.GroundSiemens = Nominal.GroundSiemens / At(factors, first, _parts.GroundResistor);
        Lanes.ActiveFactor = At(factors, first, _parts.ActiveElectrode);
        Lanes.ReferenceFactor = At(factors, first, _parts.ReferenceElectrode);
        Lanes.GroundFactor = At(factors, first, _parts.GroundElectrode);
        Lanes.ElectrodeOffset = Value(factors, first, _parts.ElectrodeOffset, Nominal.ElectrodeOffset);
        for (int electrode = 0; electrode < Lanes.Excess.Length; electrode++)
        {
            Lanes.Excess[electrode] = Nominal.Excess[electrode] * At(factors, first, _parts.Excess[electrode]);
        }

        for (int i = 0; i < Lanes.SkinSiemens.Length; i++)
        {
            Lanes.SkinSiemens[i] = Nominal.SkinSiemens[i] / At(factors, first, _parts.Buffers[i].SkinResistor);
            PutOpAmp(factors, first, _parts.Buffers[i].OpAmp, Nominal.BufferOpAmps[i], Lanes.BufferOpAmps[i]);
        }
    }

    private void PutAmplifier(double[][] factors, int first)
    {
        Lanes.Gain = Nominal.Gain * At(factors, first, _parts.Gain);
        Lanes.Cmrr = Nominal.Cmrr * At(factors, first, _parts.Cmrr);
        Lanes.InputNoise = Nominal.InputNoise * At(factors, first, _parts.Noise);
        Lanes.OutputNoise = Nominal.OutputNoise * At(factors, first, _parts.OutputNoise);
        Lanes.CurrentNoise = Nominal.CurrentNoise * At(factors, first, _parts.CurrentNoise);
        Lanes.BiasCurrent = Value(factors, first, _parts.BiasCurrent, Nominal.BiasCurrent);
        Lanes.OffsetVoltage = Value(factors, first, _parts.OffsetVoltage, Nominal.OffsetVoltage);
    }

    private void PutMains(double[][] factors, int first)
    {
        Lanes.MainsVolts = Nominal.MainsVolts * At(factors, first, _parts.MainsVoltage);
        Lanes.BodyToMains = Nominal.BodyToMains * At(factors, first, _parts.BodyToMains);
        Lanes.BodyToEarth = Nominal.BodyToEarth * At(factors, first, _parts.BodyToEarth);
        Lanes.CommonToEarth = Nominal.CommonToEarth * At(factors, first, _parts.AmplifierToEarth);
        Lanes.CommonToMains = Nominal.CommonToMains * At(factors, first, _parts.AmplifierToMains);
        Lanes.ActiveLeadToMains = Nominal.ActiveLeadToMains * At(factors, first, _parts.ActiveLeadToMains);
        Lanes.ReferenceLeadToMains = Nominal.ReferenceLeadToMains * At(factors, first, _parts.ReferenceLeadToMains);
        Lanes.LoopFlux = Nominal.LoopFlux * At(factors, first, _parts.Field) * At(factors, first, _parts.LoopArea);
    }

    private void PutOpAmp(double[][] factors, int first, PartList.OpAmpParts parts, OpAmpLanes nominal, OpAmpLanes lanes)
    {
        lanes.VoltageNoise = nominal.VoltageNoise * At(factors, first, parts.VoltageNoise);
        lanes.CurrentNoise = nominal.CurrentNoise * At(factors, first, parts.CurrentNoise);
        lanes.OffsetVoltage = Value(factors, first, parts.OffsetVoltage, nominal.OffsetVoltage);
        lanes.BiasCurrent = Value(factors, first, parts.BiasCurrent, nominal.BiasCurrent);
    }
}
