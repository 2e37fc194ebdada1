using System.Numerics;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>What a chain of stages adds by itself: noise and dc offset at its output.</summary>
/// <remarks>Resistors 4kT/R, op-amps en²·(1 + fc/f) and in²·(1 + fc/f) by the solved network of each stage, times the response of the
/// stages behind it. Offset: Vos of each op-amp and its bias current through the resistors at its inputs, worst signs. Derived.</remarks>
internal static class FilterNoise
{
    private const double Tolerance = 1e-6;

    /// <summary>Noise at the output of the last stage with the input shorted, rms over a band.</summary>
    public static VoltageRms Over(IReadOnlyList<Stage> stages, Frequency low, Frequency high, Temperature board)
    {
        StageModel[] models = [.. stages.Select(stage => new StageModel(stage, board))];
        StageLanes[] chain = [.. models.Select(model => new StageLanes(model, isChecked: true))];
        for (int i = 0; i < chain.Length; i++)
        {
            chain[i].Set(new StageBuildLanes(models[i]));
        }

        double[] breaks = BreakPoints.Between([low.Hertz, high.Hertz], BreakPoints.Of(stages.Select(stage => stage.Circuit())), 3);
        BandIntegral integral = BandIntegral.Over(breaks, 1, (hertz, values) => Density(chain, hertz, values[0]), Tolerance);
        return VoltageRms.FromVolts(Math.Sqrt(integral.Sum(0)));
    }

    /// <summary>Largest dc error at the output of the last stage: every op-amp's offset and bias current with the worst signs.</summary>
    public static Voltage Offset(IReadOnlyList<Stage> stages)
    {
        double sum = 0;
        foreach (Stage stage in stages)
        {
            (double gain, double own) = LevelsBudget.StageDc(stage);
            sum = (sum * gain) + own;
        }

        return Voltage.FromVolts(sum);
    }

    private static void Density(StageLanes[] chain, ReadOnlySpan<double> hertz, double[] density)
    {
        Span<double> group = stackalloc double[Vector<double>.Count];
        for (int first = 0; first < hertz.Length; first += group.Length)
        {
            group.Fill(hertz[^1]);
            hertz.Slice(first, Math.Min(group.Length, hertz.Length - first)).CopyTo(group);
            Vector<double> lanes = new(group), sum = Vector<double>.Zero;
            foreach (StageLanes stage in chain)
            {
                stage.Solve(lanes);
                stage.SolveNoise(lanes);
                sum = (sum * stage.Transfer.Power) + stage.Noise;
            }

            sum.CopyTo(density, first);
        }
    }
}
