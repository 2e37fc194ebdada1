namespace FrontEnd.Head;

/// <summary>A piece of cortex of which all parts act together.</summary>
/// <param name="Centre">Where it lies, seen from the middle of the head.</param>
/// <param name="Extent">A: how large it is.</param>
internal abstract record CorticalSource(SpherePoint Centre, Area Extent);

/// <summary>The crown of a gyrus, or many of them: dipoles that point outwards, of one density over a round cap of the sphere
/// <see cref="Shells.PatchRadius"/>.</summary>
/// <remarks>
/// V = m·A/(4πσ_1R²)·Σ n·H_n·f^(n−1)·g_n·P_n(x), g_n = (1 + c)·P_n′(c)/(n·(n + 1)), c = 1 − A/(2πr_c²) the cap's cosine. A whole closed layer
/// gives nothing, so doubling the area is not doubling the amplitude: past a fifth of the sphere, about 145 cm², it falls.
/// <para>Source: derived. Against quadrature of single dipoles: 1e-9 in the tests.</para>
/// </remarks>
internal sealed record GyralPatch(SpherePoint Centre, Area Extent) : CorticalSource(Centre, Extent);

/// <summary>The wall of a sulcus: one dipole along the skin at <see cref="Shells.WallRadius"/>. Right over it nothing is seen, and on its two
/// sides the signs are opposite.</summary>
/// <param name="Towards">The site on the side that is positive.</param>
internal sealed record SulcalWall(SpherePoint Centre, Area Extent, SpherePoint Towards) : CorticalSource(Centre, Extent);
