namespace FrontEnd.Head;

/// <summary>Which rule places F3, F4, P3 and P4.</summary>
internal enum SiteRule
{
    /// <summary>F3 halfway between Fz and F7 on the contour of their row (from memory).</summary>
    Row,

    /// <summary>F3 halfway between C3 and Fp1 on the contour Fp1, C3, O1, as some instructions have it.</summary>
    Column,
}

/// <summary>Which sites are meant.</summary>
public enum SiteSet
{
    /// <summary>The 10-20 system, with Fpz and Oz, which it constructs only.</summary>
    TenTwenty,

    /// <summary>The 10-10 rows as well.</summary>
    TenTen,
}

/// <summary>A site of the 10-20 system or one of the 10-10 rows.</summary>
/// <param name="Alias">The newer name (T7 for T3) where there is one; "" for none.</param>
/// <param name="Arc">Where it lies.</param>
/// <param name="Share">Share of that arc from its start (nasion, left preauricular point, Fpz going left); in a row, the way along its contour
/// from <paramref name="From"/> to <paramref name="To"/>.</param>
/// <param name="From">For a site within a row, the midline site; "" for none.</param>
/// <param name="To">For a site within a row, the one on the ring; "" for none.</param>
/// <param name="Set">The system that has it first.</param>
public sealed record Site(string Name, string Alias, SiteArc Arc, double Share, string From = "", string To = "",
    SiteSet Set = SiteSet.TenTwenty)
{
    /// <summary>The one of its two names that was written; its first name for anything else.</summary>
    public string Called(string word) => string.Equals(Alias, word, StringComparison.OrdinalIgnoreCase) ? Alias : Name;
}

/// <summary>The measured line that a site lies on.</summary>
public enum SiteArc
{
    /// <summary>Nasion to inion over the vertex.</summary>
    Sagittal,

    /// <summary>Left to right preauricular point over the vertex.</summary>
    Coronal,

    /// <summary>Around the head through Fpz, T3, Oz and T4.</summary>
    Ring,

    /// <summary>Below the ring: as far below it, for the way from the vertex, as nasion, preauricular points and inion are.</summary>
    Low,

    /// <summary>Within a row, on the curve through its midline site and its two sites on the ring.</summary>
    Contour,

    /// <summary>Ear lobe or mastoid: no arc leads there, and a sphere has neither ear nor neck.</summary>
    Ear,
}
