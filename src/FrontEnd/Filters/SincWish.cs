namespace FrontEnd.Filters;

/// <summary>A sinc decimator and the FIR that makes its band flat, as someone asks for them.</summary>
public sealed record SincWish
{
    /// <summary>k of sinc^k, 1…10.</summary>
    public int Order { get; init; } = 3;

    /// <summary>M, modulator samples for each output sample, 2…65536.</summary>
    public int Ratio { get; init; } = 256;

    /// <summary>Output rate.</summary>
    public Frequency Rate { get; init; }

    /// <summary>Upper edge of the band that is made flat.</summary>
    public Frequency Edge { get; init; } = Frequency.FromHertz(40);

    /// <summary>Taps of the compensation, odd, 3…63.</summary>
    public int Taps { get; init; } = 11;

    /// <summary>The decimator, its compensation and their figures; findings with an error where there are none.</summary>
    public SincAnswer Design()
    {
        List<Finding> findings = [];
        Range("order", Order, 1, 10);
        Range("ratio", Ratio, 2, 65_536);
        Range("taps", Taps, 3, 63);
        if (Taps % 2 == 0)
        {
            findings.Add(FilterMessages.EvenTaps(Taps, anyShape: true));
        }

        if (Rate.Hertz <= 0)
        {
            findings.Add(FilterMessages.RateNotAboveZero("", Rate));
        }
        else if (!(0 < Edge.Hertz && Edge.Hertz < Rate.Hertz / 2))
        {
            findings.Add(FilterMessages.EdgeOutOfBand(Edge, Rate));
        }

        if (findings.Count != 0)
        {
            return new SincAnswer { Wish = this, Findings = findings };
        }

        SincDecimator sinc = new(Order, Ratio, Rate);
        return new SincAnswer { Wish = this, Sinc = sinc, Compensation = sinc.Compensation(Taps, Edge) };

        void Range(string what, int value, int least, int most)
        {
            if (value < least || most < value)
            {
                findings.Add(FilterMessages.NotInRange(what, value, least, most));
            }
        }
    }
}

/// <summary>What came of a wish for a sinc decimator.</summary>
public sealed record SincAnswer
{
    /// <summary>What was asked for.</summary>
    public required SincWish Wish { get; init; }

    /// <summary>The decimator; null where there is none.</summary>
    public SincDecimator? Sinc { get; init; }

    /// <summary>FIR at the output rate; null where there is none.</summary>
    public FirFilter? Compensation { get; init; }

    /// <summary>Errors where there is no decimator; else empty.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The figures of an answer that has a decimator.</summary>
    public SincFigures Figures => SincFigures.Of(this);
}

/// <summary>A sinc decimator before and after its compensation.</summary>
/// <param name="Points">Loss at shares of the band edge and at half the rate [dB]: the decimator's, and with the compensation.</param>
/// <param name="FoldLoss">Least loss of what the decimator folds into the band, behind the taps, which lift it as they lift the band
/// [dB].</param>
/// <param name="DecimatorFoldLoss">The decimator's own, at the output rate less the edge [dB].</param>
/// <param name="LargestDeviation">Largest distance from gain 1 in the band with the compensation [dB].</param>
/// <param name="RiseAtHalfRate">Gain of the compensation at half the rate [dB]: what it lifts there.</param>
/// <param name="NoiseGain">√Σh² of the compensation: growth of white noise.</param>
/// <param name="GrowthBits">Bits by which the decimator's registers are longer than its input, k·log2 M rounded up.</param>
public sealed record SincFigures(
    IReadOnlyList<SincPoint> Points, double FoldLoss, double DecimatorFoldLoss, double LargestDeviation, double RiseAtHalfRate, double NoiseGain,
    int GrowthBits)
{
    // The sinc's tops fall with the zone: the first few decide.
    private const int MostZones = 4;
    private const int ZonePoints = 400;

    internal static SincFigures Of(SincAnswer answer)
    {
        SincDecimator sinc = answer.Sinc ?? throw new ArgumentException("The answer has no decimator.", nameof(answer));
        FirFilter flat = answer.Compensation!;
        double edge = answer.Wish.Edge.Hertz, half = answer.Wish.Rate.Hertz / 2;
        double Together(double f) => 20 * Math.Log10(Math.Max(sinc.Gain(f) * Math.Sqrt(flat.PowerResponse(f)), 1e-300));
        double worst = ResponseExtremes.Greatest(f => Math.Abs(Together(f)), ResponseExtremes.Even(0, edge, 1000)).Value;
        double[] at = [.. new[] { 0, 0.25, 0.5, 0.75, 1 }.Select(share => share * edge), half];

        // From the input's other zones: k·fs − edge … k·fs + edge up to half the modulator's clock; the taps lift each as they lift the band.
        double folds = Enumerable.Range(1, Math.Min(sinc.Ratio / 2, MostZones)).Max(k => ResponseExtremes.Greatest(
            Together, ResponseExtremes.Even((2 * half * k) - edge, Math.Min((2 * half * k) + edge, half * sinc.Ratio), ZonePoints)).Value);
        return new SincFigures(
            [.. at.Select(f => new SincPoint(Frequency.FromHertz(f), sinc.Droop(Frequency.FromHertz(f)), -Together(f)))],
            -folds, sinc.Droop(Frequency.FromHertz((2 * half) - edge)), worst, 10 * Math.Log10(flat.PowerResponse(half)),
            Math.Sqrt(flat.Taps.ToArray().Sum(h => h * h)),
            (int)Math.Ceiling((sinc.Order * Math.Log2(sinc.Ratio)) - 1e-9));
    }
}

/// <summary>Loss at one frequency [dB] before and after the compensation.</summary>
public sealed record SincPoint(Frequency At, double Decimator, double Compensated);
