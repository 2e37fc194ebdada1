using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Simulation;

/// <summary>How much of a signal on the head each recorded channel sees, with its sign, as a share of the signal's stated size. Where no site is
/// known every channel sees all of it.</summary>
internal sealed class HeadWeights
{
    /// <summary>How far over the skin a blink has fallen to 1/e, and a heart about an ear (chosen: between sites of the 10-20 system lie some
    /// 7 cm).</summary>
    private const double BlinkReach = 0.05, HeartReach = 0.06;

    private static readonly Area Patch = Area.FromSquareCentimetres(20);

    private static readonly Voltage Unit = Voltage.FromMicrovolts(1);

    private readonly Design _design;
    private readonly HeadModel _head;
    private readonly (int Channel, Derivation Derivation)[] _recorded;

    public HeadWeights(Design design)
    {
        _design = design;
        _head = (design.Head ?? new()).Model!;
        _recorded = [.. SiteChannels.Of(design, []).Where(one => one.IsRecorded)
            .Select(one => (one.Weights.ToList().IndexOf(1), one.Derivation))];
    }

    /// <summary>True where some channel stands at sites of the head that are known.</summary>
    public bool SitesAreKnown => _recorded.Length != 0;

    /// <summary>A rhythm of a piece of cortex under a site, stated at that site against both ears.</summary>
    public double[] OfCortex(string under) => OfPatch(new CortexPatch { Name = under, Under = under, Area = Patch, Amplitude = Unit }) is { } weights
        ? Array.ConvertAll(weights, rms => rms * 2 * Math.Sqrt(2) / Unit.Volts) : Alike();

    /// <summary>What a patch of the design gives each channel, rms with its sign [V]; null where nothing is known of the sites or of its size.</summary>
    public double[]? OfPatch(CortexPatch patch)
    {
        if (!SitesAreKnown || patch.Amplitude is null || SourceCheck.Read(patch, _head, _design.Bands, _design.Band,
            [.. _recorded.Select(one => one.Derivation.Active)], key => key, []) is not { Statement: not null } question)
        {
            return null;
        }

        var background = new BackgroundField(_head, _design.Background ?? new(), _recorded.Select(one => one.Derivation));
        var view = new SourceView(_head, question, background, [.. _recorded.Select(one => new NoisyChannel(one.Derivation, null))]);
        var weights = new double[_design.Channels];
        for (int i = 0; i < _recorded.Length; i++)
        {
            SourceInChannel seen = view.Channels[i];
            weights[_recorded[i].Channel] = seen.Signal is { } rms ? Math.CopySign(rms.Volts, seen.PerDensity.Volts) : 0;
        }

        return weights;
    }

    /// <summary>The eyes: largest at the forehead.</summary>
    public double[] OfBlink() => Falling([("Fpz", 1)], BlinkReach);

    /// <summary>The heart: the two ears see it with opposite signs, the left one more.</summary>
    public double[] OfHeart() => Falling([("A1", 1), ("A2", -0.6)], HeartReach);

    /// <summary>Every channel sees all of it.</summary>
    public double[] Alike() => [.. Enumerable.Repeat(1.0, _design.Channels)];

    /// <summary>Rows of the background's covariance, √(w_aᵀρw_b) taken apart: what each of as many independent sources gives each channel.</summary>
    /// <remarks>Cholesky; a channel that others make up wholly gets no source of its own.</remarks>
    public double[][] OfBackground()
    {
        int n = _design.Channels;
        double[][] lower = [.. Enumerable.Range(0, n).Select(_ => new double[n])];
        var field = SitesAreKnown ? new BackgroundField(_head, _design.Background ?? new(), _recorded.Select(one => one.Derivation)) : null;
        Derivation?[] derivations = [.. Enumerable.Range(0, n).Select(channel => _recorded.FirstOrDefault(one => one.Channel == channel).Derivation)];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = derivations[i] is { } first && derivations[j] is { } second ? field!.Shared(first, second, 0) : i == j ? 1 : 0;
                for (int k = 0; k < j; k++)
                {
                    sum -= lower[i][k] * lower[j][k];
                }

                lower[i][j] = i == j ? Math.Sqrt(Math.Max(0, sum)) : lower[j][j] < 1e-9 ? 0 : sum / lower[j][j];
            }
        }

        return lower;
    }

    /// <summary>A potential that falls with the distance over the skin from some sites, as the derivations take it.</summary>
    private double[] Falling((string Site, double Size)[] from, double reach)
    {
        if (!SitesAreKnown)
        {
            return Alike();
        }

        var weights = new double[_design.Channels];
        double radius = _head.Sphere.Radius.Metres;
        foreach ((int channel, Derivation derivation) in _recorded)
        {
            weights[channel] = derivation.Weights.Sum(one => one.Weight * from.Sum(source =>
                source.Size * Math.Exp(-radius * _head.Place(one.Site).AngleTo(_head.Place(Sites.Find(source.Site)!)) / reach)));
        }

        return weights;
    }
}
