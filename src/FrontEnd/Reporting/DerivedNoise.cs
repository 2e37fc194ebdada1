using FrontEnd.Budgets;

namespace FrontEnd.Reporting;

/// <summary>Noise of rows of weights of the recorded channels: each channel's own part by the squares of its weights, and what the reference's side
/// puts into all of them by the square of their sum.</summary>
/// <remarks>A channel with a minus electrode of its own has no part in common with the others.</remarks>
internal sealed class DerivedNoise
{
    private readonly (double Own, double Shared)[] _channels;

    /// <param name="channels">Total and shared noise of each channel, rms [V]; nothing shared for one with a minus electrode.</param>
    private DerivedNoise((double Total, double Shared)[] channels) =>
        _channels = Array.ConvertAll(channels, one => (Math.Max(0, (one.Total * one.Total) - (one.Shared * one.Shared)), one.Shared));

    /// <summary>In the design's band.</summary>
    public static DerivedNoise Of(Evaluation evaluation) => Of(evaluation, noise => (noise.Total, noise.Shared));

    /// <summary>In one of the design's bands.</summary>
    public static DerivedNoise InBand(Evaluation evaluation, double low, double high) =>
        Of(evaluation, noise => (noise.InBand(low, high), noise.SharedInBand(low, high)));

    private static DerivedNoise Of(Evaluation evaluation, Func<NoiseBudget, (double Total, double Shared)> figures)
    {
        IReadOnlyList<Designs.Channel> named = evaluation.Design.ChannelList;
        var ofKind = evaluation.EveryKind.ToDictionary(kind => kind, kind => figures(kind.Noise));
        return new DerivedNoise([.. Enumerable.Range(0, evaluation.Design.Channels).Select(channel =>
        {
            (double total, double shared) = ofKind[evaluation.Of(channel)];
            return (total, 0 < named.Count && named[channel].Minus is not null ? 0 : shared);
        })]);
    }

    /// <summary>Rms [V].</summary>
    public double Rms(IReadOnlyList<double> weights) => Math.Sqrt(Covariance(weights, weights));

    /// <summary>Covariance of two rows [V²].</summary>
    public double Covariance(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        double own = 0;
        for (int i = 0; i < _channels.Length; i++)
        {
            own += first[i] * second[i] * _channels[i].Own;
        }

        return own + (Common(first) * Common(second));
    }

    /// <summary>What the reference's side puts into a row, rms with the sign of its weights [V]: as the channel of the largest weight sees
    /// it.</summary>
    public double Common(IReadOnlyList<double> weights)
    {
        double sum = 0, largest = 0, shared = 0;
        for (int i = 0; i < _channels.Length; i++)
        {
            if (_channels[i].Shared == 0)
            {
                continue;
            }

            sum += weights[i];
            if (largest < Math.Abs(weights[i]))
            {
                (largest, shared) = (Math.Abs(weights[i]), _channels[i].Shared);
            }
        }

        // What rounding leaves of a sum that is nothing is nothing.
        return Math.Abs(sum) < 1e-12 ? 0 : sum * shared;
    }
}
