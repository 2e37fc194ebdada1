namespace FrontEnd.Filters;

/// <summary>A filter as someone asks for it: by family, shape and corners, with an order or with what it has to do.</summary>
public sealed record FilterWish
{
    /// <summary>Loss at the pass edge where none is asked for and the order is sought: half the power, 10·log10 2 dB.</summary>
    public static readonly Decibels HalfPowerLoss = FrequencyResponse.HalfPower;

    /// <summary>The approximation.</summary>
    public FilterFamily Family { get; init; }

    /// <summary>What it passes.</summary>
    public FilterShape Shape { get; init; }

    /// <summary>One corner, or two for a band shape, lower first; what it means is the family's business, except where <see
    /// cref="StopEdges"/> are given: then it is the edge of the pass band.</summary>
    public IReadOnlyList<Frequency> Corners { get; init => field = value ?? []; } = [];

    /// <summary>The prototype's order; null where <see cref="StopEdges"/> ask for the least.</summary>
    public int? Order { get; init; }

    /// <summary>Edges of the stop band, as many as corners; null where the order is given.</summary>
    public IReadOnlyList<Frequency>? StopEdges { get; init; }

    /// <summary>Sampling rate of a digital filter; null for an analogue one.</summary>
    public Frequency? Rate { get; init; }

    /// <summary>Largest loss in the pass band.</summary>
    public Decibels? Ripple { get; init; }

    /// <summary>Least loss in the stop band.</summary>
    public Decibels? Attenuation { get; init; }

    /// <summary>Which frequency of a Bessel filter its corner is.</summary>
    public BesselNormalisation Normalisation { get; init; }

    /// <summary>The key under which it stands, put into findings.</summary>
    public string Field { get; init => field = value ?? ""; } = "";

    /// <summary>An analogue notch: a band-stop of first order whose corners, f0·(√(1 + 1/4Q²) ∓ 1/(2Q)), are its −3 dB points.
    /// Derived.</summary>
    /// <param name="centre">f0, above 0 Hz.</param>
    /// <param name="q">f0 over the width between the −3 dB points, above 0.</param>
    internal static FilterWish Notch(Frequency centre, double q)
    {
        double half = centre.Hertz / (2 * q), middle = Math.Sqrt((centre.Hertz * centre.Hertz) + (half * half));
        return new FilterWish
        {
            Family = FilterFamily.Butterworth,
            Shape = FilterShape.BandStop,
            Corners = [Frequency.FromHertz(middle - half), Frequency.FromHertz(middle + half)],
            Order = 1,
        };
    }

    /// <summary>The filter that was asked for; findings with an error where there is none.</summary>
    public FilterAnswer Design()
    {
        List<Finding> findings = [.. Missing()];
        if (0 < findings.Count)
        {
            return new FilterAnswer { Wish = this, Findings = findings };
        }

        FilterRequirement? requirement = null;
        OrderChoice? choice = null;
        Prototype? prototype;
        ResponseShape? shape;
        if (StopEdges is { } stop)
        {
            requirement = new FilterRequirement(Make(Corners), Make(stop), Ripple ?? HalfPowerLoss, Attenuation!.Value);
            choice = MinimumOrder.Find(Family, requirement, Rate, Field);
            findings.AddRange(choice.Findings);
            (prototype, shape) = (choice.Prototype, choice.Shape);
        }
        else
        {
            (prototype, shape) = (MakePrototype(Order!.Value), Make(Corners));
            findings.AddRange(FilterDesign.Check(prototype, shape, Rate, Field));
        }

        if (0 < findings.Count || prototype is null || shape is null)
        {
            return new FilterAnswer { Wish = this, Requirement = requirement, Choice = choice, Findings = findings };
        }

        findings.AddRange(Unused());
        var answer = new FilterAnswer
        {
            Wish = this, Requirement = requirement, Choice = choice, Prototype = prototype, Response = shape, Findings = findings,
        };
        return Rate is { } rate
            ? answer with { Digital = FilterDesign.Digital(prototype, shape, rate) }
            : answer with { Analog = FilterDesign.Analog(prototype, shape) };
    }

    private Prototype MakePrototype(int order) => Family switch
    {
        FilterFamily.Butterworth => new ButterworthPrototype(order),
        FilterFamily.Chebyshev => new ChebyshevPrototype(order, Ripple!.Value),
        FilterFamily.InverseChebyshev => new InverseChebyshevPrototype(order, Attenuation!.Value),
        FilterFamily.Elliptic => new EllipticPrototype(order, Ripple!.Value, Attenuation!.Value),
        FilterFamily.Bessel => new BesselPrototype(order, Normalisation),
        FilterFamily.CriticallyDamped => new CriticallyDampedPrototype(order),
        _ => throw new InvalidOperationException($"Family {Family} is not handled."),
    };

    private ResponseShape Make(IReadOnlyList<Frequency> corners) => Make(Shape, corners);

    /// <summary>The shape with its corners, as many as it has.</summary>
    internal static ResponseShape Make(FilterShape shape, IReadOnlyList<Frequency> corners) => shape switch
    {
        FilterShape.LowPass => new LowPass(corners[0]),
        FilterShape.HighPass => new HighPass(corners[0]),
        FilterShape.BandPass => new BandPass(corners[0], corners[1]),
        FilterShape.BandStop => new BandStop(corners[0], corners[1]),
        _ => throw new InvalidOperationException($"Shape {shape} is not handled."),
    };

    private IEnumerable<Finding> Missing()
    {
        Finding? unknown = FilterMessages.Unknown(Field, "shape", Shape, FilterWords.Shapes) ?? FilterMessages.Unknown(Field, "family", Family, FilterWords.Families)
            ?? FilterMessages.Unknown(Field, "normalisation", Normalisation, FilterWords.Normalisations);
        return unknown is null ? MissingOfKnown() : [unknown];
    }

    private IEnumerable<Finding> MissingOfKnown()
    {
        int count = FilterWords.CornerCount(Shape);
        if (Corners.Count != count)
        {
            yield return FilterMessages.EdgeCount(Field, "corner", FilterWords.Of(Shape), count, Corners.Count);
        }

        if (StopEdges is { } stop && stop.Count != count)
        {
            yield return FilterMessages.EdgeCount(Field, "stop edge", FilterWords.Of(Shape), count, stop.Count);
        }

        if (Order is null == StopEdges is null)
        {
            yield return Order is null ? FilterMessages.NoOrder(Field) : FilterMessages.OrderAndEdges(Field);
        }

        if (Rate is { Hertz: <= 0 } rate)
        {
            yield return FilterMessages.RateNotAboveZero(Field, rate);
        }

        if (Ripple is null && Family is FilterFamily.Chebyshev or FilterFamily.Elliptic)
        {
            yield return FilterMessages.LossMissing(
                Field, FilterWords.Name(Family), "ripple", "the largest loss in the pass band", "0.5 dB");
        }

        if (Attenuation is null && (StopEdges is not null || Family is FilterFamily.InverseChebyshev or FilterFamily.Elliptic))
        {
            string who = StopEdges is null ? FilterWords.Name(Family) : "stop edge";
            yield return FilterMessages.LossMissing(Field, who, "attenuation", "the least attenuation in the stop band", "60 dB");
        }

        if (Normalisation == BesselNormalisation.Delay && (Family != FilterFamily.Bessel || StopEdges is not null))
        {
            yield return FilterMessages.DelayNotHere(Field, Family == FilterFamily.Bessel);
        }
    }

    private IEnumerable<Finding> Unused()
    {
        if (StopEdges is null && Ripple is not null && Family is not (FilterFamily.Chebyshev or FilterFamily.Elliptic))
        {
            yield return FilterMessages.LossUnused(Field, FilterWords.Name(Family), "ripple");
        }

        if (StopEdges is null && Attenuation is not null && Family is not (FilterFamily.InverseChebyshev or FilterFamily.Elliptic))
        {
            yield return FilterMessages.LossUnused(Field, FilterWords.Name(Family), "attenuation");
        }
    }
}

/// <summary>What came of a wish.</summary>
public sealed record FilterAnswer
{
    /// <summary>What was asked for.</summary>
    public required FilterWish Wish { get; init; }

    /// <summary>The approximation with its order; null where there is no filter.</summary>
    public Prototype? Prototype { get; init; }

    /// <summary>The shape with the corners that were designed for; null where there is no filter.</summary>
    public ResponseShape? Response { get; init; }

    /// <summary>The requirement from which the order was sought; null where the order was given.</summary>
    public FilterRequirement? Requirement { get; init; }

    /// <summary>How the order was found; null where it was given.</summary>
    public OrderChoice? Choice { get; init; }

    /// <summary>The filter, analogue; null for a digital one or where there is none.</summary>
    public AnalogFilter? Analog { get; init; }

    /// <summary>The filter, digital; null for an analogue one or where there is none.</summary>
    public DigitalFilter? Digital { get; init; }

    /// <summary>Errors where there is no filter; warnings where there is one.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Centre and Q where the filter is an analogue notch: a pole pair and, of the same frequency, zeros on the axis; else
    /// null.</summary>
    public (Frequency Centre, double Q)? AnalogNotch =>
        Analog?.Sections.Sections is [{ Q: { } q, B1: 0, B2: > 0, B0: > 0 } one]
            && Math.Abs((one.B2 / one.B0 / (one.PoleAngular * one.PoleAngular)) - 1) < 1e-9
            ? (Frequency.FromHertz(one.PoleHertz), q)
            : null;

    /// <summary>The form of record; null where there is no filter.</summary>
    public ZeroPoleGain? ZeroPoleGain => Analog?.ZeroPoleGain ?? Digital?.ZeroPoleGain;

    /// <summary>The filter, analogue or digital; null where there is none.</summary>
    public IFrequencyResponse? Filter => (IFrequencyResponse?)Analog ?? Digital;

    /// <summary>True where there is a filter; else <see cref="Findings"/> say why there is none. To be asked before <see cref="FilterFigures.Of(FilterAnswer)"/> and all that
    /// is worked out of a filter.</summary>
    public bool IsUsable => Filter is not null;
}
