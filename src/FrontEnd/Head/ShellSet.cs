namespace FrontEnd.Head;

/// <summary>Which published set of radii and conductivities the head's shells have.</summary>
public enum ShellSet
{
    /// <summary>Brain, its fluid, skull, scalp: 80, 81, 86 and 92 parts of the radius; 0.33, 1.79, 0.33/20, 0.33 S/m.</summary>
    Four,

    /// <summary>The same radii with means over many measurements: 0.33, 1.71, 0.02, 0.41 S/m.</summary>
    Means,

    /// <summary>Brain, skull, scalp: 80, 85 and 92 parts; 0.33, 0.33/80, 0.33 S/m.</summary>
    Three,

    /// <summary>Four shells of 0.84, 0.8667, 0.9467 and 1; 0.33, 1, 0.0042, 0.33 S/m.</summary>
    Stok,
}
