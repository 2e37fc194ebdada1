using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Filters;

namespace FrontEnd.Budgets;

/// <summary>A frequency at which a response over frequency bends, and within how much of it [Hz].</summary>
internal readonly record struct Bend(double Hertz, double Scale);

/// <summary>Where an integral over frequency is cut, so that no panel steps over what is narrow.</summary>
/// <remarks>A pole or zero at s makes a bend at |s|/(2π); near the axis it is narrow, as wide as its distance from it, and its flanks are cut
/// at that and at 16 times as much each, up to a share of the frequency itself. Those of digital filters are taken over by s = fs·ln z: angle
/// and distance from the unit circle.</remarks>
internal static class BreakPoints
{
    /// <summary>A bend wider than this share of its frequency is none to a panel of the rule.</summary>
    private const double Wide = 0.3;

    /// <summary>From cut to cut on a flank: the rule's outermost points see the flank's inner end.</summary>
    private const double Flank = 16;

    /// <summary>Cuts nearer to one another than this share of their scale count as one.</summary>
    private const double Same = 0.25;

    /// <summary>Of digital filters at a rate [Hz].</summary>
    public static IReadOnlyList<Bend> Of(SecondOrderSections sections, double rate)
    {
        var bends = new List<Bend>();
        foreach (Biquad section in sections.Sections)
        {
            (Complex First, Complex Second) poles = section.Poles, zeros = section.Zeros;
            foreach (Complex z in (ReadOnlySpan<Complex>)[poles.First, poles.Second, zeros.First, zeros.Second])
            {
                if (z != 0 && Complex.IsFinite(z))
                {
                    Add(bends, z, rate);
                }
            }
        }

        return bends;
    }

    /// <summary>Of circuits.</summary>
    public static IReadOnlyList<Bend> Of(IEnumerable<Circuit> circuits)
    {
        var bends = new List<Bend>();
        foreach (Complex pole in circuits.SelectMany(circuit => StateSpace.Of(circuit).Poles()))
        {
            Add(bends, pole, null);
        }

        return bends;
    }

    /// <summary>Frequencies to cut at, rising: those that are stated, the bends between them, and more where two lie far apart.</summary>
    /// <param name="stated">Both ends and what must be a cut besides [Hz], above zero.</param>
    /// <param name="bends">The bends.</param>
    /// <param name="ratio">Greatest ratio of a cut to the one before.</param>
    public static double[] Between(IEnumerable<double> stated, IEnumerable<Bend> bends, double ratio)
    {
        List<double> cuts = [.. stated];
        cuts.Sort();
        double low = cuts[0], high = cuts[^1];
        List<Bend> inside = [.. bends];
        inside.RemoveAll(bend => !(low < bend.Hertz && bend.Hertz < high));
        inside.Sort((a, b) => (a.Scale, a.Hertz).CompareTo((b.Scale, b.Hertz)));
        foreach (Bend bend in inside)
        {
            double near = Same * bend.Scale;
            int place = cuts.BinarySearch(bend.Hertz - near);
            if (place < 0 && bend.Hertz + near < cuts[~place])
            {
                cuts.Insert(~cuts.BinarySearch(bend.Hertz), bend.Hertz);
            }
        }

        List<double> all = [];
        foreach (double cut in cuts)
        {
            if (0 < all.Count && all[^1] == cut)
            {
                continue;
            }

            int parts = all.Count == 0 ? 1 : Math.Max(1, (int)Math.Ceiling(Math.Log(cut / all[^1]) / Math.Log(ratio)));
            double last = all.Count == 0 ? cut : all[^1];
            for (int i = 1; i < parts; i++)
            {
                all.Add(last * Math.Pow(cut / last, (double)i / parts));
            }

            all.Add(cut);
        }

        return [.. all];
    }

    private static void Add(List<Bend> bends, Complex root, double? rate)
    {
        (double at, double width) = ResponseExtremes.InHertz(root, rate);
        double hertz = double.Hypot(at, width);
        if (Wide * hertz <= width)
        {
            bends.Add(new Bend(hertz, hertz));
            return;
        }

        // On the axis itself the poles beside it say how wide it is.
        bends.Add(new Bend(at, width == 0 ? at * 1e-9 : width));
        for (double flank = width; 0 < flank && flank < Wide * at; flank *= Flank)
        {
            bends.Add(new Bend(at - flank, flank));
            bends.Add(new Bend(at + flank, flank));
        }
    }
}
