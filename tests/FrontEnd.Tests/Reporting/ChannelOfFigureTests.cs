using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Sizing;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Designs whose channels are unlike each other: what rests on one channel says which, and what is judged rests on that channel.</summary>
public sealed class ChannelOfFigureTests
{
    private static readonly Electrode Dry = new() { ContactResistance = Resistance.FromKilohms(620), ContactCapacitance = Capacitance.FromNanofarads(4.7), Contact = ContactKind.Dry };

    private static readonly Electrode Noisy = new() { ContactResistance = Resistance.FromKilohms(60), ContactCapacitance = Capacitance.FromNanofarads(100), Contact = ContactKind.Wet };

    private static Design Named(params (string Name, Electrode? Electrode)[] channels) => new()
    {
        ChannelList = [.. channels.Select(one => new Channel { Name = one.Name, Electrode = one.Electrode })],

        // Many bits: the electrodes make the noise.
        Converter = new() { Bits = 24, FullScale = VoltagePeakToPeak.FromVolts(1), Noise = VoltageRms.FromVolts(1e-7) },
    };

    /// <summary>The worst channel is dry and nobody has set a limit for it; the wet one is held against the limit for wet contact all the same.</summary>
    [Fact]
    public void Verdict_OfAWetChannelBesideADryOne_CountsItsNoise()
    {
        Assessment assessment = Evaluator.Evaluate(Named(("wet", Noisy), ("dry", Dry)));
        Result board = assessment[ResultIds.Noise.BoardShare], verdict = assessment[ResultIds.Channel.Verdict("wet")], own = assessment[ResultIds.Channel.Of("wet", ResultIds.Noise.BoardShare)];
        Assert.Equal("dry", board.Channel);
        Assert.Equal(VerdictKind.NotJudged, board.Verdict.Kind);
        Assert.True(own.Si > Judge.DefaultNoise(assessment.Design).Volts);
        Assert.Equal("fail", verdict.Text);
        Assert.Contains(ResultIds.Noise.BoardShare.Text, verdict.Name, StringComparison.Ordinal);
        Assert.DoesNotContain(ResultIds.Noise.BoardShare.Text, assessment[ResultIds.Channel.Verdict("dry")].Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Noise_OfOneKindOfChannel_IsJudgedByTheirContact()
    {
        Assert.Equal(VerdictKind.NotJudged, Evaluator.Evaluate(Named(("a", Dry), ("b", Dry)))[ResultIds.Noise.BoardShare].Verdict.Kind);
        Assert.NotEqual(VerdictKind.NotJudged, Evaluator.Evaluate(Named(("a", null), ("b", null)))[ResultIds.Noise.BoardShare].Verdict.Kind);
    }

    [Fact]
    public void Bench_OfUnlikeChannels_SaysWhoseReadingsTheyAre()
    {
        Assert.All(BenchPlan.Of(Named(("wet", Noisy), ("dry", Dry))).Readings, reading => Assert.Equal("dry", reading.Channel));
        Assert.All(BenchPlan.Of(Named(("a", null), ("b", null))).Readings, reading => Assert.Null(reading.Channel));
        Assert.All(BenchPlan.Of(new Design()).Readings, reading => Assert.Null(reading.Channel));
    }

    [Fact]
    public void Spread_OfUnlikeChannels_SaysWhoseElectrodesAreDrawn()
    {
        SpreadOptions few = new() { Builds = 8 };
        Assert.Contains(SpreadRun.Run(Named(("wet", Noisy), ("dry", Dry)), few, cancellation: TestContext.Current.CancellationToken)!.Ties, tie => tie.Contains("one channel is drawn, dry,", StringComparison.Ordinal));
        Assert.DoesNotContain(SpreadRun.Run(Named(("a", null), ("b", null)), few, cancellation: TestContext.Current.CancellationToken)!.Ties, tie => tie.Contains("one channel is drawn", StringComparison.Ordinal));
    }

    [Fact]
    public void AsSeenBy_AName_IsThatChannelsOwnElectrode()
    {
        Design design = Named(("wet", Noisy), ("dry", Dry));
        Assert.Equal(Dry, design.AsSeenBy("dry").Electrodes.Active);
        Assert.Equal(Noisy, design.AsSeenBy(null).Electrodes.Active);
        Assert.Equal(new Design().Electrodes.Active, new Design().AsSeenBy("dry").Electrodes.Active);
        Assert.Equal([Noisy, Dry], design.SeenElectrodes.Select(set => set.Active));
    }

    /// <summary>Two parts more for each channel with a buffer of its own, and none for the design's where no channel has it.</summary>
    [Fact]
    public void PartCount_CountsEachChannelsOwnBuffer()
    {
        Design without = Named(("a", null), ("b", null)), one = without with { ChannelList = [without.ChannelList[0] with { Buffer = new() }, without.ChannelList[1]] };
        Assert.Equal(2, SizingGrid.PartCount(one) - SizingGrid.PartCount(without));
        Design shared = without with { Electrodes = without.Electrodes with { ActiveBuffer = new() } };
        Assert.Equal(4, SizingGrid.PartCount(shared) - SizingGrid.PartCount(without));
        Assert.Equal(2, SizingGrid.PartCount(shared with { ChannelList = [without.ChannelList[0] with { IsUnbuffered = true }, without.ChannelList[1]] }) - SizingGrid.PartCount(without));
        Assert.Equal(SizingGrid.PartCount(new Design { Channels = 2 }), SizingGrid.PartCount(without));
    }
}
