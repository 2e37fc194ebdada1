using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Numbers;

namespace FrontEnd.Reporting;

/// <summary>What the rounding of one fixed-point filter adds in the band, run in time on the design's own noise: for where its output is so small that
/// its rounding is no white noise.</summary>
/// <remarks>The samples are the noise at the converter, rounded; the filters before it run in whole numbers too. The filter as it rounds less the same filter
/// without rounding goes through those behind it; its power in the band is taken under Hann windows, half overlapped.</remarks>
internal static class RoundOffInTime
{
    /// <summary>Chosen: long enough for the slowest hangings of a high-pass at a few tenths of a hertz.</summary>
    private const int BlockLength = 1 << 14, Windows = 30;

    private const ulong Seed = 1;

    /// <summary>Rms in the band, in LSB of the sample; null where the band holds no bin.</summary>
    public static double? Of(Evaluation evaluation, int index)
    {
        Design design = evaluation.Design;
        QuantisedFilter[] filters = [.. evaluation.Digital.Designed.Select(sections => QuantisedFilter.Of(sections, design.Arithmetic.Format))];
        double rate = design.Converter.Rate.Hertz;
        int window = ColouredNoise.LengthOf(8 * rate / Math.Max(0.1, design.Band.Low.Hertz), 1 << 8, BlockLength);
        int count = window * (Windows + 1) / 2, settle = count / 4;
        int[] whole = Noise(evaluation, rate, count + settle);
        foreach (QuantisedFilter before in filters.Take(index))
        {
            new FixedRunner(before, design.Arithmetic.Form).Run(whole, whole);
        }

        double[] exact = Array.ConvertAll(whole, value => (double)value);
        new SectionRunner(filters[index].Sections, design.Arithmetic.Form).Run(exact, exact);
        new FixedRunner(filters[index], design.Arithmetic.Form).Run(whole, whole);
        for (int i = 0; i < exact.Length; i++)
        {
            exact[i] = whole[i] - exact[i];
        }

        foreach (QuantisedFilter behind in filters.Skip(index + 1))
        {
            new SectionRunner(behind.Sections, design.Arithmetic.Form).Run(exact, exact);
        }

        return InBand(exact.AsSpan(settle), window, rate, design.Band);
    }

    /// <summary>What the rounding of all filters together adds to what they put out, as a one-sided density [LSB²/Hz] at whole multiples of a step [Hz]; below 0 where a dead
    /// band swallows the signal.</summary>
    public static (double Step, double[] Density) Spectrum(Evaluation evaluation)
    {
        Design design = evaluation.Design;
        QuantisedFilter[] filters = [.. evaluation.Digital.Designed.Select(sections => QuantisedFilter.Of(sections, design.Arithmetic.Format))];
        double rate = design.Converter.Rate.Hertz;
        int window = ColouredNoise.LengthOf(8 * rate / Math.Max(0.1, design.Band.Low.Hertz), 1 << 8, BlockLength), count = window * (Windows + 1) / 2, settle = count / 4;
        int[] whole = Noise(evaluation, rate, count + settle);
        double[] exact = Array.ConvertAll(whole, value => (double)value);
        foreach (QuantisedFilter filter in filters)
        {
            new FixedRunner(filter, design.Arithmetic.Form).Run(whole, whole);
            new SectionRunner(filter.Sections, design.Arithmetic.Form).Run(exact, exact);
        }

        (double[] without, double scale) = Powers(exact.AsSpan(settle), window, rate);
        (double[] with, _) = Powers(Array.ConvertAll(whole, value => (double)value).AsSpan(settle), window, rate);
        return (rate / window, [.. with.Zip(without, (one, other) => scale * (one - other))]);
    }

    private static int[] Noise(Evaluation evaluation, double rate, int count)
    {
        (double[] own, double[] shared, _) = new PathDensities(evaluation.Path).AtSamples(BlockLength);
        var noise = new ColouredNoise(BlockLength, rate, [new NoiseColour(own, [shared])], ["reference"], Seed, "round-off");
        double[] volts = new double[count];
        noise.AddTo([volts], count);
        double lsb = evaluation.Design.Converter.LsbVolts;
        return Array.ConvertAll(volts, value => (int)Math.Clamp(Math.Round(value / lsb), int.MinValue / 2.0, int.MaxValue / 2.0));
    }

    /// <summary>Sums of the windows' powers, and what makes a density of them.</summary>
    private static (double[] Powers, double Scale) Powers(ReadOnlySpan<double> samples, int window, double rate)
    {
        double[] weights = [.. Enumerable.Range(0, window).Select(i => 0.5 - (0.5 * Math.Cos(2 * Math.PI * i / window)))];
        double[] part = new double[window], powers = new double[(window / 2) + 1];
        var transform = new RealTransform(window);
        int windows = 0;
        for (int first = 0; first + window <= samples.Length; first += window / 2, windows++)
        {
            for (int i = 0; i < window; i++)
            {
                part[i] = samples[first + i] * weights[i];
            }

            transform.AddPowers(part, powers);
        }

        return (powers, 2 / (rate * weights.Sum(weight => weight * weight) * windows));
    }

    private static double? InBand(ReadOnlySpan<double> samples, int window, double rate, Band band)
    {
        (double[] powers, double scale) = Powers(samples, window, rate);
        double step = rate / window, sum = 0;
        for (int k = 1; k < powers.Length - 1; k++)
        {
            double low = Math.Max(band.Low.Hertz, (k - 0.5) * step), high = Math.Min(band.High.Hertz, (k + 0.5) * step);
            sum += powers[k] * scale * Math.Max(0, high - low);
        }

        return 0 < sum ? Math.Sqrt(sum) : null;
    }
}
