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
        double least = double.PositiveInfinity, at = 0, one = 0, three = 0, step = edge.Hertz / Points;
        for (int i = 0; i <= Points; i++)
        {
            double f = step * i, power = filter.PowerResponse(f) / reference, share = i is 0 or Points ? step / 2 : step;
            one += power < Math.Pow(10, -0.1) ? share : 0;
            three += power < 0.5 ? share : 0;
            if (power < least && !nulls.Any(n => Math.Abs(n.Hertz - f) < away.Hertz))
            {
                (least, at) = (power, f);
            }
        }

        double? largest = least < 1e-15 ? null : Math.Max(0, -10 * Math.Log10(least));
        return new BandDroop(edge, largest, Frequency.FromHertz(at), Frequency.FromHertz(one), Frequency.FromHertz(three));
    }
}

/// <summary>How deep a filter is about one harmonic of a mains that wanders.</summary>
/// <param name="Harmonic">Its number, 1 for the mains itself.</param>
/// <param name="Frequency">h·f0.</param>
/// <param name="Depths">Attenuation at deviations of this frequency, the worse of both sides.</param>
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
                h, f, [.. NotchFigures.CustomaryDeviations.Select(d => new NotchDepth(d, FrequencyResponse.DepthAt(filter, f, d)))]));
        }

        return depths;
    }
}
