using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Designs;

/// <summary>An anti-alias filter by what it has to do; parts are sought for it when the design is read.</summary>
public sealed record AntiAliasWish
{
    /// <summary>An all-pole family: the sections have no zeros.</summary>
    public FilterFamily Family { get; init; } = FilterFamily.Butterworth;

    /// <summary>With an order the family's corner, else the edge of the pass band; null for the upper edge of the design band.</summary>
    public Frequency? Corner { get; init; }

    /// <summary>Null for the least order that reaches <see cref="Attenuation"/> at the fold frequency.</summary>
    public int? Order { get; init; }

    /// <summary>Wanted at the fold frequency where no order is given.</summary>
    public Decibels Attenuation { get; init; } = Decibels.FromStated(60);

    /// <summary>Largest loss at the corner where no order is given; Chebyshev's ripple; null for 3.01 dB, Chebyshev 0.5 dB.</summary>
    public Decibels? Ripple { get; init; }

    /// <summary><see cref="SectionKind.SallenKey"/>, <see cref="SectionKind.SallenKeyEqual"/> or <see
    /// cref="SectionKind.MultipleFeedback"/>.</summary>
    public SectionKind Topology { get; init; } = SectionKind.SallenKey;

    /// <summary>±, of every resistor.</summary>
    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>±, of every capacitor.</summary>
    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>In every section.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>What the filter has to keep out: fs − f2 for a converter that samples once a word, the modulator's clock less f2 for
    /// delta-sigma, whose decimator does the rest.</summary>
    public static Frequency FoldOf(Design design) => Frequency.FromHertz(
        (design.Converter.Kind == ConverterKind.DeltaSigma
            ? design.Converter.ModulatorClock
            : design.Converter.Rate).Hertz - design.Band.High.Hertz);

    /// <summary>The stages; none together with findings where it cannot be built.</summary>
    /// <param name="design">For band and converter; its own stages play no part.</param>
    /// <param name="field">The design's key, put into findings.</param>
    public (IReadOnlyList<Stage> Stages, IReadOnlyList<Finding> Findings) Realise(Design design, string field)
    {
        FilterAnswer answer = Wish(design, field).Design();
        if (answer.Analog is null)
        {
            return ([], answer.Findings);
        }

        (Realisation? built, IReadOnlyList<Finding> findings) = RealisationSearch.Find(new RealisationRequest
        {
            Target = answer.Analog,
            OpAmp = OpAmp,
            Topology = Topology,
            ResistorTolerance = ResistorTolerance,
            CapacitorTolerance = CapacitorTolerance,
            Field = field,
        });
        return (built?.Stages ?? [], [.. answer.Findings, .. findings]);
    }

    private FilterWish Wish(Design design, string field)
    {
        Frequency corner = Corner ?? design.Band.High;
        Decibels? ripple = Family is FilterFamily.Chebyshev or FilterFamily.Elliptic
            ? Ripple ?? Decibels.FromStated(0.5)
            : Order is null ? Ripple : null;
        return new FilterWish
        {
            Family = Family,
            Shape = FilterShape.LowPass,
            Corners = [corner],
            Order = Order,
            StopEdges = Order is null ? [FoldOf(design)] : null,
            Ripple = ripple,
            Attenuation = Order is null || Family is FilterFamily.InverseChebyshev or FilterFamily.Elliptic ? Attenuation : null,
            Field = field,
        };
    }
}
