using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A digital filter run over a record forwards and backwards: no phase shift, its response squared. For records only: a live
/// signal has no future.</summary>
/// <remarks>The stated −3 dB corners become −6.02 dB, and what rang after an edge now also rings before it. Derived: H(z)·H(1/z) =
/// |H|².</remarks>
internal sealed class ZeroPhase(DigitalFilter filter) : IFrequencyResponse
{
    /// <summary>|H|², real.</summary>
    public Complex Response(double hertz) => filter.PowerResponse(hertz);

    /// <summary>|H|⁴.</summary>
    public double PowerResponse(double hertz)
    {
        double power = filter.PowerResponse(hertz);
        return power * power;
    }

    /// <summary>0 at every frequency.</summary>
    public double GroupDelay(double hertz) => 0;

    /// <summary>Filters a record in place. Both ends are lengthened by the record turned about its end point, and each pass starts at rest
    /// on its first sample, so that an offset does not ring there.</summary>
    /// <param name="record">The samples, at least two.</param>
    /// <param name="padding">Samples added at each end; three time constants of the slowest pole unless given, at most the record less
    /// one.</param>
    public void Run(Span<double> record, int? padding = null)
    {
        if (record.Length < 2)
        {
            throw new ArgumentOutOfRangeException(nameof(record), record.Length, "The record must have at least two samples.");
        }

        double slowest = -1 / Math.Log(Math.Clamp(filter.Sections.PoleRadius, 0.1, 1 - 1e-9));
        int pad = Math.Clamp(padding ?? (int)Math.Min(3 * slowest + 1, int.MaxValue / 4), 0, record.Length - 1);
        double[] work = new double[record.Length + (2 * pad)];
        record.CopyTo(work.AsSpan(pad));
        for (int i = 1; i <= pad; i++)
        {
            work[pad - i] = (2 * record[0]) - record[i];
            work[pad + record.Length - 1 + i] = (2 * record[^1]) - record[^(i + 1)];
        }

        for (int pass = 0; pass < 2; pass++)
        {
            // Each pass starts at rest on its first sample, not with a step from zero to it.
            double start = work[0];
            double rest = start * filter.Sections.DcGain;
            for (int i = 0; i < work.Length; i++)
            {
                work[i] -= start;
            }

            new SectionRunner(filter.Sections).Run(work, work);
            for (int i = 0; i < work.Length; i++)
            {
                work[i] += rest;
            }

            Array.Reverse(work);
        }

        work.AsSpan(pad, record.Length).CopyTo(record);
    }
}
