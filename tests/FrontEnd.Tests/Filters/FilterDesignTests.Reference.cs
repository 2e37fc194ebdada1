using System.Globalization;
using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>Every family, shape and several orders against a general-purpose signal library, reference/filters/designs.csv.</summary>
public class FilterDesignReferenceTests
{
    private const double Tolerance = 1e-10;

    public static TheoryData<string> Families => ["butterworth", "chebyshev", "inverse-chebyshev", "elliptic", "bessel", "bessel-delay", "critically-damped"];

    [Theory]
    [MemberData(nameof(Families))]
    public void Design_AllShapesAndOrders_AgreesWithLibrary(string family)
    {
        int rows = 0;
        foreach (string[] row in FilterReference.Rows("designs.csv").Where(r => string.Equals(r[0], family, StringComparison.Ordinal)))
        {
            int order = int.Parse(row[2], CultureInfo.InvariantCulture);
            double[] corners = FilterReference.Numbers(row[3]);
            double rate = double.Parse(row[4], CultureInfo.InvariantCulture);
            Prototype prototype = PrototypeOf(family, order);
            ResponseShape shape = ShapeOf(row[1], corners);
            string name = $"{family} {row[1]} {order} {row[3]} Hz at {row[4]}";
            ZeroPoleGain actual;
            Func<double, Complex> response;
            double size;
            if (rate == 0)
            {
                AnalogFilter filter = FilterDesign.Analog(prototype, shape);
                (actual, response) = (filter.ZeroPoleGain, filter.Response);
                size = 2 * Math.PI * corners[^1];
            }
            else
            {
                DigitalFilter filter = FilterDesign.Digital(prototype, shape, Frequency.FromHertz(rate));
                (actual, response) = (filter.ZeroPoleGain, filter.Response);
                size = 1;
            }

            AssertRoots(FilterReference.Complexes(row[5]), actual.Zeros, size, name + " zeros");
            AssertRoots(FilterReference.Complexes(row[6]), actual.Poles, size, name + " poles");
            double gain = double.Parse(row[7], CultureInfo.InvariantCulture);
            Assert.True(Math.Abs(gain - actual.Gain) <= Tolerance * 10 * Math.Abs(gain), $"{name} gain: expected {gain:r}, actual {actual.Gain:r}, ratio - 1 = {(actual.Gain / gain) - 1:g3}");
            double[] frequencies = FilterReference.Numbers(row[8]);
            Complex[] expected = FilterReference.Complexes(row[9]);
            for (int i = 0; i < frequencies.Length; i++)
            {
                double difference = Complex.Abs(response(frequencies[i]) - expected[i]);
                Assert.True(difference <= Tolerance, $"{name} at {frequencies[i]} Hz: sections give {response(frequencies[i])}, expected {expected[i]}, difference {difference:g3}");
            }

            rows++;
        }

        // 5 low or high corners × 10 orders and 4 bands × 6 orders, analogue and digital.
        Assert.Equal(148, rows);
    }

    [Fact]
    public void EllipticFunctions_ComplexArguments_AgreeWithArbitraryPrecision()
    {
        double worst = 0;
        foreach (string[] row in FilterReference.Rows("elliptic-functions.csv"))
        {
            double[] v = [.. row.Select(f => double.Parse(f, CultureInfo.InvariantCulture))];
            var modulus = new Modulus(v[0], v[1]);
            var u = new Complex(v[2], v[3]);
            worst = Math.Max(worst, Relative(EllipticFunctions.Sn(u, modulus), new Complex(v[4], v[5])));
            worst = Math.Max(worst, Relative(EllipticFunctions.Cd(u, modulus), new Complex(v[6], v[7])));
            worst = Math.Max(worst, Relative(EllipticFunctions.QuarterPeriod(modulus), v[8]));
        }

        Assert.True(worst < 1e-14, $"worst relative difference {worst:g3}");
    }

    [Fact]
    public void BesselPrototype_OrdersTo20_AgreesWithArbitraryPrecision()
    {
        foreach (string[] row in FilterReference.Rows("bessel-poles.csv"))
        {
            int order = int.Parse(row[0], CultureInfo.InvariantCulture);
            var prototype = new BesselPrototype(order, BesselNormalisation.Delay);
            Complex[] expected = FilterReference.Complexes(row[2]);
            Complex[] actual = [.. prototype.Normalised().Poles.Where(p => 0 <= p.Imaginary).OrderByDescending(p => p.Imaginary)];
            Assert.Equal(expected.Length, actual.Length);
            for (int i = 0; i < expected.Length; i++)
            {
                Assert.True(Complex.Abs(expected[i] - actual[i]) < 1e-15 * order, $"order {order} pole {i}: {expected[i]} against {actual[i]}");
            }

            Assert.Equal(double.Parse(row[1], CultureInfo.InvariantCulture), prototype.HalfPowerOverDelayFrequency, 1e-13);
        }
    }

    internal static Prototype PrototypeOf(string family, int order) => family switch
    {
        "butterworth" => new ButterworthPrototype(order),
        "chebyshev" => new ChebyshevPrototype(order, Decibels.FromStated(0.5)),
        "inverse-chebyshev" => new InverseChebyshevPrototype(order, Decibels.FromStated(60)),
        "elliptic" => new EllipticPrototype(order, Decibels.FromStated(0.5), Decibels.FromStated(60)),
        "bessel" => new BesselPrototype(order),
        "bessel-delay" => new BesselPrototype(order, BesselNormalisation.Delay),
        "critically-damped" => new CriticallyDampedPrototype(order),
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
    };

    internal static ResponseShape ShapeOf(string shape, double[] corners) => shape switch
    {
        "low-pass" => new LowPass(Frequency.FromHertz(corners[0])),
        "high-pass" => new HighPass(Frequency.FromHertz(corners[0])),
        "band-pass" => new BandPass(Frequency.FromHertz(corners[0]), Frequency.FromHertz(corners[1])),
        "band-stop" => new BandStop(Frequency.FromHertz(corners[0]), Frequency.FromHertz(corners[1])),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape is not handled."),
    };

    // Near a pole of sn the argument's own rounding grows with the value.
    private static double Relative(Complex actual, Complex expected) => Complex.Abs(actual - expected) / (Complex.Abs(expected) * Math.Max(1, Complex.Abs(expected)));

    private static void AssertRoots(Complex[] expected, IReadOnlyList<Complex> actual, double size, string name)
    {
        Assert.Equal(expected.Length, actual.Count);
        var left = actual.ToList();
        foreach (Complex root in expected)
        {
            Complex nearest = left.MinBy(r => Complex.Abs(r - root));
            double difference = Complex.Abs(nearest - root);
            Assert.True(difference <= Tolerance * Math.Max(size, Complex.Abs(root)), $"{name}: expected {root}, nearest {nearest}, difference {difference / size:g3}");
            left.Remove(nearest);
        }
    }
}
