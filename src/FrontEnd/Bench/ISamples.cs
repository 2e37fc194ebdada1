namespace FrontEnd.Bench;

/// <summary>The samples of one channel in their order. They are read from the first to the last as often as they are wanted and need not
/// fit into memory.</summary>
internal interface ISamples
{
    long Count { get; }

    /// <summary>One reading: hands over every sample once, in pieces of any size. A piece lasts as long as the call that gets it.</summary>
    void Read(Action<ReadOnlySpan<double>> take);
}

/// <summary>Samples that are in memory.</summary>
internal sealed class HeldSamples(IReadOnlyList<double> samples) : ISamples
{
    private readonly double[] _samples = samples as double[] ?? [.. samples];

    public long Count => _samples.Length;

    public void Read(Action<ReadOnlySpan<double>> take) => take(_samples);
}

/// <summary>Other samples times a factor.</summary>
internal sealed class ScaledSamples(ISamples samples, double factor) : ISamples
{
    public long Count => samples.Count;

    public void Read(Action<ReadOnlySpan<double>> take)
    {
        var scaled = new double[8192];
        samples.Read(piece =>
        {
            for (int first = 0; first < piece.Length; first += scaled.Length)
            {
                ReadOnlySpan<double> part = piece[first..Math.Min(piece.Length, first + scaled.Length)];
                for (int i = 0; i < part.Length; i++)
                {
                    scaled[i] = part[i] * factor;
                }

                take(scaled.AsSpan(0, part.Length));
            }
        });
    }
}
