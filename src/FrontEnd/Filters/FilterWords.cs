namespace FrontEnd.Filters;

/// <summary>The four shapes of response, without their corners.</summary>
public enum FilterShape
{
    LowPass,
    HighPass,
    BandPass,
    BandStop,
}

/// <summary>The words for families and shapes, the same in commands and design files.</summary>
internal static class FilterWords
{
    /// <summary>Family by its word, in lower case with hyphens.</summary>
    public static IReadOnlyDictionary<string, FilterFamily> Families { get; } = new Dictionary<string, FilterFamily>(StringComparer.Ordinal)
    {
        ["butterworth"] = FilterFamily.Butterworth,
        ["chebyshev"] = FilterFamily.Chebyshev,
        ["inverse-chebyshev"] = FilterFamily.InverseChebyshev,
        ["elliptic"] = FilterFamily.Elliptic,
        ["bessel"] = FilterFamily.Bessel,
        ["critically-damped"] = FilterFamily.CriticallyDamped,
    };

    /// <summary>Shape by its word.</summary>
    public static IReadOnlyDictionary<string, FilterShape> Shapes { get; } = new Dictionary<string, FilterShape>(StringComparer.Ordinal)
    {
        ["low-pass"] = FilterShape.LowPass,
        ["high-pass"] = FilterShape.HighPass,
        ["band-pass"] = FilterShape.BandPass,
        ["band-stop"] = FilterShape.BandStop,
    };

    /// <summary>What a Bessel filter's corner is, by its word.</summary>
    public static IReadOnlyDictionary<string, BesselNormalisation> Normalisations { get; } = new Dictionary<string, BesselNormalisation>(StringComparer.Ordinal)
    {
        ["delay"] = BesselNormalisation.Delay,
        ["magnitude"] = BesselNormalisation.Magnitude,
    };

    /// <summary>How the taps of an FIR are found, by its word.</summary>
    public static IReadOnlyDictionary<string, FirMethod> Methods { get; } = new Dictionary<string, FirMethod>(StringComparer.Ordinal)
    {
        ["equiripple"] = FirMethod.Equiripple,
        ["kaiser"] = FirMethod.Kaiser,
    };

    /// <summary>The family's word: "inverse-chebyshev".</summary>
    public static string Of(FilterFamily family) => Families.First(pair => pair.Value == family).Key;

    /// <summary>The shape's word: "low-pass".</summary>
    public static string Of(FilterShape shape) => Shapes.First(pair => pair.Value == shape).Key;

    /// <summary>"Butterworth", "inverse Chebyshev": the family's name in a sentence.</summary>
    public static string Name(FilterFamily family) => MinimumOrder.Name(family);

    /// <summary>Corners that a shape has: 1, and 2 for the band shapes.</summary>
    public static int CornerCount(FilterShape shape) => shape is FilterShape.LowPass or FilterShape.HighPass ? 1 : 2;
}
