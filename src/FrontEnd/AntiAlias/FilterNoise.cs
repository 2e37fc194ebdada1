using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Networks;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>What a chain of stages adds by itself: noise and dc offset at its output.</summary>
/// <remarks>Resistors 4kT/R, op-amps en²·(1 + fc/f) and in²·(1 + fc/f) by the solved network of each stage, times the response of the stages behind it. Offset: Vos of each op-amp and its bias current through the resistors at its inputs,
/// worst signs. Derived.</remarks>
public static class FilterNoise
{
    private const double Tolerance = 1e-6;

    /// <summary>Noise at the output of the last stage with the input shorted, rms over a band.</summary>
    public static VoltageRms Over(IReadOnlyList<Stage> stages, Frequency low, Frequency high, Temperature board)
    {
        StageModel[] models = [.. stages.Select(stage => new StageModel(stage, board))];
        NetworkSweep[] sweeps = [.. models.Select(model => model.Program.CreateSweep(SignalPath.Chunk))];
        List<double> breaks = [low.Hertz];
        for (double f = low.Hertz * 3; f < high.Hertz / 1.5; f *= 3)
        {
            breaks.Add(f);
        }

        breaks.Add(high.Hertz);
        BandIntegral integral = BandIntegral.Over([.. breaks], 1, (hertz, values) => Density(models, sweeps, hertz, values[0]), Tolerance);
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

    private static void Density(StageModel[] models, NetworkSweep[] sweeps, ReadOnlySpan<double> hertz, double[] density)
    {
        Array.Clear(density);
        for (int at = 0; at < models.Length; at++)
        {
            StageModel model = models[at];
            NetworkSweep sweep = sweeps[at];
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                sweep.Omega[lane] = 2 * Math.PI * hertz[lane];
            }

            sweep.SolveAdjoint(hertz.Length, 1);
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                double f = hertz[lane];
                double own = 0;
                foreach ((int port, double level) in model.Resistors)
                {
                    own += level * Power(sweep.Transfer(0, port, lane));
                }

                if (model.OpAmp is { } opAmp)
                {
                    double voltage = opAmp.VoltageNoise.VoltsPerRootHertz, current = opAmp.CurrentNoise.AmperesPerRootHertz;
                    foreach (int port in model.VoltagePorts)
                    {
                        own += voltage * voltage * (1 + (opAmp.NoiseCorner.Hertz / f)) * Power(sweep.Transfer(0, port, lane));
                    }

                    foreach (int port in model.CurrentPorts)
                    {
                        own += current * current * (1 + (opAmp.CurrentNoiseCorner.Hertz / f)) * Power(sweep.Transfer(0, port, lane));
                    }
                }

                density[lane] = (density[lane] * Power(sweep.Transfer(0, model.SignalPort, lane))) + own;
            }
        }
    }

    private static double Power(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
}
