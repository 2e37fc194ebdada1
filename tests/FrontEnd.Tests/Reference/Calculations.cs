using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Textbook;
using MathNet.Numerics;

namespace FrontEnd.Tests.Reference;

/// <summary>What each name in the formula column of a reference table works out, in SI units.</summary>
public static class Calculations
{
    public static double Work(ReferenceRow row) => row.Formula switch
    {
        "boltzmann" => PhysicalConstants.Boltzmann,
        "elementary-charge" => PhysicalConstants.ElementaryCharge,
        "thermal-density" => NoiseFormulas.ThermalDensity(R(row), T(row)).Value,
        "thermal-current-density" => NoiseFormulas.ThermalDensity(R(row), T(row)).Value / R(row).Ohms,
        "thermal" => NoiseFormulas.Thermal(R(row), T(row), F1(row), F2(row)).Value,
        "thermal-level" => 20 * Math.Log10(NoiseFormulas.Thermal(R(row), T(row), F1(row), F2(row)).Value),
        "thermal-peak-to-peak" => NoiseFormulas.PeakToPeak(VoltageRms.FromVolts(NoiseFormulas.Thermal(R(row), T(row), F1(row), F2(row)).Value)).Value,
        "thermal-parallel-rc" => NoiseFormulas.ThermalParallelRc(R(row), C(row), T(row), F1(row), F2(row)).Value,
        "capacitor-limit" => NoiseFormulas.CapacitorLimit(C(row), T(row)).Value,
        "electrode-pair" => NoiseFormulas.ElectrodeThermal([Contact(row), Contact(row)], T(row), F1(row), F2(row)).Value,
        "current-electrode-pair" => Math.Sqrt(2) * NoiseFormulas.CurrentInElectrode(row.Get<CurrentNoiseDensity>("i"), Contact(row), F1(row), F2(row)).Value,
        "shot-ratio" => 20 * Math.Log10(row.Get<Current>("I").Amperes / (Shot(row) * Math.Sqrt(F2(row).Hertz - F1(row).Hertz))),
        "shot-junction" => Shot(row) * Math.Sqrt(F2(row).Hertz - F1(row).Hertz) * PhysicalConstants.Boltzmann * T(row).Kelvins / (PhysicalConstants.ElementaryCharge * row.Get<Current>("I").Amperes),
        "amplifier" => Amplifier(row).Value,
        "amplifier-output" => Amplifier(row).Value * row.Number("G"),
        "flicker-corner" => NoiseFormulas.FlickerCorner(row.Get<VoltageNoiseDensity>("e1"), row.Get<Frequency>("f"), row.Get<VoltageNoiseDensity>("e")).Value,
        "inverting-stage" => InvertingStage(row),
        "in-amp-density" => InAmpDensity(row),
        "current" => NoiseFormulas.Current(row.Get<CurrentNoiseDensity>("i"), R(row), row.Get<Frequency>("fc"), F1(row), F2(row)).Value,
        "current-density" => NoiseFormulas.Current(row.Get<CurrentNoiseDensity>("i"), R(row), default, default, Frequency.FromHertz(1)).Value,
        "together" => NoiseFormulas.Together(row.Parts<VoltageRms>()).Value,
        "sum" => row.Parts<VoltageRms>().Sum(part => part.Volts),
        "bandwidth-butterworth" => NoiseFormulas.BandwidthFactorButterworth(row.Whole("n")).Value,
        "bandwidth-equal-poles" => NoiseFormulas.BandwidthFactorEqualPoles(row.Whole("n")).Value,
        "peak-to-peak" => NoiseFormulas.PeakToPeak(row.Get<VoltageRms>("σ")).Value,
        "outside-peak-to-peak" => SpecialFunctions.Erfc(VoltageRms.FromVolts(1).NoisePeakToPeak.Volts / 2 / Math.Sqrt(2)),
        "excess" => NoiseFormulas.Excess(row.Get<ExcessNoise>("K"), row.Number("slope"), F1(row), F2(row)).Value,
        "excess-constant" => Reported(row).VoltsSquaredPerHertz,
        "excess-at-1-hz" => Math.Sqrt(Reported(row).VoltsSquaredPerHertz),
        "excess-from-rms" => NoiseFormulas.Excess(Reported(row), row.Number("slope"), row.Get<Frequency>("g1"), row.Get<Frequency>("g2")).Value,
        "referred" => AmplifierFormulas.ReferredToInput(row.Get<VoltageRms>("σ"), row.Number("G")).Value,
        "sweeps" => NoiseFormulas.SweepsToAverage(row.Number("S"), row.Get<VoltageRms>("σ"), row.Get<Voltage>("A")).Value,

        "montage-referential" => MontageFormulas.Noise([1, -1], [VoltageRms.FromVolts(row.Number("e")), VoltageRms.FromVolts(row.Number("er"))]).Value,
        "montage-average" => MontageFormulas.Noise(AverageRow(row.Whole("N"), 0), Alike(row.Whole("N"))).Value,
        "montage-average-correlation" => MontageFormulas.Correlation(AverageRow(row.Whole("N"), 0), AverageRow(row.Whole("N"), 1), Alike(row.Whole("N"))).Value,
        "montage-others" => MontageFormulas.Noise([1, .. Enumerable.Repeat(-1.0 / row.Whole("N"), row.Whole("N"))], Alike(row.Whole("N") + 1)).Value,
        "montage-correlation" => MontageFormulas.Correlation([1, 0, -1], [0, 1, -1], [VoltageRms.FromVolts(row.Number("e")), VoltageRms.FromVolts(row.Number("e")), VoltageRms.FromVolts(row.Number("er"))]).Value,

        "electrode-size" => ElectrodeFormulas.Impedance(Contact(row), F(row)).Value,
        "electrode-real" => Contact(row).Impedance(F(row)).Real,
        "electrode-angle" => Contact(row).Impedance(F(row)).Phase * 180 / Math.PI,
        "plate-capacitance" => Plate(row),
        "plate-reactance" => 1 / (2 * Math.PI * F(row).Hertz * Plate(row)),
        "plate-gain" => MainsFormulas.ElectrodeDivider(1 / new Complex(0, row.Get<Capacitance>("Cin").Farads), 1 / new Complex(0, Plate(row))).Value,
        "contact-reading" => ElectrodeFormulas.ContactReading(row.Get<Current>("I"), R(row).Ohms, 0).Value,

        "displacement-current" => Displacement(row),
        "displacement-current-pp" => Displacement(row) * 2 * Math.Sqrt(2),
        "body-voltage" => MainsFormulas.BodyVoltage(row.Get<VoltageRms>("V"), row.Get<Capacitance>("Cp"), row.Get<Capacitance>("Cb")).Value,
        "common-mode" => MainsFormulas.BodyCommonMode(row.Get<VoltageRms>("V"), F(row), row.Get<Capacitance>("Cp"), row.Get<Capacitance>("Cb"), row.Get<Capacitance>("Cap"), Isolation(row), row.Get<Resistance>("Zg").Ohms).Value,
        "ground-current" => MainsFormulas.BodyToCommonCurrent(row.Get<VoltageRms>("V"), F(row), row.Get<Capacitance>("Cp"), row.Get<Capacitance>("Cb"), row.Get<Capacitance>("Cap"), Isolation(row), row.Get<Resistance>("Zg").Ohms).Value,
        "lead-voltage" => MainsFormulas.LeadVoltage(row.Get<Current>("i"), row.Get<Resistance>("dZ").Ohms).Value,
        "loop-voltage" => MainsFormulas.LoopVoltage(F(row), row.Get<MagneticFluxDensity>("B"), row.Get<Area>("A")).Value,
        "ohm" => AmplifierFormulas.BiasOffset(row.Get<Current>("i"), R(row)).Value,
        "residue" => MainsFormulas.Residue(row.Get<VoltageRms>("V"), row.Get<Decibels>("CMRR")).Value,
        "residue-output" => MainsFormulas.Residue(row.Get<VoltageRms>("V"), row.Get<Decibels>("CMRR")).Value * row.Number("G"),
        "harmonic-growth" => MainsFormulas.HarmonicGrowth(row.Get<Ratio>("share"), row.Whole("h")).Value,
        "rejection-needed" => MainsFormulas.RejectionNeeded(row.Get<VoltageRms>("V"), row.Get<VoltageRms>("residue")).Value,
        "divider-voltage" => MainsFormulas.DividerVoltage(row.Get<VoltageRms>("V"), InputImpedance(row), row.Get<Resistance>("dZ").Ohms).Value,

        "driven-resistance" => Driven(row),
        "driven-common-mode-ra" => MainsFormulas.DrivenCommonMode(row.Get<Current>("i"), row.Get<Resistance>("Ro"), 2 * (row.Get<Resistance>("Rf") / row.Get<Resistance>("Ra"))).Value,
        "driven-common-mode" => MainsFormulas.DrivenCommonMode(row.Get<Current>("i"), R(row), row.Number("T")).Value,
        "loop-gain" => MainsFormulas.DrivenGroundLoopGain(row.Get<Frequency>("fu"), F(row)).Value,
        "driven-pole" => LoopPoles(row)[0].Hertz,
        "driven-crossing" => MainsFormulas.DrivenGroundCrossing(row.Get<Frequency>("fu"), LoopPoles(row)).Value,
        "driven-margin" => MainsFormulas.DrivenGroundPhaseMargin(row.Get<Frequency>("fu"), LoopPoles(row)).Value,

        "four-resistors" => MainsFormulas.RejectionOfFourResistors(row.Number("G"), row.Get<Ratio>("tol")).Value,
        "one-ratio" => MainsFormulas.RejectionOfOneRatio(row.Number("G"), row.Get<Ratio>("mismatch")).Value,
        "in-amp-mismatch" => MainsFormulas.RejectionOfInstrumentationAmplifier(row.Number("G"), row.Get<Ratio>("mismatch")).Value,
        "in-amp-gain" => AmplifierFormulas.StageGain(Resistance.FromOhms(2 * row.Get<Resistance>("R1").Ohms), row.Get<Resistance>("RG")).Value * row.Number("G2"),
        "gain-one-resistor" => AmplifierFormulas.StageGain(row.Get<Resistance>("Rf"), row.Get<Resistance>("RG")).Value,
        "divider" or "divider-bias" => MainsFormulas.DividerRejection(InputImpedance(row), row.Get<Resistance>("dZ").Ohms).Value,
        "divider-electrode" => MainsFormulas.DividerRejection(InputImpedance(row), Contact(row).Impedance(F(row))).Value,
        "divider-bias-exact" => MainsFormulas.DividerRejectionExact(InputImpedance(row), row.Get<Resistance>("Z1").Ohms, InputImpedance(row), row.Get<Resistance>("Z2").Ohms).Value,
        "shared-reference" => MainsFormulas.SharedReferenceRejection(F(row), row.Get<Capacitance>("Cin"), R(row).Ohms, row.Whole("N")).Value,
        "amplifier-rejection" => MainsFormulas.AmplifierRejection(row.Get<Decibels>("CMRR"), F(row), row.Get<Frequency>("fc")).Value,
        "low-pass-mismatch" => MainsFormulas.LowPassMismatch(F(row), F1(row), row.Get<Ratio>("mismatch")).Value,
        "high-pass-mismatch" => MainsFormulas.HighPassMismatch(F(row), F1(row), row.Get<Ratio>("mismatch")).Value,
        "rejections-worst" => MainsFormulas.RejectionsWorstCase(row.Parts<Decibels>()).Value,
        "rejections-root" => MainsFormulas.RejectionsRootSum(row.Parts<Decibels>()).Value,
        "skew-rejection" => -20 * Math.Log10(MainsFormulas.SkewLeak(F(row), row.Get<Duration>("Δt")).Value),

        "first-stage-limit" => AmplifierFormulas.FirstStageGainLimit(row.Get<Voltage>("Vs"), row.Get<Voltage>("h"), row.Get<Voltage>("Voff"), row.Get<Voltage>("Vsig")).Value,
        "inner-node-limit" => AmplifierFormulas.InnerNodeGainLimit(row.Get<Voltage>("Vs"), row.Get<Voltage>("h"), row.Get<Voltage>("Vcm"), row.Get<Voltage>("Vd")).Value,
        "rc-corner" => FilterFormulas.RcCorner(R(row), C(row)).Value,
        "settling" => FilterFormulas.Settling(R(row), C(row), row.Get<Voltage>("V0"), row.Get<Voltage>("Vtol")).Value,
        "supply-ripple" => AmplifierFormulas.SupplyRipple(row.Get<VoltageRms>("V"), row.Get<Decibels>("PSRR")).Value,
        "bandwidth" => AmplifierFormulas.Bandwidth(row.Get<Frequency>("GBW"), row.Number("G")).Value,
        "slew" => AmplifierFormulas.SlewRate(F(row), row.Get<Voltage>("V")).Value,

        "ideal-ratio" => ConverterFormulas.IdealSignalToNoise(row.Get<BitCount>("N")).Value,
        "step" => ConverterFormulas.Step(row.Get<VoltagePeakToPeak>("FS"), row.Get<BitCount>("N")).Value,
        "quantisation" => ConverterFormulas.QuantisationNoise(Voltage.FromVolts(ConverterFormulas.Step(row.Get<VoltagePeakToPeak>("FS"), row.Get<BitCount>("N")).Value)).Value,
        "enob" => ConverterFormulas.EffectiveNumberOfBits(row.Get<Decibels>("SINAD")).Value,
        "effective-bits" => ConverterFormulas.EffectiveBits(row.Get<VoltagePeakToPeak>("span"), row.Get<VoltageRms>("rms")).Value,
        "noise-free-bits" => ConverterFormulas.NoiseFreeBits(row.Get<VoltagePeakToPeak>("span"), row.Get<VoltageRms>("rms")).Value,
        "noise-free-measured" => ConverterFormulas.NoiseFreeBits(row.Get<VoltagePeakToPeak>("span"), row.Get<VoltagePeakToPeak>("pp")).Value,
        "averaging-gain" => ConverterFormulas.AveragingGain(row.Number("M")).Value,
        "averaging-bits" => ConverterFormulas.AveragingGain(row.Number("M")).Value / (20 * Math.Log10(2)),
        "data-rate" => ConverterFormulas.DataRate(row.Whole("N"), row.Get<Frequency>("fs"), row.Get<BitCount>("b"), row.Get<Ratio>("overhead")).Value,
        "battery" => PowerFormulas.BatteryLife(row.Get<Charge>("Q"), row.Get<Ratio>("share"), row.Get<Current>("I")).Value,
        "sine-range" => ConverterFormulas.DynamicRange(row.Get<VoltagePeakToPeak>("FS"), row.Get<VoltageRms>("rms")).Value,

        "lands-at" => FilterFormulas.LandsAt(F(row), row.Get<Frequency>("fs")).Value,
        "butterworth" => FilterFormulas.ButterworthAttenuation(row.Whole("n"), F(row), row.Get<Frequency>("fc")).Value,
        "butterworth-order" => FilterFormulas.ButterworthOrder(row.Get<Decibels>("A"), row.Get<Frequency>("fs"), row.Get<Frequency>("fc")).Value,
        "fold-frequency" => FilterFormulas.FoldFrequency(row.Get<Frequency>("fs"), F2(row)).Value,
        "equal-poles" => FilterFormulas.EqualPoleFactor(row.Whole("n")).Value,
        "sinc" => Sinc(F(row), row),
        "sinc-corner" => SincCorner(row),
        "notch-time" => FilterFormulas.NotchTimeConstant(row.Get<Frequency>("f0"), row.Number("Q"), row.Get<Frequency>("fs")).Value,
        "notch-ring" => FilterFormulas.NotchRingTime(row.Get<Frequency>("f0"), row.Number("Q"), row.Get<Frequency>("fs"), row.Get<Ratio>("share")).Value,
        "notch-attenuation" => FilterFormulas.NotchAttenuation(F(row), row.Get<Frequency>("f0"), row.Number("Q")).Value,

        "nearest" => PreferredValues.Nearest(R(row), Enum.Parse<PreferredSeries>(row.Text("series"))).Ohms,
        "code-resistance" => row.Get<Resistance>("code").Ohms,
        "code-capacitance" => row.Get<Capacitance>("code").Farads,

        "series-resistance" => SafetyFormulas.SeriesResistanceNeeded(row.Get<Voltage>("V"), row.Get<Current>("I")).Value,
        "fault-current" => SafetyFormulas.FaultCurrent(row.Get<Voltage>("V"), R(row)).Value,
        "limit-dc-normal" => new Requirements().DrivenGroundCurrent.Amperes,
        "limit-dc-fault" => new Requirements().FaultCurrent.Amperes,

        "harmonic-share" => Mains.StandardHarmonics[row.Whole("h") - 1],
        "total-harmonics" => Math.Sqrt(Mains.StandardHarmonics.Skip(1).Sum(share => share * share)),
        "requirement-offset" => new Requirements().Offset.Volts,
        "requirement-mains-pp" => new Requirements().MainsAtElectrodes.Volts * 2 * Math.Sqrt(2),
        "default-body-to-mains" => new Mains().BodyToMains.Farads,
        "default-body-to-earth" => new Mains().BodyToEarth.Farads,
        "default-electrode-r" => new Electrode().ContactResistance.Ohms,
        "default-electrode-c" => new Electrode().ContactCapacitance.Farads,

        "decibels-voltage" => Decibels.FromVoltageRatio(row.Number("ratio")).Value,
        "decibels-power" => Decibels.FromPowerRatio(row.Number("ratio")).Value,
        "prefix-farad" => row.Get<Capacitance>("text").Farads,
        "prefix-hertz" => row.Get<Frequency>("text").Hertz,
        _ => throw new InvalidDataException($"{row}: the tests know no formula {row.Formula}."),
    };

    /// <summary>Rows that are facts to be quoted, with no calculation behind them.</summary>
    public static bool IsFactOnly(ReferenceRow row) => row.Formula.StartsWith("limit-", StringComparison.Ordinal) && !row.Formula.StartsWith("limit-dc", StringComparison.Ordinal);

    /// <summary>Rows whose expected value is a list of whole numbers; null for the others.</summary>
    public static int[]? WorkList(ReferenceRow row) => row.Formula switch
    {
        "decade" => [.. PreferredValues.Decade(Enum.Parse<PreferredSeries>(row.Text("series")))],
        "e24-irregular" => [.. PreferredValues.Decade(PreferredSeries.E24).Where((member, i) => member / 10 != (int)Math.Round(10 * Math.Pow(10, i / 24.0))).Select(member => member / 10)],
        _ => null,
    };

    private static Resistance R(ReferenceRow row) => row.Get<Resistance>("R");

    private static Capacitance C(ReferenceRow row) => row.Get<Capacitance>("C");

    private static Temperature T(ReferenceRow row) => row.Get<Temperature>("T");

    private static Frequency F(ReferenceRow row) => row.Get<Frequency>("f");

    private static Frequency F1(ReferenceRow row) => row.Get<Frequency>("f1");

    private static Frequency F2(ReferenceRow row) => row.Get<Frequency>("f2");

    private static Electrode Contact(ReferenceRow row) => new() { ContactResistance = R(row), ContactCapacitance = C(row) };

    private static double Shot(ReferenceRow row) => NoiseFormulas.ShotDensity(row.Get<Current>("I")).Value;

    private static TextbookFigure Amplifier(ReferenceRow row) =>
        NoiseFormulas.Amplifier(row.Get<VoltageNoiseDensity>("e"), row.Get<Frequency>("fc"), F1(row), F2(row));

    private static ExcessNoise Reported(ReferenceRow row) => ExcessNoise.FromRms(row.Get<VoltageRms>("rms"), F1(row), F2(row), row.Number("slope"));

    private static VoltageRms[] Alike(int count) => [.. Enumerable.Repeat(VoltageRms.FromVolts(1), count)];

    private static double[] AverageRow(int count, int channel) => [.. Enumerable.Range(0, count).Select(i => (i == channel ? 1 : 0) - (1.0 / count))];

    private static double Plate(ReferenceRow row) => ElectrodeFormulas.PlateCapacitance(row.Get<Area>("A"), row.Get<Length>("d"), row.Number("εr")).Value;

    private static double Displacement(ReferenceRow row) => MainsFormulas.DisplacementCurrent(row.Get<VoltageRms>("V"), F(row), row.Get<Capacitance>("Cp")).Value;

    private static Capacitance? Isolation(ReferenceRow row) => row.Text("Ciso") is "earth" ? null : row.Get<Capacitance>("Ciso");

    private static double Driven(ReferenceRow row) => MainsFormulas.DrivenGroundResistance(row.Get<Resistance>("Ro"), row.Get<Resistance>("Rf"), row.Get<Resistance>("Ra")).Value;

    private static Complex InputImpedance(ReferenceRow row)
    {
        Complex admittance = new(row.Has("Rin") ? 1 / row.Get<Resistance>("Rin").Ohms : 0, 2 * Math.PI * F(row).Hertz * row.Get<Capacitance>("Cin").Farads);
        return 1 / admittance;
    }

    /// <summary>Output lead with the body, electrode with its input, the amplifier's own pole.</summary>
    private static Frequency[] LoopPoles(ReferenceRow row)
    {
        double body = row.Get<Capacitance>("Cb").Farads;
        double effective = Isolation(row) is { } iso ? body * iso.Farads / (body + iso.Farads) : body;
        Resistance electrode = row.Get<Resistance>("Re");
        return
        [
            Frequency.FromHertz(FilterFormulas.RcCorner(row.Get<Resistance>("Ro") + electrode, Capacitance.FromFarads(effective)).Value),
            Frequency.FromHertz(FilterFormulas.RcCorner(electrode, row.Get<Capacitance>("Cin")).Value),
            F2(row),
        ];
    }

    /// <summary>Output noise of an inverting stage from its parts: noise gain 1 + R2/R1, bandwidth GBW over noise gain, factor π/2 for one pole.</summary>
    private static double InvertingStage(ReferenceRow row)
    {
        Resistance r1 = row.Get<Resistance>("R1");
        Resistance r2 = row.Get<Resistance>("R2");
        Resistance r3 = row.Get<Resistance>("R3");
        double gain = AmplifierFormulas.StageGain(r2, r1).Value;
        Frequency high = Frequency.FromHertz(AmplifierFormulas.Bandwidth(row.Get<Frequency>("GBW"), gain).Value * NoiseFormulas.BandwidthFactorButterworth(1).Value);
        Resistance parallel = Resistance.FromOhms(r1.Ohms * r2.Ohms / (r1 + r2).Ohms);
        CurrentNoiseDensity i = row.Get<CurrentNoiseDensity>("i");
        Frequency corner = row.Get<Frequency>("fci");
        double sum = NoiseFormulas.Together(
            VoltageRms.FromVolts(NoiseFormulas.Amplifier(row.Get<VoltageNoiseDensity>("e"), row.Get<Frequency>("fc"), F1(row), high).Value),
            VoltageRms.FromVolts(NoiseFormulas.Current(i, parallel, corner, F1(row), high).Value),
            VoltageRms.FromVolts(NoiseFormulas.Current(i, r3, corner, F1(row), high).Value),
            VoltageRms.FromVolts(NoiseFormulas.Thermal(parallel + r3, T(row), default, high).Value)).Value;
        return gain * sum;
    }

    private static double InAmpDensity(ReferenceRow row)
    {
        double amplifier = NoiseFormulas.InputReferredDensity(row.Get<VoltageNoiseDensity>("eni"), row.Get<VoltageNoiseDensity>("eno"), row.Number("G")).Value;
        double resistor = NoiseFormulas.ThermalDensity(row.Get<Resistance>("RG"), T(row)).Value;
        return Math.Sqrt((amplifier * amplifier) + (resistor * resistor));
    }

    private static double Sinc(Frequency frequency, ReferenceRow row) => FilterFormulas.SincGain(frequency, row.Get<Frequency>("fd"), 1024, row.Whole("K")).Value;

    /// <summary>Where the sinc filter is 3 dB down, by halving; it falls steadily to its first null at f_d.</summary>
    private static double SincCorner(ReferenceRow row)
    {
        (double low, double high) = (0, row.Get<Frequency>("fd").Hertz);
        for (int i = 0; i < 100; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Sinc(Frequency.FromHertz(middle), row) < 10 * Math.Log10(0.5) ? (low, middle) : (middle, high);
        }

        return low;
    }
}
