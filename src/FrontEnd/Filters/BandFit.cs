namespace FrontEnd.Filters;

/// <summary>How a shape is laid over the edges of a requirement: for a band shape, about which centre.</summary>
/// <remarks>With c the square of the centre and B the width, a band-pass takes ω to Ω = D/B and a band-stop to Ω = B/D, D = |ω − c/ω|. The
/// selectivity is the nearer outer edge's D over the farther inner edge's D and does not hang on B. It is greatest where c is the product of the
/// inner edges, both of which then have the same D: between that and the product of the outer edges it is a constant times (ω_o² − c)/(ω_i² − c),
/// o and i the outer and the inner edge on one side, which is monotone in c; beyond, one D grows where the other shrinks. Derived; a search over
/// c in the tests agrees.
/// <para>Digital: ω are prewarped, and the edges found go back through the same tangent.</para></remarks>
internal sealed class BandFit
{
    private readonly FilterRequirement requirement;
    private readonly double? rate;
    private readonly double centre;
    private readonly double[] pass;
    private readonly double[] stop;

    private BandFit(FilterRequirement requirement, Frequency? rate, bool aboutStopEdges)
    {
        (this.requirement, this.rate) = (requirement, rate?.Hertz);
        double[] passEdges = [.. requirement.Pass.Corners.Select(ToAngular)], stopEdges = [.. requirement.Stop.Corners.Select(ToAngular)];
        double[] about = aboutStopEdges ? stopEdges : passEdges;
        centre = about is [var low, var high] ? low * high : 0;

        // With c = 0 the distance is ω itself: the shapes of one edge are band shapes without a centre.
        (pass, stop) = ([.. passEdges.Select(Distance)], [.. stopEdges.Select(Distance)]);
    }

    /// <summary>About the centre for which the least order is least.</summary>
    internal static BandFit Tightest(FilterRequirement requirement, Frequency? rate) =>
        new(requirement, rate, requirement.Pass is BandStop);

    /// <summary>About the pass edges, or the stop edges, as they were asked for: both are met exactly.</summary>
    internal static BandFit AsAsked(FilterRequirement requirement, Frequency? rate, bool aboutStopEdges) =>
        new(requirement, rate, aboutStopEdges);

    /// <summary>Ω of the nearer stop edge over Ω of the farther pass edge, above 1.</summary>
    internal double Selectivity => PassesAbove ? pass.Min() / stop.Max() : stop.Min() / pass.Max();

    /// <summary>The shape whose farther pass edge lies at a place of the normalised low-pass.</summary>
    internal ResponseShape WithPassEdgeAt(double omega) => PassesAbove ? Shape(pass.Min() * omega) : Shape(pass.Max() / omega);

    /// <summary>The shape whose nearer stop edge lies at a place of the normalised low-pass.</summary>
    internal ResponseShape WithStopEdgeAt(double omega) => PassesAbove ? Shape(stop.Max() * omega) : Shape(stop.Min() / omega);

    /// <summary>True where large D are passed: Ω goes with 1/D.</summary>
    private bool PassesAbove => requirement.Pass is HighPass or BandStop;

    private double Distance(double omega) => Math.Abs(omega - (centre / omega));

    private ResponseShape Shape(double width)
    {
        // Edges that were asked for stay to the bit.
        foreach (ResponseShape asked in (ResponseShape[])[requirement.Pass, requirement.Stop])
        {
            double[] edges = [.. asked.Corners.Select(c => Distance(ToAngular(c)))];
            if (edges.All(d => Math.Abs(d - width) <= 1e-9 * width))
            {
                return asked;
            }
        }

        double half = width / 2, upper = half + Math.Sqrt((half * half) + centre);
        return requirement.Pass switch
        {
            LowPass => new LowPass(ToFrequency(upper)),
            HighPass => new HighPass(ToFrequency(upper)),
            BandPass => new BandPass(ToFrequency(centre / upper), ToFrequency(upper)),
            BandStop => new BandStop(ToFrequency(centre / upper), ToFrequency(upper)),
            _ => throw new InvalidOperationException($"Shape {requirement.Pass.GetType().Name} is not handled."),
        };
    }

    private double ToAngular(Frequency f) => rate is { } fs ? FilterDesign.Prewarp(f.Hertz, fs) : FilterDesign.Angular(f);

    private Frequency ToFrequency(double angular) =>
        Frequency.FromHertz(rate is { } fs ? fs / Math.PI * Math.Atan(angular / (2 * fs)) : angular / (2 * Math.PI));
}
