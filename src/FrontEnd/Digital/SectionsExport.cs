using FrontEnd.Filters;

namespace FrontEnd.Digital;

/// <summary>Second-order sections for a microcontroller.</summary>
internal sealed record SectionsExport : FilterExport
{
    // Sample bits where no converter says how many; they size the test vector of whole numbers alone.
    private const double CustomaryBits = 16;

    /// <summary>All sections, one after the other.</summary>
    public required QuantisedFilter Filter { get; init; }

    /// <summary>The digital filters of a chain; null where there are none or where a pole does not lie inside the unit circle.</summary>
    /// <param name="filters">The chain's filters, in their order.</param>
    /// <param name="rate">Sampling rate.</param>
    /// <param name="arithmetic">Word and form.</param>
    /// <param name="sampleBits">Bits of the samples.</param>
    public static SectionsExport? Of(
        IReadOnlyList<DigitalStage> filters, Frequency rate, DigitalArithmetic arithmetic, double sampleBits)
    {
        DigitalChain chain = new(filters, rate, arithmetic);
        string[] names = [.. chain.Designed.SelectMany((sections, i) => Enumerable.Repeat(filters[i].Name, sections.Count))];
        return Of(SecondOrderSections.Cascade(chain.Designed), names, rate, arithmetic, sampleBits);
    }

    /// <summary>Sections with a name each; null where there are none or where, rounded, a pole does not lie inside the unit
    /// circle.</summary>
    public static SectionsExport? Of(
        SecondOrderSections sections, IReadOnlyList<string> names, Frequency rate, DigitalArithmetic arithmetic,
        double sampleBits = CustomaryBits)
    {
        QuantisedFilter filter = QuantisedFilter.Of(sections, arithmetic.Format);
        if (filter.Details.Count == 0 || filter.Standing != PoleStanding.InsideCircle)
        {
            return null;
        }

        int headroom = RoundOff.Overflow(filter.Sections).Max(norms => norms.SafeBits);
        int bits = (int)Math.Clamp(sampleBits, 8, Math.Max(8, 31 - arithmetic.StateFraction - headroom));
        double[] input = Vector(arithmetic.IsFixed ? bits : null);
        double[] output = Run(filter, arithmetic, input);
        IEnumerable<double> coefficients = filter.Sections.Sections.SelectMany(s => new[] { s.B0, s.B1, s.B2, s.A1, s.A2 });
        return new SectionsExport
        {
            Arithmetic = arithmetic,
            Rate = rate,
            Names = names,
            Filter = filter,
            HeadroomBits = headroom,
            Checksum = Crc(Bytes(arithmetic.Word, coefficients, filter.Details.SelectMany(d => d.Words))),
            TestInput = input,
            TestOutput = output,
            Tolerance = arithmetic.IsFixed ? 0 : TestTolerance(filter.Sections, Unit(arithmetic.Word), input, output),
        };
    }

    private static double[] Run(QuantisedFilter filter, DigitalArithmetic arithmetic, double[] input)
    {
        switch (arithmetic.Word)
        {
            case DigitalWord.Double:
                double[] doubles = new double[input.Length];
                new SectionRunner(filter.Sections, arithmetic.Form).Run(input, doubles);
                return doubles;
            case DigitalWord.Single:
                float[] floats = new float[input.Length];
                new SingleRunner(filter, arithmetic.Form).Run([.. input.Select(x => (float)x)], floats);
                return [.. floats.Select(y => (double)y)];
            case DigitalWord.Q31 or DigitalWord.Q15:
                int[] whole = new int[input.Length];
                new FixedRunner(filter, arithmetic.Form).Run([.. input.Select(x => (int)x)], whole);
                return [.. whole.Select(y => (double)y)];
            default:
                throw new InvalidOperationException($"Word {arithmetic.Word} is not handled.");
        }
    }

    /// <summary>Eight times the rms of independent roundings of half a unit each in every section, carried through the poles, at the size
    /// of the largest value; and never below four units of it.</summary>
    private static double TestTolerance(SecondOrderSections sections, double unit, double[] input, double[] output)
    {
        double size = Math.Max(input.Max(Math.Abs), output.Max(Math.Abs)) * RoundOff.Overflow(sections).Max(
            norms => Math.Max(1, norms.LInfinity));
        double gain = RoundOff.NoiseGain(sections);
        return 8 * unit * size * Math.Sqrt(Math.Max(1, gain));
    }
}
