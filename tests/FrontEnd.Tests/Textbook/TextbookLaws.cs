using System.Numerics;
using System.Reflection;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Textbook;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Textbook;

/// <summary>Laws of the textbook formulas.</summary>
public class TextbookLaws
{
    internal static readonly MethodInfo[] Formulas = [.. typeof(TextbookFigure).Assembly.GetTypes()
        .Where(type => type.IsPublic && type.Namespace is "FrontEnd.Textbook" && type.Name.EndsWith("Formulas", StringComparison.Ordinal))
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))];

    [Property(MaxTest = 300)]
    public void Formulas_AnyPositiveInputs_GiveANumberWithItsText(int seed)
    {
        Random random = new(seed);
        foreach (MethodInfo formula in Formulas)
        {
            object?[] inputs = Inputs(formula, random);
            TextbookFigure figure = (TextbookFigure)formula.Invoke(null, inputs)!;
            string call = $"{formula.DeclaringType!.Name}.{formula.Name}({string.Join(", ", inputs)})";
            Assert.False(double.IsNaN(figure.Value), call);
            Assert.EndsWith(" = " + QuantityText.Format(figure.Value, figure.Unit, 4), figure.Substituted, StringComparison.Ordinal);
            Assert.DoesNotContain("no number", figure.Substituted, StringComparison.Ordinal);
        }
    }

    [Property]
    public void Together_AddingASource_NeverLowersTheTotal(int seed)
    {
        Random random = new(seed);
        VoltageRms[] parts = [.. Enumerable.Range(0, 1 + random.Next(8)).Select(_ => VoltageRms.FromVolts(Positive(random, -9, -3)))];
        double before = NoiseFormulas.Together(parts[..^1]).Value;
        double after = NoiseFormulas.Together(parts).Value;
        Assert.True(before <= after && parts.Max(part => part.Volts) <= after * (1 + 1e-15));
    }

    [Property]
    public void BandNoise_OfABandCutInTwo_AddsInSquares(int seed)
    {
        Random random = new(seed);
        double[] edges = [.. Enumerable.Range(0, 3).Select(_ => Positive(random, -2, 4)).Order()];
        (Frequency low, Frequency cut, Frequency high) = (Frequency.FromHertz(edges[0]), Frequency.FromHertz(edges[1]), Frequency.FromHertz(edges[2]));
        (Resistance r, Capacitance c, Temperature t) = (Resistance.FromOhms(Positive(random, 2, 8)), Capacitance.FromFarads(Positive(random, -12, -6)), Temperature.FromKelvins(300));
        Frequency corner = Frequency.FromHertz(Positive(random, -1, 4));
        Cut((a, b) => NoiseFormulas.Thermal(r, t, a, b).Value);
        Cut((a, b) => NoiseFormulas.ThermalParallelRc(r, c, t, a, b).Value);
        Cut((a, b) => NoiseFormulas.Amplifier(VoltageNoiseDensity.FromNanovoltsPerRootHertz(50), corner, a, b).Value);
        Cut((a, b) => NoiseFormulas.Excess(ExcessNoise.FromVoltsSquaredPerHertz(1e-12), 2, a, b).Value);
        Cut((a, b) => NoiseFormulas.Excess(ExcessNoise.FromVoltsSquaredPerHertz(1e-12), 1, a, b).Value);

        void Cut(Func<Frequency, Frequency, double> noise)
        {
            double whole = Math.Pow(noise(low, high), 2);
            double sum = Math.Pow(noise(low, cut), 2) + Math.Pow(noise(cut, high), 2);
            Assert.True(Math.Abs(whole - sum) <= 1e-9 * whole, $"{whole:r} {sum:r}");
        }
    }

    [Property]
    public void ThermalParallelRc_AnyBand_IsBelowTheResistorAndTheCapacitorAlone(int seed)
    {
        Random random = new(seed);
        (Frequency low, Frequency high) = Band(random);
        (Resistance r, Capacitance c, Temperature t) = (Resistance.FromOhms(Positive(random, 2, 8)), Capacitance.FromFarads(Positive(random, -12, -6)), Temperature.FromKelvins(300));
        double noise = NoiseFormulas.ThermalParallelRc(r, c, t, low, high).Value;
        Assert.True(noise <= NoiseFormulas.Thermal(r, t, low, high).Value * (1 + 1e-12));
        Assert.True(noise <= NoiseFormulas.CapacitorLimit(c, t).Value * (1 + 1e-12));
    }

    [Property]
    public void Rejections_OfAnyParts_WorstCaseIsBelowRootSumIsBelowTheLeast(int seed)
    {
        Random random = new(seed);
        Decibels[] parts = [.. Enumerable.Range(0, 1 + random.Next(5)).Select(_ => Decibels.FromStated(20 + (100 * random.NextDouble())))];
        double worst = MainsFormulas.RejectionsWorstCase(parts).Value;
        double root = MainsFormulas.RejectionsRootSum(parts).Value;
        Assert.True(worst <= root + 1e-9 && root <= parts.Min(part => part.Value) + 1e-9);
    }

    [Property]
    public void LandsAt_AnyFrequency_IsBelowHalfTheRateAndRepeatsWithIt(int seed)
    {
        Random random = new(seed);
        (double f, double rate) = (Positive(random, -1, 5), Positive(random, 1, 4));
        double lands = Lands(f);
        Assert.True(0 <= lands && lands <= rate / 2 * (1 + 1e-12));
        double allowed = 1e-9 * (f + (7 * rate));
        Assert.True(Math.Abs(lands - Lands(f + (7 * rate))) <= allowed, "a whole number of rates higher");
        Assert.True(Math.Abs(lands - Lands(Math.Abs((7 * rate) - f))) <= allowed, "mirrored at the seventh multiple");

        double Lands(double hertz) => FilterFormulas.LandsAt(Frequency.FromHertz(hertz), Frequency.FromHertz(rate)).Value;
    }

    [Property]
    public void DrivenGround_AnotherPole_NeverRaisesCrossingOrMargin(int seed)
    {
        Random random = new(seed);
        Frequency unity = Frequency.FromHertz(Positive(random, 2, 5));
        Frequency[] poles = [.. Enumerable.Range(0, 1 + random.Next(4)).Select(_ => Frequency.FromHertz(Positive(random, 2, 6)))];
        double before = MainsFormulas.DrivenGroundCrossing(unity, poles[..^1]).Value;
        double after = MainsFormulas.DrivenGroundCrossing(unity, poles).Value;
        Assert.True(after <= before * (1 + 1e-12) && before <= unity.Hertz * (1 + 1e-12));

        // At the crossing the loop gain is 1.
        double gain = unity.Hertz / after / poles.Aggregate(1.0, (product, pole) => product * Math.Sqrt(1 + Math.Pow(after / pole.Hertz, 2)));
        Assert.Equal(1, gain, 9);
    }

    [Property]
    public void Montage_ReferenceInEveryChannel_CancelsInTheirDifference(int seed)
    {
        Random random = new(seed);
        VoltageRms[] noises = [.. Enumerable.Range(0, 3).Select(_ => VoltageRms.FromVolts(Positive(random, -7, -5)))];
        double bipolar = MontageFormulas.Noise([1, -1, 0], noises).Value;
        Assert.Equal(Math.Sqrt(Math.Pow(noises[0].Volts, 2) + Math.Pow(noises[1].Volts, 2)), bipolar, 15);
        double correlation = MontageFormulas.Correlation([1, 0, -1], [0, 1, -1], noises).Value;
        Assert.True(0 <= correlation && correlation <= 1);
    }

    private static double Positive(Random random, double leastPower, double greatestPower) => Math.Pow(10, leastPower + ((greatestPower - leastPower) * random.NextDouble()));

    private static (Frequency Low, Frequency High) Band(Random random)
    {
        double low = Positive(random, -2, 2);
        return (Frequency.FromHertz(low), Frequency.FromHertz(low * Positive(random, 0.1, 3)));
    }

    /// <summary>Legal inputs for a formula: parts and frequencies over the decades met on a bench, bands with the lower edge below the upper.</summary>
    internal static object?[] Inputs(MethodInfo formula, Random random)
    {
        (Frequency low, Frequency high) = Band(random);
        int channels = 2 + random.Next(4);
        return [.. formula.GetParameters().Select(object? (parameter) => parameter switch
        {
            { Name: "low" } => low,
            { Name: "high" } => high,
            { Name: "relativePermittivity" } => 1 + random.NextDouble(),
            { Name: "slope" } => 3 * random.NextDouble(),
            _ => One(parameter.ParameterType),
        })];

        object? One(Type type) =>
            type == typeof(Resistance) ? Resistance.FromOhms(Positive(random, 0, 9))
            : type == typeof(Resistance?) ? (random.Next(2) == 0 ? null : Resistance.FromOhms(Positive(random, 0, 9)))
            : type == typeof(Capacitance) || type == typeof(Capacitance?) ? Capacitance.FromFarads(Positive(random, -15, -4))
            : type == typeof(Frequency) ? Frequency.FromHertz(Positive(random, -2, 6))
            : type == typeof(Temperature) ? Temperature.FromKelvins(Positive(random, 2, 2.7))
            : type == typeof(Complex) ? new Complex(Positive(random, 2, 8), -Positive(random, 2, 8))
            : type == typeof(int) ? 1 + random.Next(20)
            : type == typeof(double) ? Positive(random, -1, 4)
            : type == typeof(Electrode) ? new Electrode()
            : type == typeof(IReadOnlyList<Electrode>) ? new[] { new Electrode(), new Electrode { ContactResistance = Resistance.FromKilohms(620), ContactCapacitance = Capacitance.FromNanofarads(4.7) } }
            : type == typeof(IReadOnlyList<VoltageRms>) ? Enumerable.Range(0, channels).Select(_ => VoltageRms.FromVolts(Positive(random, -9, -3))).ToArray()
            : type == typeof(IReadOnlyList<Decibels>) ? Enumerable.Range(0, channels).Select(_ => Decibels.FromStated(120 * random.NextDouble())).ToArray()
            : type == typeof(IReadOnlyList<Frequency>) ? Enumerable.Range(0, channels).Select(_ => Frequency.FromHertz(Positive(random, 1, 6))).ToArray()
            : type == typeof(IReadOnlyList<double>) ? Enumerable.Range(0, channels).Select(_ => random.NextDouble() - 0.5).ToArray()
            : type == typeof(BitCount) ? BitCount.FromBits(1 + random.Next(32))
            : type == typeof(Decibels) ? Decibels.FromStated(1 + (120 * random.NextDouble()))
            : QuantityKind.Find(type) is { } kind ? kind.FromSi(Positive(random, -12, 0))
            : throw new InvalidOperationException($"no input for {type}");
    }
}
