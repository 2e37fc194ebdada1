namespace FrontEnd.Filters;

/// <summary>How the taps of a linear-phase FIR are found.</summary>
public enum FirMethod
{
    /// <summary>Equal ripple: the fewest taps for a requirement.</summary>
    Equiripple,

    /// <summary>Kaiser window: more taps, and the ripple falls away from the edges.</summary>
    Kaiser,
}

/// <summary>A linear-phase FIR as someone asks for it: by what it has to do, or by its number of taps.</summary>
public sealed record FirWish
{
    /// <summary>Longest filter that is designed: at 250 S/s it delays by eight seconds.</summary>
    public const int MostTaps = 4001;

    /// <summary>Longest that is sought from a requirement: an exchange takes the cube of the taps, and the shortest filter takes
    /// several.</summary>
    private int MostSought => Method == FirMethod.Kaiser ? MostTaps : 1001;

    /// <summary>How the taps are found.</summary>
    public FirMethod Method { get; init; }

    /// <summary>What it passes.</summary>
    public FilterShape Shape { get; init; }

    /// <summary>Edge of the pass band, for a band shape both, lower first.</summary>
    public IReadOnlyList<Frequency> PassEdges { get; init => field = value ?? []; } = [];

    /// <summary>Edge of the stop band, as many.</summary>
    public IReadOnlyList<Frequency> StopEdges { get; init => field = value ?? []; } = [];

    /// <summary>Sampling rate.</summary>
    public Frequency Rate { get; init; }

    /// <summary>Largest loss in the pass band, from the largest gain to the least; null only together with <see cref="Taps"/>.</summary>
    public Decibels? Ripple { get; init; }

    /// <summary>Least loss in the stop band; null only together with <see cref="Taps"/> of an equiripple filter.</summary>
    public Decibels? Attenuation { get; init; }

    /// <summary>Number of taps; null for the fewest of an odd number that meet the losses. An even number has a zero at half the rate: low-pass and
    /// band-pass alone.</summary>
    public int? Taps { get; init; }

    /// <summary>The filter that was asked for; findings with an error where there is none.</summary>
    public FirAnswer Design()
    {
        List<Finding> findings = [.. Missing()];
        if (0 < findings.Count)
        {
            return new FirAnswer { Wish = this, Findings = findings };
        }

        // Where a loss is not given, 1 dB and 40 dB stand in for the checks of edges; they do not reach the taps.
        FilterRequirement requirement = new(
            FilterWish.Make(Shape, PassEdges), FilterWish.Make(Shape, StopEdges), Ripple ?? Decibels.FromStated(1),
            Attenuation ?? Decibels.FromStated(Math.Max(40, 2 * (Ripple?.Value ?? 1))));
        findings.AddRange(requirement.Check(Rate));
        if (0 < findings.Count)
        {
            return new FirAnswer { Wish = this, Findings = findings };
        }

        FirFilter? filter = Taps is { } taps ? OfLength(taps, requirement) : Shortest(requirement);
        if (filter is null || MostTaps < filter.Length)
        {
            Finding none = Taps is { } given ? FilterMessages.NoEquiripple(given) : FilterMessages.TooManyTaps(MostSought);
            return new FirAnswer { Wish = this, Findings = [none] };
        }

        var figures = FirFigures.Of(filter, requirement);
        if (Ripple is { } ripple && Attenuation is { } attenuation && !FirRequirement.IsMet(filter, requirement))
        {
            findings.Add(FilterMessages.TapsTooFew(filter.Length, figures.PassLoss, figures.StopLoss, ripple, attenuation));
        }

        return new FirAnswer { Wish = this, Filter = filter, Figures = figures, Findings = findings };
    }

    private FirFilter? Shortest(FilterRequirement requirement)
    {
        double width = FirRequirement.TransitionWidth(requirement, Rate);
        // Beyond the bound the search would only wait for its end.
        return MostSought < KaiserDesign.ForecastLength(-20 * Math.Log10(Math.Max(FirRequirement.Deviation(requirement), 1e-20)), width)
            ? null
            : Method == FirMethod.Kaiser ? KaiserDesign.Design(requirement, Rate) : EquirippleDesign.Design(requirement, Rate);
    }

    private FirFilter? OfLength(int taps, FilterRequirement requirement)
    {
        if (Method == FirMethod.Kaiser)
        {
            return KaiserDesign.Windowed(requirement, Rate, taps, KaiserDesign.Beta(Attenuation!.Value.Value));
        }

        (double pass, double stop) = Ripple is null || Attenuation is null
            ? (1, 1)
            : (1 / FirRequirement.PassDeviation(requirement), 1 / FirRequirement.StopDeviation(requirement));
        IEnumerable<FirBand> bands = FirRequirement.Bands(requirement, Rate.Hertz)
            .Select(b => new FirBand(b.Low, b.High, _ => b.Pass ? 1 : 0, _ => b.Pass ? pass : stop));
        return EquirippleDesign.Taps(taps, [.. bands], Rate);
    }

    private IEnumerable<Finding> Missing()
    {
        Finding? unknown = FilterMessages.Unknown("", "shape", Shape, FilterWords.Shapes) ?? FilterMessages.Unknown("", "method", Method, FilterWords.Methods);
        return unknown is null ? MissingOfKnown() : [unknown];
    }

    private IEnumerable<Finding> MissingOfKnown()
    {
        int count = FilterWords.CornerCount(Shape);
        if (PassEdges.Count != count)
        {
            yield return FilterMessages.EdgeCount("", "pass edge", FilterWords.Of(Shape), count, PassEdges.Count);
        }

        if (StopEdges.Count != count)
        {
            yield return FilterMessages.EdgeCount("", "stop edge", FilterWords.Of(Shape), count, StopEdges.Count);
        }

        if (Rate.Hertz <= 0)
        {
            yield return FilterMessages.RateNotAboveZero("", Rate);
        }

        if (Attenuation is null && (Taps is null || Method == FirMethod.Kaiser))
        {
            yield return FilterMessages.LossMissing("", "FIR", "attenuation", "the least attenuation in the stop band", "60 dB");
        }

        if (Ripple is null && Taps is null)
        {
            yield return FilterMessages.LossMissing("", "FIR", "ripple", "the largest loss in the pass band", "0.5 dB");
        }

        if (Taps is { } taps)
        {
            if (taps is < 3 or > MostTaps)
            {
                yield return FilterMessages.NotInRange("taps", taps, 3, MostTaps);
            }
            else if (taps % 2 == 0 && (Method == FirMethod.Kaiser || Shape is FilterShape.HighPass or FilterShape.BandStop))
            {
                yield return FilterMessages.EvenTaps(taps, Method == FirMethod.Kaiser);
            }
        }
    }
}

/// <summary>What came of a wish for an FIR.</summary>
public sealed record FirAnswer
{
    /// <summary>What was asked for.</summary>
    public required FirWish Wish { get; init; }

    /// <summary>The filter; null where there is none.</summary>
    public FirFilter? Filter { get; init; }

    /// <summary>What it reaches; null where there is no filter.</summary>
    public FirFigures? Figures { get; init; }

    /// <summary>Errors where there is no filter; warnings where there is one.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>What an FIR reaches.</summary>
/// <param name="PassLoss">From the largest to the least gain of the pass band [dB].</param>
/// <param name="StopLoss">From the largest gain of the pass band to the largest of the stop band [dB]; null without bound.</param>
/// <param name="HalfPower">Frequencies of half the power of the largest gain, lowest first.</param>
/// <param name="DcGain">Gain at 0 Hz.</param>
public sealed record FirFigures(double PassLoss, double? StopLoss, IReadOnlyList<Frequency> HalfPower, double DcGain)
{
    internal static FirFigures Of(FirFilter filter, FilterRequirement requirement)
    {
        FirExtremes reached = FirRequirement.Measure(filter, requirement);
        double[] grid = ResponseExtremes.Even(0, filter.Rate.Hertz / 2, 8 * (filter.Length + 50));
        return new FirFigures(
            20 * Math.Log10(reached.Top / Math.Max(reached.Bottom, 1e-300)),
            reached.Stop < 1e-15 * reached.Top ? null : 20 * Math.Log10(reached.Top / reached.Stop),
            [.. ResponseExtremes.Crossings(FirPower.Of(filter).At, reached.Top * reached.Top / 2, grid).Select(Frequency.FromHertz)],
            filter.Response(0).Real);
    }
}
