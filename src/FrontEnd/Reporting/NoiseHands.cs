using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>The noise budget's rows by the textbooks' formulas, and what each formula leaves out in this design.</summary>
/// <remarks>The formulas take the band as a rectangle, the gain in front of a stage as flat, and electrodes by their impedance at the
/// band's centre. A reason is given only where it holds in this design, with its size.</remarks>
internal sealed class NoiseHands
{
    /// <summary>Shares below this explain nothing.</summary>
    private const double Noticeable = 0.005;

    private readonly Evaluation _evaluation;
    private readonly Design _design;
    private readonly Frequency _low;
    private readonly Frequency _high;
    private readonly double _width;
    private double? _edge;
    private double? _front;

    public NoiseHands(Evaluation evaluation)
    {
        _evaluation = evaluation;
        _design = evaluation.Design;
        (_low, _high) = (_design.Band.Low, _design.Band.High);
        _width = _high.Hertz - _low.Hertz;
    }

    /// <summary>The formula of one row; null where there is none, and where there is nothing to put into it.</summary>
    public TextbookFigure? Of(SourceId source)
    {
        TextbookFigure? hand = source == SourceId.ActiveElectrode ? OfElectrode(0)
            : source == SourceId.ReferenceElectrode ? OfElectrode(1)
            : source == SourceId.ProtectionResistors ? Thermal(2 * _design.Input.SeriesResistor.Ohms)
            : source == SourceId.SkinResistors ? Thermal(Buffers.Sum(side => side.Buffer.SkinResistor.Ohms))
            : source == SourceId.BiasResistors ? OfBiasResistors()
            : source == SourceId.BufferVoltage ? OfBufferVoltage()
            : source == SourceId.BufferCurrent ? OfBufferCurrent()
            : source == SourceId.AmplifierVoltage ? OfAmplifierVoltage()
            : source == SourceId.AmplifierCurrent ? OfAmplifierCurrent()
            : source == SourceId.Quantisation ? OfQuantisation()
            : source == SourceId.Converter ? OfConverter()
            : OfStage(source);
        return hand is { Value: > 0 } ? hand : null;
    }

    /// <summary>All rows that have a formula, together; null where none has.</summary>
    public TextbookFigure? Total(IEnumerable<NoiseRow> rows)
    {
        TextbookFigure[] hands = [.. rows.Select(row => Of(row.Id)).OfType<TextbookFigure>()];
        return hands.Length == 0 ? null : NoiseFormulas.Together([.. hands.Select(hand => VoltageRms.FromVolts(hand.Value))]);
    }

    /// <summary>What the total's formula leaves out: the shape of the band, and the rows without a formula.</summary>
    public string TotalReason(IReadOnlyList<NoiseRow> rows)
    {
        double total = rows.Sum(row => row.Rms * row.Rms);
        NoiseRow[] without = [.. rows.Where(row => Of(row.Id) is null && Noticeable * total < row.Rms * row.Rms)];
        string names = string.Join(", ", without.OrderByDescending(row => row.Rms).Select(row =>
            $"{Words(row)} ({QuantityText.FormatPercent(Ratio.FromFraction(row.Rms * row.Rms / total), 2)} of the variance)"));
        return Join(Shape(true, true), without.Length == 0 ? "" : $"it leaves out {names}", "each row says what its own formula leaves out");
    }

    private static string Words(NoiseRow row) => row.Id == SourceId.Folded ? "folded noise" : row.Name;

    /// <summary>What one row's formula leaves out in this design.</summary>
    public string Reason(SourceId source) =>
        source == SourceId.ActiveElectrode ? Join(Shape(true, HasExcess(_design.Electrodes.Active)))
        : source == SourceId.ReferenceElectrode ? Join(Shape(true, HasExcess(_design.Electrodes.Reference)))
        : source == SourceId.AmplifierVoltage ? Join(Shape(true, 0 < _design.Amplifier.NoiseCorner.Hertz), Divided())
        : source == SourceId.AmplifierCurrent || source == SourceId.BufferCurrent || source == SourceId.BiasResistors
            ? Join(Shape(true, true), "the impedance is that at the band's centre, without the input's capacitances")
        : source == SourceId.BufferVoltage ? Join(Shape(true, true), "signal loss at the buffers' inputs is left out")
        : source == SourceId.Quantisation || source == SourceId.Converter ? Join(Shape(false, false))
        : source == SourceId.ProtectionResistors || source == SourceId.SkinResistors ? Join(Shape(true, false), BehindBuffers(source))
        : Join(Shape(true, true), "the stage's gain for its op-amp's noise is assumed to be that at dc, and the gain ahead of it to be flat", Divided());

    /// <summary>What the thermal noise of the electrodes by hand leaves out.</summary>
    public string ThermalReason => Join(Shape(true, false));

    private IEnumerable<(Electrode Electrode, ElectrodeBuffer Buffer)> Buffers
    {
        get
        {
            ElectrodeSet set = _design.Electrodes;
            if (set.ActiveBuffer is { } active)
            {
                yield return (NoiseReport.Built(_design, 0), active);
            }

            if (set.ReferenceBuffer is { } reference)
            {
                yield return (NoiseReport.Built(_design, 1), reference);
            }
        }
    }

    private static bool HasExcess(Electrode electrode) => 0 < electrode.ExcessNoise.VoltsSquaredPerHertz;

    private static string Join(params ReadOnlySpan<string> reasons)
    {
        string joined = "";
        foreach (string reason in reasons)
        {
            joined += reason.Length == 0 ? "" : joined.Length == 0 ? reason : "; " + reason;
        }

        return joined;
    }

    /// <summary>What path and filters leave of a flat noise over the band, and at its lower edge.</summary>
    /// <param name="path">True for noise that passes path, converter and digital filters, false for the converter's own.</param>
    /// <param name="rises">True for noise that is largest at the lower edge.</param>
    private string Shape(bool path, bool rises)
    {
        double left = path ? _evaluation.Noise.SignalInBand(_low.Hertz, _high.Hertz)
            : _evaluation.Noise.Quantisation / OfQuantisation().Value;
        string shape = Math.Abs(1 - left) < Noticeable ? ""
            : $"the formula assumes a rectangular band; {(path ? "path and filters" : "the digital filters")} leave {Percent(left)} of the rms of white noise";
        double edge = rises ? _edge ??= _evaluation.PathAndConverter([_low.Hertz])[0] / _evaluation.GainMid
            * Math.Sqrt(_evaluation.Digital.Power(_low.Hertz)) : 1;
        return Math.Abs(1 - edge) < Noticeable ? shape
            : Join(shape, $"at the band's lower edge, where noise that rises towards it is largest, path and filters leave {Percent(edge)}");
    }

    private static string Percent(double share) => QuantityText.FormatPercent(Ratio.FromFraction(share));

    /// <summary>What electrodes and input take off the signal before it meets this noise.</summary>
    private string Divided()
    {
        if (_front is null)
        {
            _evaluation.Path.SweepTransfer([_evaluation.CentreHertz]);
            _front = new Complex(_evaluation.Path.FrontRe[0], _evaluation.Path.FrontIm[0]).Magnitude;
        }

        double front = _front.Value;
        return Math.Abs(1 - front) < Noticeable ? "" : $"electrodes and input leave {Percent(front)} of the signal at the amplifier";
    }

    private string BehindBuffers(SourceId source) => source == SourceId.ProtectionResistors && Buffers.Any()
        ? "signal loss at the buffers' inputs is left out"
        : "";

    private TextbookFigure Thermal(double ohms) =>
        NoiseFormulas.Thermal(Resistance.FromOhms(ohms), _design.BoardTemperature, _low, _high);

    private TextbookFigure OfElectrode(int which)
    {
        Electrode electrode = NoiseReport.Built(_design, which);
        TextbookFigure thermal = NoiseFormulas.ElectrodeThermal([electrode], _design.SkinTemperature, _low, _high);
        return HasExcess(electrode)
            ? NoiseFormulas.Together(VoltageRms.FromVolts(thermal.Value),
                VoltageRms.FromVolts(NoiseFormulas.Excess(electrode.ExcessNoise, electrode.ExcessSlope, _low, _high).Value))
            : thermal;
    }

    private TextbookFigure OfAmplifierVoltage()
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        double density = NoiseFormulas.InputReferredDensity(amplifier.InputNoise, amplifier.OutputNoise, amplifier.Gain).Value;
        return NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(density), amplifier.NoiseCorner, _low, _high);
    }

    /// <summary>Impedance by size that a current out of an amplifier's input flows through: electrode and protection resistor, or what
    /// stands behind a buffer; beside it the bias resistor.</summary>
    private Resistance Lead(int which)
    {
        ElectrodeBuffer? buffer = which == 0 ? _design.Electrodes.ActiveBuffer : _design.Electrodes.ReferenceBuffer;
        Complex source = buffer?.OutputResistance.Ohms ?? NoiseReport.Built(_design, which).Impedance(_design.Band.Centre);
        Complex lead = source + _design.Input.SeriesResistor.Ohms;
        return Resistance.FromOhms((_design.Input.BiasResistor is { } bias ? lead * bias.Ohms / (lead + bias.Ohms) : lead).Magnitude);
    }

    private TextbookFigure OfAmplifierCurrent() => NoiseFormulas.CurrentInLeads(_design.Amplifier.CurrentNoise,
        _design.Amplifier.CurrentNoiseCorner, Lead(0), Lead(1), _design.EffectiveReferenceInputs, _low, _high);

    private TextbookFigure? OfBiasResistors() => _design.Input.BiasResistor is { } bias
        ? NoiseFormulas.CurrentInLeads(CurrentNoiseDensity.FromAmperesPerRootHertz(
            NoiseFormulas.ThermalDensity(bias, _design.BoardTemperature).Value / bias.Ohms), default, Lead(0), Lead(1), 1, _low, _high)
        : null;

    private TextbookFigure? OfBufferVoltage() => Each(Buffers.Select(side =>
        NoiseFormulas.Amplifier(side.Buffer.OpAmp.VoltageNoise, side.Buffer.OpAmp.NoiseCorner, _low, _high)));

    private TextbookFigure? OfBufferCurrent() => Each(Buffers.Select(side => NoiseFormulas.Current(
        side.Buffer.OpAmp.CurrentNoise,
        Resistance.FromOhms((side.Electrode.Impedance(_design.Band.Centre) + side.Buffer.SkinResistor.Ohms).Magnitude),
        side.Buffer.OpAmp.CurrentNoiseCorner, _low, _high)));

    private static TextbookFigure? Each(IEnumerable<TextbookFigure> figures) => figures.ToArray() switch
    {
        [] => null,
        [var one] => one,
        var several => NoiseFormulas.Together([.. several.Select(one => VoltageRms.FromVolts(one.Value))]),
    };

    private TextbookFigure OfQuantisation()
    {
        Voltage step = Voltage.FromVolts(_design.Converter.LsbVolts);
        double value = ConverterFormulas.QuantisationNoise(step).Value * Math.Sqrt(ShareOfHalfRate) / _evaluation.GainMid;
        return new TextbookFigure(value, "LSB/√12·√(2B/fs)/G", () => $"{QuantityText.Format(step.Volts, "V")}/√12 · {InTheBand(value)}", new SourceRef("quantisation-mt-001")) { Unit = "V" };
    }

    private TextbookFigure OfConverter()
    {
        double noise = _design.Converter.NoiseVolts, value = noise * Math.Sqrt(ShareOfHalfRate) / _evaluation.GainMid;
        return new TextbookFigure(value, "σ_adc·√(2B/fs)/G", () => $"{QuantityText.Format(noise, "V")} · {InTheBand(value)}", Equations.Derived) { Unit = "V" };
    }

    /// <summary>The band's width over half the sampling rate.</summary>
    private double ShareOfHalfRate => _width / (_design.Converter.Rate.Hertz / 2);

    private string InTheBand(double value) =>
        $"√(2 · {QuantityText.FormatPart(Frequency.FromHertz(_width))}/{QuantityText.FormatPart(_design.Converter.Rate)})/{QuantityText.FormatNumber(_evaluation.GainMid, 4)} = {QuantityText.Format(value, "V", 4)}";

    /// <summary>Op-amp voltage of a gain or a low-pass stage, referred to the input by the gain in front; an analogue notch has several
    /// op-amps, or one within a bridge, and no short formula.</summary>
    private TextbookFigure? OfStage(SourceId source)
    {
        double before = _design.Amplifier.Gain;
        foreach (Stage stage in _design.Stages)
        {
            if (source == SourceId.VoltageOf(stage.Name) && stage.FittedOpAmp is { } opAmp && stage.Role != StageRole.Notch)
            {
                double density = opAmp.VoltageNoise.VoltsPerRootHertz * stage.NoiseGain / (stage.NominalGain * before);
                return NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(density), opAmp.NoiseCorner, _low, _high);
            }

            before *= stage.NominalGain;
        }

        return null;
    }
}
