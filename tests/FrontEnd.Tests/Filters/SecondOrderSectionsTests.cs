using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

public class SecondOrderSectionsTests
{
    // Second-order Butterworth high-pass 0.5 Hz at 500 S/s and notch 60 Hz, Q 10: worked out with NumPy/SciPy independently of this code, 16 digits.
    private static readonly double[] HighPassRow = [0.9955669720176472, -1.9911339440352944, 0.9955669720176472, -1.9911142922016536, 0.9911535958689355];
    private static readonly double[] NotchRow = [0.9636538841655016, -1.404946898498875, 0.9636538841655016, -1.404946898498875, 0.9273077683310031];

    // Second-order Butterworth high-pass 1 Hz at 250 S/s and notch 50 Hz, Q 8: likewise.
    private static readonly double[] SlowHighPassRow = [0.982385438526092, -1.964770877052184, 0.982385438526092, -1.9644605802052324, 0.9650811738991353];
    private static readonly double[] WideNotchRow = [0.9270403427317333, -0.5729424407505628, 0.9270403427317333, -0.5729424407505628, 0.8540806854634666];

    [Fact]
    public void Cascade_HighPassAndNotch_AgreesWithIndependentCoefficients()
    {
        SecondOrderSections actual = WorkedSections();
        AssertCoefficients([.. HighPassRow, .. NotchRow], actual.Coefficients);
        var rate = Frequency.FromHertz(250);
        AssertCoefficients(SlowHighPassRow, Butterworth.HighPass(2, Frequency.FromHertz(1), rate).Sections.Coefficients);
        AssertCoefficients(WideNotchRow, new SecondOrderSections([Notch.WithQ(Frequency.FromHertz(50), 8, rate)]).Coefficients);
    }

    [Fact]
    public void PowerResponse_SpanAndSingleAndComplex_Agree()
    {
        SecondOrderSections sections = WorkedSections();
        double[] hertz = [0, 0.001, 0.5, 7, 59.9, 60, 60.1, 249.9, 250];
        double[] many = new double[hertz.Length];
        sections.PowerResponse(hertz, 500, many);
        for (int i = 0; i < hertz.Length; i++)
        {
            Complex h = sections.Response(hertz[i], 500);
            Assert.Equal(sections.PowerResponse(hertz[i], 500), many[i]);
            // 1e-24 of full scale: rounding at the notch's exact null.
            Assert.Equal((h.Real * h.Real) + (h.Imaginary * h.Imaginary), many[i], (1e-13 * many[i]) + 1e-24);
        }
    }

    [Fact]
    public void PowerResponse_Span_AllocatesNothing()
    {
        SecondOrderSections sections = WorkedSections();
        double[] hertz = [1, 2, 3];
        double[] destination = new double[3];
        sections.PowerResponse(hertz, 500, destination);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            sections.PowerResponse(hertz, 500, destination);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    /// <summary>Far below the corner the terms of a high-pass cancel to 1e-12 of their size; |H| must still fall as f².</summary>
    [Fact]
    public void PowerResponse_FarBelowHighPassCorner_KeepsItsDigits()
    {
        SecondOrderSections sections = Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(500)).Sections;
        double decade = sections.PowerResponse(0.001, 500) / sections.PowerResponse(0.0001, 500);
        // Butterworth: |H|² = x⁴/(1 + x⁴) with x = tan(πf/fs)/tan(πfc/fs); the limit is the 1e-11 that the rounded a1, a2 leave of 1 + a1 + a2.
        Assert.Equal(1e4, decade, 1e4 * 1e-9);
        Assert.Equal(Math.Pow(0.001 / 0.5, 4), sections.PowerResponse(0.001, 500), 1e-11 * 1.2);
    }

    [Fact]
    public void GroupDelay_HighPassOneHertz_AgreesWithFiguresComputedApart()
    {
        // Group delays of a second-order 1 Hz high-pass at 250 S/s at 1.5, 3 and 10 Hz: 121, 27 and 2.3 ms (computed independently, two digits).
        DigitalFilter filter = Butterworth.HighPass(2, Frequency.FromHertz(1), Frequency.FromHertz(250));
        Assert.Equal(0.121, filter.GroupDelay(1.5), 0.0005);
        Assert.Equal(0.027, filter.GroupDelay(3), 0.0005);
        Assert.Equal(0.0023, filter.GroupDelay(10), 0.00005);
    }

    [Fact]
    public void Notch_CoefficientsAt250_AgreeWithIndependentFigures()
    {
        // 8 digits, computed independently from the same published form.
        Biquad notch = Notch.WithQ(Frequency.FromHertz(50), 10, Frequency.FromHertz(250));
        AssertClose([0.9408093, -0.58145212, 0.9408093, -0.58145212, 0.88161859], notch, 6e-8);
        AssertClose([.97547839, -.12250159, .97547839, -.12250159, .95095678], Notch.WithQ(Frequency.FromHertz(60), 30, Frequency.FromHertz(250)), 6e-9);
    }

    [Fact]
    public void FromRows_A0NotOne_IsDividedOut()
    {
        SecondOrderSections sections = SecondOrderSections.FromRows([[2, 4, 6, 2, 1, 0.5]]);
        Assert.Equal([1.0, 2, 3, 0.5, 0.25], sections.Coefficients.ToArray());
    }

    internal static SecondOrderSections WorkedSections()
    {
        var rate = Frequency.FromHertz(500);
        return SecondOrderSections.Cascade(
            Butterworth.HighPass(2, Frequency.FromHertz(0.5), rate).Sections,
            new SecondOrderSections([Notch.WithQ(Frequency.FromHertz(60), 10, rate)]));
    }

    private static void AssertCoefficients(double[] expected, ReadOnlySpan<double> actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], 1e-12);
        }
    }

    private static void AssertClose(double[] expected, Biquad actual, double tolerance)
    {
        double[] values = [actual.B0, actual.B1, actual.B2, actual.A1, actual.A2];
        for (int i = 0; i < 5; i++)
        {
            Assert.Equal(expected[i], values[i], tolerance);
        }
    }
}
