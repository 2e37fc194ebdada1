using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Sizing;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Sizing;

public sealed class SizerTests
{
    /// <summary>Two amplifiers, one op-amp, two converters: the grid in small.</summary>
    private static PartShelf Shelf { get; } = new(
        [
            new DifferentialAmplifier { Card = "quiet", InputNoise = VoltageNoiseDensity.FromNanovoltsPerRootHertz(20), OutputNoise = VoltageNoiseDensity.FromNanovoltsPerRootHertz(60), SupplyCurrent = Current.FromMicroamperes(400) },
            new DifferentialAmplifier { Card = "frugal" },
        ],
        [OpAmp.MicropowerCmos with { Card = "micropower" }],
        [
            new AnalogDigitalConverter { Card = "sar", Kind = ConverterKind.SuccessiveApproximation, Bits = 16, FullScale = VoltagePeakToPeak.FromVolts(3), Noise = VoltageRms.FromMicrovolts(50) },
            new AnalogDigitalConverter
            {
                Card = "sigma", Kind = ConverterKind.DeltaSigma, Bits = 24, FullScale = VoltagePeakToPeak.FromVolts(4.8), Noise = VoltageRms.FromMicrovolts(1.2), Oversampling = 512, SupplyCurrent = Current.FromMicroamperes(400),
            },
        ]);

    private static Design Wanted { get; } = new()
    {
        Electrodes = Designs.Gel.Electrodes,
        Band = new Band("design", Frequency.FromHertz(0.5), Frequency.FromHertz(40)),
        Mains = new Interference.Mains { LeadToMains = Capacitance.FromFarads(5e-16) },
        Requirements = new Requirements { Noise = VoltagePeakToPeak.FromMicrovolts(3), Offset = Voltage.FromMillivolts(200) },
        Supply = new Supply { BatteryCapacity = Charge.FromMilliampereHours(500) },
    };

    private static SizingOutcome Size(Design wanted, Duration? life = null, int? parts = null) =>
        Sizer.Size(new SizingRequest(wanted, Shelf) { BatteryLife = life, Parts = parts }, cancellation: TestContext.Current.CancellationToken);

    /// <summary>Every share is told once, up to 1, and the search ends soon after it is broken off.</summary>
    [Fact]
    public void Size_TellsHowFarItIs_AndCanBeBrokenOff()
    {
        SharesTold told = new();
        Sizer.Size(new SizingRequest(Wanted, Shelf), told, TestContext.Current.CancellationToken);
        Assert.Equal(1, told.Shares.Max());
        Assert.All(told.Shares, share => Assert.InRange(share, 0, 1));
        Assert.Equal(told.Shares.Count, told.Shares.Distinct().Count());

        using CancellationTokenSource source = new();
        Assert.ThrowsAny<OperationCanceledException>(() => Sizer.Size(new SizingRequest(Wanted, Shelf), new SharesTold(source.Cancel), source.Token));
    }

    private sealed class SharesTold(Action? then = null) : IProgress<double>
    {
        public System.Collections.Concurrent.ConcurrentBag<double> Shares { get; } = [];

        public void Report(double value)
        {
            Shares.Add(value);
            then?.Invoke();
        }
    }

    [Fact]
    public void Size_PossibleRequest_GivesDesignsThatPassTheFullEvaluation()
    {
        SizingOutcome outcome = Size(Wanted);
        Assert.NotEmpty(outcome.Front);
        foreach (SizedDesign one in outcome.Front)
        {
            Assessment assessment = Evaluator.Evaluate(one.Design);
            Assert.True(assessment.AllRequirementsMet, one.Summary);
            Assert.DoesNotContain(assessment.Findings, finding => finding.Severity == Severity.Error);
            Assert.Equal(assessment["noise.total"].Si, one.Noise.Volts, 1e-12);
            Assert.Equal(assessment["power.supply_current"].Si, one.Current.Amperes, 1e-12);
            Assert.NotEmpty(one.LimitedBy);
        }
    }

    [Fact]
    public void Size_Front_HoldsNoDesignThatAnotherBeats()
    {
        IReadOnlyList<SizedDesign> front = Size(Wanted).Front;
        foreach (SizedDesign a in front)
        {
            Assert.DoesNotContain(front, b => b != a && b.Noise.Volts <= a.Noise.Volts && b.Current.Amperes <= a.Current.Amperes && b.Parts <= a.Parts && a.MainsMargin.Value <= b.MainsMargin.Value);
        }

        Assert.Equal(front.Select(one => one.Noise.Volts).Order(), front.Select(one => one.Noise.Volts));
    }

    [Fact]
    public void Front_DifferencesBelowHalfAPerCent_KeepNothing()
    {
        static SizedDesign One(double microvolts, double milliamperes, int parts, double decibels) => new(
            new Design(), VoltageRms.FromMicrovolts(microvolts), VoltagePeakToPeak.FromMicrovolts(4.1), Current.FromMicroamperes(1000 * milliamperes), parts, Decibels.FromStated(decibels), "");

        SizedDesign beaten = One(4.569, 6.94, 22, 7.78), better = One(4.571, 6.92, 18, 10.2), frugal = One(4.6, 3, 18, 10.2), twin = One(4.572, 6.92, 18, 10.2);
        Assert.Equal([better, frugal], Sizer.Front([twin, frugal, beaten, better]));

        // Each is as good as its neighbours, the last not as the first: something stays whatever the chain.
        SizedDesign[] chain = [.. Enumerable.Range(0, 20).Select(i => One(4 * (1 + (0.004 * i)), 5, 20 - i, 10))];
        SizedDesign[] left = Sizer.Front(chain);
        Assert.NotEmpty(left);
        Assert.InRange(left[0].Noise.Volts, 4e-6, 4e-6 * 1.005);
    }

    /// <summary>A requirement that some design meets needs no relaxing, and what is told of it is told of those that it stopped.</summary>
    [Fact]
    public void Size_SomethingFound_OffersNoRemedy()
    {
        SizingOutcome outcome = Size(Wanted);
        Assert.NotEmpty(outcome.Front);
        Assert.NotEmpty(outcome.Obstacles);
        Assert.All(outcome.Obstacles, obstacle => Assert.Null(obstacle.Relaxation));
        Assert.Contains("of those stopped", outcome.Obstacles.Single(obstacle => obstacle.Requirement == "requirements.offset").Text, StringComparison.Ordinal);
    }

    /// <summary>Offset and noise stop most, but one part is what no combination is content with.</summary>
    [Fact]
    public void Size_NothingFound_WhatStopsAllThatIsLeftComesFirst()
    {
        SizingOutcome outcome = Size(Wanted, parts: 1);
        Assert.Empty(outcome.Front);
        Assert.Equal("sizing.parts", outcome.Obstacles[0].Requirement);
        Assert.StartsWith("sizing.parts = ", outcome.Obstacles[0].Relaxation, StringComparison.Ordinal);
        Assert.All(outcome.Obstacles.Skip(1), obstacle => Assert.Null(obstacle.Relaxation));
    }

    [Theory]
    [InlineData("offset")]
    [InlineData("noise")]
    [InlineData("mains")]
    [InlineData("fold")]
    [InlineData("headroom")]
    [InlineData("life")]
    [InlineData("parts")]
    public void Size_LooserRequirement_NeverRaisesTheLeastNoise(string which)
    {
        double? last = null;
        foreach (double factor in new[] { 1.0, 0.85, 0.7, 0.5 })
        {
            Requirements r = Wanted.Requirements;
            Requirements looser = which switch
            {
                "offset" => r with { Offset = Voltage.FromVolts(r.Offset.Volts * factor) },
                "noise" => r with { Noise = VoltagePeakToPeak.FromVolts(2.4e-6 / factor) },
                "mains" => r with { MainsAtElectrodes = VoltageRms.FromVolts(1e-6 / factor) },
                "fold" => r with { Fold = Decibels.FromStated(60 * factor) },
                "headroom" => r with { Headroom = Decibels.FromStated(4 * factor) },
                _ => r,
            };
            Duration? life = which == "life" ? Duration.FromSeconds(70 * 3600 * factor) : null;
            int? parts = which == "parts" ? (int)(14 / factor) : null;
            SizingOutcome outcome = Size(Wanted with { Requirements = looser }, life, parts);
            double? least = outcome.Front.Count == 0 ? null : outcome.Front[0].Noise.Volts;

            // A quieter design gives way to one that is better otherwise and at most half a per cent noisier.
            Assert.True(last is null || least <= 1.005 * last, $"{which} × {factor}: {last} -> {least}");
            last = least ?? last;
        }

        Assert.NotNull(last);
    }

    [Fact]
    public void Size_AnyDesign_HasTheResistorsThatTheLimitsNeed()
    {
        // The request asks for less protection than the quoted limits: it does not get it.
        Design lax = Wanted with { Requirements = Wanted.Requirements with { FaultCurrent = Current.FromMicroamperes(500), DrivenGroundCurrent = Current.FromMicroamperes(500) } };
        foreach (SizedDesign one in Size(lax).Front)
        {
            Assert.True(one.Design.Supply.Highest.Volts / 50e-6 <= one.Design.Input.SeriesResistor.Ohms * (1 - one.Design.Input.ResistorTolerance.Fraction));
            double limit = one.Design.GroundDrive.Kind == GroundKind.Driven ? 10e-6 : 50e-6;
            Assert.True(one.Design.Supply.Highest.Volts / limit <= one.Design.GroundDrive.SeriesResistor.Ohms * (1 - one.Design.GroundDrive.ResistorTolerance.Fraction));
            Assert.Equal(Wanted.Mains.AmplifierToEarth, one.Design.Mains.AmplifierToEarth);
        }
    }

    [Fact]
    public void Size_NoiseBelowTheProtectionResistors_SaysSo()
    {
        SizingOutcome outcome = Size(Wanted with { Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(0.5) } });
        Assert.Empty(outcome.Front);
        Obstacle noise = outcome.Obstacles.Single(obstacle => obstacle.Requirement == "requirements.noise");
        Assert.Contains("at best", noise.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Size_Relaxation_IsEnough()
    {
        SizingOutcome outcome = Size(Wanted with { Requirements = Wanted.Requirements with { MainsAtElectrodes = VoltageRms.FromVolts(1e-9) } });
        Assert.Empty(outcome.Front);
        Obstacle mains = outcome.Obstacles.Single(obstacle => obstacle.Requirement == "requirements.mains-at-electrodes");
        Assert.NotNull(mains.Relaxation);
        string words = mains.Relaxation!.Split(" = ")[1].Split(" alone")[0];
        Assert.True(QuantityText.TryParse(words, out VoltageRms limit, out _), words);
        Assert.NotEmpty(Size(Wanted with { Requirements = Wanted.Requirements with { MainsAtElectrodes = limit } }).Front);
    }

    [Fact]
    public void Size_OffsetBeyondTheRails_NamesTheFirstStage()
    {
        SizingOutcome outcome = Size(Wanted with { Requirements = Wanted.Requirements with { Offset = Voltage.FromVolts(2) } });
        Assert.Empty(outcome.Front);
        Assert.Equal(0, outcome.Evaluated);
        Assert.Contains(outcome.Obstacles, obstacle => obstacle.Requirement == "requirements.offset");
    }

    [Fact]
    public void Size_LifeWithoutBattery_IsAFinding() =>
        Assert.Equal("FE0721", Size(Wanted with { Supply = new Supply() }, Duration.FromSeconds(3600)).Findings.Single().Code);

    /// <summary>Far from what can be had: the least that must be given up is told, is enough, and a little less is not.</summary>
    [Theory]
    [InlineData("requirements.noise", 0.1e-6)]
    [InlineData("requirements.offset", 3)]
    [InlineData("requirements.mains-at-electrodes", 1e-10)]
    [InlineData("requirements.fold", 190)]
    [InlineData("requirements.headroom", 40)]
    [InlineData("sizing.parts", 2)]
    [InlineData("sizing.battery-life", 1e7)]
    public void Size_FarFromARequirement_TellsTheLeastRelaxation(string key, double asked)
    {
        Limit limit = Limit.Find(key)!;
        SizingRequest request = limit.With(new SizingRequest(Wanted, Shelf), asked);
        SizingOutcome outcome = Sizer.Size(request, cancellation: TestContext.Current.CancellationToken);
        Assert.Empty(outcome.Front);
        Obstacle first = outcome.Obstacles[0];
        Assert.Equal(key, first.Requirement);
        Assert.False(first.IsMetByOthers);
        Assert.All(outcome.Obstacles.Where(obstacle => obstacle.Relaxation is null), obstacle => Assert.True(obstacle.IsMetByOthers));

        double relaxed = Value(limit, first.Relaxation!.Split(" = ")[1].Split(" alone")[0]);
        Assert.True(limit.IsGreatest ? asked < relaxed : relaxed < asked);
        Assert.NotEmpty(Sizer.Size(limit.With(request, relaxed), cancellation: TestContext.Current.CancellationToken).Front);
        double less = limit.IsWhole ? relaxed - 1 : limit.IsGreatest ? relaxed * 0.97 : relaxed * 1.03;
        Assert.Empty(Sizer.Size(limit.With(request, less), cancellation: TestContext.Current.CancellationToken).Front);
    }

    /// <summary>Neither alone is enough: both are told, each with the other.</summary>
    [Fact]
    public void Size_TwoThatAreFarOff_AreToldTogether()
    {
        SizingOutcome outcome = Size(Wanted with { Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(0.1), Offset = Voltage.FromVolts(3) } });
        Assert.Empty(outcome.Front);
        Obstacle[] given = [.. outcome.Obstacles.Where(obstacle => obstacle.Relaxation is not null)];
        Assert.Contains(given, obstacle => obstacle.Requirement == "requirements.noise");
        Assert.Contains(given, obstacle => obstacle.Requirement == "requirements.offset");
        Assert.All(given, obstacle => Assert.Contains(" together with ", obstacle.Relaxation, StringComparison.Ordinal));
        SizingRequest relaxed = new(Wanted, Shelf);
        foreach (Obstacle obstacle in given)
        {
            Limit limit = Limit.Find(obstacle.Requirement)!;
            relaxed = limit.With(relaxed, Value(limit, obstacle.Relaxation!.Split(" = ")[1].Split(" together")[0]));
        }

        Assert.NotEmpty(Sizer.Size(relaxed, cancellation: TestContext.Current.CancellationToken).Front);
    }

    /// <summary>What is offered can be written: a headroom below 0 dB is clipping, and no requirement.</summary>
    [Fact]
    public void Size_SignalFarTooLarge_OffersNoClipping()
    {
        Design design = Wanted with
        {
            LargestSignal = Voltage.FromMillivolts(300),
            Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(0.1), Offset = Voltage.FromVolts(3), MainsAtElectrodes = VoltageRms.FromVolts(1e-10) },
        };
        foreach (Obstacle obstacle in Size(design).Obstacles.Where(obstacle => obstacle.Relaxation is not null))
        {
            Limit limit = Limit.Find(obstacle.Requirement)!;
            Assert.True(limit.CanBe(Value(limit, obstacle.Relaxation!.Split(" = ")[1].Split(" together")[0].Split(" alone")[0])), obstacle.Relaxation);
        }
    }

    private static double Value(Limit limit, string words)
    {
        if (limit.Of(1) is not { } like)
        {
            return double.Parse(words, System.Globalization.CultureInfo.InvariantCulture);
        }

        Assert.True(QuantityText.TryParse(QuantityKind.Of(like), words, out IQuantity? quantity, out _), words);
        return quantity!.SiValue;
    }

    /// <summary>Every requirement that protects nobody may be relaxed, and none that protects the wearer.</summary>
    [Fact]
    public void Limits_AllRequirementsButSafety_AreAmongThem()
    {
        string[] notJudged = ["requirements.mains-residue", "requirements.quantisation-rise"];
        IEnumerable<string> asked = FrontEnd.Catalogue.DesignFields.Fixed.Where(field => field.Key.StartsWith("requirements.", StringComparison.Ordinal) && !field.Safety)
            .Select(field => field.Key).Except(notJudged);
        Assert.Equal(asked.Concat(["sizing.battery-life", "sizing.parts"]).Order(), Limit.All.Select(limit => limit.Key).Order());
    }

    /// <summary>What misses by little is told with the digits that show it.</summary>
    [Fact]
    public void Size_Obstacles_NeverShowWhatIsAskedAsNotReached()
    {
        foreach (Obstacle obstacle in Size(Wanted).Obstacles.Concat(Size(Wanted, parts: 1).Obstacles))
        {
            string[] parts = obstacle.Text.Split(": ")[^1].Split(" required, ");
            Assert.True(parts.Length < 2 || parts[0] != parts[1].Split(" reached")[0], obstacle.Text);
        }
    }

    [Fact]
    public void Size_PartsBeyondTheirCards_AreNotTaken()
    {
        SupplyRange five = new(Voltage.FromVolts(4.5), Voltage.FromVolts(5.5)), low = new(Voltage.FromVolts(1.8), Voltage.FromVolts(3.6));
        PartShelf shelf = Shelf with
        {
            Amplifiers = [Shelf.Amplifiers[0] with { SupplyRange = five }, Shelf.Amplifiers[1] with { SupplyRange = low, Gains = [2, 3, 20] }],
            Converters =
            [
                Shelf.Converters[0] with { FullScale = VoltagePeakToPeak.FromVolts(4.096) },
                Shelf.Converters[1] with { FullScale = VoltagePeakToPeak.FromVolts(9) },
            ],
        };
        Design design = Wanted with { Supply = Wanted.Supply with { Lowest = Voltage.FromVolts(2.7), Highest = Voltage.FromVolts(3.3) }, Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(6) } };
        SizingOutcome outcome = Sizer.Size(new SizingRequest(design, shelf), cancellation: TestContext.Current.CancellationToken);
        Assert.NotEmpty(outcome.Front);
        foreach (SizedDesign one in outcome.Front)
        {
            Assert.Equal("frugal", one.Design.Amplifier.Card);
            Assert.Contains(one.Design.Amplifier.Gain, new double[] { 2, 3, 20 });
            Assert.True(one.Design.Converter.FullScale.Volts <= (one.Design.Converter.Card == "sar" ? 2.7 : 5.4), one.Summary);
            Assert.Empty(FrontEnd.Catalogue.DesignCheck.Run(one.Design));
        }

        Obstacle supply = outcome.Obstacles.Single(obstacle => obstacle.Requirement == "supply.lowest");
        Assert.Contains("amplifier quiet needs at least 4.5 V", supply.Text, StringComparison.Ordinal);

        // A converter that is to stay as it is keeps its reference, or stays out.
        SizingOutcome kept = Sizer.Size(new SizingRequest(design, shelf with { MayChangeReference = false }), cancellation: TestContext.Current.CancellationToken);
        Assert.Empty(kept.Front);
        Assert.Contains("the full scale of converter sar is 4.096 V p-p of at most 2.7 V p-p", kept.Obstacles.Single(obstacle => obstacle.Requirement == "supply.lowest").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Size_BuffersAndResistorsInTheRequirements_Stay()
    {
        var buffer = new Electrodes.ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(10) };
        Design design = Wanted with
        {
            Electrodes = Wanted.Electrodes with { ActiveBuffer = buffer },
            Input = Wanted.Input with { SeriesResistor = Resistance.FromKilohms(100) },
            Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(8) },
        };
        SizingOutcome outcome = Size(design);
        Assert.NotEmpty(outcome.Front);
        foreach (SizedDesign one in outcome.Front)
        {
            // 3.3 V over 50 µA at −1 % want 68 kΩ at the skin; what is more than that in the other lead stays.
            Assert.Equal(68e3, one.Design.Electrodes.ActiveBuffer!.SkinResistor.Ohms);
            Assert.Null(one.Design.Electrodes.ReferenceBuffer);
            Assert.Equal(100e3, one.Design.Input.SeriesResistor.Ohms);
            Assert.StartsWith("buffered active electrodes, ", one.Summary, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(126)]
    [InlineData(300)]
    [InlineData(3000)]
    public void Size_WideBand_TakesARateThatHoldsIt(double hertz)
    {
        Design design = Wanted with
        {
            Band = new Band("design", Frequency.FromHertz(0.5), Frequency.FromHertz(hertz)),
            Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(60), MainsRecorded = VoltageRms.FromMicrovolts(50) },
        };
        SizingOutcome outcome = Size(design);
        Assert.NotEmpty(outcome.Front);
        Assert.All(outcome.Front, one => Assert.True(2 * hertz < one.Design.Converter.Rate.Hertz && Evaluator.Evaluate(one.Design).AllRequirementsMet));
    }

    /// <summary>On an earthed recorder one fault returns through the earth from all leads at once: every verdict counts, this one too.</summary>
    [Fact]
    public void Size_EarthedRecorder_HasResistorsForTheSharedFault()
    {
        Design design = Wanted with
        {
            Caution = "a case to calculate", Channels = 4, Mains = Wanted.Mains with { AmplifierToEarth = Capacitance.FromMicrofarads(1) },
            Requirements = Wanted.Requirements with { Noise = VoltagePeakToPeak.FromMicrovolts(40), MainsAtElectrodes = VoltageRms.FromMicrovolts(1000), MainsRecorded = VoltageRms.FromMicrovolts(50) },
        };
        SizingOutcome outcome = Size(design);
        Assert.NotEmpty(outcome.Front);
        Assert.All(outcome.Front, one => Assert.DoesNotContain(Evaluator.Evaluate(one.Design).Results, result => result.Verdict.Kind == VerdictKind.Fail));
        Assert.All(outcome.Front, one => Assert.True(5 * 3.3 / 50e-6 <= 0.99 * one.Design.Input.SeriesResistor.Ohms));
    }

    [Fact]
    public void Size_SameRequestTwice_GivesTheSame() =>
        Assert.Equal(Size(Wanted).Front.Select(one => one.Summary), Size(Wanted).Front.Select(one => one.Summary));

    [Fact]
    public void NoiseBound_OfCandidates_IsNotAboveTheBoardsNoise()
    {
        foreach (SizedDesign one in Size(Wanted).Front)
        {
            var grid = new SizingGrid(new SizingRequest(Wanted, Shelf));
            AnalogDigitalConverter card = Shelf.Converters.Single(converter => converter.Card == one.Design.Converter.Card);
            SizingCandidate[] candidates = [.. SizingGrid.Filters(card).SelectMany(filter => grid.At(grid.Base(one.Design.GroundDrive), Shelf.Amplifiers.Single(amplifier => amplifier.Card == one.Design.Amplifier.Card), card, one.Design.Converter.Rate.Hertz, filter))
                .Where(candidate => candidate.Design.Amplifier.Gain == one.Design.Amplifier.Gain && candidate.Design.Stages.SequenceEqual(one.Design.Stages))];
            Assert.True(0.9 * candidates.Single().NoiseBound <= new Evaluation(one.Design).Noise.WithoutExcess);
        }
    }
}
