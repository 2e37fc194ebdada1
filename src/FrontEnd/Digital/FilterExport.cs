using System.Buffers.Binary;
using FrontEnd.Filters;
using FrontEnd.Quantities;

namespace FrontEnd.Digital;

/// <summary>A design's digital filters as a microcontroller holds them, with a test vector: what a coefficient file is written from.</summary>
public sealed record FilterExport
{
    /// <summary>Samples in the test vector: enough for every section to answer with all of its states.</summary>
    public const int TestLength = 64;

    public required DigitalArithmetic Arithmetic { get; init; }

    public required Frequency Rate { get; init; }

    /// <summary>Name of the filter that each section belongs to.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>All sections, one after the other.</summary>
    public required QuantisedFilter Filter { get; init; }

    /// <summary>Headroom above full scale that rules out overflow at every section's output, from the first input.</summary>
    public required int HeadroomBits { get; init; }

    /// <summary>CRC-32 of the coefficients b0 b1 b2 a1 a2 of each section, as little-endian words of the format.</summary>
    /// <remarks>Polynomial 0x04C11DB7, reflected, start and final exclusive-or 0xFFFFFFFF: the one of IEEE 802.3.</remarks>
    public required uint Checksum { get; init; }

    /// <summary>Whole numbers for fixed point.</summary>
    public required IReadOnlyList<double> TestInput { get; init; }

    /// <summary>What the machine must answer from rest.</summary>
    public required IReadOnlyList<double> TestOutput { get; init; }

    /// <summary>Largest difference that is still right: 0 for fixed point; for floating point what rounding at other places (fused multiply-add, wider registers) can make.</summary>
    public required double Tolerance { get; init; }

    /// <summary>The filters of a design; null where it has none or where a pole does not lie inside the unit circle.</summary>
    /// <param name="design">One without errors.</param>
    public static FilterExport? Of(Design design)
    {
        DigitalArithmetic arithmetic = design.Arithmetic;
        DigitalChain chain = new(design.Digital, design.Converter.Rate, arithmetic);
        QuantisedFilter filter = QuantisedFilter.Of(SecondOrderSections.Cascade(chain.Designed), arithmetic.Format);
        if (filter.Details.Count == 0 || filter.Standing != PoleStanding.InsideCircle)
        {
            return null;
        }

        int headroom = RoundOff.Overflow(filter.Sections).Max(norms => norms.SafeBits);
        int bits = (int)Math.Clamp(design.Converter.Bits, 8, Math.Max(8, 31 - arithmetic.StateFraction - headroom));
        double[] input = Vector(arithmetic.IsFixed ? bits : null);
        double[] output = Run(filter, arithmetic, input);
        return new FilterExport
        {
            Arithmetic = arithmetic,
            Rate = design.Converter.Rate,
            Names = [.. chain.Designed.SelectMany((sections, i) => Enumerable.Repeat(design.Digital[i].Name, sections.Count))],
            Filter = filter,
            HeadroomBits = headroom,
            Checksum = Crc(Bytes(filter, arithmetic.Word)),
            TestInput = input,
            TestOutput = output,
            Tolerance = arithmetic.IsFixed ? 0 : TestTolerance(filter.Sections, arithmetic.Word == DigitalWord.Single ? Math.Pow(2, -24) : Math.Pow(2, -53), input, output),
        };
    }

    /// <summary>A step, then noise about it: reaches every state and every sign. Half of full scale, ±0.5 or so many bits.</summary>
    private static double[] Vector(int? bits)
    {
        double[] vector = new double[TestLength];
        uint state = 1;
        for (int n = 0; n < TestLength; n++)
        {
            // Multiplier and increment: W. H. Press et al., Numerical Recipes, section 7.1 (from memory). Any noise would do.
            state = unchecked((state * 1664525u) + 1013904223u);
            double noise = ((state >> 16) / 65536.0) - 0.5;
            double value = (n < 4 ? 0 : 0.25) + (0.5 * noise);
            vector[n] = bits is { } b ? Math.Round(value * Math.Pow(2, b - 1)) : Math.Round(value * 65536) / 65536;
        }

        return vector;
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

    /// <summary>Eight times the rms of independent roundings of half a unit each in every section, carried through the poles, at the size of the largest value; and never below four units of it.</summary>
    private static double TestTolerance(SecondOrderSections sections, double unit, double[] input, double[] output)
    {
        double size = Math.Max(input.Max(Math.Abs), output.Max(Math.Abs)) * RoundOff.Overflow(sections).Max(norms => Math.Max(1, norms.LInfinity));
        double gain = 0;
        for (int i = 0; i < sections.Count; i++)
        {
            gain += RoundOff.NoiseGain(sections, i);
        }

        return 8 * unit * size * Math.Sqrt(Math.Max(1, gain));
    }

    private static byte[] Bytes(QuantisedFilter filter, DigitalWord word)
    {
        List<byte> bytes = [];
        Span<byte> eight = stackalloc byte[8];
        foreach (QuantisedSection section in filter.Details)
        {
            Biquad s = section.Rounded;
            foreach (double c in (double[])[s.B0, s.B1, s.B2, s.A1, s.A2])
            {
                if (word == DigitalWord.Double)
                {
                    BinaryPrimitives.WriteDoubleLittleEndian(eight, c);
                    bytes.AddRange(eight);
                }
                else if (word == DigitalWord.Single)
                {
                    BinaryPrimitives.WriteSingleLittleEndian(eight, (float)c);
                    bytes.AddRange(eight[..4]);
                }
            }

            foreach (long w in section.Words)
            {
                BinaryPrimitives.WriteInt64LittleEndian(eight, w);
                bytes.AddRange(eight[..(word == DigitalWord.Q15 ? 2 : 4)]);
            }
        }

        return [.. bytes];
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte one in bytes)
        {
            crc ^= one;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320u;
            }
        }

        return ~crc;
    }
}
