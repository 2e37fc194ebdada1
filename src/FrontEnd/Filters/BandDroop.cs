namespace FrontEnd.Filters;

/// <summary>What a filter that takes the mains out does to the band from 0 Hz to an edge.</summary>
/// <param name="Edge">Upper edge of the band.</param>
/// <param name="Largest">Largest loss against 0 Hz [dB], away from the nulls where they have a width; null without bound.</param>
/// <param name="At">Where.</param>
/// <param name="LostOne">How much of the band is more than 1 dB down.</param>
/// <param name="LostThree">How much of it is more than 3 dB down.</param>
public sealed record BandDroop(Frequency Edge, double? Largest, Frequency At, Frequency LostOne, Frequency LostThree)
{
    private const int Points = 8000;

    /// <param name="nulls">Frequencies that are meant to be lost.</param>
    /// <param name="away">Distance from a null below which its own loss is not counted in <see cref="Largest"/>.</param>
    internal static BandDroop Of(IFrequencyResponse filter, Frequency edge, IReadOnlyList<Frequency> nulls, Frequency away)
    {
        double reference = filter.PowerResponse(0);
        double Power(double f) => filter.PowerResponse(f) / reference;
        double[] own = [.. nulls.Select(n => n.Hertz).Where(n => n <= edge.Hertz)];
        SortedSet<double> points = [.. ResponseExtremes.Even(0, edge.Hertz, Points), .. own];
        foreach (double zero in own)
        {
            for (int k = 0; 0 < away.Hertz && k <= 24; k++)
            {
                double off = away.Hertz * Math.Pow(2, -k / 2.0);
                points.UnionWith(new[] { zero - off, zero + off }.Where(f => 0 < f && f < edge.Hertz));
            }
        }

        double[] grid = [.. points];
        (double at, double least) = (0, 1);
        foreach (double[] stretch in Apart(grid, own, away.Hertz))
        {
            (double place, double value) = ResponseExtremes.Least(Power, stretch);
            (at, least) = value < least ? (place, value) : (at, least);
        }

        double? largest = least < 1e-15 ? null : Math.Max(0, -10 * Math.Log10(least));
        return new BandDroop(
            edge, largest, Frequency.FromHertz(at), Frequency.FromHertz(ResponseExtremes.Below(Power, Math.Pow(10, -0.1), grid)),
            Frequency.FromHertz(ResponseExtremes.Below(Power, 0.5, grid)));
    }

    /// <summary>From the nearest of the nulls, which rise; a comb has thousands.</summary>
    private static double Distance(double[] nulls, double hertz)
    {
        int at = Array.BinarySearch(nulls, hertz);
        if (0 <= at)
        {
            return 0;
        }

        double above = ~at < nulls.Length ? nulls[~at] - hertz : double.PositiveInfinity;
        return 0 < ~at ? Math.Min(above, hertz - nulls[~at - 1]) : above;
    }

    /// <summary>The stretches of a grid that keep their distance from every null.</summary>
    private static IEnumerable<double[]> Apart(double[] grid, double[] nulls, double away)
    {
        List<double> stretch = [];
        foreach (double f in grid)
        {
            if (Distance(nulls, f) < away * (1 - 1e-9))
            {
                if (stretch.Count != 0)
                {
                    yield return [.. stretch];
                    stretch.Clear();
                }
            }
            else
            {
                stretch.Add(f);
            }
        }

        if (stretch.Count != 0)
        {
            yield return [.. stretch];
        }
    }
}

/// <summary>How deep a filter is about one harmonic of a mains that wanders.</summary>
/// <param name="Harmonic">Its number, 1 for the mains itself.</param>
/// <param name="Frequency">h·f0.</param>
/// <param name="Depths">Attenuation where the mains has moved by so much, and this harmonic by h times as much; the worse of both
/// sides.</param>
public sealed record HarmonicDepth(int Harmonic, Frequency Frequency, IReadOnlyList<NotchDepth> Depths)
{
    /// <summary>All harmonics up to a limit and below half the rate, at <see cref="NotchFigures.CustomaryDeviations"/>.</summary>
    internal static IReadOnlyList<HarmonicDepth> Of(IFrequencyResponse filter, Frequency mains, double most, Frequency rate)
    {
        List<HarmonicDepth> depths = [];
        for (int h = 1; h * mains.Hertz <= most && h * mains.Hertz < rate.Hertz / 2; h++)
        {
            var f = Frequency.FromHertz(h * mains.Hertz);
            depths.Add(new HarmonicDepth(
                h, f, [.. NotchFigures.CustomaryDeviations.Select(
                    d => new NotchDepth(d, FrequencyResponse.DepthAt(filter, f, Frequency.FromHertz(h * d.Hertz))))]));
        }

        return depths;
    }
}
