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
/// <remarks>Allocates nothing while running; input and output may be the same memory. A long record is filtered block by block, section by section.</remarks>
public sealed class SectionRunner
{
    private readonly double[] coefficients;
    private readonly double[] state;
    private readonly FilterForm form;

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
        for (int i = 0; i < coefficients.Length / SecondOrderSections.Stride; i++)
        {
            ReadOnlySpan<double> c = coefficients.AsSpan(i * SecondOrderSections.Stride, SecondOrderSections.Stride);
            Span<double> s = state.AsSpan(i * 4, 4);
            if (form == FilterForm.DirectI)
            {
                RunDirect(c, s, block);
            }
            else
            {
                RunTransposed(c, s, block);
            }
        }
    }

    private static void RunDirect(ReadOnlySpan<double> c, Span<double> s, Span<double> block)
    {
        (double b0, double b1, double b2, double a1, double a2) = (c[0], c[1], c[2], c[3], c[4]);
        (double x1, double x2, double y1, double y2) = (s[0], s[1], s[2], s[3]);
        for (int n = 0; n < block.Length; n++)
        {
            double x = block[n];
            double y = (b0 * x) + (b1 * x1) + (b2 * x2) - (a1 * y1) - (a2 * y2);
            (x2, x1, y2, y1) = (x1, x, y1, y);
            block[n] = y;
        }

        (s[0], s[1], s[2], s[3]) = (x1, x2, y1, y2);
    }

    private static void RunTransposed(ReadOnlySpan<double> c, Span<double> s, Span<double> block)
    {
        (double b0, double b1, double b2, double a1, double a2) = (c[0], c[1], c[2], c[3], c[4]);
        (double s1, double s2) = (s[0], s[1]);
        for (int n = 0; n < block.Length; n++)
        {
            double x = block[n];
            double y = (b0 * x) + s1;
            s1 = (b1 * x) - (a1 * y) + s2;
            s2 = (b2 * x) - (a2 * y);
            block[n] = y;
        }

        (s[0], s[1]) = (s1, s2);
    }
}

/// <summary>What the runners have in common.</summary>
internal static class RunnerBlocks
{
    internal static void RequireRoom(int input, int output)
    {
        if (output < input)
        {
            throw new ArgumentOutOfRangeException(nameof(output), output, "The output must be as long as the input.");
        }
    }
}
