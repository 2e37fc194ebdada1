namespace FrontEnd.Spread;

/// <summary>How a part's value over its nominal value is drawn.</summary>
public enum SpreadLaw
{
    Uniform,
    Normal,
    LogUniform,
}

/// <summary>One thing that differs from build to build.</summary>
/// <param name="Key">The field of the design that gives its nominal value; two leads' parts have their lead in brackets.</param>
/// <param name="Law">How it is drawn.</param>
/// <param name="Low">Value over nominal value at the lower corner.</param>
/// <param name="High">The same at the upper corner.</param>
public sealed record SpreadPart(string Key, SpreadLaw Law, double Low, double High)
{
    /// <summary>Value over nominal value of one build. A normal draw counts the range as ±3 standard deviations and is kept above a thousandth.</summary>
    public double Draw(BuildRandom random) => Law switch
    {
        SpreadLaw.Uniform => Low + ((High - Low) * random.Uniform()),
        SpreadLaw.Normal => Math.Max(1e-3, (0.5 * (Low + High)) + ((High - Low) / 6 * random.Normal())),
        SpreadLaw.LogUniform => Low * Math.Pow(High / Low, random.Uniform()),
        _ => throw new ArgumentOutOfRangeException(nameof(random), Law, "Law is not handled."),
    };
}
