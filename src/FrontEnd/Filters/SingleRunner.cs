namespace FrontEnd.Filters;

/// <summary>A running filter in 32-bit floating point, bit for bit as a machine without fused multiply-add computes it. One runner per
/// channel.</summary>
/// <remarks>Products and sums are rounded one by one, left to right. Allocates nothing while running.</remarks>
internal sealed class SingleRunner
{
    private readonly float[] coefficients;
    private readonly float[] state;
    private readonly FilterForm form;

    /// <param name="filter">Coefficients rounded to <see cref="NumberFormat.Single"/>.</param>
    public SingleRunner(QuantisedFilter filter, FilterForm form)
    {
        if (filter.Format is not SingleFormat)
        {
            throw new ArgumentOutOfRangeException(nameof(filter), filter.Format, "The filter must be rounded to single precision.");
        }

        coefficients = [.. filter.Sections.Coefficients.ToArray().Select(c => (float)c)];
        state = new float[filter.Sections.Count * 4];
        this.form = form;
    }

    /// <summary>Back to rest: all states 0.</summary>
    public void Reset() => Array.Clear(state);

    /// <summary>Filters a block; the state carries over to the next.</summary>
    public void Run(ReadOnlySpan<float> input, Span<float> output)
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        input.CopyTo(output);
        Span<float> block = output[..input.Length];
        for (int i = 0; i < coefficients.Length / SecondOrderSections.Stride; i++)
        {
            ReadOnlySpan<float> c = coefficients.AsSpan(i * SecondOrderSections.Stride, SecondOrderSections.Stride);
            Span<float> s = state.AsSpan(i * 4, 4);
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

    private static void RunTransposed(ReadOnlySpan<float> c, Span<float> s, Span<float> block)
    {
        (float b0, float b1, float b2, float a1, float a2) = (c[0], c[1], c[2], c[3], c[4]);
        (float s1, float s2) = (s[0], s[1]);
        for (int n = 0; n < block.Length; n++)
        {
            float x = block[n];
            float y = (b0 * x) + s1;
            s1 = (b1 * x) - (a1 * y) + s2;
            s2 = (b2 * x) - (a2 * y);
            block[n] = y;
        }

        (s[0], s[1]) = (s1, s2);
    }
}
