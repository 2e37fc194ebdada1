using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>A remark tells what went wrong in this question, at the value that this mistake leads to.</summary>
public class SlipTests
{
    public static TheoryData<string> Numeric => TemplateTests.Numeric;

    /// <summary>Mistakes made by hand from the printed values, each with a word of the remark that must come back.</summary>
    private static readonly (string Template, string Says, Func<Func<string, double>, double> Mistake)[] Made =
    [
        ("filter-sallen-key-q", "capacitors were exchanged", g => Math.Sqrt(g("R₁") * g("R₂") * g("C₁") * g("C₂")) / ((g("R₁") + g("R₂")) * g("C₁"))),
        ("filter-sallen-key-q", "equal resistors", g => 0.5 * Math.Sqrt(g("C₁") / g("C₂"))),
        ("electrode-pair-noise", "one electrode", g => SecondWays.All["electrode-pair-noise"].Answer(g) / Math.Sqrt(2)),
        ("noise-peak-to-peak", "taken for the peak and doubled", g => 2 * g("σ")),
        ("safety-current", "neither the battery nor the skin", g => g("V_bat") / (g("R") + g("R_skin"))),
        ("safety-current", "skin and electrode count as 0 Ω", g => g("V_max") / (g("R") + g("R_skin"))),
        ("safety-current", "the highest voltage in the box", g => g("V_bat") / g("R")),
        ("gain-stage", "resistors were exchanged", g => 1 + (g("Rg") / g("Rf"))),
        ("noise-corner", "white part", g => g("f₁") * Math.Pow(g("e₁") / g("e"), 2)),
        ("notch-ring", "π was left out", g => Math.PI * SecondWays.All["notch-ring"].Answer(g)),
        ("notch-ring", "not Q/(2π·f0)", g => SecondWays.All["notch-ring"].Answer(g) / 2),
        ("electrode-impedance", "2π", g => (g("R_s") + (1 / ((1 / g("R_d")) + new System.Numerics.Complex(0, g("f") * g("C_d"))))).Magnitude),
        ("drive-margin", "pole at f2", g => 90 - (Math.Atan(Crossing(g) / g("f₁")) * 180 / Math.PI)),
        ("sampling-fold-frequency", "comes first", g => g("f_s") + g("f₂")),
        ("chain-mains", "only the amplifier's rejection", g => 2 * Math.PI * g("f") * g("C_p") * g("V") * g("Z_g") * Math.Pow(10, -g("CMRR") / 20)),
        ("converter-ideal-ratio", "stays below", g => (6.02 * g("N")) + 1.76),
    ];

    [Fact]
    public void Remark_OfAMistakeMadeByHand_TellsThatMistake()
    {
        foreach ((string template, string says, Func<Func<string, double>, double> mistake) in Made)
        {
            int told = 0;
            foreach (Problem problem in Drawn.Of(template))
            {
                Dictionary<string, double> values = PrintedValues.Of(problem);
                double wrong = mistake(symbol => values[symbol]);
                if (problem.Slips.FirstOrDefault(slip => slip.Low <= wrong && wrong <= slip.High) is { } slip)
                {
                    told++;
                    Assert.Contains(says, slip.Kind.Remark, StringComparison.Ordinal);
                }
            }

            Assert.True(Drawn.Seeds / 10 <= told, $"{template}, {says}: told {told} times");
        }
    }

    /// <summary>No answer belongs to two slips, and none of them to the right answer.</summary>
    [Theory]
    [MemberData(nameof(Numeric))]
    public void Ranges_OfAnswerAndSlips_DoNotMeet(string id)
    {
        foreach (Problem problem in Drawn.Of(id))
        {
            QuantityAnswer answer = (QuantityAnswer)problem.Answer;
            (double Low, double High)[] ranges = [(answer.Low, answer.High), .. problem.Slips.Select(slip => (slip.Low, slip.High))];
            Array.Sort(ranges);
            Assert.All(ranges.Zip(ranges.Skip(1)), pair => Assert.True(pair.First.High < pair.Second.Low, $"{pair.First} meets {pair.Second}"));
            Assert.All(problem.Slips, slip => Assert.InRange(slip.Value, slip.Low, slip.High));
        }
    }

    /// <summary>A code stands for one mistake, whatever it is told together with.</summary>
    [Fact]
    public void Codes_OfAllTemplates_HaveOneRemarkEach()
    {
        foreach (IGrouping<string, string> remarks in TemplateSet.All.SelectMany(template => Drawn.Of(template.Id)).SelectMany(problem => problem.Slips)
            .GroupBy(slip => slip.Kind.Code, slip => slip.Kind.Remark.Split("; or: ")[0]))
        {
            Assert.Single(remarks.Distinct());
        }
    }

    private static double Crossing(Func<string, double> g)
    {
        double low = 1, high = g("f_u");
        for (int i = 0; i < 100; i++)
        {
            double f = Math.Sqrt(low * high);
            double gain = g("f_u") / f / Math.Sqrt(1 + Math.Pow(f / g("f₁"), 2)) / Math.Sqrt(1 + Math.Pow(f / g("f₂"), 2));
            (low, high) = 1 < gain ? (f, high) : (low, f);
        }

        return low;
    }
}
