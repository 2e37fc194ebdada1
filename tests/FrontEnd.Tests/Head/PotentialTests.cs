using System.Globalization;
using FrontEnd.Head;
using FrontEnd.Quantities;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Head;

/// <summary>Potentials, shares and background against figures of an independent program.</summary>
public class PotentialTests
{
    private static readonly HeadModel Head = new(HeadSphere.Of(
        new HeadSize(Length.FromCentimetres(36), Length.FromCentimetres(37), Length.FromCentimetres(56)))!);

    private static readonly BackgroundActivity Usual = new();

    public static TheoryData<string> Cases =>
        [.. File.ReadLines(Path.Combine(ReferenceTable.Folder, "head", "potentials.dat")).Where(line => !line.StartsWith('#'))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Figure_OfTheIndependentProgram_Agrees(string line)
    {
        string[] cells = line.Split(';');
        string[][] inputs = [.. cells[2].Split('|').Select(part => part.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        double[] expected = [.. cells[3].Split(' ').Select(Number)];
        double[] actual = cells[1] switch
        {
            "transfer" => [.. inputs[0].Select(n => Head.Conductor.Shells.Transfer((int)Number(n)))],
            "dipole" => [Dipole(inputs)],
            "cap" => Caps(Number(inputs[0][0]), [.. inputs[1].Select(n => (int)Number(n))]),
            "patch" => [Head.Potential(Patch(inputs[0]), Density(inputs[0][2]), At(inputs[1][0])).Volts * 1e6],
            "half angle" => [Head.HalfAngle(Area.FromSquareCentimetres(Number(inputs[0][0]))).Degrees],
            "kept" => [View(inputs[0], inputs[1][0]).Channels[0].Kept!.Value.Fraction],
            "half region" => [Points(Number(inputs[0][0]), inputs[1][0])],
            "background" => [Head.Correlation(Usual, SpherePoint.At(0, 0), SpherePoint.At(Radians(inputs[0][0]), 1))],
            "correlation" => [Correlation(inputs)],
            "snr" => [View(inputs[0], inputs[2][0], inputs).Channels[0].SignalToNoise!.Value],
            _ => throw new InvalidDataException(line),
        };
        double allowed = cells[1] is "half region" ? 2 : 0;
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), pair => Assert.True(
            Math.Abs(pair.First - pair.Second) <= Math.Max(allowed, 1e-9 * Math.Abs(pair.First)), $"{line}: {pair.Second:r}"));
    }

    private static double Dipole(string[][] inputs)
    {
        Shells shells = inputs[0][0] is "one" ? Shells.Of([1], [Conductivity.FromSiemensPerMetre(0.33)])! : Shells.Of(ShellSet.Four);
        double radius = Number(inputs[0][1]);
        SpherePoint source = Point(inputs[1]), moment = Point(inputs[2]);
        SpherePoint site = inputs[3] is [var angle] ? new(0, Math.Sin(Radians(angle)), Math.Cos(Radians(angle))) : Point(inputs[3]);
        double depth = Size(source), size = Size(moment);
        return new VolumeConductor(Length.FromCentimetres(radius), shells).Potential(depth / radius, (1 / depth) * source,
            DipoleMoment.FromNanoampereMetres(size), (1 / size) * moment, site).Volts * 1e6;
    }

    private static double[] Caps(double area, int[] orders)
    {
        double[] factors = new double[orders.Max()];
        SourcePotentials.CapFactors(SourcePotentials.CapCosine(Head.Conductor, Area.FromSquareCentimetres(area)), factors);
        return [.. orders.Select(n => factors[n - 1])];
    }

    private static double Points(double area, string derivation) =>
        new HalfRegion(Head.Conductor, Area.FromSquareCentimetres(area))
            .Count([.. Derived(derivation).Weights.Select(one => (Head.Place(one.Site), one.Weight))]);

    private static double Correlation(string[][] inputs)
    {
        Derivation[] channels = [.. inputs[1].Select(Derived)];
        return new BackgroundField(Head, Usual, channels).Correlation(channels[0], channels[1],
            VoltageRms.FromMicrovolts(Number(inputs[0][0])), VoltageRms.FromMicrovolts(Number(inputs[0][1])));
    }

    private static SourceView View(string[] patch, string channel, string[][]? stated = null)
    {
        Derivation derivation = Derived(channel);
        RhythmStatement? statement = stated is null ? null
            : new(Derived(stated[1][1]), Voltage.FromMicrovolts(Number(stated[1][0])), AmplitudeKind.PeakToPeak);
        (double low, double high) = stated is null ? (8, 13) : (Number(stated[3][0]), Number(stated[3][1]));
        VoltageRms? noise = stated is null ? null : VoltageRms.FromMicrovolts(Number(stated[4][0]) * Math.Sqrt(derivation.PowerSum));
        return new SourceView(Head, new SourceQuestion("", Patch(patch), statement, Frequency.FromHertz(low), Frequency.FromHertz(high)),
            new BackgroundField(Head, Usual, [derivation]), [new NoisyChannel(derivation, noise)]);
    }

    private static GyralPatch Patch(string[] cells) => new(At(cells[0]), Area.FromSquareCentimetres(Number(cells[1])));

    private static DipoleDensity Density(string text) => DipoleDensity.FromNanoampereMetresPerSquareMillimetre(Number(text));

    private static Derivation Derived(string text) => Derivation.Parse(text, [], out _)!;

    private static SpherePoint At(string site) => Head.Place(Sites.Find(site)!);

    private static SpherePoint Point(string[] cells) => new(Number(cells[0]), Number(cells[1]), Number(cells[2]));

    private static double Size(SpherePoint point) => Math.Sqrt((point.X * point.X) + (point.Y * point.Y) + (point.Z * point.Z));

    private static double Radians(string degrees) => Number(degrees.TrimEnd('°')) * Math.PI / 180;

    private static double Number(string text) =>
        text.Split('/') is [var over, var under] ? Number(over) / Number(under) : double.Parse(text, CultureInfo.InvariantCulture);
}
