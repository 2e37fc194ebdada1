using FrontEnd.Documents.Drawing;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>The plots of a sheet, each a vector drawing with its title.</summary>
internal static class Charts
{
    private const double DecibelsShown = 120;
    private const double DecadesShown = 5;
    private const double FilterDecibelsShown = 80;
    private const double DifferenceShown = 1;
    private const double LeastDifferenceShown = 0.05;
    private const double DelayDecadesShown = 4;

    /// <summary>Noise density and gain against frequency, where the design has curves for them.</summary>
    public static IReadOnlyList<(string Title, Picture Drawing)> Of(Assessment assessment) =>
        [.. new[] { Noise(assessment), Response(assessment) }.OfType<(string, Picture)>()];

    /// <summary>The filters' own plots: response, difference of built and ideal, group delay, step, each with its lines; none for a design
    /// without filters.</summary>
    public static IReadOnlyList<(string Title, Picture Drawing, IReadOnlyList<Curve> Lines)> OfFilters(Assessment assessment)
    {
        Curves curves = assessment.Curves;
        ((string Title, Picture Drawing)? Chart, IReadOnlyList<Curve> Lines)[] all =
        [
            (FilterResponse(assessment), curves.FilterResponse), (FilterDifference(assessment), curves.FilterDifference),
            (FilterDelay(assessment), curves.FilterDelay), (FilterStep(assessment), curves.FilterStep),
        ];
        return [.. all.Where(one => one.Chart is not null).Select(one => (one.Chart!.Value.Title, one.Chart.Value.Drawing, one.Lines))];
    }

    private static (string, Picture)? FilterDifference(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.FilterDifference;
        if (curves.Count == 0)
        {
            return null;
        }

        // A single line has no legend.
        string title = "filters alone: as built minus ideal" + (curves.Count == 1 ? $" ({curves[0].Name})" : "");
        (double low, double high) = Edges(assessment);

        // Far above its corner a section leaks, and the difference says nothing about the band; the smallest range shown keeps rounding
        // from filling the plot.
        double bottom = Math.Clamp(curves.Min(curve => Least(curve, low, high)), -DifferenceShown, -LeastDifferenceShown),
            top = Math.Clamp(curves.Max(curve => Largest(curve, low, high)), LeastDifferenceShown, DifferenceShown);
        return (title, Lines(title, assessment, curves, Frequencies(low, high), Axis.Steps10("difference, dB", "dB", bottom, top)));
    }

    private static (string, Picture)? FilterResponse(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.FilterResponse;
        if (curves.Count == 0)
        {
            return null;
        }

        const string Title = "filters alone: gain, ideal against as built";
        (double low, double high) = Edges(assessment);
        double bottom = curves.Min(curve => Least(curve, low, high));
        return (Title,
            Lines(Title, assessment, curves, Frequencies(low, high),
                Axis.Steps10("gain, dB", "dB", Math.Max(bottom, -FilterDecibelsShown), 0)));
    }

    private static (string, Picture)? FilterDelay(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.FilterDelay;
        double[] seen = [.. curves.SelectMany(curve => curve.Y).Where(y => double.IsFinite(y) && 0 < y)];
        if (seen.Length == 0)
        {
            return null;
        }

        const string Title = "filters alone: group delay";
        (double low, double high) = Edges(assessment);
        return (Title,
            Lines(Title, assessment, curves, Frequencies(low, high),
                Axis.Decades("group delay, s", "s", Math.Max(seen.Min(), seen.Max() * Math.Pow(10, -DelayDecadesShown)), seen.Max())));
    }

    private static (string, Picture)? FilterStep(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.FilterStep;
        if (curves.Count == 0)
        {
            return null;
        }

        const string Title = "filters alone: response to a unit step";
        double first = curves.Min(curve => curve.X[0]), last = curves.Max(curve => curve.X[^1]);
        double bottom = Math.Min(0, curves.Min(curve => curve.Y.Min())), top = curves.Max(curve => curve.Y.Max());
        return (Title,
            Lines(Title, null, curves, Axis.Decades("time after the step, s", "s", first, last), Axis.Steps10("output", "", bottom, top)));
    }

    private static Picture Lines(string title, Assessment? shaded, IReadOnlyList<Curve> curves, Axis x, Axis y)
    {
        Chart chart = new(title, x, y);
        if (shaded is not null)
        {
            ShadeBand(chart, shaded.Design);
        }

        foreach (Curve curve in curves)
        {
            chart.Curve(curve.Name, curve.X, curve.Y);
        }

        return chart.Draw();
    }

    private static (string, Picture)? Noise(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.NoiseDensity;
        if (curves.Count == 0)
        {
            return null;
        }

        const string Title = "noise density at the electrodes by source";
        Curve total = curves[^1];
        (double low, double high) = Edges(assessment);
        double top = Largest(total, low, high), bottom = Least(total, low, high);
        if (top <= 0)
        {
            return null;
        }

        Chart chart = new(Title, Frequencies(low, high),
            Axis.Decades("noise density, V/√Hz", "V/√Hz", Math.Max(bottom / 100, top * Math.Pow(10, -DecadesShown)), top));
        ShadeBand(chart, assessment.Design);
        chart.Curve("total", total.X, total.Y);

        // The largest by their share of the total; the others would lie at the bottom in lines that no eye tells apart.
        IEnumerable<Curve> largest = curves.Where(curve =>
            curve.Source is not null).Select(curve => (Curve: curve, Result: assessment.Find(ResultIds.Noise.Source(curve.Source!.Value))))
            .Where(one => one.Result?.Value is not null).OrderByDescending(one => one.Result!.Si).Select(one => one.Curve);
        foreach (Curve curve in largest.Take(Chart.MostLines - 1))
        {
            chart.Curve(curve.Name, curve.X, curve.Y);
        }

        return (Title, chart.Draw());
    }

    private static (string, Picture)? Response(Assessment assessment)
    {
        IReadOnlyList<Curve> curves = assessment.Curves.Response;
        if (curves.Count == 0)
        {
            return null;
        }

        const string Title = "gain against frequency";
        (double low, double high) = Edges(assessment);
        double top = curves.Max(curve => Largest(curve, low, high)), bottom = curves.Min(curve => Least(curve, low, high));
        return (Title,
            Lines(Title, assessment, curves, Frequencies(low, high),
                Axis.Steps10("gain, dB", "dB", Math.Max(bottom, top - DecibelsShown), top)));
    }

    /// <summary>Where the mains and its images land among the samples, and how large: before and after the digital filters.</summary>
    public static (string Title, Picture Drawing)? Landings(Assessment assessment)
    {
        string title = $"where mains harmonics land in the recording, {assessment.Design.Mains.LookedAt}";
        List<(string Order, double At, double Before, double After)> stems = [];
        for (int order = 1; assessment.Find(ResultIds.Mains.Harmonic(order).LandsAt) is { Value: not null } lands; order++)
        {
            HarmonicIds ids = ResultIds.Mains.Harmonic(order);
            if (assessment.Find(ids.Converter) is { Value: not null } before && assessment.Find(ids.Recorded) is { Value: not null } after
                && 0 < before.Si)
            {
                stems.Add(($"{order}", lands.Si, before.Si, after.Si));
            }
        }

        if (stems.Count == 0)
        {
            return null;
        }

        double top = stems.Max(stem => Math.Max(stem.Before, stem.After)),
            bottom = stems.Min(stem => stem.After <= 0 ? stem.Before : Math.Min(stem.Before, stem.After));
        Design design = assessment.Design;
        Axis x = Axis.Steps10("frequency in the recording, up to half the sampling rate; the number is the harmonic's", "Hz", 0,
            design.Converter.Rate.Hertz / 2);
        Chart chart = new(title, x with { High = design.Converter.Rate.Hertz / 2 },
            Axis.Decades("level at the electrodes, V rms", "V", Math.Max(bottom, top * Math.Pow(10, -DecadesShown)) / 2,
                Math.Max(top, design.SmallestSignal.Volts) * 2));
        ShadeBand(chart, design);
        foreach (var place in stems.GroupBy(stem => QuantityText.Format(stem.At, "Hz"), StringComparer.Ordinal))
        {
            foreach ((_, double at, double before, double after) in place)
            {
                chart.Stem(at, before, filled: false);
                chart.Stem(at, after, filled: true);
            }

            // Several may land on one frequency: one label above the largest.
            chart.Label(place.First().At, place.Max(stem => Math.Max(stem.Before, stem.After)),
                string.Join(", ", place.OrderByDescending(stem => stem.After).Select(stem => stem.Order)));
        }

        chart.Explain("at the converter", filled: false);
        chart.Explain("recorded, after digital filters", filled: true);
        chart.Level(design.SmallestSignal.Volts, $"smallest signal {QuantityText.FormatPart(design.SmallestSignal)}");
        return (title, chart.Draw());
    }

    private static void ShadeBand(Chart chart, Design design) => chart.Shade(design.Band.Low.Hertz, design.Band.High.Hertz, "band");

    /// <summary>From a decade below the band to twice the sampling rate: what can fold into the band is seen.</summary>
    private static (double Low, double High) Edges(Assessment assessment)
    {
        Curve curve = assessment.Curves.Response[0];
        return (curve.X[0], Math.Min(curve.X[^1], 2 * assessment.Design.Converter.Rate.Hertz));
    }

    private static Axis Frequencies(double low, double high) => new("frequency, Hz", "Hz", low, high, IsLog: true);

    private static double Largest(Curve curve, double low, double high) => Inside(curve, low, high).DefaultIfEmpty(0).Max();

    private static double Least(Curve curve, double low, double high) => Inside(curve, low, high).DefaultIfEmpty(0).Min();

    private static IEnumerable<double> Inside(Curve curve, double low, double high) =>
        curve.Y.Where((y, at) => double.IsFinite(y) && low <= curve.X[at] && curve.X[at] <= high);
}
