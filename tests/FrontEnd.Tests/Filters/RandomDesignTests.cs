using System.Globalization;
using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>120 filters drawn at random against a general-purpose signal library, reference/filters/random-designs.csv: every family and shape, analogue and digital, orders to 10, corners down to a thousandth of the rate.</summary>
public class RandomDesignTests
{
    private const double FromRoots = 1e-9;
    private const double FromSections = 1e-8;
    private const double OfPoles = 1e-9;

    [Fact]
    public void Design_DrawnAtRandom_AgreesWithLibrary()
    {
        int rows = 0;
        foreach (string[] row in FilterReference.Rows("random-designs.csv"))
        {
            double[] corners = FilterReference.Numbers(row[3]);
            double rate = double.Parse(row[4], CultureInfo.InvariantCulture);
            string name = $"{row[0]} {row[1]} {row[2]}, {row[3]} Hz at {row[4]}";
            Prototype prototype = Prototype(row[0], int.Parse(row[2], CultureInfo.InvariantCulture), row[5], row[6]);
            ResponseShape shape = FilterDesignReferenceTests.ShapeOf(row[1], corners);
            (ZeroPoleGain roots, IFrequencyResponse sections) = rate == 0
                ? FilterDesign.Analog(prototype, shape) is var analog ? (analog.ZeroPoleGain, (IFrequencyResponse)analog) : default
                : FilterDesign.Digital(prototype, shape, Frequency.FromHertz(rate)) is var digital ? (digital.ZeroPoleGain, digital) : default;

            // The scale of a digital pole is its distance from z = 1, of a slow filter much less than 1.
            double scale = rate == 0 ? 2 * Math.PI * corners[0] : 2 * Math.PI * corners[0] / rate;
            AssertPoles(FilterReference.Complexes(row[8]), roots.Poles, scale, name);
            double[] hertz = FilterReference.Numbers(row[9]);
            Complex[] expected = FilterReference.Complexes(row[10]);
            for (int i = 0; i < hertz.Length; i++)
            {
                Complex x = rate == 0 ? new Complex(0, 2 * Math.PI * hertz[i]) : Complex.FromPolarCoordinates(1, 2 * Math.PI * hertz[i] / rate);
                Near(expected[i], FromRootsOf(roots, x), FromRoots, $"{name} at {hertz[i]} Hz from roots");
                Near(expected[i], sections.Response(hertz[i]), FromSections, $"{name} at {hertz[i]} Hz from sections");
            }

            rows++;
        }

        Assert.Equal(120, rows);
    }

    /// <summary>One zero by one pole, as the table does it: the product of ten analogue zeros alone is large.</summary>
    private static Complex FromRootsOf(ZeroPoleGain roots, Complex x)
    {
        Complex value = roots.Gain;
        for (int i = 0; i < roots.Poles.Count; i++)
        {
            value *= (i < roots.Zeros.Count ? x - roots.Zeros[i] : 1) / (x - roots.Poles[i]);
        }

        return value;
    }

    private static void Near(Complex expected, Complex actual, double tolerance, string name)
    {
        double difference = Complex.Abs(expected - actual);
        Assert.True(difference <= tolerance, $"{name}: expected {expected}, actual {actual}, difference {difference:g3}");
    }

    private static void AssertPoles(Complex[] expected, IReadOnlyList<Complex> actual, double size, string name)
    {
        Assert.Equal(expected.Length, actual.Count);
        List<Complex> left = [.. actual];
        foreach (Complex pole in expected)
        {
            Complex nearest = left.MinBy(p => Complex.Abs(p - pole));
            double difference = Complex.Abs(nearest - pole) / size;
            Assert.True(difference <= OfPoles, $"{name}: expected pole {pole}, nearest {nearest}, difference {difference:g3} of its scale");
            left.Remove(nearest);
        }
    }

    private static Prototype Prototype(string family, int order, string ripple, string attenuation)
    {
        var loss = Decibels.FromStated(double.Parse(ripple, CultureInfo.InvariantCulture));
        var stop = Decibels.FromStated(double.Parse(attenuation, CultureInfo.InvariantCulture));
        return family switch
        {
            "chebyshev" => new ChebyshevPrototype(order, loss),
            "inverse-chebyshev" => new InverseChebyshevPrototype(order, stop),
            "elliptic" => new EllipticPrototype(order, loss, stop),
            _ => FilterDesignReferenceTests.PrototypeOf(family, order),
        };
    }
}
