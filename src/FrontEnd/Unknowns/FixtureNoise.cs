using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Reporting;

namespace FrontEnd.Unknowns;

/// <summary>The noise that a recording of one design on a fixture holds.</summary>
internal sealed class FixtureNoise
{
    private readonly int _channel;

    /// <param name="design">A design of which every value is known, without errors.</param>
    /// <param name="channel">Which of its channels is recorded, counted from 0.</param>
    /// <param name="part">What stands in the electrodes' place.</param>
    /// <param name="filtered">True where the digital filters are on.</param>
    public FixtureNoise(Design design, int channel, Electrode part, bool filtered)
    {
        Design one = design.AsSeenBy(channel);
        _channel = channel;

        // As at the bench: samples are divided by the gain without a fixture.
        Gain = new Evaluation(one).GainMid;
        Design = Fixture.With(one, part) with { Digital = filtered ? one.Digital : [] };
        Evaluation = new Evaluation(Design);
    }

    /// <summary>The design with the fixture in place.</summary>
    public Design Design { get; }

    /// <summary>Its budgets.</summary>
    public Evaluation Evaluation { get; }

    /// <summary>The gain that samples are divided by.</summary>
    public double Gain { get; }

    /// <summary>Noise in the band at the electrodes [V rms].</summary>
    public double Rms => Evaluation.Noise.Total * Evaluation.GainMid / Gain;

    /// <summary>What the channel is called; null where the channels have no names.</summary>
    public string? Name(PartlyKnownDesign design) => design.Given.Design.ChannelList is { Count: > 0 } named ? named[_channel].Name : null;

    /// <summary>Every unknown value in its middle.</summary>
    public static double[] Middle(PartlyKnownDesign design) => [.. Enumerable.Repeat(0.5, design.Unknowns.Count)];

    /// <summary>The channel that a recording is held against: of unlike ones the one with the most noise of the board, with everything unknown in its
    /// middle.</summary>
    public static int ChannelOf(PartlyKnownDesign design)
    {
        Design middle = PartlyKnownEvaluator.Drawn(design, Middle(design));
        if (middle.ChannelList.Count == 0)
        {
            return 0;
        }

        var evaluation = new Evaluation(middle);
        string? name = evaluation.ChannelOf(evaluation.ForNoise);
        return Math.Max(0, middle.ChannelList.ToList().FindIndex(channel => string.Equals(channel.Name, name, StringComparison.Ordinal)));
    }
}
