using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.AntiAlias;

public class RealisationSearchTests
{
    private static RealisationRequest Request(Prototype prototype, double corner) => new() { Target = FilterDesign.Analog(prototype, new LowPass(Frequency.FromHertz(corner))) };

    [Theory]
    [InlineData(2, SectionKind.SallenKey, 0.05)]
    [InlineData(3, SectionKind.SallenKey, 0.03)]
    [InlineData(5, SectionKind.SallenKey, 0.03)]
    [InlineData(8, SectionKind.SallenKey, 0.05)]
    [InlineData(2, SectionKind.SallenKeyEqual, 0.08)]
    [InlineData(5, SectionKind.SallenKeyEqual, 0.12)]
    [InlineData(2, SectionKind.MultipleFeedback, 0.03)]
    [InlineData(5, SectionKind.MultipleFeedback, 0.03)]
    public void Find_Butterworth70Hertz_IsWithinHundredthsOfADecibel(int order, SectionKind topology, double limit)
    {
        RealisationRequest request = Request(new ButterworthPrototype(order), 70) with { Topology = topology };
        (Realisation? best, IReadOnlyList<Finding> findings) = RealisationSearch.Find(request);
        Assert.Empty(findings);
        Assert.NotNull(best);
        Assert.Equal((order + 1) / 2, best.Sections.Count);
        Assert.True(best.LargestError < limit, $"{best.LargestError} dB");
        Assert.Equal(70, best.HalfPower!.Value.Hertz, 0.01 * 70 * 8 * limit);
        AssertWithinLimits(request, best);

        // Second way: the error again, from the stages alone, on a grid of its own.
        double gain = AsBuiltSection.PowerResponse(best.Stages, 0.07);
        for (double f = 1.5; f < 138; f *= 1.07)
        {
            double difference = 10 * Math.Log10(AsBuiltSection.PowerResponse(best.Stages, f) / gain / request.Target.PowerResponse(f));
            Assert.True(Math.Abs(difference) <= best.LargestError + 0.003, $"{difference} dB at {f} Hz, stated {best.LargestError}");
        }
    }

    /// <summary>The search against the builder's rule: the first pair of capacitors that will do, resistors to the nearest value.</summary>
    [Fact]
    public void Find_FifthOrder_BeatsRoundingTheFirstParts()
    {
        RealisationRequest request = Request(new ButterworthPrototype(5), 70) with { ResistorSeries = PreferredSeries.E24, CapacitorSeries = PreferredSeries.E6 };
        Realisation best = RealisationSearch.Find(request).Best!;
        var plain = new List<Stage>();
        foreach (AnalogSection s in request.Target.Sections.Sections)
        {
            var pole = Frequency.FromHertz(s.PoleHertz);
            if (s.Q is not { } q)
            {
                plain.Add(new RcSection { R = PreferredValues.Nearest(SectionDesign.Rc(pole, Capacitance.FromNanofarads(100)), PreferredSeries.E24), C = Capacitance.FromNanofarads(100) });
                continue;
            }

            var c2 = Capacitance.FromNanofarads(47);
            Capacitance c1 = PreferredValues.AtLeast(Capacitance.FromFarads(4 * q * q * c2.Farads), PreferredSeries.E6);
            (Resistance r1, Resistance r2) = SectionDesign.SallenKey(pole, q, c1, c2)!.Value;
            plain.Add(new SallenKeySection { R1 = PreferredValues.Nearest(r1, PreferredSeries.E24), R2 = PreferredValues.Nearest(r2, PreferredSeries.E24), C1 = c1, C2 = c2 });
        }

        double gain = AsBuiltSection.PowerResponse(plain, 0.07);
        double worst = Enumerable.Range(0, 60).Select(i => 1.4 * Math.Pow(100, i / 60.0)).Max(f =>
            Math.Abs(10 * Math.Log10(AsBuiltSection.PowerResponse(plain, f) / gain / request.Target.PowerResponse(f))));
        Assert.True(best.LargestError < worst / 2, $"{best.LargestError} dB against {worst} dB");
    }

    /// <summary>GBW of 20 times Q·f0 only: with the parts of the ideal op-amp the pole is off by per cents, with the corrected ones it is not.</summary>
    [Fact]
    public void Find_SlowOpAmp_IsCorrectedFor()
    {
        OpAmp slow = OpAmp.MicropowerCmos with { GainBandwidth = Frequency.FromKilohertz(50) };
        // Fine resistors, so that what is left is the correction and not the rounding.
        RealisationRequest request = Request(new ButterworthPrototype(4), 1000) with { OpAmp = slow, ResistorSeries = PreferredSeries.E192 };
        Realisation best = RealisationSearch.Find(request).Best!;
        foreach (RealisedSection section in best.Sections)
        {
            Assert.Equal(section.WantedPole.Hertz, section.BuiltPole.Hertz, 0.006 * section.WantedPole.Hertz);
            Assert.Equal(section.WantedQ!.Value, section.BuiltQ!.Value, 0.006 * section.WantedQ!.Value);
        }

        // The same parts with a fast op-amp are off: the correction is in the parts.
        var fast = (SallenKeySection)best.Stages[^1];
        (double pole, double? q) = AsBuiltSection.Poles(fast with { OpAmp = slow with { GainBandwidth = Frequency.FromMegahertz(100) } });
        Assert.True(0.02 < Math.Abs((pole / best.Sections[^1].WantedPole.Hertz) - 1) + Math.Abs((q!.Value / best.Sections[^1].WantedQ!.Value) - 1), $"{pole} Hz, Q {q}");
    }

    [Fact]
    public void Find_Chebyshev_OrdersItsSectionsByTheirPeaks()
    {
        Realisation best = RealisationSearch.Find(Request(new ChebyshevPrototype(6, Decibels.FromStated(1)), 70)).Best!;
        Assert.Equal(3, best.Sections.Count);
        // Q 8 first would put 18 dB on its op-amp; last, behind the others, the whole filter's peak of about the ripple is all it sees.
        Assert.True(7 < best.Sections.Max(s => s.WantedQ));
        Assert.True(best.Sections.Max(s => s.PeakGain) < 2.2, $"{best.Sections.Max(s => s.PeakGain)}");
        Assert.NotEqual(best.Sections.Max(s => s.WantedQ), best.Sections[0].WantedQ);

        // The pole pair of Q 8 is offered as a state-variable filter as well, as built within the steps of its series.
        RealisedSection sharp = Assert.Single(best.Sections, s => s.StateVariable is not null);
        Assert.Equal(sharp.WantedPole.Hertz, sharp.StateVariable!.Pole.Hertz, 0.012 * sharp.WantedPole.Hertz);
        Assert.Equal(sharp.WantedQ!.Value, sharp.StateVariable.BuiltQ(), 0.03 * sharp.WantedQ.Value);
    }

    [Fact]
    public void Find_Elliptic_IsFinding()
    {
        (Realisation? best, IReadOnlyList<Finding> findings) = RealisationSearch.Find(Request(new EllipticPrototype(4, Decibels.FromStated(1), Decibels.FromStated(40)), 70));
        Assert.Null(best);
        Finding finding = Assert.Single(findings);
        Assert.Equal("FE0651", finding.Code);

        // The remedy by hand: the elliptic's own stop edge is at 70 Hz · Ω with acosh(√(9999/0.258925)) = 5.9721 = n·acosh Ω for the Chebyshev of the same edges.
        AnalogFilter target = Request(new EllipticPrototype(4, Decibels.FromStated(1), Decibels.FromStated(40)), 70).Target;
        double edge = Enumerable.Range(0, 100000).Select(i => 70 * (1 + (i * 1e-5))).First(f => target.PowerResponse(f) <= 1.0001e-4);
        int order = (int)Math.Ceiling(Math.Acosh(Math.Sqrt(9999 / (Math.Pow(10, 0.1) - 1))) / Math.Acosh(edge / 70));
        Assert.InRange(order, 5, 8);
        Assert.Contains($"a Chebyshev low-pass of order {order} meets the same edges, 70 Hz and", finding.Help, StringComparison.Ordinal);
    }

    /// <summary>40 Hz and 80 Hz with 0.5 and 60 dB: an elliptic low-pass of order 5 reaches its 60 dB at 71 Hz already, and what has to be met stays 80 Hz. By hand: acosh(√((10⁶ − 1)/0.1220)) = 8.655 over acosh 2 = 1.317 is 6.57, so order 7.</summary>
    [Fact]
    public void Find_EllipticSoughtForEdges_NamesTheChebyshevOfThoseEdges()
    {
        FilterAnswer answer = new FilterWish
        {
            Family = FilterFamily.Elliptic,
            Shape = FilterShape.LowPass,
            Corners = [Frequency.FromHertz(40)],
            StopEdges = [Frequency.FromHertz(80)],
            Ripple = Decibels.FromStated(0.5),
            Attenuation = Decibels.FromStated(60),
        }.Design();
        DesignedSections designed = DesignedSections.Of(answer, new FilterParts());
        Assert.Contains("a Chebyshev low-pass of order 7 meets the same edges, 40 Hz and 80 Hz (at most 0.5 dB and at least 60 dB)", Assert.Single(designed.PartFindings).Help, StringComparison.Ordinal);

        // 60 dB between 40 and 50 Hz: an elliptic of order 8, and a Chebyshev of 13 by hand (8.655/0.693 = 12.5), whose parts are not sought; it is not offered.
        FilterAnswer steep = (answer.Wish with { StopEdges = [Frequency.FromHertz(50)] }).Design();
        string help = Assert.Single(DesignedSections.Of(steep, new FilterParts()).PartFindings).Help!;
        Assert.Contains("is of order 13, above the 8 for which parts are found", help, StringComparison.Ordinal);
    }

    /// <summary>A low-pass of gain 1 has gain 1 at 0 Hz whatever its corner does: no section of one is ever driven by less.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(5)]
    public void Find_ButterworthOfGainOne_HasAtLeastItsGainAtZeroHertz(int order)
    {
        Realisation best = RealisationSearch.Find(Request(new ButterworthPrototype(order), 40)).Best!;
        foreach ((RealisedSection section, int i) in best.Sections.Select((one, i) => (one, i)))
        {
            Stage[] upTo = [.. best.Sections.Take(i + 1).Select(one => one.Stage)];
            double largest = Enumerable.Range(0, 20_001).Max(k => Math.Sqrt(AsBuiltSection.PowerResponse(upTo, 120.0 * k / 20_000)));
            Assert.Equal(largest, section.PeakGain, 1e-6);
            Assert.True(1 - 1e-6 <= section.PeakGain);
        }
    }

    [Fact]
    public void Find_InverseChebyshev_NamesAChebyshevThatMeetsTheSame()
    {
        AnalogFilter target = FilterDesign.Analog(new InverseChebyshevPrototype(5, Decibels.FromStated(50)), new LowPass(Frequency.FromHertz(100)));
        string help = Assert.Single(RealisationSearch.Find(new RealisationRequest { Target = target }).Findings).Help!;
        // For one order the two families have the same half-power and stop edges ratio: acosh(√(10⁵ − 1))/acosh(Ω) is 5 for both.
        Assert.Contains("a Chebyshev low-pass of order 5 meets the same edges", help, StringComparison.Ordinal);
        Assert.Contains("100 Hz", help, StringComparison.Ordinal);
    }

    /// <summary>The equal-component form is what it says: one resistor, one capacitor, and K = 3 − 1/Q to what the series allow; the sensitivities are the classic ones with an ideal op-amp:
    /// R ∓(Q − ½), C ±(2Q − ½), K 3Q − 1 (S. Franco's and the handbooks' table, from memory; derived by differentiating 1/Q = 2√(C2/C1)… and checked by hand).</summary>
    [Theory]
    [InlineData(0.6)]
    [InlineData(1.3)]
    [InlineData(5)]
    public void EqualSection_IdealOpAmp_HasTheClassicSensitivities(double q)
    {
        OpAmp ideal = new() { DcGain = 1e12, GainBandwidth = Frequency.FromHertz(1e15) };
        double k = SectionDesign.EqualGain(q);
        var section = new SallenKeySection
        {
            R1 = Resistance.FromKilohms(22), R2 = Resistance.FromKilohms(22), C1 = Capacitance.FromNanofarads(100), C2 = Capacitance.FromNanofarads(100),
            FeedbackResistor = Resistance.FromOhms((k - 1) * 10e3), GroundResistor = Resistance.FromKilohms(10), OpAmp = ideal,
        };
        (double pole, double? builtQ) = AsBuiltSection.Poles(section);
        Assert.Equal(1 / (2 * Math.PI * 22e3 * 100e-9), pole, 1e-6 * pole);
        Assert.Equal(q, builtQ!.Value, 1e-6 * q);
        Dictionary<string, double> toQ = AsBuiltSection.Sensitivities(section).ToDictionary(s => s.Part, s => s.ToQ!.Value);
        (string Part, double Expected)[] classic =
        [
            ("R1", q - 0.5), ("R2", 0.5 - q), ("C1", (2 * q) - 0.5), ("C2", 0.5 - (2 * q)), ("Rf", ((3 * q) - 1) * (k - 1) / k), ("Rg", -((3 * q) - 1) * (k - 1) / k),
        ];
        Assert.All(classic, one => Assert.Equal(one.Expected, toQ[one.Part], 1e-4 * Math.Max(1, q * q)));
    }

    [Fact]
    public void Find_EqualComponents_AreEqualAndNearest()
    {
        RealisationRequest request = Request(new ButterworthPrototype(4), 40) with { Topology = SectionKind.SallenKeyEqual };
        Realisation best = RealisationSearch.Find(request).Best!;
        Assert.All(best.Stages.Cast<SallenKeySection>(), s =>
        {
            Assert.Equal(s.R1, s.R2);
            Assert.Equal(s.C1, s.C2);
            Assert.NotNull(s.GroundResistor);
        });
        double[] gains = [.. best.Stages.Select(s => s.NominalGain)];
        // 3 − 1/Q of the fourth-order Butterworth, 1.152 and 2.235 (tables of every text).
        Assert.Equal([1.152, 2.235], gains.Order().Select(g => Math.Round(g, 2) == 1.15 ? 1.152 : Math.Round(g, 3)).Select(g => Math.Abs(g - 2.235) < 0.02 ? 2.235 : g));

        // Q ½ needs no gain: a follower, which is the unity-gain section.
        Realisation damped = RealisationSearch.Find(Request(new CriticallyDampedPrototype(2), 40) with { Topology = SectionKind.SallenKeyEqual }).Best!;
        Assert.Null(Assert.IsType<SallenKeySection>(Assert.Single(damped.Stages)).GroundResistor);
    }

    /// <summary>Twin-T and state-variable notches at both mains frequencies: null and Q as built by the response itself, not by the search's own figures.</summary>
    [Theory]
    [InlineData(NotchKind.TwinT, 50, 10)]
    [InlineData(NotchKind.TwinT, 60, 3)]
    [InlineData(NotchKind.TwinT, 50, 0.6)]
    [InlineData(NotchKind.StateVariable, 60, 10)]
    [InlineData(NotchKind.StateVariable, 50, 30)]
    public void NotchSearch_CentreAndQ_AreBuilt(NotchKind kind, double centre, double q)
    {
        (NotchRealisation? built, IReadOnlyList<Finding> findings) = NotchSearch.Find(new NotchRequest { Centre = Frequency.FromHertz(centre), Q = q, Kind = kind });
        Assert.Empty(findings);
        NotchCircuit circuit = built!.Circuit;
        double f0 = circuit.NullHertz();
        Assert.Equal(centre, f0, 0.003 * centre);
        double Half(double f) => Math.Pow(10, -circuit.Loss(f)!.Value / 10) - 0.5;
        double low = MathExtra.Bisect(Half, f0 / 5, f0 * (1 - 1e-6)), high = MathExtra.Bisect(Half, f0 * (1 + 1e-6), f0 * 5);
        Assert.Equal(q, f0 / (high - low), 0.04 * q);
        Assert.Equal(q, built.BuiltQ, 0.03 * q);

        // More tolerance is never better, and the nominal build is inside every corner.
        NotchTolerance tenth = circuit.Corners(0.001, centre, built.FormulaQ), one = circuit.Corners(0.01, centre, built.FormulaQ);
        Assert.True(one.LeastLoss < tenth.LeastLoss && tenth.LeastLoss < circuit.Loss(centre));
        Assert.True(one.LowestQ < tenth.LowestQ && tenth.LowestQ < built.BuiltQ && built.BuiltQ < tenth.HighestQ);
        Assert.True(one.LeastLoss <= circuit.LeastLoss(0.01, 0.01, [centre]) + 1e-9 || one.CanOscillate);
    }

    [Theory]
    [InlineData(NotchKind.TwinT, 0.4)]
    [InlineData(NotchKind.StateVariable, 500)]
    public void NotchSearch_QOutOfReach_IsFinding(NotchKind kind, double q) =>
        Assert.Equal("FE0655", Assert.Single(NotchSearch.Find(new NotchRequest { Centre = Frequency.FromHertz(50), Q = q, Kind = kind }).Findings).Code);

    [Fact]
    public void Find_LimitsTooTight_IsFindingThatNamesTheRatio()
    {
        RealisationRequest request = Request(new ChebyshevPrototype(8, Decibels.FromStated(3)), 70) with { GreatestCapacitor = Capacitance.FromNanofarads(10) };
        (Realisation? best, IReadOnlyList<Finding> findings) = RealisationSearch.Find(request);
        Assert.Null(best);
        Finding finding = findings.Single(f => f.Code is "FE0652");
        Assert.Contains("times the other", finding.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OpAmpMuchTooSlow_IsWarning()
    {
        RealisationRequest request = Request(new ButterworthPrototype(4), 1000) with { OpAmp = OpAmp.MicropowerCmos with { GainBandwidth = Frequency.FromKilohertz(15) } };
        (Realisation? _, IReadOnlyList<Finding> findings) = RealisationSearch.Find(request);
        Assert.Contains(findings, f => f.Code is "FE0653" && f.Severity == Severity.Warning);
    }

    /// <summary>Twenty times Q·f0, no more and no less: 1 kHz and Q 1.3066 of a fourth order want 26.1 kHz.</summary>
    [Theory]
    [InlineData(25.9, true)]
    [InlineData(26.3, false)]
    public void Find_OpAmpAtTheLimit_IsWarnedOfOnlyBelowIt(double kilohertz, bool warned)
    {
        RealisationRequest request = Request(new ButterworthPrototype(4), 1000) with { OpAmp = OpAmp.MicropowerCmos with { GainBandwidth = Frequency.FromKilohertz(kilohertz) } };
        Assert.Equal(warned, RealisationSearch.Find(request).Findings.Any(f => f.Code is "FE0653"));
    }

    /// <summary>Every order of the sections that were chosen: none keeps the largest gain inside lower than the one built.</summary>
    [Fact]
    public void Find_Chebyshev_NoOtherOrderOfItsSectionsIsTamer()
    {
        foreach ((int order, double ripple) in ((int, double)[])[(5, 1), (6, 1), (6, 3), (7, 2)])
        {
            Realisation best = RealisationSearch.Find(Request(new ChebyshevPrototype(order, Decibels.FromStated(ripple)), 70)).Best!;
            Stage[] stages = [.. best.Stages];
            double[] hertz = [.. Enumerable.Range(0, 1501).Select(i => 150.0 * i / 1500)];
            double[][] gains = [.. stages.Select(stage => hertz.Select(f => Math.Sqrt(AsBuiltSection.PowerResponse([stage], f))).ToArray())];
            double Largest(int[] places) => Enumerable.Range(1, places.Length).Max(n => Enumerable.Range(0, hertz.Length).Max(i => places.Take(n).Aggregate(1.0, (gain, place) => gain * gains[place][i])));
            double built = Largest([.. Enumerable.Range(0, stages.Length)]), least = Orders(stages.Length).Min(Largest);
            Assert.Equal(least, built, 1e-4 * built);
        }

        static IEnumerable<int[]> Orders(int count) => count == 0 ? [[]] : Orders(count - 1).SelectMany(rest =>
            Enumerable.Range(0, count).Select(at => (int[])[.. rest[..at], count - 1, .. rest[at..]]));
    }

    private static void AssertWithinLimits(RealisationRequest request, Realisation realisation)
    {
        foreach (Stage stage in realisation.Stages)
        {
            (Resistance[] resistors, Capacitance[] capacitors) = stage switch
            {
                RcSection s => ((Resistance[])[s.R], (Capacitance[])[s.C]),
                SallenKeySection s => ([s.R1, s.R2], [s.C1, s.C2]),
                MultipleFeedbackSection s => ([s.R1, s.R2, s.R3], [s.C1, s.C2]),
                _ => throw new InvalidOperationException(stage.GetType().Name),
            };
            // A rounded value may lie one step beyond the limit of the exact one.
            Assert.All(resistors, r => Assert.True(PreferredValues.IsMember(r.Ohms, request.ResistorSeries) && 0.97 * request.LeastResistor.Ohms <= r.Ohms && r.Ohms <= 1.03 * request.GreatestResistor.Ohms, $"{r}"));
            Assert.All(capacitors, c => Assert.True(PreferredValues.IsMember(c.Farads * 1e12, request.CapacitorSeries) && request.LeastCapacitor.Farads <= c.Farads * 1.0001 && c.Farads <= request.GreatestCapacitor.Farads * 1.0001, $"{c}"));
        }
    }
}
