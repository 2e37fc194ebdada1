using FrontEnd.Identity;

namespace FrontEnd.Terminal;

/// <summary>Which curves belong to a kind of plot. Takes them from the assessment; works nothing out.</summary>
internal static class Plots
{
    private static readonly PlotKind[] Kinds = Enum.GetValues<PlotKind>();

    /// <summary>The next kind of plot that there is something to show for.</summary>
    public static PlotKind Neighbour(Model model, PlotKind kind, int by)
    {
        int at = Array.IndexOf(Kinds, kind);
        for (int i = 1; i <= Kinds.Length; i++)
        {
            PlotKind next = Kinds[((at + (i * by)) % Kinds.Length + Kinds.Length) % Kinds.Length];
            if (model.Here.Shown is { } shown && Of(next, shown, true, true).Curves.Count > 0)
            {
                return next;
            }
        }

        return kind;
    }

    /// <summary>The curves of a kind of plot with their marks and axes.</summary>
    public static PlotData Of(PlotKind kind, Assessment shown, bool logX, bool logY)
    {
        Design design = shown.Design;
        double half = design.Converter.Rate.Hertz / 2, mains = design.Mains.Frequency.Hertz;
        PlotMark nyquist = new(half, "fs/2"), hum = new(mains, "mains");
        return kind switch
        {
            PlotKind.Response => new("response", "Hz", "dB", Floored(shown.Curves.Response, -160), [hum, nyquist], logX, false),
            PlotKind.Delay => new(
                "group delay", "Hz", "s", [.. shown.Curves.PhaseAndDelay.Where(curve => curve.YUnit == "s")], [hum, nyquist], logX, false),
            PlotKind.Noise => new(
                "noise density", "Hz", "V/√Hz", Loudest(shown.Curves.NoiseDensity), [nyquist], logX, logY) { Decades = 4 },
            PlotKind.Mains => new(
                $"mains recorded anywhere, {shown.Design.Mains.LookedAt}", "Hz", "V", Harmonics(shown), [.. BandEnds(design), nyquist], false, logY)
            {
                Bars = true, Decades = 4, Note = Sums(shown),
            },
            PlotKind.Electrodes => new("electrode impedance |Z|", "Hz", "Ω", shown.Curves.ElectrodeImpedance, [hum], logX, logY),
            PlotKind.Drive => new(
                "driven-ground loop", "Hz", "dB", [.. shown.Curves.DrivenGroundLoop.Where(curve => curve.YUnit == "dB")], [hum], logX,
                false),
            PlotKind.Step => new(
                "after a step of the electrode offset", "s", "V",
                [.. shown.Curves.StepResponse.Select(curve => curve with { Name = "at the electrodes" })], [], false, false),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Plot is not handled."),
        };
    }

    /// <summary>The readout at the cursor, in engineering units.</summary>
    public static string Readout(PlotData data, double share)
    {
        double x = DotPlot.ValueAt(data, share);
        IEnumerable<string> parts = data.Curves.Take(4)
            .Select(curve => (curve.Name, At: DotPlot.Nearest(curve, x, data.LogX)))
            .Where(pair => pair.At is not null)
            .Select(pair => data.Bars
                ? $"{pair.Name} at {QuantityText.Format(pair.At!.Value.X, data.XUnit)}: {QuantityText.Format(pair.At!.Value.Y, data.YUnit)}"
                : $"{pair.Name} {QuantityText.Format(pair.At!.Value.Y, data.YUnit)}");
        return $"{QuantityText.Format(x, data.XUnit)}: {string.Join(", ", parts)}";
    }

    // A notch's bottom would squeeze everything else into the top line.
    private static IReadOnlyList<Curve> Floored(IReadOnlyList<Curve> curves, double least) =>
        [.. curves.Reverse().Select(curve => curve with { Y = [.. curve.Y.Select(y => y < least ? double.NaN : y)] })];

    // The total first, then the sources that stand highest: the others are in the figures.
    private static IReadOnlyList<Curve> Loudest(IReadOnlyList<Curve> curves) => curves.Count == 0
        ? []
        : [curves[^1], .. curves.Take(curves.Count - 1).OrderByDescending(curve => Middle(curve)).Take(3)];

    private static double Middle(Curve curve) => curve.Y[curve.Y.Length / 2];

    /// <summary>Where the band ends, and where it begins if that can be told from 0.</summary>
    private static IEnumerable<PlotMark> BandEnds(Design design)
    {
        const double worthALine = 0.2;
        if (worthALine * design.Band.High.Hertz < design.Band.Low.Hertz)
        {
            yield return new(design.Band.Low.Hertz, "band from");
        }

        yield return new(design.Band.High.Hertz, "band to");
    }

    /// <summary>The bars are all harmonics; what is judged, and stands beside the form, are those in the band.</summary>
    private static string Sums(Assessment shown) =>
        shown.Find(ResultIds.Mains.Recorded) is { State: ResultState.Number } inBand && shown.Find(ResultIds.Mains.RecordedEverywhere) is { State: ResultState.Number } all
            ? $"all bars: {ResultText.Value(all)}; those in the band {QuantityText.FormatPart(shown.Design.Band.Low)} to {QuantityText.FormatPart(shown.Design.Band.High)}, which are judged: {ResultText.Value(inBand)}"
            : "";

    private static IReadOnlyList<Curve> Harmonics(Assessment shown)
    {
        List<double> x = [], y = [];
        for (int order = 1; shown.Find(ResultIds.Mains.Harmonic(order).LandsAt) is { } lands; order++)
        {
            if (lands.Value is { } at && shown.Find(ResultIds.Mains.Harmonic(order).Recorded)?.Value is { } recorded
                && recorded.SiValue > 0)
            {
                x.Add(at.SiValue);
                y.Add(recorded.SiValue);
            }
        }

        return x.Count == 0 ? [] : [new Curve("harmonic", "Hz", "V", [.. x], [.. y])];
    }
}
