namespace FrontEnd.Fields;

/// <summary>The legal values of a numeric field, in SI units. An open end excludes its number.</summary>
/// <remarks>These bounds keep slips of the prefix out (a gain of 10⁹, an electrode of 1 fΩ); whether a legal value is a good one is the
/// evaluation's business. All bounds: common practice, no source.</remarks>
public readonly record struct FieldRange(double Least, double Greatest, bool LeastOpen, bool GreatestOpen)
{
    /// <summary>From <paramref name="least"/> to <paramref name="greatest"/>, both included.</summary>
    public static FieldRange Closed(double least, double greatest) => new(least, greatest, false, false);

    /// <summary>Above <paramref name="least"/>, up to and with <paramref name="greatest"/>.</summary>
    public static FieldRange Above(double least, double greatest) => new(least, greatest, true, false);

    /// <summary>From <paramref name="least"/> on, below <paramref name="greatest"/>.</summary>
    public static FieldRange Below(double least, double greatest) => new(least, greatest, false, true);

    /// <summary>True for a legal value, in SI units.</summary>
    public bool Contains(double si) =>
        (LeastOpen ? Least < si : Least <= si) && (GreatestOpen ? si < Greatest : si <= Greatest);
}
