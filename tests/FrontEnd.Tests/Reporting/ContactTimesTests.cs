using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Reporting;

public class ContactTimesTests
{
    private static readonly ContactOverTime Drying = new([At(60, 1, 1), At(3600, 2, 1.5), At(14400, 8, 3)]);

    private static readonly Electrode Sponge = new()
    {
        ContactResistance = Resistance.FromKilohms(30), ContactCapacitance = Capacitance.FromNanofarads(60),
        ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(4.5e-12), OverTime = Drying,
    };

    private static readonly Design Plain = new();

    private static Design Drie => Plain with { Electrodes = Plain.Electrodes with { Active = Sponge, Reference = Sponge } };

    /// <summary>The figures at a time are those of a design whose electrodes are so: resistances times the factor, capacitances over it, K times the
    /// square of the excess's, wet as before though 240 kΩ would count as dry.</summary>
    [Theory]
    [InlineData("1-min", 1, 1)]
    [InlineData("1-h", 2, 1.5)]
    [InlineData("4-h", 8, 3)]
    public void FiguresAtATime_AreThoseOfADesignWithSuchElectrodes(string time, double impedance, double excess)
    {
        Electrode then = new()
        {
            ContactResistance = Resistance.FromOhms(30e3 * impedance), ContactCapacitance = Capacitance.FromFarads(60e-9 / impedance),
            ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(4.5e-12 * excess * excess), Contact = ContactKind.Wet,
        };
        Assessment over = Evaluator.Evaluate(Drie), one = Evaluator.Evaluate(Plain with { Electrodes = Plain.Electrodes with { Active = then, Reference = then } });
        ContactTimeIds ids = new(ResultIds.Contact.Times.Of(time));
        Assert.Equal(30e3 * impedance, over.Find(ids.Resistance)!.Si, 1e-6);
        Same(ResultIds.Noise.Total, ids.Noise);
        Same(ResultIds.Noise.BoardShare, ids.BoardShare);
        Same(ResultIds.Mains.Recorded, ids.MainsRecorded);

        void Same(ResultId plain, ResultId then) => Assert.Equal(1, over.Find(then)!.Si / one.Find(plain)!.Si, 1e-9);
    }

    [Fact]
    public void ExcessAtATime_IsTheElectrodesOwnInTheBand()
    {
        // √(K·(1/f1 − 1/f2)) for a slope of 2.
        double expected = 1.5 * Math.Sqrt(4.5e-12 * ((1 / 0.5) - (1 / 40.0)));
        Assert.Equal(1, Evaluator.Evaluate(Drie).Find(ResultIds.Contact.After("1 h").Excess)!.Si / expected, 1e-12);
    }

    [Fact]
    public void DesignWithoutTimes_HasNoSuchFigures()
    {
        Assert.Empty(Plain.ContactTimes);
        Assert.DoesNotContain(Evaluator.Evaluate(Plain).Results, result => ResultIds.Contact.Times.Has(result.Id));
    }

    /// <summary>Another electrode's times count too; an electrode that says nothing of one is between its own, by powers, and beyond them as at its
    /// ends.</summary>
    [Fact]
    public void TimesOfAllElectrodes_EachBetweenItsOwn()
    {
        Electrode ground = new() { OverTime = new([At(10, 3, 1), At(1800, 1, 1)]) };
        Design design = Drie with { Electrodes = Drie.Electrodes with { Ground = ground } };
        Assert.Equal([10, 60, 1800, 3600, 14400], design.ContactTimes.Select(time => time.Seconds));
        Design then = design.AfterContact(Duration.FromSeconds(1800));
        double share = Math.Log(1800.0 / 60) / Math.Log(3600.0 / 60);
        Assert.Equal(30e3 * Math.Pow(2, share), then.Electrodes.Active.ContactResistance.Ohms, 1e-6);
        Assert.Equal(51e3, then.Electrodes.Ground!.ContactResistance.Ohms, 1e-9);
        Assert.Equal(30e3, design.AfterContact(Duration.FromSeconds(10)).Electrodes.Active.ContactResistance.Ohms, 1e-9);
        Assert.Equal(240e3, design.AfterContact(Duration.FromSeconds(1e6)).Electrodes.Active.ContactResistance.Ohms, 1e-6);
    }

    /// <summary>Of named channels the noise is the one's that is worst at the time, and the mains another's.</summary>
    [Fact]
    public void NamedChannels_EachFigureSaysWhoseItIs()
    {
        Electrode settling = new() { ContactResistance = Resistance.FromKilohms(20), ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(1e-12), OverTime = new([At(60, 10, 5), At(600, 1, 1)]) };
        Design design = Plain with
        {
            ChannelList = [new() { Name = "O1" }, new() { Name = "O2", Electrode = settling }],
        };
        Assessment assessment = Evaluator.Evaluate(design);
        Result early = assessment.Find(ResultIds.Contact.After("1 min").Resistance)!, late = assessment.Find(ResultIds.Contact.After("10 min").Resistance)!;
        Assert.Equal("10.0 times as designed; channel O2", early.Text);
        Assert.Equal("1.00 times as designed; channel O1", late.Text);
        Assert.Equal(200e3, early.Si, 1e-6);
        Assert.Equal(51e3, late.Si, 1e-6);
        Assert.Equal(assessment.Find(ResultIds.Noise.Total)!.Si, assessment.Find(ResultIds.Contact.After("10 min").Noise)!.Si, 1e-15);
    }

    [Theory]
    [InlineData(60, "1 min")]
    [InlineData(90, "90 s")]
    [InlineData(600, "10 min")]
    [InlineData(14400, "4 h")]
    [InlineData(172800, "2 d")]
    public void Words_OfATime_AreInTheLargestWholeUnit(double seconds, string words) => Assert.Equal(words, ContactOverTime.Words(Duration.FromSeconds(seconds)));

    private static ContactAt At(double seconds, double impedance, double excess) => new(Duration.FromSeconds(seconds), new(impedance, excess));
}
