using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What finite words do to a digital filter, as voltages at the electrodes of this design. Nothing is added where the word is
/// double: nothing is rounded that could be seen.</summary>
internal sealed class WordReport
{
    // A tenth of the noise adds half a per cent to it; what is above deserves a word (common practice, no source).
    private const double ShareOfNoise = 0.1;

    private readonly Evaluation evaluation;
    private readonly DigitalArithmetic arithmetic;
    private readonly double step;
    private readonly Filter[] filters;

    private WordReport(Evaluation evaluation)
    {
        this.evaluation = evaluation;
        arithmetic = evaluation.Design.Arithmetic;
        step = evaluation.Design.Converter.LsbVolts / evaluation.GainMid;
        filters = [.. Enumerable.Range(0, evaluation.Digital.Stages.Count).Select(FilterOf)];
    }

    /// <summary>What the word does to every filter of the design; null where it is double.</summary>
    public static WordReport? Of(Evaluation evaluation) =>
        evaluation.Design.Arithmetic.Word == DigitalWord.Double ? null : new WordReport(evaluation);

    /// <summary>One filter as rounded.</summary>
    /// <param name="Figures">Of its own.</param>
    /// <param name="RoundOff">Rms in the band at the electrodes [V].</param>
    /// <param name="StateBound">Level above which it cannot hang, in steps of the states, with the filters behind it; null in floating point
    /// and where a pole is not inside the circle.</param>
    /// <param name="DeadLevel">The widest dead band of its sections about a constant, in LSB of the sample; null likewise.</param>
    private sealed record Filter(WordFigures Figures, double RoundOff, double? StateBound, double? DeadLevel);

    /// <param name="index">The filter's place in the chain.</param>
    /// <param name="ids">Its figures' ids.</param>
    public void AddTo(ResultList list, List<Finding> findings, int index, DigitalIds ids)
    {
        string name = evaluation.Digital.Stages[index].Name, key = $"digital[{index + 1}]";
        (WordFigures figures, double roundOff, double? bound, _) = filters[index];
        list.Number(ids.PoleMovement, $"largest pole movement of {name} when its coefficients are rounded", "",
            PlainNumber.FromNumber(figures.PoleMovement), Equations.PoleMovement);
        list.Number(ids.DcGain, $"gain of {name} at 0 Hz, coefficients as rounded", "", Ratio.FromFraction(figures.DcGain ?? 0),
            Equations.DigitalDcGain);
        list.Number(ids.OverflowBits, $"headroom above full scale that rules out overflow inside {name}", "",
            BitCount.FromBits(figures.HeadroomBits), Equations.OverflowBits);
        list.Number(
            ids.RoundOff, $"round-off of {name} in the band, at the electrodes, rms", "", VoltageRms.FromVolts(roundOff),
            arithmetic.IsFixed ? Equations.FixedRoundOff : Equations.SingleRoundOff,
            text: $"{QuantityText.FormatNumber(roundOff / step)} LSB");
        string remedy = arithmetic.Format is FixedFormat
            ? WordMessages.StateBitsThatFit(Wanted, Room)
            : figures.Remedy ?? WordMessages.LongerWords;
        double noise = evaluation.Noise.Total;
        if (filters[index].DeadLevel is { } dead && noise < dead * step && RoundOffInTime.Of(evaluation, index) is { } lsb)
        {
            list.Number(ids.SimulatedRoundOff, $"round-off of {name} in the band, simulated, at the electrodes, rms", "", VoltageRms.FromVolts(lsb * step),
                Equations.SimulatedRoundOff, text: $"{QuantityText.FormatNumber(lsb)} LSB; the filter's output stays below its dead band");
            findings.Add(WordMessages.RoundOffNotWhite(key, name, QuantityText.Format(noise, "V"), QuantityText.Format(dead * step, "V"),
                QuantityText.Format(roundOff, "V"), QuantityText.Format(lsb * step, "V"), remedy));
        }

        if (ShareOfNoise * noise < roundOff)
        {
            findings.Add(WordMessages.RoundOffLarge(key, name, QuantityText.Format(roundOff, "V"), QuantityText.Format(noise, "V"),
                remedy));
        }

        if (bound is { } steps)
        {
            double band = RoundOff.HangingAt(steps, arithmetic.StateFraction);
            list.Number(ids.DeadBand, $"bound on limit cycles of {name} in the recording, at the electrodes, peak", "",
                Voltage.FromVolts(band * step), Equations.DeadBand, text: $"{QuantityText.FormatNumber(band)} LSB");
            if (SmallestPeak < band * step)
            {
                findings.Add(WordMessages.DeadBandLarge(key, name, QuantityText.Format(band * step, "V"),
                    QuantityText.Format(SmallestPeak, "V"), remedy));
            }
        }

        if (arithmetic.Format is FixedFormat format && RoomOf(figures) < format.StateFraction)
        {
            findings.Add(WordMessages.MayOverflow(
                key, name, format.StateBits - RoomOf(figures) + format.StateFraction, format.StateBits, remedy));
        }
    }

    private double SmallestPeak => Math.Sqrt(2) * evaluation.Design.SmallestSignal.Volts;

    /// <summary>Bits below the LSB that leave no filter's states too short.</summary>
    private int Room => Math.Min(FixedFormat.MostStateFraction, filters.Min(one => RoomOf(one.Figures)));

    /// <summary>Least bits below the LSB for which no filter's round-off or dead band counts.</summary>
    private int Wanted => filters.Max(one =>
    {
        // Each bit halves the round-off; the dead band falls likewise, to whole numbers of LSB at the output.
        double tooMuch = one.RoundOff / (ShareOfNoise * evaluation.Noise.Total);
        int bits = Math.Max(0, arithmetic.StateFraction + (int)Math.Ceiling(Math.Log2(Math.Max(tooMuch, 1e-9))));
        while (one.StateBound is { } steps && SmallestPeak < RoundOff.HangingAt(steps, bits) * step && bits < 64)
        {
            bits++;
        }

        return bits;
    });

    private int RoomOf(WordFigures figures) =>
        ((FixedFormat)arithmetic.Format).StateBits - (int)Math.Ceiling(evaluation.Design.Converter.Bits) - figures.HeadroomBits;

    private Filter FilterOf(int index)
    {
        WordFigures figures = WordFigures.Of(evaluation.Digital.Designed[index], arithmetic.Format, arithmetic.Form);
        var behind = SecondOrderSections.Cascade(evaluation.Digital.Filters.Skip(index + 1));
        double roundOff = step * (arithmetic.IsFixed
            ? FixedRoundOff(evaluation, index, arithmetic.StateFraction)
            : SingleRoundOff(evaluation, index));
        bool isBounded = arithmetic.IsFixed && figures.IsStable && behind.IsStable;
        return new Filter(figures, roundOff, isBounded ? RoundOff.StateBound(figures.Filter, behind) : null,
            isBounded ? evaluation.Digital.Filters[index].Sections.Select(section => RoundOff.DeadBandOf(section, arithmetic.StateFraction).Constant).DefaultIfEmpty(0).Max() : null);
    }

    /// <summary>Rms in the band, in LSB of the sample, of the rounding in this filter's sections, through their own poles and everything
    /// behind; one-sided density of one rounding 2^(−2F)/6/fs.</summary>
    private static double FixedRoundOff(Evaluation evaluation, int index, int fraction)
    {
        double fs = evaluation.Design.Converter.Rate.Hertz;
        double density = Math.Pow(2, -2 * fraction) / 6 / fs;
        SecondOrderSections own = evaluation.Digital.Filters[index];
        Biquad[] behind = [.. evaluation.Digital.Filters.Skip(index + 1).SelectMany(filter => filter.Sections)];
        double sum = 0;
        for (int i = 0; i < own.Count; i++)
        {
            var path = new SecondOrderSections([new Biquad(1, 0, 0, own[i].A1, own[i].A2), .. own.Sections.Skip(i + 1), .. behind]);
            sum += density * InBand(path, evaluation.Design.Band, fs);
        }

        return Math.Sqrt(sum);
    }

    /// <summary>In LSB of the sample: the sums carry the dc at the converter, as far as the filters before let it through, and the largest
    /// signal.</summary>
    private static double SingleRoundOff(Evaluation evaluation, int index)
    {
        double offset = Math.Abs(evaluation.Levels.DcAtConverter) / evaluation.Design.Converter.LsbVolts;
        for (int before = 0; before < index; before++)
        {
            offset *= Math.Abs(evaluation.Digital.Filters[before].DcGain);
        }

        double signal = evaluation.Design.LargestSignal.Volts * evaluation.GainMid / evaluation.Design.Converter.LsbVolts;
        return Math.Sqrt(RoundOff.FloatVariance(evaluation.Digital.Filters[index], evaluation.Design.Arithmetic.Form, offset + signal,
            evaluation.Design.Arithmetic.Format));
    }

    /// <summary>∫|H|² df over the band, by panels of a ratio of 1.1 at most, one pole width each about every pole.</summary>
    private static double InBand(SecondOrderSections sections, Band band, double fs)
    {
        double low = band.Low.Hertz, high = band.High.Hertz;
        SortedSet<double> breaks = [low, high];
        for (double f = low; f < high; f *= 1.1)
        {
            breaks.Add(f);
        }

        foreach (System.Numerics.Complex pole in sections.Poles)
        {
            double f = Math.Abs(pole.Phase) * fs / (2 * Math.PI),
                width = Math.Max(1e-6 * fs, -Math.Log(System.Numerics.Complex.Abs(pole)) * fs / (2 * Math.PI));
            for (int i = -20; i <= 20; i++)
            {
                double at = f + (i * width);
                if (low < at && at < high)
                {
                    breaks.Add(at);
                }
            }
        }

        double[] points = [.. breaks];
        double sum = 0;
        for (int i = 1; i < points.Length; i++)
        {
            sum += Panel(sections, points[i - 1], points[i], fs);
        }

        return sum;
    }

    /// <summary>Gauss–Legendre with four points. Source: M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, table 25.4 (from
    /// memory).</summary>
    private static double Panel(SecondOrderSections sections, double low, double high, double fs)
    {
        double middle = (low + high) / 2, half = (high - low) / 2;
        const double Inner = 0.339981043584856, Outer = 0.861136311594053, InnerWeight = 0.652145154862546, OuterWeight = 0.347854845137454;
        return half * ((InnerWeight * (sections.PowerResponse(middle - (Inner * half), fs)
            + sections.PowerResponse(middle + (Inner * half), fs)))
            + (OuterWeight * (sections.PowerResponse(middle - (Outer * half), fs) + sections.PowerResponse(middle + (Outer * half), fs))));
    }
}
