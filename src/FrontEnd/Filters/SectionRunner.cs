using System.Numerics;
using System.Runtime.Intrinsics;

namespace FrontEnd.Filters;

/// <summary>How a section is computed; the same coefficients, another path for the rounding.</summary>
public enum FilterForm
{
    /// <summary>Direct form I: keeps the last two inputs and outputs.</summary>
    DirectI,

    /// <summary>Transposed direct form II: keeps two sums.</summary>
    TransposedDirectII,
}

/// <summary>A running filter in double precision. Holds state; one runner per channel.</summary>
/// <remarks>y = b0·x + s1, s1 = b1·x + s2 − a1·y, s2 = b2·x − a2·y, each product and sum rounded in this order: the new output enters last,
/// which shortens the chain from one output to the next.
/// Allocates nothing while running; input and output may be the same memory. A long record is filtered block by block, section by
/// section.</remarks>
internal sealed class SectionRunner
{
    /// <summary>Shorter blocks go section by section: four sections need three samples to fill and three to drain.</summary>
    private const int MinimumBlock = 8;

    private readonly double[] coefficients;
    private readonly double[] state;
    private readonly FilterForm form;

    /// <summary>A runner at rest.</summary>
    public SectionRunner(SecondOrderSections sections, FilterForm form = FilterForm.TransposedDirectII)
    {
        coefficients = sections.Coefficients.ToArray();
        state = new double[sections.Count * 4];
        this.form = form;
    }

    /// <summary>Back to rest: all states zero.</summary>
    public void Reset() => Array.Clear(state);

    /// <summary>Filters a block; the state carries over to the next.</summary>
    public void Run(ReadOnlySpan<double> input, Span<double> output)
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        input.CopyTo(output);
        Span<double> block = output[..input.Length];
        int count = coefficients.Length / SecondOrderSections.Stride;
        int first = 0;
        if (form == FilterForm.TransposedDirectII && MinimumBlock <= block.Length)
        {
            for (; first + 4 <= count && Vector256.IsHardwareAccelerated; first += 4)
            {
                RunFour(coefficients.AsSpan(first * SecondOrderSections.Stride), state.AsSpan(first * 4), block);
            }

            for (; first + 2 <= count; first += 2)
            {
                RunPair(coefficients.AsSpan(first * SecondOrderSections.Stride), state.AsSpan(first * 4), block);
            }
        }

        for (int i = first; i < count; i++)
        {
            ReadOnlySpan<double> c = coefficients.AsSpan(i * SecondOrderSections.Stride, SecondOrderSections.Stride);
            Span<double> s = state.AsSpan(i * 4, 4);
            if (form == FilterForm.DirectI)
            {
                RunnerBlocks.RunDirect(c, s, block);
            }
            else
            {
                RunTransposed(c, s, block);
            }
        }
    }

    /// <summary>Two sections in one loop: the second works on sample n while the first already works on n + 1. Each section's own
    /// operations and their order are those of <see cref="RunTransposed"/>, so the bits are the same.</summary>
    private static void RunPair(ReadOnlySpan<double> c, Span<double> s, Span<double> block)
    {
        (double b0, double b1, double b2, double a1, double a2) = (c[0], c[1], c[2], c[3], c[4]);
        (double d0, double d1, double d2, double e1, double e2) = (c[5], c[6], c[7], c[8], c[9]);
        (double s1, double s2, double t1, double t2) = (s[0], s[1], s[4], s[5]);
        for (int n = 0; n < block.Length; n++)
        {
            double x = block[n];
            double y = (b0 * x) + s1;
            s1 = (b1 * x) + s2 - (a1 * y);
            s2 = (b2 * x) - (a2 * y);
            double z = (d0 * y) + t1;
            t1 = (d1 * y) + t2 - (e1 * z);
            t2 = (d2 * y) - (e2 * z);
            block[n] = z;
        }

        (s[0], s[1], s[4], s[5]) = (s1, s2, t1, t2);
    }

    /// <summary>Four sections in the four lanes of a vector, each one sample behind the one before it; the first and last three samples,
    /// where not all lanes have one, go one section at a time.</summary>
    private static void RunFour(ReadOnlySpan<double> c, Span<double> s, Span<double> block)
    {
        int length = block.Length;
        Span<double> lane = stackalloc double[4];

        // Section k starts with sample 0 at step k: fill the lanes by running the triangle before step 3.
        double y0 = 0, y1 = 0, y2 = 0;
        double a = Step(c, s, block[0]);
        double b = Step(c[5..], s[4..], a);
        double d = Step(c[10..], s[8..], b);
        y2 = d;
        a = Step(c, s, block[1]);
        y1 = Step(c[5..], s[4..], a);
        y0 = Step(c, s, block[2]);

        Vector256<double> b0 = Gather(c, 0), b1 = Gather(c, 1), b2 = Gather(c, 2), a1 = Gather(c, 3), a2 = Gather(c, 4);
        Vector256<double> s1 = Vector256.Create(s[0], s[4], s[8], s[12]), s2 = Vector256.Create(s[1], s[5], s[9], s[13]);
        Vector256<double> y = Vector256.Create(y0, y1, y2, 0);
        for (int n = 3; n < length; n++)
        {
            Vector256<double> x = Vector256.Shuffle(y, Vector256.Create(0L, 0, 1, 2)).WithElement(0, block[n]);
            y = (b0 * x) + s1;
            s1 = (b1 * x) + s2 - (a1 * y);
            s2 = (b2 * x) - (a2 * y);
            block[n - 3] = y.GetElement(3);
        }

        for (int k = 0; k < 4; k++)
        {
            (s[k * 4], s[(k * 4) + 1]) = (s1.GetElement(k), s2.GetElement(k));
        }

        y.CopyTo(lane);
        b = Step(c[5..], s[4..], lane[0]);
        d = Step(c[10..], s[8..], lane[1]);
        block[length - 3] = Step(c[15..], s[12..], lane[2]);
        double e = Step(c[10..], s[8..], b);
        block[length - 2] = Step(c[15..], s[12..], d);
        block[length - 1] = Step(c[15..], s[12..], e);
    }

    private static Vector256<double> Gather(ReadOnlySpan<double> c, int at) => Vector256.Create(c[at], c[at + 5], c[at + 10], c[at + 15]);

    private static double Step(ReadOnlySpan<double> c, Span<double> s, double x)
    {
        double y = (c[0] * x) + s[0];
        s[0] = (c[1] * x) + s[1] - (c[3] * y);
        s[1] = (c[2] * x) - (c[4] * y);
        return y;
    }

    private static void RunTransposed(ReadOnlySpan<double> c, Span<double> s, Span<double> block)
    {
        (double b0, double b1, double b2, double a1, double a2) = (c[0], c[1], c[2], c[3], c[4]);
        (double s1, double s2) = (s[0], s[1]);
        for (int n = 0; n < block.Length; n++)
        {
            double x = block[n];
            double y = (b0 * x) + s1;
            s1 = (b1 * x) + s2 - (a1 * y);
            s2 = (b2 * x) - (a2 * y);
            block[n] = y;
        }

        (s[0], s[1]) = (s1, s2);
    }
}

/// <summary>What the runners have in common.</summary>
internal static class RunnerBlocks
{
    /// <summary>One section in direct form I. The transposed form stands in each runner by itself: the order of its sums, and so its last
    /// bit, is the runner's.</summary>
    internal static void RunDirect<T>(ReadOnlySpan<T> c, Span<T> s, Span<T> block)
        where T : struct, INumber<T>
    {
        (T b0, T b1, T b2, T a1, T a2) = (c[0], c[1], c[2], c[3], c[4]);
        (T x1, T x2, T y1, T y2) = (s[0], s[1], s[2], s[3]);
        for (int n = 0; n < block.Length; n++)
        {
            T x = block[n];
            T y = (b0 * x) + (b1 * x1) + (b2 * x2) - (a1 * y1) - (a2 * y2);
            (x2, x1, y2, y1) = (x1, x, y1, y);
            block[n] = y;
        }

        (s[0], s[1], s[2], s[3]) = (x1, x2, y1, y2);
    }

    internal static void RequireRoom(int input, int output)
    {
        if (output < input)
        {
            throw new ArgumentOutOfRangeException(nameof(output), output, "The output must be as long as the input.");
        }
    }
}
