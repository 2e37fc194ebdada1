namespace FrontEnd.Numbers;

/// <summary>Normally distributed numbers of mean 0 and variance 1 from one of our own streams.</summary>
/// <remarks>x = √(−2·ln u)·cos(2πv) and the same with the sine, u in (0, 1]. Source: G. E. P. Box, M. E. Muller, A note on the generation
/// of random normal deviates, Ann. Math. Stat. 29 (1958) 610 (from memory). Exact, and always the same number of draws.</remarks>
internal struct NormalNumbers(RandomStream stream)
{
    private RandomStream _stream = stream;

    /// <summary>Two at a time, as they come.</summary>
    public (double First, double Second) Next()
    {
        double size = Math.Sqrt(-2 * Math.Log(1 - _stream.NextUnit()));
        (double sine, double cosine) = Math.SinCos(2 * Math.PI * _stream.NextUnit());
        return (size * cosine, size * sine);
    }

    /// <summary>Fills two rows of one length.</summary>
    public void Fill(Span<double> first, Span<double> second)
    {
        for (int i = 0; i < first.Length; i++)
        {
            (first[i], second[i]) = Next();
        }
    }
}
