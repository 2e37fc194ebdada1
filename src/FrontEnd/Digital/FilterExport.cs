using System.Buffers.Binary;

namespace FrontEnd.Digital;

/// <summary>Digital filters as a microcontroller holds them, with a test vector: what a coefficient file is written from.</summary>
internal abstract record FilterExport
{
    /// <summary>Least number of samples in the test vector: enough for every section to answer with all of its states.</summary>
    public const int TestLength = 64;

    /// <summary>Word, form and bits below the LSB.</summary>
    public required DigitalArithmetic Arithmetic { get; init; }

    /// <summary>Sampling rate.</summary>
    public required Frequency Rate { get; init; }

    /// <summary>Name of the filter that each section belongs to; one name for a filter without sections.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Headroom above full scale that rules out overflow at every section's output, from the first input.</summary>
    public required int HeadroomBits { get; init; }

    /// <summary>CRC-32 of the coefficients as little-endian words of the format: b0 b1 b2 a1 a2 of each section, the taps, or a comb's two
    /// lengths.</summary>
    /// <remarks>Polynomial 0x04C11DB7, reflected, start and final exclusive-or 0xFFFFFFFF: the one of IEEE 802.3.</remarks>
    public required uint Checksum { get; init; }

    /// <summary>Whole numbers for fixed point.</summary>
    public required IReadOnlyList<double> TestInput { get; init; }

    /// <summary>What the machine must answer from rest.</summary>
    public required IReadOnlyList<double> TestOutput { get; init; }

    /// <summary>Largest difference that is still right: 0 for fixed point; for floating point what rounding at other places (fused
    /// multiply-add, wider registers) can make.</summary>
    public required double Tolerance { get; init; }

    /// <summary>Half a unit in the last place of 1: the largest relative rounding of the word.</summary>
    private protected static double Unit(DigitalWord word) => Math.Pow(2, word == DigitalWord.Single ? -24 : -53);

    /// <summary>A step, then noise about it: reaches every state and every sign. Half of full scale, ±0.5 or so many bits.</summary>
    private protected static double[] Vector(int? bits, int length = TestLength)
    {
        double[] vector = new double[length];
        uint state = 1;
        for (int n = 0; n < length; n++)
        {
            // Multiplier and increment: W. H. Press et al., Numerical Recipes, section 7.1 (from memory). Any noise would do.
            state = unchecked((state * 1664525u) + 1013904223u);
            double noise = ((state >> 16) / 65536.0) - 0.5;
            double value = (n < 4 ? 0 : 0.25) + (0.5 * noise);
            vector[n] = bits is { } b ? Math.Round(value * Math.Pow(2, b - 1)) : Math.Round(value * 65536) / 65536;
        }

        return vector;
    }

    /// <summary>The bytes of floating-point numbers, little-endian, or of whole ones.</summary>
    private protected static byte[] Bytes(DigitalWord word, IEnumerable<double> numbers, IEnumerable<long> whole)
    {
        List<byte> bytes = [];
        Span<byte> eight = stackalloc byte[8];
        foreach (double c in numbers)
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

        foreach (long w in whole)
        {
            BinaryPrimitives.WriteInt64LittleEndian(eight, w);
            bytes.AddRange(eight[..(word == DigitalWord.Q15 ? 2 : 4)]);
        }

        return [.. bytes];
    }

    private protected static uint Crc(ReadOnlySpan<byte> bytes)
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
