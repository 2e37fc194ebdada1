using System.Numerics;
using FrontEnd.Filters;

namespace FrontEnd.Simulation;

/// <summary>How long the digital filters are let run before the first sample.</summary>
internal static class FilterSettling
{
    /// <summary>What is left of what they began with.</summary>
    private const double Left = 1e-6;

    /// <summary>At most [s]: a filter that takes longer goes on settling while it records, as it would.</summary>
    private const double MostSeconds = 600;

    /// <summary>In samples, from the pole that is nearest to the circle.</summary>
    public static long Samples(SampleRun run)
    {
        SecondOrderSections sections = run.Kinds[0].Digital.Sections;
        double nearest = sections.Poles.Select(Complex.Abs).DefaultIfEmpty(0).Max();
        double samples = nearest <= 0 ? 0 : nearest < 1 ? Math.Log(Left) / Math.Log(nearest) : double.PositiveInfinity;
        return (long)Math.Ceiling(Math.Min(samples, MostSeconds * run.Rate.Hertz));
    }
}
