using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Channels that are unlike each other: each as a design of its own kind of channel, and the worst of them as the design's.</summary>
public sealed class ChannelReportTests
{
    private static readonly Electrode Good = new() { ContactResistance = Resistance.FromKilohms(20) };
    private static readonly Electrode Poor = new() { ContactResistance = Resistance.FromKilohms(400), ContactCapacitance = Capacitance.FromNanofarads(5) };
    private static readonly ElectrodeBuffer Buffer = new() { SkinResistor = Resistance.FromKilohms(100) };

    private static readonly Design Base = Designs.Dry with { Channels = 3, Electrodes = Designs.Dry.Electrodes with { Mismatch = Ratio.FromPercent(40) } };

    private static readonly Design Mixed = Base with
    {
        ChannelList =
        [
            new() { Name = "Cz", Site = "Cz", Electrode = Good },
            new() { Name = "O1", Site = "O1", Electrode = Poor },
            new() { Name = "O2", Site = "O2", Electrode = Poor, Buffer = Buffer },
        ],
    };

    /// <summary>What stands as a channel's figure is the figure of a design all of whose channels are like it.</summary>
    [Fact]
    public void Channel_OfAMixedDesign_IsWhatADesignOfItsKindAloneGives()
    {
        Assessment mixed = Evaluator.Evaluate(Mixed);
        foreach (Channel channel in Mixed.ChannelList)
        {
            Assessment alone = Evaluator.Evaluate(Base with { Electrodes = Base.Electrodes with { Active = channel.Electrode!, ActiveBuffer = channel.Buffer } });
            foreach (ResultId id in (ResultId[])[ResultIds.Noise.Total, ResultIds.Noise.BoardShare, ResultIds.Mains.Total, ResultIds.Mains.Recorded, ResultIds.Mains.SystemCmrr, ResultIds.Levels.OffsetSurvived, ResultIds.Safety.FaultCurrent])
            {
                Assert.Equal(alone[id].Si, mixed[ResultIds.Channel.Of(channel.Name, id)].Si, 1e-12 * alone[id].Si);
            }
        }
    }

    /// <summary>The input network is solved for the first channel and changed by one branch for the others: what is lost where they are as unlike
    /// as electrodes can be stays below the integrals' own tolerance, 1e-8.</summary>
    [Fact]
    public void Noise_OfElectrodesFarFromEachOther_IsThatOfEachAlone()
    {
        (double Ohms, double Farads)[] electrodes = [(100, 1e-6), (10e6, 1e-10), (5e3, 0), (1e6, 1e-8), (0, 0)];
        Design design = Base with
        {
            ChannelList = [.. electrodes.Select((one, i) => new Channel
            {
                Name = $"c{i}", Electrode = new Electrode { ContactResistance = Resistance.FromOhms(one.Ohms), ContactCapacitance = Capacitance.FromFarads(one.Farads) },
            })],
        };
        Evaluation all = new(design);
        Assert.Equal(electrodes.Length, all.EveryKind.Count);
        for (int i = 0; i < electrodes.Length; i++)
        {
            Evaluation alone = new(design.AsSeenBy(i));
            Assert.Equal(1, all.Of(i).Noise.Total / alone.Noise.Total, 1e-8);
            Assert.Equal(1, all.Of(i).Noise.Shared / alone.Noise.Shared, 1e-8);
            Assert.Equal(1, all.Of(i).Levels.NoiseAtConverter / alone.Levels.NoiseAtConverter, 1e-8);
        }
    }

    [Fact]
    public void PlainFigures_OfAMixedDesign_AreTheWorstChannelsAndSayWhose()
    {
        Assessment mixed = Evaluator.Evaluate(Mixed);
        foreach ((ResultId id, bool greatest) in ((ResultId, bool)[])[(ResultIds.Noise.BoardShare, true), (ResultIds.Mains.Total, true), (ResultIds.Levels.OffsetSurvived, false)])
        {
            (string Name, double Value)[] each = [.. Mixed.ChannelList.Select(channel => (channel.Name, mixed[ResultIds.Channel.Of(channel.Name, id)].Si))];
            (string name, double value) = greatest ? each.MaxBy(one => one.Value) : each.MinBy(one => one.Value);
            Assert.Equal(value, mixed[id].Si);
            Assert.EndsWith($"channel {name}", mixed[id].Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Channels_ThatAreAllAlike_GiveTheFiguresOfTheirNumber()
    {
        Assessment counted = Evaluator.Evaluate(Base), named = Evaluator.Evaluate(Base with { ChannelList = [new() { Name = "1" }, new() { Name = "2" }, new() { Name = "3" }] });
        Assert.All(counted.Results, result => Assert.Equal(result.Value?.SiValue, named[result.Id].Value?.SiValue));
        Assert.Single(new Evaluation(named.Design).EveryKind);
    }

    /// <summary>Two electrodes of one kind in parallel are half of one in impedance, and half in excess noise power.</summary>
    [Fact]
    public void Reference_OfTwoJoinedSites_IsTwoElectrodesInParallel()
    {
        Electrode reference = Poor with { ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(4e-12) };
        Design joined = Base with { Electrodes = Base.Electrodes with { Reference = reference, ReferenceSites = ["ear-left", "ear-right"] } };
        Design half = Base with
        {
            Electrodes = Base.Electrodes with
            {
                Reference = reference.Scaled(0.5) with { ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(2e-12) },
            },
        };
        Assessment first = Evaluator.Evaluate(joined), second = Evaluator.Evaluate(half);
        foreach (ResultId id in (ResultId[])[ResultIds.Noise.Total, ResultIds.Mains.Total, ResultIds.Noise.Source(SourceId.ReferenceElectrode)])
        {
            Assert.Equal(second[id].Si, first[id].Si, 1e-12 * second[id].Si);
        }
    }

    /// <summary>Nothing is shared by a channel with a minus electrode, and its reference pin carries one input.</summary>
    [Fact]
    public void Minus_OfItsOwn_ShareNothingWithTheOthers()
    {
        Design design = Base with
        {
            ChannelList = [new() { Name = "a", Electrode = Good }, new() { Name = "b", Electrode = Good, Minus = new() { Site = "T4" } }, new() { Name = "c", Electrode = Good }],
            Derived =
            [
                new() { Name = "b less a", Weights = new NamedNumbers([new("b", 1), new("a", -1)]) },
                new() { Name = "c less a", Weights = new NamedNumbers([new("c", 1), new("a", -1)]) },
            ],
        };
        Assert.Equal((2, 1), (design.AsSeenBy(0).EffectiveReferenceInputs, design.AsSeenBy(1).EffectiveReferenceInputs));
        Assessment assessment = Evaluator.Evaluate(design);
        double a = assessment[ResultIds.Channel.Of("a", ResultIds.Noise.Total)].Si, b = assessment[ResultIds.Channel.Of("b", ResultIds.Noise.Total)].Si;
        Assert.Equal(Math.Sqrt((a * a) + (b * b)), assessment[ResultIds.Montage.Channel("b less a").Noise].Si, 1e-12 * b);
        Assert.Equal(0, assessment[ResultIds.Montage.Channel("c less a").SharedReference].Si);
        Assert.True(assessment[ResultIds.Montage.Channel("c less a").Noise].Si < Math.Sqrt(2) * a);
    }

    [Fact]
    public void SharedFault_OfLeadsThatAreUnlike_CountsEachOwnResistor()
    {
        Design design = Mixed with { ChannelList = [.. Mixed.ChannelList.Select((channel, i) => i == 2 ? channel with { Buffer = Buffer with { SkinResistor = Resistance.FromKilohms(20) } } : channel)] };
        double series = design.Input.SeriesResistor.Ohms * (1 - design.Input.ResistorTolerance.Fraction), skin = 20e3 * (1 - design.Input.ResistorTolerance.Fraction);
        double ground = design.GroundDrive.SeriesResistor.Ohms * (1 - design.GroundDrive.ResistorTolerance.Fraction);
        double expected = design.Supply.Highest.Volts / ((1 / ((3 / series) + (1 / skin))) + ground);
        Assert.Equal(expected, Evaluator.Evaluate(design)[ResultIds.Safety.SharedFaultCurrent].Si, 1e-12 * expected);
    }
}
