using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Inputs;
using FrontEnd.Reporting;

namespace FrontEnd.Spread;

/// <summary>Dc at the path's nodes over many builds: what a meter finds at the test points of a board at rest.</summary>
/// <remarks>The formulas are those of the levels (<see cref="LevelLanes"/>), of which dc alone is worked out: no frequency is solved, so that
/// some hundred builds cost less than one evaluation. Offset voltages and bias currents are counted by size, every sign the worst, as their
/// signs are not known; what has a range on its card is drawn in it.</remarks>
internal static class DirectSpread
{
    /// <summary>Builds that are drawn: the 1 % and the 99 % lie some five builds from the ends.</summary>
    public const int Builds = 512;

    private const double Low = 0.01, High = 0.99;

    /// <summary>Dc at every node that can clip, without the electrodes' offset.</summary>
    /// <param name="design">A design with one kind of channel that can be evaluated, with whatever is put into its electrodes' place.</param>
    public static IReadOnlyList<NodeDc> Of(Design design)
    {
        design = DesignFields.WithoutStaleRanges(design);
        SpreadOptions options = new() { Builds = Builds };
        var parts = new PartList(design, options);
        PathModel model = new Evaluation(design, BuiltParts.Balanced(design)).Path.Model;
        var drawn = new DrawnBuilds(design, parts, model, SpreadPlace.Electrodes, SpreadPlace.Leads, SpreadPlace.Surroundings);
        var path = new PathLanes(model, isChecked: false, null);
        var levels = new LevelLanes(design);
        double[] nominal = Nodes(drawn.Nominal);
        double[][] sizes = [.. levels.Ids.Select(_ => new double[Builds])], factors = SpreadRun.Draw(parts, options, Builds);
        for (int first = 0; first < Builds; first += Vector<double>.Count)
        {
            drawn.Put(factors, first);
            Nodes(drawn.Lanes);
            for (int node = 0; node < sizes.Length; node++)
            {
                levels.Nodes[node].OtherDc.CopyTo(sizes[node], first);
            }
        }

        return [.. levels.Ids.Select((id, node) => new NodeDc(id, Voltage.FromVolts(nominal[node]), At(sizes[node], Low), At(sizes[node], High)))];

        double[] Nodes(BuildLanes builds)
        {
            path.Set(builds);
            levels.Add(builds, DirectLanes.At(path.Input, design, builds));
            var size = new double[levels.Ids.Count];
            for (int node = 0; node < size.Length; node++)
            {
                size[node] = levels.Nodes[node].OtherDc[0];
            }

            return size;
        }
    }

    private static Voltage At(double[] values, double share)
    {
        Array.Sort(values);
        double at = (values.Length - 1) * share;
        int below = (int)at;
        double above = values[Math.Min(below + 1, values.Length - 1)];
        return Voltage.FromVolts(values[below] + ((at - below) * (above - values[below])));
    }
}

/// <summary>What offset voltages and bias currents make at a node, by size, against the mid-supply.</summary>
/// <param name="Node">Which.</param>
/// <param name="Nominal">Of the design as it stands.</param>
/// <param name="Low">One build in a hundred has less.</param>
/// <param name="High">One build in a hundred has more.</param>
internal sealed record NodeDc(NodeId Node, Voltage Nominal, Voltage Low, Voltage High);
