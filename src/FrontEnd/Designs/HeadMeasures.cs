using FrontEnd.Head;

namespace FrontEnd.Designs;

/// <summary>The head that sites and sources are placed on: three measures along the skin, and what lies between brain and skin.</summary>
public sealed record HeadMeasures
{
    /// <summary>The least and greatest brain-to-skull ratio that is worked with.</summary>
    public const double LeastSkullRatio = 5, GreatestSkullRatio = 200;

    /// <summary>Nasion to inion over the vertex.</summary>
    public Length NasionInion { get; init; } = Length.FromCentimetres(36);

    /// <summary>Preauricular point to preauricular point over the vertex.</summary>
    public Length Preauricular { get; init; } = Length.FromCentimetres(37);

    /// <summary>Around the head.</summary>
    public Length Circumference { get; init; } = Length.FromCentimetres(56);

    /// <summary>A1, A2: below the preauricular points along the skin.</summary>
    public Length EarLobeDown { get; init; } = Length.FromCentimetres(2.5);

    /// <summary>M1, M2: below the preauricular points along the skin.</summary>
    public Length MastoidDown { get; init; } = Length.FromCentimetres(1.5);

    /// <summary>M1, M2: behind the preauricular points along the skin.</summary>
    public Length MastoidBack { get; init; } = Length.FromCentimetres(3.5);

    /// <summary>The published set of shells.</summary>
    public ShellSet Shells { get; init; } = ShellSet.Four;

    /// <summary>How much better the brain conducts than the skull; null for the set's own.</summary>
    public double? SkullRatio { get; init; }

    /// <summary>The three measures, and where ear lobes and mastoids are.</summary>
    public HeadSize Size => new(NasionInion, Preauricular, Circumference)
    {
        EarLobeDown = EarLobeDown, MastoidDown = MastoidDown, MastoidBack = MastoidBack,
    };

    /// <summary>The head; null where the three measures do not belong to one.</summary>
    internal HeadModel? Model => HeadSphere.Of(Size) is { } sphere ? new HeadModel(sphere, Shells, SkullRatio) : null;
}
