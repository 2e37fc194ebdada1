namespace FrontEnd.Bench;

/// <summary>What a recording of noise shows besides its size, and what may be behind it.</summary>
internal sealed class NoiseFindings
{
    /// <summary>Share of the predicted power in the band that a line may hold before the recording fails, what raises the rms by the tolerance, 1.2² − 1; and from
    /// which on it is told.</summary>
    private const double LinePower = 0.44, ToldLinePower = 0.02;

    /// <summary>Share of the power from which on a line makes the tails of the whole short.</summary>
    private const double TailLinePower = 0.05;

    /// <summary>A kind of fault is named where it explains at least so much of what the likeliest explains, or is no more than so much less likely: twice the logarithm of
    /// the odds (chosen).</summary>
    private const double LeastExplained = 0.5, AlikeOdds = 6;

    /// <summary>What a fault must explain of a recording that is inside its tolerances for it to be told: odds of e¹⁰, some 20,000 to 1.</summary>
    private const double LeastOdds = 20;

    /// <summary>A line's kind is named where it is at least so probable.</summary>
    private const double LeastProbable = 0.02;

    private const int MostKinds = 4;

    /// <summary>How far below what its own converter makes a recording tells that nothing moves [dB].</summary>
    private const double DeadDecibels = 6;

    private readonly TakenRecording _taken;
    private readonly RecordingLines _lines;
    private readonly double _ratio, _width, _expectedPower, _broadRatio;
    private readonly FoundLine[] _loud, _told;
    private readonly long _limited;
    private readonly (double Share, double At, double Expected)? _tail;
    private readonly SpectrumShape? _shape;
    private readonly bool _isBroadInside, _isNoise;
    private readonly Suspect[] _ofNoise;

    /// <param name="taken">The recording.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="ratio">Its rms in the band over the predicted.</param>
    /// <param name="expectedPower">The predicted [V²].</param>
    /// <param name="least">What the ratio is allowed to be.</param>
    /// <param name="greatest">At most.</param>
    public NoiseFindings(TakenRecording taken, RecordingLines lines, double ratio, double expectedPower, double least, double greatest)
    {
        (_taken, _lines, _ratio, _expectedPower, _width) = (taken, lines, ratio, expectedPower, (greatest - least) / 2);
        double low = taken.Band.Low.Hertz, high = taken.Band.High.Hertz;
        double inBand = lines.Lines.Where(line => low <= line.Frequency.Hertz && line.Frequency.Hertz <= high).Sum(line => line.Rms.Volts * line.Rms.Volts);
        _broadRatio = Math.Sqrt(Math.Max(0, (ratio * ratio) - (inBand / expectedPower)));
        _isBroadInside = least <= _broadRatio && _broadRatio <= greatest;
        _loud = [.. lines.Lines.Where(line => LinePower * expectedPower < line.Rms.Volts * line.Rms.Volts)];
        _told = [.. lines.Lines.Where(line => ToldLinePower * expectedPower < line.Rms.Volts * line.Rms.Volts)];
        _isNoise = lines.Lines.Sum(line => line.Rms.Volts * line.Rms.Volts) < TailLinePower * taken.Sums.Power;
        _limited = _isNoise ? RecordingChecks.AtLimits(taken.Sums, taken.Measured) : RecordingChecks.AtLimitsOfAny(taken.Sums);
        _tail = _limited == 0 && _isNoise ? RecordingChecks.ShortTail(taken.Sums, taken.Order, taken.Measured, taken.Test.Design.Converter.LsbVolts / taken.Test.Gain) : null;
        _shape = SpectrumShape.Worst(taken.Measured, taken.Density, taken.Predicted, taken.Band, lines.Reach);
        _ofNoise = OfNoise(_isBroadInside && _shape is null);
    }

    /// <summary>True where nothing but the size may be wrong.</summary>
    public bool Agrees => _loud.Length == 0 && _limited == 0 && _tail is null && _shape is null;

    /// <summary>What is said behind the figures.</summary>
    /// <param name="inside">True where the size is inside its range.</param>
    public string But(bool inside) => (_limited != 0 ? $"; but {_limited} samples are at a limit that {(_isNoise ? "noise" : "a line")} would exceed" : "")
        + (_tail is { } tail ? $"; but {TailWords(tail)}, as if something before the digital filters were cut off" : "")
        + (inside && _loud.Length != 0 ? $"; but there is a line of {QuantityText.Format(_loud[0].Rms)} at {QuantityText.Format(_loud[0].Frequency)}"
            : inside && _told.Length != 0 ? $"; inside, yet there is a line of {QuantityText.Format(_told[0].Rms)} at {QuantityText.Format(_told[0].Frequency)}" : "")
        + (inside && _shape is not null ? $"; but the shape of the spectrum is not the predicted one, {_shape.Words}"
            : inside && _ofNoise.Length != 0 ? "; inside, yet the spectrum differs from the predicted one by more than chance and part tolerances explain" : "");

    private static string TailWords((double Share, double At, double Expected) tail) =>
        $"a sample in {QuantityText.FormatNumber(1 / tail.Share)} goes {QuantityText.FormatNumber(tail.At)} standard deviations from the middle, where noise goes {QuantityText.FormatNumber(tail.Expected)}";

    /// <summary>What may be wrong, most likely first; nothing of a recording that agrees in every way. One that is inside its tolerances passes whatever is told of it.</summary>
    /// <param name="inside">True where the size is inside its range.</param>
    public IReadOnlyList<Suspect> Suspects(bool inside)
    {
        List<Suspect> suspects = [.. Clipped()];
        suspects.AddRange(inside ? [] : BenchSuspects.OfUnit(_ratio, _width));
        Suspect[] ofLines = [.. OfLines()], ofNoise = _ofNoise;
        double inLines = _told.Sum(line => line.Rms.Volts * line.Rms.Volts) / _expectedPower, broad = Math.Abs((_broadRatio * _broadRatio) - 1);
        suspects.AddRange(broad < inLines ? [.. ofLines, .. ofNoise] : [.. ofNoise, .. ofLines]);
        if (suspects.Count == 0 && !(inside && Agrees))
        {
            suspects.Add(new Suspect(SuspectKind.LouderPart, "the excess is small and has no shape: repeat with a longer record", Thirds()));
        }

        return [.. suspects.DistinctBy(suspect => suspect.Kind)];
    }

    private IEnumerable<Suspect> Clipped()
    {
        const string Text = "the samples stay at their extremes: an input beyond its range, or numbers clipped at a limit";
        if (_limited != 0)
        {
            yield return new Suspect(SuspectKind.Clipping, Text, $"{_limited} of {_taken.Sums.Count} samples are the largest or the smallest");
        }

        if (_tail is { } tail)
        {
            yield return new Suspect(SuspectKind.Clipping, Text, TailWords(tail));
        }
    }

    /// <summary>Kinds of lines by the power that each may explain.</summary>
    private IEnumerable<Suspect> OfLines()
    {
        double all = _told.Sum(line => line.Rms.Volts * line.Rms.Volts);
        return Kinds.Select(kind => (Kind: kind, Power: _told.Sum(line => Share(line, kind) * line.Rms.Volts * line.Rms.Volts)))
            .Where(one => LeastProbable * all < one.Power).OrderByDescending(one => one.Power).Select(one => OfLine(one.Kind));
    }

    private static readonly SuspectKind[] Kinds = [SuspectKind.MainsPickup, SuspectKind.Aliasing, SuspectKind.OtherLine];

    private double Share(FoundLine line, SuspectKind kind) => _lines.Odds[line] is var odds && kind == SuspectKind.MainsPickup ? odds.Pickup
        : kind == SuspectKind.Aliasing ? odds.Folded : odds.Other;

    /// <summary>A kind of line, with the one that shows it best.</summary>
    private Suspect OfLine(SuspectKind kind)
    {
        FoundLine line = _told.MaxBy(one => Share(one, kind) * one.Rms.Volts * one.Rms.Volts)!;
        string evidence = $"{QuantityText.Format(line.Rms)} at {QuantityText.Format(line.Frequency)}";
        return kind switch
        {
            SuspectKind.Aliasing => new Suspect(kind,
                (line is { Harmonic: { } h, Mains: { } f0, Folded: true }
                    ? $"harmonic {h} of {QuantityText.FormatPart(f0)} folds back from {QuantityText.FormatPart(Frequency.FromHertz(h * f0.Hertz))}"
                    : "a harmonic of the mains that folds back")
                + ": a section of the anti-alias filter is missing, or the rate is unlucky", evidence),
            SuspectKind.MainsPickup => new Suspect(kind,
                (line is { Harmonic: { } h, Mains: { } f0, Folded: false }
                    ? $"mains pick-up, {(h == 1 ? "the fundamental" : $"harmonic {h}")} of {QuantityText.FormatPart(f0)}" : "mains pick-up")
                + ": ground lead off or long, box open, cable untwisted, or a supply wired to the mains", evidence),
            _ => new Suspect(kind,
                $"a line that no mains harmonic up to h = {BenchComparison.HighestHarmonic} explains{(line.Harmonic is null ? "" : " better than chance")}: radio bursts or supply ripple through mid-rail or converter reference, a clock that beats with the sampling rate",
                evidence),
        };
    }

    /// <summary>What changes the noise, by how well the design with it explains the spectrum.</summary>
    /// <param name="isInside">True where nothing is outside its tolerance: then a fault is named only where chance and the board's parts do not explain the spectrum.</param>
    private Suspect[] OfNoise(bool isInside)
    {
        SpectrumRows rows = SpectrumRows.Of(_taken.Measured, _taken.Density, _lines.Reach);
        if (rows.Count == 0 || (isInside && FaultFamily.IsAlike(rows)))
        {
            return [];
        }

        double[] floor = [.. rows.Hertz.Select((hertz, i) => Math.Clamp((_taken.FileRounding + _taken.Predicted.RoundOff(hertz)) / rows.Bins[i].Average(bin => _taken.Density[bin - 1]), 0, 1))];
        FaultFamily[] families =
        [
            .. new FaultFamilies(_taken.Evaluation, _taken.Test.Gain, rows, floor).All(),
            .. new DigitalFaults(_taken.Predicted, _taken.Evaluation, _taken.IsFiltered, rows, _taken.Measured.Step, _taken.Density, _taken.FileRounding).All(),
        ];
        double healthy = FaultFamily.Misfit(rows, new double[rows.Count]);
        (FaultFamily Family, FaultFit Fit, double Misfit)[] best = [.. families.Select(family => (Family: family, Fit: family.Fit(rows))).GroupBy(one => one.Family.Kind)
            .Select(kind => (Best: kind.MinBy(one => one.Fit.Misfit), Misfit: Beforehand(kind.Key) + Together([.. kind.Select(one => one.Fit.Misfit)])))
            .Select(one => (one.Best.Family, one.Best.Fit, one.Misfit)).OrderBy(one => one.Misfit)];
        if (isInside && healthy - best[0].Misfit < LeastOdds)
        {
            return [];
        }

        Suspect[] named = [.. best.Where(one => one.Misfit - best[0].Misfit <= Math.Max(AlikeOdds, (1 - LeastExplained) * (healthy - best[0].Misfit))).Take(MostKinds)
            .Select(one => new Suspect(one.Family.Kind, Text(one.Family.Kind), $"{one.Family.Told(one.Fit.Size)}; {Thirds()}"))];
        return IsSilent(rows, families) ? [Silent(), .. named] : named;
    }

    /// <summary>−2·ln of the mean likelihood of a kind's families, which are equally likely beforehand.</summary>
    private static double Together(double[] misfits)
    {
        double least = misfits.Min();
        return least - (2 * Math.Log(misfits.Average(one => Math.Exp((least - one) / 2))));
    }

    /// <summary>−2·ln of what is thought of a kind beforehand: the board is looked at before the fixture, and before leaks (chosen).</summary>
    private static double Beforehand(SuspectKind kind) => kind is SuspectKind.Fixture or SuspectKind.InputLoad ? 3 : 0;

    /// <summary>True where there is less than the converter makes by itself.</summary>
    private static bool IsSilent(SpectrumRows rows, FaultFamily[] families) =>
        families.OfType<ListedFaults>().LastOrDefault(family => family.Kind == SuspectKind.DeadChannel) is { } dead
            && rows.Difference.Zip(dead.Changes[0], (measured, own) => measured - own).Average() < -DeadDecibels;

    private Suspect Silent() => new(SuspectKind.DeadChannel,
        "the channel is dead: the noise is less than the converter's own; check power, the converter's clock and the channel's wire", Thirds());

    private string Text(SuspectKind kind) => kind switch
    {
        SuspectKind.TooQuiet =>
            "less noise than the parts must make: the gain is lower than stated, a filter is on that the design does not have, or the fixture is not in place",
        SuspectKind.LouderPart =>
            $"higher throughout, as a part or a gain makes it: the part that makes most of the noise is noisier than its card ({_taken.Predicted.LargestSource}), or gain or converter reference differ from the design; the calibrated sine shows which",
        SuspectKind.LowFrequency => "higher at low frequencies: flicker of amplifier or mid-rail, draughts, a fixture with a bad joint",
        SuspectKind.HighFrequency => "higher at high frequencies: converter noise, what folds back from above, radio and its supply ripple",
        SuspectKind.Aliasing =>
            "an anti-alias filter that is not the designed one, and what folds back with it: a section left out, a capacitor of the wrong value; the alias tests show which",
        SuspectKind.DigitalFilter => _taken.OtherFilters(_lines.Reach, _shape).Select(one => one.Text).FirstOrDefault()
            ?? "a filter with a corner or centre other than the design's, analogue or digital, or a rate other than the one it was designed for",
        SuspectKind.DeadChannel => "the channel is dead: this is what the board makes after a break; check the channel's power and wire, and the lead's contact",
        SuspectKind.InputLoad => "a load on the inputs: leakage at a protection part, a bias resistor below its value, flux or moisture, more capacitance than designed; the impedance tests show which",
        SuspectKind.Fixture => "the fixture: a part in the leads other than this test asks for, a bad joint, a lead that is not plugged in",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A recording of noise cannot show this."),
    };

    /// <summary>Measured over predicted power in three parts of the band of equal ratio, by medians of the bins so that lines do not count.</summary>
    private string Thirds()
    {
        double low = _taken.Band.Low.Hertz, high = Math.Min(_taken.Band.High.Hertz, _taken.Test.Design.Converter.Rate.Hertz / 2), step = Math.Pow(high / low, 1.0 / 3);
        List<string> thirds = [];
        for (int third = 0; third < 3; third++)
        {
            double from = low * Math.Pow(step, third), to = from * step;
            double[] ratios = [.. Enumerable.Range(2, _taken.Density.Length - 2).Where(k => from <= k * _taken.Measured.Step && k * _taken.Measured.Step <= to)
                .Select(k => _taken.Measured.Density[k] / _taken.Density[k - 1]).Order()];
            thirds.Add($"{SpectrumShape.Signed(ratios.Length == 0 ? 0 : 10 * Math.Log10(Math.Max(1e-30, ratios[ratios.Length / 2])))} dB");
        }

        return $"low, middle and high third of the band: {string.Join(", ", thirds)}";
    }
}
