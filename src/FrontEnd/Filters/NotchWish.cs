namespace FrontEnd.Filters;

/// <summary>Notches as someone asks for them: digital ones at the mains and its harmonics up to a band edge, or an analogue one at the
/// mains.</summary>
public sealed record NotchWish
{
    /// <summary>Highest mains harmonic that is looked at: the last with a limit in a public supply.</summary>
    public const int MostHarmonic = 25;

    private const double MostQ = 10_000;

    /// <summary>Mains frequency; it gets a notch wherever the band ends.</summary>
    public Frequency Mains { get; init; } = Frequency.FromHertz(50);

    /// <summary>Sampling rate.</summary>
    public Frequency Rate { get; init; }

    /// <summary>Centre over −3 dB width, of every notch, or of the first alone with <see cref="CommonWidth"/>.</summary>
    public double Q { get; init; } = 10;

    /// <summary>Every notch as wide as the first: they ring as long as it, and a harmonic's deviation, h times the mains', finds them no
    /// wider.</summary>
    public bool CommonWidth { get; init; }

    /// <summary>Upper edge of the band: harmonics up to it get a notch, and its droop is looked at.</summary>
    public Frequency Edge { get; init; } = Frequency.FromHertz(40);

    /// <summary>The notches and their figures; findings with an error where there are none.</summary>
    public NotchAnswer Design()
    {
        List<Finding> findings = [.. MainsChecks.Of(Mains, Rate, Edge), .. QCheck()];
        if (findings.Count == 0 && Rate.Hertz / 2 <= Mains.Hertz / Q)
        {
            findings.Add(FilterMessages.NotchTooWide(Mains, Q, Rate));
        }

        if (findings.Count != 0)
        {
            return new NotchAnswer { Wish = this, Findings = findings };
        }

        SecondOrderSections sections = Notch.AtHarmonics(
            Mains, Q, Frequency.FromHertz(Math.Max(Mains.Hertz, Edge.Hertz)), Rate, !CommonWidth);
        if (1 <= sections.PoleRadius)
        {
            return new NotchAnswer { Wish = this, Findings = [FilterMessages.OutOfNumbers("")] };
        }

        return new NotchAnswer { Wish = this, Sections = sections, Findings = [.. Landing()] };
    }

    /// <summary>An analogue notch at the mains alone; rate, edge and common width play no part.</summary>
    public FilterAnswer DesignAnalog() =>
        (Mains.Hertz <= 0 ? FilterMessages.CornerNotAboveZero("", Mains) : QCheck().FirstOrDefault()) is { } wrong
            ? new FilterAnswer { Wish = new FilterWish(), Findings = [wrong] }
            : FilterWish.Notch(Mains, Q).Design();

    private Finding[] QCheck() => 0 < Q && Q <= MostQ ? [] : [FilterMessages.QOutOfRange(Q, MostQ)];

    /// <summary>Harmonics in the analogue band that the converter has folded: a notch is wanted where they land, not where they
    /// were.</summary>
    private IEnumerable<Finding> Landing()
    {
        int first = (int)Math.Ceiling(Rate.Hertz / 2 / Mains.Hertz);
        (int Harmonic, Frequency At, Frequency Landing)[] free = [.. Enumerable.Range(first, Math.Max(0, MostHarmonic + 1 - first))
            .Select(h => (h, At: Frequency.FromHertz(h * Mains.Hertz), Landing: Notch.Landing(Frequency.FromHertz(h * Mains.Hertz), Rate)))
            .Where(one => one.Landing.Hertz <= Edge.Hertz && !IsTaken(one.Landing.Hertz))];
        if (free.Length != 0)
        {
            yield return FilterMessages.HarmonicsFold(free, MostHarmonic);
        }
    }

    /// <summary>True where what lands there meets a notch.</summary>
    private bool IsTaken(double hertz)
    {
        double harmonic = Math.Max(1, Math.Round(hertz / Mains.Hertz));
        return Math.Abs(hertz - (harmonic * Mains.Hertz)) < Mains.Hertz / Q * (CommonWidth ? 1 : harmonic) / 2;
    }
}

/// <summary>What came of a wish for notches.</summary>
public sealed record NotchAnswer
{
    /// <summary>What was asked for.</summary>
    public required NotchWish Wish { get; init; }

    /// <summary>One section for each harmonic; null where there are none.</summary>
    public SecondOrderSections? Sections { get; init; }

    /// <summary>Errors where there are no notches; warnings where there are.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Names of the sections: "notch 50 Hz".</summary>
    public IReadOnlyList<string> Names => [.. Enumerable.Range(1, Sections?.Count ?? 0).Select(
        h => $"notch {QuantityText.FormatPart(Frequency.FromHertz(h * Wish.Mains.Hertz))}")];

    /// <summary>The figures of an answer that has notches.</summary>
    public NotchesFigures Figures => NotchesFigures.Of(Sections ?? throw new InvalidOperationException("The answer has no notches."), Wish);
}

/// <summary>What the notches do together and cost.</summary>
/// <param name="Notches">Each by itself: width, time constant, ringing.</param>
/// <param name="Depths">About each harmonic, of all notches together.</param>
/// <param name="Droop">In the band, farther than twice its width from every notch.</param>
/// <param name="DelayAtEdge">Group delay at <see cref="BandDroop.Edge"/>.</param>
/// <param name="RingTime">The longest of the notches' times to 1 %.</param>
public sealed record NotchesFigures(
    IReadOnlyList<NotchFigures> Notches, IReadOnlyList<HarmonicDepth> Depths, BandDroop Droop, Duration DelayAtEdge, Duration RingTime)
{
    /// <summary>Multiplications per sample for each notch: b0 = b2 and b1 = a1 leave three, five without making use of it.</summary>
    private const int MultipliesEach = 5;

    /// <summary>Multiplications per sample of all notches.</summary>
    public int Multiplies => MultipliesEach * Notches.Count;

    internal static NotchesFigures Of(SecondOrderSections sections, NotchWish wish)
    {
        var filter = new SectionResponse(sections, wish.Rate);
        double widest = 0;
        List<NotchFigures> notches = [];
        for (int h = 1; h <= sections.Count; h++)
        {
            var width = Frequency.FromHertz(wish.Mains.Hertz / wish.Q * (wish.CommonWidth ? 1 : h));
            widest = Math.Max(widest, width.Hertz);
            notches.Add(NotchFigures.Of(Frequency.FromHertz(h * wish.Mains.Hertz), width, wish.Rate));
        }

        IReadOnlyList<HarmonicDepth> depths = HarmonicDepth.Of(
            filter, wish.Mains, sections.Count * wish.Mains.Hertz * (1 + 1e-12), wish.Rate);
        return new NotchesFigures(
            notches, depths, BandDroop.Of(filter, wish.Edge, [.. depths.Select(d => d.Frequency)], Frequency.FromHertz(2 * widest)),
            Duration.FromSeconds(filter.GroupDelay(wish.Edge.Hertz)), notches.MaxBy(n => n.RingTime.Seconds)!.RingTime);
    }

    private sealed class SectionResponse(SecondOrderSections sections, Frequency rate) : IFrequencyResponse
    {
        public System.Numerics.Complex Response(double hertz) => sections.Response(hertz, rate.Hertz);

        public double PowerResponse(double hertz) => sections.PowerResponse(hertz, rate.Hertz);

        public double GroupDelay(double hertz) => sections.GroupDelay(hertz, rate.Hertz);
    }
}
