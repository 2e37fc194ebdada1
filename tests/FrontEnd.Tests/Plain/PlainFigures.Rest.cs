using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Interference;

namespace FrontEnd.Tests.Plain;

internal sealed partial class PlainFigures
{
    private void Aliases()
    {
        for (int h = 1; h <= Harmonics; h++)
        {
            double hertz = h * _design.Mains.Frequency.Hertz;
            _figures[$"alias.h{h}.lands_at"] = Lands(hertz);
            _figures[$"alias.h{h}.attenuation"] = Attenuation(hertz);
            _figures[$"alias.h{h}.residue"] = Figure($"mains.harmonic.{h}.converter");
        }

        _figures["alias.low-edge.lands_at"] = Lands(_fs - _f1);
        _figures["alias.low-edge.attenuation"] = Attenuation(_fs - _f1);
        _figures["alias.high-edge.lands_at"] = Lands(_fs - _f2);
        _figures["alias.high-edge.attenuation"] = Attenuation(_fs - _f2);
        _figures["alias.fold_frequency"] = _fs - _f2;
        _figures["alias.fold_attenuation"] = Attenuation(_fs - _f2);
        if (IsDeltaSigma)
        {
            _figures["alias.modulator_fold_frequency"] = Clock - _f2;
            _figures["alias.modulator_fold_attenuation"] = Attenuation(Clock - _f2);
        }

        foreach (Interferer one in _design.Interferers)
        {
            Interferer(one);
        }
    }

    private object Attenuation(double hertz) => Bounded(-Decibels(ToConverter(hertz)));

    private void Interferer(Interferer one)
    {
        string id = "alias." + PlainStage.Slug(one.Name);
        double low = one.Low.Hertz, high = one.High.Hertz;
        if (low == high)
        {
            _figures[id + ".lands_at"] = Lands(low);
            _figures[id + ".residue"] = one.Amplitude.Volts * ToConverter(low) * Digital(Lands(low)).Magnitude;
            return;
        }

        // What is in the band, and what folds into it from above half the rate.
        double[] turns = [_f1, _f2, .. Enumerable.Range(1, 2 + (int)(high / _fs)).SelectMany(k => new[] { (k * _fs) - _f2, (k * _fs) - _f1, (k * _fs) + _f1, (k * _fs) + _f2 })];
        double[] edges = [low, .. turns.Where(f => low < f && f < high).Order(), high];
        double direct = 0, folded = 0;
        for (int i = 0; i + 1 < edges.Length; i++)
        {
            double middle = (edges[i] + edges[i + 1]) / 2;
            if (Lands(middle) < _f1 || _f2 < Lands(middle))
            {
                continue;
            }

            double fold = Math.Round(middle / _fs) * _fs;
            double part = PlainQuadrature.Over(f => [Math.Pow(ToConverter(f) * Digital(Lands(f)).Magnitude, 2)], edges[i], edges[i + 1], Breaks.SelectMany(b => new[] { fold - b, fold + b }), 1e-8)[0];
            direct += middle < _fs / 2 ? part : 0;
            folded += _fs / 2 < middle ? part : 0;
        }

        _figures[id + ".in_band"] = one.Amplitude.Volts * Math.Sqrt(direct / (high - low));
        _figures[id + ".residue"] = one.Amplitude.Volts * Math.Sqrt(folded / (high - low));
    }

    private static double Delay(Func<double, Complex> transfer, double hertz)
    {
        double h = hertz * 1e-3;
        Complex slope = (transfer(hertz - (2 * h)) - (8 * transfer(hertz - h)) + (8 * transfer(hertz + h)) - transfer(hertz + (2 * h))) / (12 * h);
        return -(slope / transfer(hertz)).Imaginary / (2 * Math.PI);
    }

    private double LatencyAt(double hertz) => Delay(_path.Whole, hertz) + (IsDeltaSigma ? _design.Converter.SincOrder * (_design.Converter.Oversampling - 1) / 2.0 / Clock : 0)
        + _digital.Sum(filter => filter.Delay(hertz)) + (_design.PacketTime?.Seconds ?? 0);

    private void Filters()
    {
        _figures["latency.total"] = LatencyAt(_mid);
        _figures["filter.path.group_delay"] = Delay(_path.Whole, _mid);
        foreach (Band band in _design.Bands)
        {
            _figures["latency.band." + PlainStage.Slug(band.Name)] = LatencyAt(Math.Sqrt(band.Low.Hertz * band.High.Hertz));
        }

        foreach (PlainDigital filter in _digital)
        {
            string id = "digital." + PlainStage.Slug(filter.Name);
            _figures[id + ".group_delay"] = filter.Delay(_mid);
            _figures[id + ".ring_time"] = filter.RingTime;
            if (filter.NotchCentre is { } centre)
            {
                double d = _design.Mains.Deviation.Fraction;
                _figures[id + ".notch_depth"] = d == 0 ? "unbounded" : Bounded(-Decibels(Math.Max(filter.At(centre * (1 + d)).Magnitude, filter.At(centre * (1 - d)).Magnitude)));
            }
        }
    }

    private void Safety()
    {
        double most = _design.Supply.Highest.Volts, tolerance = 1 - _design.Input.ResistorTolerance.Fraction, leads = 0;
        double worst = 0;
        foreach ((string name, Electrodes.ElectrodeBuffer? buffer, double count) in new[]
        {
            ("active-electrode", _design.Electrodes.ActiveBuffer, _design.Channels), ("reference-electrode", _design.Electrodes.ReferenceBuffer, 1.0),
        })
        {
            double ohms = (buffer?.SkinResistor.Ohms ?? _design.Input.SeriesResistor.Ohms) * tolerance;
            _figures["safety.fault_current." + name] = ohms == 0 ? "unbounded" : most / ohms;
            leads += count / ohms;
            worst = Math.Max(worst, most / ohms);
        }

        double ground = _design.GroundDrive.SeriesResistor.Ohms * (1 - _design.GroundDrive.ResistorTolerance.Fraction);
        bool earthed = 10e-9 <= _design.Mains.AmplifierToEarth.Farads;
        if (_design.Electrodes.Ground is not null)
        {
            _figures["safety.fault_current.ground-electrode"] = ground == 0 ? "unbounded" : most / ground;
            worst = Math.Max(worst, most / ground);
            if (_design.GroundIsDriven)
            {
                _figures["safety.driven_ground_current"] = ground == 0 ? "unbounded" : most / ground;
            }
        }

        _figures["safety.fault_current"] = double.IsInfinity(worst) ? "unbounded" : worst;
        double shared = earthed ? most * leads : _design.Electrodes.Ground is null ? double.NaN : most / ((1 / leads) + ground);
        if (!double.IsNaN(shared))
        {
            _figures["safety.shared_fault_current"] = double.IsInfinity(shared) ? "unbounded" : shared;
        }

        if (_design.ContactCheck is { } check)
        {
            _figures["safety.contact_check_current"] = check.Current.Amperes;
        }
    }

    private void SupplyAndPower()
    {
        Supply supply = _design.Supply;
        if (supply.Ripple is { } ripple)
        {
            _figures["supply.ripple_residue"] = ripple.Volts / Math.Pow(10, _design.Amplifier.SupplyRejection.Value / 20);
        }

        if (_design.Converter.ReferenceNoise is { } reference)
        {
            _figures["supply.reference_noise"] = reference.Volts * _directAtConverter / (_design.Converter.ReferenceVoltage?.Volts ?? _design.Converter.FullScale.Volts) / _gainMid;
        }

        if (supply.MidRailNoise is { } middle && _figures["mains.system_cmrr"] is double cmrr)
        {
            _figures["supply.mid_rail_noise"] = middle.Volts / Math.Pow(10, cmrr / 20);
        }

        double channel = _design.Amplifier.SupplyCurrent.Amperes + _path.Stages.Sum(stage => stage.OpAmps * (stage.OpAmp?.SupplyCurrent.Amperes ?? 0)) + (_design.Electrodes.ActiveBuffer?.OpAmp.SupplyCurrent.Amperes ?? 0);
        double current = supply.OtherCurrent.Amperes + _design.Converter.SupplyCurrent.Amperes + (_design.Channels * channel) + (_design.Electrodes.ReferenceBuffer?.OpAmp.SupplyCurrent.Amperes ?? 0)
            + (_design.GroundDrive.Kind == Amplifier.GroundKind.Driven ? _design.GroundDrive.SupplyCurrent.Amperes : 0);
        _figures["power.supply_current"] = current;
        if (supply.BatteryCapacity is { } capacity)
        {
            _figures["power.battery_life"] = capacity.Coulombs * supply.UsableShare.Fraction / current;
        }

        _figures["data.bit_rate"] = Math.Ceiling(_design.Converter.Bits) * _design.Channels * _fs * (1 + supply.DataOverhead.Fraction);
    }

    private void Contact()
    {
        if (_design.ContactCheck is not { } check)
        {
            return;
        }

        double hertz = check.Frequency.Hertz, lands = Lands(hertz);
        _figures["contact.beat"] = Enumerable.Range(1, Harmonics).Min(h => Math.Abs(Lands(h * _design.Mains.Frequency.Hertz) - lands));
        PlainSolution s = _path.Input.At(hertz);
        Complex[] x = s.OfCurrent("C", _design.Electrodes.ActiveBuffer is null ? "A2" : "Ap");
        double volts = check.Current.Amperes / Math.Sqrt(2) * (s.Volts(x, "A2") - s.Volts(x, "R2")).Magnitude;
        _figures["contact.adds_in_band"] = check.OnWhileRecording && _f1 <= lands && lands <= _f2 ? volts * _path.Behind(hertz).Magnitude * _path.Adc(hertz) * Digital(lands).Magnitude / _gainMid : 0.0;
    }

    private void Montage()
    {
        Montage montage = _design.Montage;
        int n = _design.Channels;
        double[][] rows = montage.Kind switch
        {
            MontageKind.Referential => [.. Enumerable.Range(0, n).Select(i => Row(n, (i, 1)))],
            MontageKind.Bipolar => [.. Enumerable.Range(0, n - 1).Select(i => Row(n, (i, 1), (i + 1, -1)))],
            MontageKind.Average => [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(k => (k == i ? 1.0 : 0) - (1.0 / n)).ToArray())],
            _ => [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(k => k == i ? 1.0 : -1.0 / (n - 1)).ToArray())],
        };
        string[] names = [.. montage.ChannelNames(n).Select(PlainStage.Slug)];
        double reference = ReferenceSide, own = (_total * _total) - reference;
        double Covariance(double[] c, double[] d) => (c.Zip(d, (x, y) => x * y).Sum() * own) + (c.Sum() * d.Sum() * reference);
        _figures["montage.correlation"] = reference / (_total * _total);
        Dictionary<(int, int), (Complex Phasor, double More)> mains = MainsOfAChannel();
        for (int i = 0; i < rows.Length; i++)
        {
            string id = "montage." + names[i];
            _figures[id + ".mains"] = MainsOf(rows[i], mains);
            _figures[id + ".noise"] = Math.Sqrt(Covariance(rows[i], rows[i]));
            _figures[id + ".shared_reference"] = Math.Abs(rows[i].Sum()) < 1e-12 ? 0 : Math.Abs(rows[i].Sum()) * Math.Sqrt(reference);
            if (i + 1 < rows.Length)
            {
                _figures[$"{id}.{names[i + 1]}.correlation"] = Covariance(rows[i], rows[i + 1]) / Math.Sqrt(Covariance(rows[i], rows[i]) * Covariance(rows[i + 1], rows[i + 1]));
            }
        }
    }

    private double ReferenceSide { get; set; }

    /// <summary>(v(A2) − v(R2))/H_front with the mains on, and amplifier + loop, for a channel's own side at + or − and the reference's at + or −.</summary>
    private Dictionary<(int, int), (Complex Phasor, double More)> MainsOfAChannel()
    {
        Dictionary<(int, int), (Complex, double)> all = [];
        double f0 = _design.Mains.Frequency.Hertz;
        foreach (int own in (ReadOnlySpan<int>)[1, -1])
        {
            foreach (int reference in (ReadOnlySpan<int>)[1, -1])
            {
                PlainSigns signs = new(own, own, own, -reference, -reference, -reference);
                PlainInput with = new(_design, signs), without = new(_design, signs, leads: false);
                MainsPart part = At(with, without, f0, Volts(1), Tesla(1));
                PlainSolution s = with.At(f0);
                all[(own, reference)] = (Volts(1) * s.Between(s.PreciselyOfSource(with.Mains), "A2", "R2") / _path.Front(f0, with), part.Amplifier + part.Loop);
            }
        }

        return all;
    }

    /// <summary>The largest sum of a row: all choices up to four channels; beyond, single channels flipped from two opposite beginnings while it grows.</summary>
    private static double MainsOf(double[] row, Dictionary<(int, int), (Complex Phasor, double More)> mains)
    {
        double[] weights = [.. row.Where(c => c != 0)];
        double most = 0;
        foreach (int reference in (ReadOnlySpan<int>)[1, -1])
        {
            double Sum(int[] signs)
            {
                Complex phasor = 0;
                double rest = 0;
                for (int i = 0; i < weights.Length; i++)
                {
                    phasor += weights[i] * mains[(signs[i], reference)].Phasor;
                    rest += Math.Abs(weights[i]) * mains[(signs[i], reference)].More;
                }

                return phasor.Magnitude + rest;
            }

            if (weights.Length <= 4)
            {
                most = Math.Max(most, Enumerable.Range(0, 1 << weights.Length).Max(choice => Sum([.. weights.Select((_, i) => ((choice >> i) & 1) == 0 ? 1 : -1)])));
                continue;
            }

            // All channels are alike, so the projections' signs are the weights'.
            foreach (int begin in (ReadOnlySpan<int>)[1, -1])
            {
                int[] signs = [.. weights.Select(c => begin * Math.Sign(c))];
                most = Math.Max(most, Climb(signs, Sum));
            }
        }

        return most;
    }

    private static double Climb(int[] signs, Func<int[], double> sum)
    {
        double best = sum(signs);
        for (bool grows = true; grows;)
        {
            grows = false;
            for (int i = 0; i < signs.Length; i++)
            {
                signs[i] = -signs[i];
                double now = sum(signs);
                (grows, best, signs[i]) = best < now ? (true, now, signs[i]) : (grows, best, -signs[i]);
            }
        }

        return best;
    }

    private static double[] Row(int n, params (int Index, double Weight)[] weights)
    {
        double[] row = new double[n];
        foreach ((int index, double weight) in weights)
        {
            row[index] = weight;
        }

        return row;
    }
}
