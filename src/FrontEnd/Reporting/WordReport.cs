using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What finite words do to a digital filter, as voltages at the electrodes of this design. Nothing is added where the word is
/// double: nothing is rounded that could be seen.</summary>
internal static class WordReport
{
    // A tenth of the noise adds half a per cent to it; what is above deserves a word (common practice, no source).
    private const double ShareOfNoise = 0.1;

    /// <param name="index">The filter's place in the chain.</param>
    /// <param name="ids">Its figures' ids.</param>
    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation, int index, DigitalIds ids)
    {
        DigitalArithmetic arithmetic = evaluation.Design.Arithmetic;
        if (arithmetic.Word == DigitalWord.Double)
        {
            return;
        }

        string name = evaluation.Digital.Stages[index].Name;
        WordFigures figures = WordFigures.Of(evaluation.Digital.Designed[index], arithmetic.Format, arithmetic.Form);
        list.Number(ids.PoleMovement, $"largest distance that a pole of {name} moves when its coefficients are rounded", "",
            PlainNumber.FromNumber(figures.PoleMovement), Equations.PoleMovement);
        list.Number(ids.DcGain, $"gain of {name} at 0 Hz, coefficients as rounded", "", Ratio.FromFraction(figures.DcGain ?? 0),
            Equations.DigitalDcGain);
        list.Number(ids.OverflowBits, $"headroom above full scale that rules out overflow inside {name}", "",
            BitCount.FromBits(figures.HeadroomBits), Equations.OverflowBits);
        double step = evaluation.Design.Converter.LsbVolts / evaluation.GainMid;
        double roundOff = step * (arithmetic.IsFixed
            ? FixedRoundOff(evaluation, index, arithmetic.StateFraction)
            : SingleRoundOff(evaluation, index));
        list.Number(
            ids.RoundOff, $"round-off of {name} in the band, at the electrodes, rms", "", VoltageRms.FromVolts(roundOff),
            arithmetic.IsFixed ? Equations.FixedRoundOff : Equations.SingleRoundOff,
            text: $"{QuantityText.FormatNumber(roundOff / step)} LSB");
        double noise = evaluation.Noise.Total;
        string key = $"digital[{index + 1}]";
        string remedy = figures.Remedy ?? WordMessages.LongerWords;
        if (ShareOfNoise * noise < roundOff)
        {
            findings.Add(WordMessages.RoundOffLarge(key, name, QuantityText.Format(roundOff, "V"), QuantityText.Format(noise, "V"),
                remedy));
        }

        if (figures.DeadBand is { } band)
        {
            list.Number(ids.DeadBand, $"largest level at which {name} can hang, at the electrodes, peak", "",
                Voltage.FromVolts(band * step), Equations.DeadBand, text: $"{QuantityText.FormatNumber(band)} LSB");
            double smallest = Math.Sqrt(2) * evaluation.Design.SmallestSignal.Volts;
            if (smallest < band * step)
            {
                findings.Add(WordMessages.DeadBandLarge(key, name, QuantityText.Format(band * step, "V"),
                    QuantityText.Format(smallest, "V"), WordMessages.MoreStateBits((int)Math.Ceiling(Math.Log2(band * step / smallest)))));
            }
        }

        if (arithmetic.Format is FixedFormat format)
        {
            int needed = (int)Math.Ceiling(evaluation.Design.Converter.Bits) + format.StateFraction + figures.HeadroomBits;
            if (format.StateBits < needed)
            {
                findings.Add(WordMessages.MayOverflow(key, name, needed, format.StateBits));
            }
        }
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
