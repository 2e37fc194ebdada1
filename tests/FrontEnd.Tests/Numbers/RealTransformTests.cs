using System.Numerics;
using FrontEnd.Numbers;
using MathNet.Numerics.IntegralTransforms;
using Xunit;

namespace FrontEnd.Tests.Numbers;

public class RealTransformTests
{
    /// <summary>Against the sum as it is written, for lengths of fours, of small and of large prime factors, twice by one plan.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(16)]
    [InlineData(18)]
    [InlineData(22)]
    [InlineData(30)]
    [InlineData(64)]
    [InlineData(122)]
    [InlineData(134)] // a prime of 67 goes around
    [InlineData(202)]
    [InlineData(250)]
    [InlineData(360)]
    [InlineData(1286)]
    public void AddPowers_OfAnyEvenLength_IsThePlainSum(int length)
    {
        var random = new Random(length);
        RealTransform transform = new(length);
        double[] sums = new double[(length / 2) + 1], expected = new double[sums.Length];
        for (int repeat = 0; repeat < 2; repeat++)
        {
            double[] record = [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.5)];
            transform.AddPowers(record, sums);
            for (int k = 0; k < expected.Length; k++)
            {
                Complex sum = 0;
                for (int i = 0; i < length; i++)
                {
                    sum += record[i] * Complex.FromPolarCoordinates(1, -2 * Math.PI * ((long)i * k % length) / length);
                }

                expected[k] += (sum.Real * sum.Real) + (sum.Imaginary * sum.Imaginary);
            }
        }

        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], sums[k], 1e-12 * length);
        }
    }

    /// <summary>Against the general-purpose library, at the lengths of windows.</summary>
    [Theory]
    [InlineData(3000)]
    [InlineData(4096)]
    [InlineData(2830)]
    public void AddPowers_OfAWindow_IsTheLibrarys(int length)
    {
        var random = new Random(length);
        double[] record = [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.5)], sums = new double[(length / 2) + 1];
        new RealTransform(length).AddPowers(record, sums);
        Complex[] bins = [.. record.Select(sample => new Complex(sample, 0))];
        Fourier.Forward(bins, FourierOptions.NoScaling);
        for (int k = 0; k < sums.Length; k++)
        {
            Assert.Equal(Math.Pow(bins[k].Magnitude, 2), sums[k], 1e-11 * length);
        }
    }
}
