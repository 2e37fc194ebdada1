using FrontEnd.Filters;

namespace FrontEnd.Digital;

/// <summary>A filter without feedback for a microcontroller.</summary>
internal sealed record TapsExport : FilterExport
{
    // More than one length of the filter, so that every tap meets noise on both of its sides.
    private const int BeyondLength = 16;
    private const int SampleBits = 16;

    /// <summary>As designed and as rounded.</summary>
    public required QuantisedTaps Taps { get; init; }

    /// <param name="arithmetic">Its word; taps have no form and no bits below the LSB.</param>
    public static TapsExport Of(FirFilter filter, string name, DigitalArithmetic arithmetic)
    {
        arithmetic = arithmetic with { StateFraction = 0 };
        var taps = QuantisedTaps.Of(filter, arithmetic.Format);
        double[] input = Vector(arithmetic.IsFixed ? SampleBits : null, Math.Max(TestLength, filter.Length + BeyondLength));
        return new TapsExport
        {
            Arithmetic = arithmetic,
            Rate = filter.Rate,
            Names = [name],
            Taps = taps,
            HeadroomBits = Math.Max(0, (int)Math.Ceiling(Math.Log2(Math.Max(taps.L1, 1e-300)) - 1e-12)),
            Checksum = Crc(Bytes(arithmetic.Word, taps.Rounded.Taps.ToArray(), taps.Words)),
            TestInput = input,
            TestOutput = Run(taps, arithmetic.Word, input),
            // Every product and sum is off by half a unit of the largest it can be; eight times their root sum of squares.
            Tolerance = arithmetic.IsFixed
                ? 0
                : 8 * Unit(arithmetic.Word) * Math.Max(1, taps.L1) * input.Max(Math.Abs) * Math.Sqrt(filter.Length),
        };
    }

    private static double[] Run(QuantisedTaps taps, DigitalWord word, double[] input)
    {
        FirRunner runner = new(taps);
        switch (word)
        {
            case DigitalWord.Double:
                double[] doubles = new double[input.Length];
                runner.Run(input, doubles);
                return doubles;
            case DigitalWord.Single:
                float[] floats = new float[input.Length];
                runner.Run([.. input.Select(x => (float)x)], floats);
                return [.. floats.Select(y => (double)y)];
            default:
                int[] whole = new int[input.Length];
                runner.Run([.. input.Select(x => (int)x)], whole);
                return [.. whole.Select(y => (double)y)];
        }
    }
}

/// <summary>A comb over mains periods with running sums in integers.</summary>
/// <remarks>In floating point running sums would drift; there a comb is exported by its taps.</remarks>
internal sealed record CombExport : FilterExport
{
    private const int BeyondLength = 16;
    private const int SampleBits = 16;

    /// <summary>The comb.</summary>
    public required PeriodComb Comb { get; init; }

    /// <summary>By running sums for whole numbers, by its taps for floating point.</summary>
    public static FilterExport Of(PeriodComb comb, string name, DigitalArithmetic arithmetic)
    {
        if (!arithmetic.IsFixed)
        {
            return TapsExport.Of(new FirFilter(comb.Taps(), comb.Rate), name, arithmetic);
        }

        double[] input = Vector(SampleBits, Math.Max(TestLength, comb.Length + BeyondLength));
        int[] output = new int[input.Length];
        new CombRunner(comb).Run([.. input.Select(x => (int)x)], output);
        return new CombExport
        {
            Arithmetic = arithmetic with { StateFraction = 0 },
            Rate = comb.Rate,
            Names = [name],
            Comb = comb,
            HeadroomBits = Math.Max(0, (int)Math.Ceiling(Math.Log2(comb.Taps().Sum(Math.Abs)) - 1e-12)),
            Checksum = Crc(Bytes(DigitalWord.Q31, [], [comb.Period, comb.Periods])),
            TestInput = input,
            TestOutput = [.. output.Select(y => (double)y)],
            Tolerance = 0,
        };
    }
}
