using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Text;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>Integrals over narrow responses against a plain sum over very many frequencies.</summary>
public sealed class NarrowIntegralTests
{
    private const double Low = 0.5, High = 100, Fine = 4e-4;

    /// <summary>A stop of 0.6 Hz with walls so steep that nothing of it is seen three hertz away, given as rows of coefficients, which say nothing of where it is.</summary>
    private static Design Stop { get; } = new()
    {
        Band = new Band("", Frequency.FromHertz(Low), Frequency.FromHertz(High)),
        Stages = [],
        Digital = [new DigitalSections { Name = "stop", Rows = [.. DigitalChain.Realise(new DigitalBandStop { Order = 8, Low = Frequency.FromHertz(66.4), High = Frequency.FromHertz(67) }, Frequency.FromHertz(250)).Sections.Select(Row)] }],
        Interferers = [new Interferer("muscle", Frequency.FromHertz(20), Frequency.FromHertz(240), VoltageRms.FromMicrovolts(20))],
    };

    private static IReadOnlyList<double> Row(Biquad one) => [one.B0, one.B1, one.B2, 1, one.A1, one.A2];

    /// <summary>A digital resonance: poles 2 mHz from the circle, gain 1 at dc.</summary>
    private static Design Peak { get; } = Stop with { Digital = [new DigitalSections { Name = "peak", Rows = [Resonance(43.21, 2e-3)] }] };

    private static IReadOnlyList<double> Resonance(double hertz, double width)
    {
        double r = Math.Exp(-2 * Math.PI * width / 250), a1 = -2 * r * Math.Cos(2 * Math.PI * hertz / 250), a2 = r * r;
        return [1 + a1 + a2, 0, 0, 1, a1, a2];
    }

    public static IEnumerable<TheoryDataRow<string>> Names => ["stop", "peak", "analogue notch"];

    private static Design Of(string name) => name switch
    {
        "stop" => Stop,
        "peak" => Peak,
        _ => Stop with { Digital = [], Stages = [TwinT(18.95)] },
    };

    private static TwinTNotch TwinT(double feedback) => new() { Name = "notch", FeedbackResistor = Resistance.FromKilohms(feedback) };

    [Theory]
    [MemberData(nameof(Names))]
    public void Noise_OfANarrowResponse_IsThePlainSum(string name)
    {
        Design design = Of(name);
        var evaluation = new Evaluation(design);
        double half = design.Converter.Rate.Hertz / 2, lsb = design.Converter.LsbVolts, own = design.Converter.NoiseVolts;
        double flat = ((lsb * lsb / 12) + (own * own)) / half, sum = Sum(Low, High, (f, lane) =>
            evaluation.Digital.Power(f) * ((evaluation.Path.Density[lane] * Square(design.Converter.Response(f))) + evaluation.Noise.Folds.At(f) + flat));
        double plain = Math.Sqrt(sum) / evaluation.GainMid;
        Assert.Equal(plain, evaluation.Noise.Total, 1e-6 * plain);
        Assert.True(evaluation.Noise.Converged);

        double Sum(double low, double high, Func<double, int, double> integrand) => NarrowIntegralTests.Sum(evaluation, low, high, integrand);
    }

    /// <summary>What of the muscles' noise stays in the band: where it is from 20 Hz on, and what lands there from beyond half the rate.</summary>
    [Theory]
    [InlineData("stop")]
    [InlineData("peak")]
    public void Interferer_ThroughANarrowResponse_IsThePlainSum(string name)
    {
        Design design = Of(name);
        var evaluation = new Evaluation(design);
        var list = new ResultList();
        List<FrontEnd.Findings.Finding> findings = [];
        AliasReport.AddTo(list, findings, evaluation);
        double density = 400e-12 / 220;
        double direct = Math.Sqrt(density * Sum(evaluation, 20, High, Left)), folded = Math.Sqrt(density * Sum(evaluation, 150, 240, Left));
        Assert.Equal(direct, list[new("alias.muscle.in_band")].Si, 1e-6 * direct);
        Assert.Equal(folded, list[new("alias.muscle.residue")].Si, 1e-6 * folded);
        Assert.DoesNotContain(findings, finding => finding.Code == Messages.IntegralNotConverged);

        double Left(double f, int lane) => evaluation.Digital.Power(Folding.LandsAt(f, 250)) * Square(evaluation.Path.Size(evaluation.Path.Nodes - 1, lane) * design.Converter.Response(f) / evaluation.GainMid);
    }

    /// <summary>A bend as narrow as a part in ten thousand has cuts on both flanks, and those of a wide one are few.</summary>
    [Fact]
    public void Cuts_OfAPole_StandAtItsDistanceFromTheCircle()
    {
        var narrow = new SecondOrderSections([Resonance(40, 0.004) is var row ? new Biquad(row[0], 0, 0, row[4], row[5]) : default]);
        double[] cuts = BreakPoints.Between([1, 100], BreakPoints.Of(narrow, 250), 3);
        foreach (double wanted in (double[])[40 - 1.024, 40 - 0.064, 40 - 0.004, 40, 40 + 0.004, 40 + 0.064, 40 + 1.024])
        {
            Assert.Contains(cuts, cut => Math.Abs(cut - wanted) < 1e-3);
        }

        Assert.All(cuts.Zip(cuts.Skip(1)), pair => Assert.True(pair.Second / pair.First < 3.001));
        var wide = new SecondOrderSections([new Biquad(1, 0, 0, -0.9, 0)]);
        Assert.True(BreakPoints.Between([1, 100], BreakPoints.Of(wide, 250), 3).Length <= 8);
    }

    private static double Square(double x) => x * x;

    /// <summary>The middles of very many equal steps.</summary>
    private static double Sum(Evaluation evaluation, double low, double high, Func<double, int, double> integrand)
    {
        int steps = (int)((high - low) / Fine);
        double sum = 0, width = (high - low) / steps;
        var hertz = new double[SignalPath.Chunk];
        for (int first = 0; first < steps; first += hertz.Length)
        {
            int n = Math.Min(hertz.Length, steps - first);
            for (int i = 0; i < n; i++)
            {
                hertz[i] = low + ((first + i + 0.5) * width);
            }

            evaluation.Path.Sweep(hertz.AsSpan(0, n));
            for (int i = 0; i < n; i++)
            {
                sum += integrand(hertz[i], i) * width;
            }
        }

        return sum;
    }
}
