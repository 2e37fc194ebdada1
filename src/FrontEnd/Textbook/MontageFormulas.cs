namespace FrontEnd.Textbook;

/// <summary>Noise of channels derived from others by the formulas of the textbooks. A row of weights says how a channel is made: active 1,
/// reference −1.</summary>
internal static class MontageFormulas
{
    /// <summary>Noise of a derived channel, √(Σc²·e²) [V rms], for electrodes whose noises are independent.</summary>
    /// <param name="weights">c: one weight for each electrode.</param>
    /// <param name="noises">e: noise of each electrode with its input.</param>
    /// <remarks>√2·e referential, e·√(1 − 1/N) against the mean of all N, e·√(1 + 1/N) against the mean of N others. Source:
    /// derived.</remarks>
    public static TextbookFigure Noise(IReadOnlyList<double> weights, IReadOnlyList<VoltageRms> noises)
    {
        double sum = Enumerable.Range(0, Require.InRange(weights.Count, noises.Count, noises.Count))
            .Sum(i => Math.Pow(weights[i] * noises[i].Volts, 2));
        return TextbookFigure.Of(
            Math.Sqrt(sum),
            "V",
            "√(Σc²·e²)",
            () => $"√({string.Join(" + ", weights.Select((weight, i) => (weight, i)).Where(pair => pair.weight != 0).Select(pair => $"({Put.In(pair.weight)} · {Put.In(noises[pair.i].Volts, "V")})²"))})",
            Sources.Derived);
    }

    /// <summary>Correlation of the noises of two derived channels, Σc·d·e²/√(Σc²e²·Σd²e²): what they share is mostly their
    /// reference.</summary>
    /// <param name="first">c: weights of the first channel.</param>
    /// <param name="second">d: weights of the second.</param>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure Correlation(IReadOnlyList<double> first, IReadOnlyList<double> second, IReadOnlyList<VoltageRms> noises)
    {
        double Sum(IReadOnlyList<double> a, IReadOnlyList<double> b) =>
            Enumerable.Range(0, noises.Count).Sum(i => a[i] * b[i] * Math.Pow(noises[i].Volts, 2));
        double shared = Sum(first, second);
        double sizes = Math.Sqrt(Sum(first, first) * Sum(second, second));
        return TextbookFigure.Of(
            shared / sizes,
            "1",
            "Σc·d·e²/√(Σc²e²·Σd²e²)",
            () => $"{Put.In(shared)} V²/{Put.In(sizes)} V²",
            Sources.Derived);
    }
}
