using System.Globalization;
using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Quantities;
using FrontEnd.Tests.Reference;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Topologies;

/// <summary>Each topology against its own table: transfer, noise, gain and errors at dc of its netlist, solved by another program.</summary>
public sealed class TopologyTableTests
{
    private static readonly Temperature Board = Temperature.FromKelvins(298.15);

    public static TheoryData<string> Names => [.. TopologyCatalogue.Variants.Select(Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Stage_EveryCaseOfItsTable_IsTheNetlist(string name)
    {
        Variant variant = TopologyCatalogue.Variants.Single(one => Name(one) == name);
        string[][] rows = [.. File.ReadLines(Path.Combine(ReferenceTable.Folder, "topologies", name + ".csv")).Where(line => !line.StartsWith('#')).Select(line => line.Split(';'))];
        Assert.True(4 <= rows.Count(row => row[0] == "case"), "the table has no four cases");
        Stage? stage = null;
        foreach (string[] row in rows)
        {
            switch (row[0])
            {
                case "case":
                    Assert.Equal((variant.Kind, variant.Topology ?? ""), (row[1], row[2]));
                    stage = Build(variant, row[3..]);
                    break;
                case "transfer":
                    Near(new Complex(Number(row[2]), Number(row[3])), Transfer(stage!, Number(row[1]), 0), row);
                    break;
                case "inner":
                    int inner = new StageModel(stage!, Board).InnerNodes.ToList().IndexOf(row[1]);
                    Near(new Complex(Number(row[3]), Number(row[4])), Transfer(stage!, Number(row[2]), 1 + inner), row);
                    break;
                case "noise":
                    Assert.Equal(Number(row[2]), Noise(stage!, Number(row[1])), 1e-8 * Number(row[2]));
                    break;
                case "dc":
                    Circuit circuit = stage!.Circuit();
                    CircuitDc dc = new CircuitDc(circuit).Solve(CircuitDc.Nominal);
                    string node = row[1] == "out" ? circuit.Output : row[1];
                    Assert.Equal(Number(row[2]), dc.Gain(node)[0], 1e-9 * (1 + Number(row[2])));
                    Assert.Equal(Number(row[3]), dc.Own(node)[0], 1e-9 * (1e-3 + Number(row[3])));
                    Assert.True(row[1] != "out" || row[2] == "0" == circuit.IsAcCoupled);
                    break;
                default:
                    Assert.Fail($"unknown row {row[0]}");
                    break;
            }
        }
    }

    private static string Name(Variant variant) => variant.Topology ?? variant.Kind;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Stage Build(Variant variant, IEnumerable<string> values) => (Stage)values.Select(pair => pair.Split('='))
        .Aggregate(variant.Create(), (stage, pair) => variant.Fields.Single(field => field.Key == pair[0]).WithSiValue(stage, Number(pair[1])));

    private static NetworkSweep Solved(StageModel model, double hertz)
    {
        NetworkSweep sweep = model.Program.CreateSweep(1);
        sweep.Omega[0] = 2 * Math.PI * hertz;
        sweep.SolveAdjoint(1, 1 + model.InnerNodes.Count);
        return sweep;
    }

    private static void Near(Complex wanted, Complex found, string[] row) =>
        Assert.True(Complex.Abs(found - wanted) <= 1e-8 * Complex.Abs(wanted), $"{string.Join(';', row)}: {found}, not {wanted}");

    private static Complex Transfer(Stage stage, double hertz, int output)
    {
        var model = new StageModel(stage, Board);
        return Solved(model, hertz).Transfer(output, model.SignalPort, 0);
    }

    private static double Noise(Stage stage, double hertz)
    {
        var model = new StageModel(stage, Board);
        NetworkSweep sweep = Solved(model, hertz);
        double Power(int port) => Math.Pow(Complex.Abs(sweep.Transfer(0, port, 0)), 2);
        double sum = model.Resistors.Sum(resistor => resistor.Density * Power(resistor.Port));
        if (model.OpAmp is { } opAmp)
        {
            sum += model.VoltagePorts.Sum(Power) * Math.Pow(opAmp.VoltageNoise.VoltsPerRootHertz, 2) * (1 + (opAmp.NoiseCorner.Hertz / hertz));
            sum += model.CurrentPorts.Sum(Power) * Math.Pow(opAmp.CurrentNoise.AmperesPerRootHertz, 2) * (1 + (opAmp.CurrentNoiseCorner.Hertz / hertz));
        }

        return sum;
    }
}
