using FrontEnd.Numbers;

namespace FrontEnd.Spread;

/// <summary>How a part's value over its nominal value is drawn.</summary>
public enum SpreadLaw
{
    Uniform,
    Normal,
    LogUniform,
}

/// <summary>Where what is drawn stands: on the board, or outside it, where no part helps.</summary>
public enum SpreadPlace
{
    /// <summary>Resistors, capacitors, amplifiers, converter.</summary>
    Board,

    /// <summary>The electrodes' impedance, excess noise and offset.</summary>
    Electrodes,

    /// <summary>What the leads pick up.</summary>
    Leads,

    /// <summary>The room: mains voltage, field, couplings of body and box.</summary>
    Surroundings,
}

/// <summary>One thing that differs from build to build.</summary>
/// <param name="Key">The field of the design that gives its nominal value; two leads' parts have their lead in brackets.</param>
/// <param name="Law">How it is drawn.</param>
/// <param name="Low">Value over nominal value at the lower corner.</param>
/// <param name="High">The same at the upper corner.</param>
public sealed record SpreadPart(string Key, SpreadLaw Law, double Low, double High)
{
    /// <summary>The nominal device's: 1, or 0 where the nominal value is zero and the corners are counted in the larger end of the
    /// range.</summary>
    public double Nominal { get; init; } = 1;

    /// <summary>Where it stands.</summary>
    public SpreadPlace Place { get; init; }

    /// <summary>True where a card or the design gives the range.</summary>
    public bool IsRanged { get; init; }

    /// <summary>Value over nominal value of one build. A normal draw counts the range as ±3 standard deviations and is kept above a
    /// thousandth.</summary>
    internal double Draw(SeededRandom random) => Draw(ref random.Stream);

    /// <summary>The same from a stream that is a value.</summary>
    internal double Draw(ref RandomStream random) => Law switch
    {
        SpreadLaw.Uniform => Low + ((High - Low) * random.NextUnit()),
        SpreadLaw.Normal => Math.Max(1e-3, (0.5 * (Low + High)) + ((High - Low) / 6 * Normal(ref random))),
        SpreadLaw.LogUniform => Low * Math.Pow(High / Low, random.NextUnit()),
        _ => throw new ArgumentOutOfRangeException(nameof(random), Law, "Law is not handled."),
    };

    /// <summary>Normal with mean 0 and standard deviation 1 (Box and Muller 1958, from memory).</summary>
    private static double Normal(ref RandomStream random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextUnit())) * Math.Cos(2 * Math.PI * random.NextUnit());
}
