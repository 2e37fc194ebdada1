using System.Numerics;

namespace FrontEnd.Tests.Plain;

internal sealed partial class PlainFigures
{
    private PlainSigns _signs;
    private PlainInput? _mainsInput;
    private PlainInput? _mainsWithoutLeads;
    private double[] _harmonicInput = [];

    private sealed record MainsPart(double Body, double Divider, double Leads, double Imbalance, double Amplifier, double Loop)
    {
        public double Total => Imbalance + Amplifier + Loop;
    }

    private int Harmonics => Math.Max(_design.Mains.Harmonics.Count, _design.Mains.FieldHarmonics?.Count ?? 0);

    private double Volts(int h) => _design.Mains.Voltage.Volts * _design.Mains.Harmonics.ElementAtOrDefault(h - 1);

    private double Tesla(int h) => _design.Mains.Field.Teslas * (_design.Mains.FieldHarmonics ?? _design.Mains.Harmonics).ElementAtOrDefault(h - 1);

    private double Rejection(double hertz)
    {
        double corner = hertz / _design.Amplifier.CmrrCorner.Hertz;
        return Math.Pow(10, _design.Amplifier.Cmrr.Value / 20) / Math.Sqrt(1 + (corner * corner));
    }

    private MainsPart At(PlainInput with, PlainInput without, double hertz, double volts, double tesla)
    {
        PlainSolution s = with.At(hertz), bare = without.At(hertz);
        Complex[] signal = s.OfSource(with.Signal);
        (Complex[], Complex[]) mains = s.PreciselyOfSource(with.Mains), alone = bare.PreciselyOfSource(without.Mains);
        double front = (s.Volts(signal, "A2") - s.Volts(signal, "R2")).Magnitude;
        Complex all = volts * s.Between(mains, "A2", "R2"), divider = volts * bare.Between(alone, "A2", "R2");
        double mean = volts * ((s.Between(mains, "A2", "C") + s.Between(mains, "R2", "C")) / 2).Magnitude;
        return new MainsPart(volts * bare.Between(alone, "B", "C").Magnitude, divider.Magnitude / front, (all - divider).Magnitude / front, all.Magnitude / front,
            mean / Rejection(hertz) / front, 2 * Math.PI * hertz * tesla * _design.Mains.LoopArea.SquareMetres);
    }

    private void Mains()
    {
        double f0 = _design.Mains.Frequency.Hertz, most = double.NegativeInfinity;
        MainsPart? part = null;
        foreach (int m in (ReadOnlySpan<int>)[1, -1])
        {
            foreach (int r in (ReadOnlySpan<int>)[1, -1])
            {
                foreach (int c in (ReadOnlySpan<int>)[1, -1])
                {
                    PlainSigns signs = new(m, r, c);
                    PlainInput with = new(_design, signs), without = new(_design, signs, leads: false);
                    MainsPart one = At(with, without, f0, Volts(1), Tesla(1));
                    if (most * (1 + 1e-12) < one.Total)
                    {
                        (most, part, _signs, _mainsInput, _mainsWithoutLeads) = (one.Total, one, signs, with, without);
                    }
                }
            }
        }

        _figures["mains.body_common_mode"] = part!.Body;
        _figures["mains.divider"] = part.Divider;
        _figures["mains.leads"] = part.Leads;
        _figures["mains.imbalance"] = part.Imbalance;
        _figures["mains.amplifier"] = part.Amplifier;
        _figures["mains.loop"] = part.Loop;
        _figures["mains.total"] = part.Total;
        _figures["mains.rss"] = Math.Sqrt((part.Imbalance * part.Imbalance) + (part.Amplifier * part.Amplifier) + (part.Loop * part.Loop));
        _figures["mains.system_cmrr"] = Bounded(Decibels(part.Body / (part.Divider + part.Amplifier)));
        double residue = _design.Requirements.MainsResidue?.Volts ?? _design.SmallestSignal.Volts;
        _figures["mains.cmrr_needed"] = residue < part.Leads + part.Loop ? "unbounded" : Bounded(Decibels(part.Body / residue));
        double inBand = 0, everywhere = 0;
        _harmonicInput = new double[Harmonics + 1];
        for (int h = 1; h <= Harmonics; h++)
        {
            double hertz = h * f0, recorded = 0;
            _harmonicInput[h] = At(_mainsInput!, _mainsWithoutLeads!, hertz, Volts(h), Tesla(h)).Total;
            foreach (double moved in (ReadOnlySpan<double>)[hertz * (1 + _design.Mains.Deviation.Fraction), hertz * (1 - _design.Mains.Deviation.Fraction)])
            {
                double input = At(_mainsInput!, _mainsWithoutLeads!, moved, Volts(h), Tesla(h)).Total;
                recorded = Math.Max(recorded, input * ToConverter(moved) * Digital(Lands(moved)).Magnitude);
            }

            string id = $"mains.harmonic.{h}";
            _figures[id + ".input"] = _harmonicInput[h];
            _figures[id + ".converter"] = _harmonicInput[h] * ToConverter(hertz);
            _figures[id + ".recorded"] = recorded;
            _figures[id + ".lands_at"] = Lands(hertz);
            everywhere += recorded;
            _figures[id + ".in_band"] = MeetsBand(hertz) ? "true" : "false";
            inBand += MeetsBand(hertz) ? recorded : 0;
        }

        _figures["mains.recorded"] = inBand;
        _figures["mains.recorded_everywhere"] = everywhere;
    }

    /// <summary>From the input to the converter, over the gain at mid-band.</summary>
    private double ToConverter(double hertz) => _path.Whole(hertz).Magnitude * _path.Adc(hertz) / _gainMid;

    /// <summary>Whether some frequency within the mains' deviation lands in the closed band.</summary>
    private bool MeetsBand(double hertz)
    {
        double low = hertz * (1 - _design.Mains.Deviation.Fraction), high = hertz * (1 + _design.Mains.Deviation.Fraction), half = _fs / 2;
        double[] turns = [low, high, .. Enumerable.Range((int)Math.Ceiling(low / half), Math.Max(0, (int)Math.Floor(high / half) - (int)Math.Ceiling(low / half) + 1)).Select(k => k * half)];
        double least = turns.Min(Lands), greatest = turns.Max(Lands);
        return least <= _f2 + 1e-9 && _f1 - 1e-9 <= greatest;
    }

    private void Drive()
    {
        if (!_design.GroundIsDriven)
        {
            return;
        }

        PlainInput loop = new(_design, new PlainSigns(1, 1, 1), hold: true);
        (double crossing, double margin) = Margin(loop);
        _figures["drive.unity_gain_frequency"] = crossing;
        _figures["drive.phase_margin"] = margin;
        _figures["drive.gain_at_mains"] = Decibels(Loop(loop, _design.Mains.Frequency.Hertz).Magnitude);
        _figures["drive.swing_needed"] = MainsAtDrive() + (Math.Abs(_design.Electrodes.Offset.Volts) * DirectAt("D").Magnitude);
        double worst = margin, ground = _design.Electrodes.Ground!.DcResistance.Ohms;
        for (int i = 0; i < 9; i++)
        {
            for (int j = 0; j < 9; j++)
            {
                foreach (double? earth in (ReadOnlySpan<double?>)[null, 1e-6])
                {
                    PlainInput at = new(_design, new PlainSigns(1, 1, 1), bodyToEarth: 1e-10 * Math.Pow(10, i / 8.0), amplifierToEarth: earth, scale: 1e3 * Math.Pow(1e3, j / 8.0) / ground, hold: true);
                    worst = Math.Min(worst, Margin(at).Margin);
                }
            }
        }

        _figures["drive.worst_phase_margin"] = worst;
    }

    private double MainsAtDrive()
    {
        double sum = 0;
        for (int h = 1; h <= Harmonics; h++)
        {
            PlainSolution s = _mainsInput!.At(h * _design.Mains.Frequency.Hertz);
            sum += Math.Sqrt(2) * Volts(h) * s.Volts(s.OfSource(_mainsInput.Mains), "D").Magnitude;
        }

        return sum;
    }

    /// <summary>A node's volts at dc for a volt of electrode offset.</summary>
    private Complex DirectAt(string node)
    {
        PlainInput direct = new(_design, new PlainSigns(1, 1, 1), direct: true);
        PlainSolution s = direct.Circuit.At(0);
        return s.Volts(s.OfSource(direct.Signal), node);
    }

    private static Complex Mean(PlainInput held, double hertz)
    {
        PlainSolution s = held.At(hertz);
        Complex[] x = s.OfSource(held.Drive);
        return (s.Volts(x, "A2") + s.Volts(x, "R2")) / 2;
    }

    private static Complex Loop(PlainInput held, double hertz) => Mean(held, hertz) / held.InverseDrive(new Complex(0, 2 * Math.PI * hertz));

    /// <summary>The highest frequency at which the loop's gain is 1, and 180° + arg T there; arg K from its two factors, the network's from its principal value.</summary>
    private (double Crossing, double Margin) Margin(PlainInput held)
    {
        double high = Math.Log(1e8), low = high, below = 0, above = 0;
        while (Math.Log(1e-6) < low && (above = Math.Log(Loop(held, Math.Exp(low)).Magnitude)) < 0)
        {
            (high, below, low) = (low, above, low - Math.Log(2));
        }

        // The crossing by the false position, the end that stays weakened each time.
        for (int i = 0; i < 60 && 1e-12 < high - low; i++)
        {
            double middle = low + ((high - low) * above / (above - below)), value = Math.Log(Loop(held, Math.Exp(middle)).Magnitude);
            (low, above, high, below) = 0 < value ? (middle, value, high, below / 2) : (low, above / 2, middle, value);
            if (Math.Abs(value) < 1e-13)
            {
                break;
            }
        }

        low = Math.Exp(Math.Abs(above) < Math.Abs(below) ? low : high);
        double first = -Math.Atan(low * _design.GroundDrive.DcGain / _design.GroundDrive.UnityGainFrequency.Hertz);
        double second = _design.EffectiveAveragingBandwidth is { } f2 ? -Math.Atan(low / f2.Hertz) : 0;
        return (low, 180 + ((first + second + Mean(held, low).Phase) * 180 / Math.PI));
    }
}
