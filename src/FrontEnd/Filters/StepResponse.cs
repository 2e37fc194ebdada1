namespace FrontEnd.Filters;

/// <summary>What a filter does after a step of 1 at its input.</summary>
/// <param name="Final">Where it comes to rest: the gain at 0 Hz.</param>
/// <param name="Peak">Greatest value.</param>
/// <param name="Least">Least value: below 0 for the undershoot of a high-pass.</param>
/// <param name="Settling">Time after which it stays within the tolerance of <see cref="Final"/>.</param>
internal sealed record StepFigures(double Final, double Peak, double Least, Duration Settling)
{
    /// <summary>Peak over the final value, (peak − final)/final; 0 where the final value is 0 or never passed.</summary>
    public double Overshoot => Final == 0 ? 0 : Math.Max(0, (Peak - Final) / Final);
}

/// <summary>Step responses and settling, digital (run) and analogue (state equations, exact at each point).</summary>
internal static class StepResponse
{
    /// <summary>The customary 0.1 %.</summary>
    public const double Tolerance = 1e-3;

    // Beyond this many samples the figures are cut off; 16 kS/s with a 0.01 Hz corner stays below it.
    private const int MostSamples = 20_000_000;
    private const int AnalogPoints = 20_000;

    /// <summary>The response to a step of 1, one value per sample.</summary>
    public static double[] Of(SecondOrderSections sections, int samples)
    {
        double[] values = new double[samples];
        Array.Fill(values, 1);
        new SectionRunner(sections).Run(values, values);
        return values;
    }

    /// <summary>Peak, undershoot and settling of a digital filter.</summary>
    /// <param name="tolerance">Of the final value, or of the step where the final value is 0.</param>
    public static StepFigures Figures(SecondOrderSections sections, Frequency rate, double tolerance = Tolerance)
    {
        double radius = Math.Clamp(sections.PoleRadius, 0, 1 - 1e-7);
        int order = 2 * sections.Count;
        // n equal poles die away as t^n·r^t: 4 more time constants for each pole cover it.
        double enough = (Math.Log(1 / tolerance) + 5 + (4 * order)) / -Math.Log(Math.Max(radius, 0.1));
        double[] values = Of(sections, (int)Math.Min(enough + 10 + order, MostSamples));
        return Read(values, CleanZero(sections.DcGain), 1 / rate.Hertz, tolerance);
    }

    /// <summary>Peak, undershoot and settling of an analogue filter; settling to 1/20000 of the time looked at.</summary>
    public static StepFigures Figures(AnalogFilter filter, double tolerance = Tolerance)
    {
        double slowest = filter.ZeroPoleGain.Poles.Min(p => -p.Real);
        double span = (Math.Log(1 / tolerance) + 5 + (2 * filter.ZeroPoleGain.Order)) / slowest;
        double step = span / AnalogPoints;
        return Read(Of(filter, Duration.FromSeconds(step), AnalogPoints + 1), filter.Sections.Response(0).Real, step, tolerance);
    }

    /// <summary>The response of an analogue filter to a step of 1 at times 0, dt, 2dt …: x' = Ax + B solved by the matrix exponential,
    /// exact at every point.</summary>
    public static double[] Of(AnalogFilter filter, Duration spacing, int points)
    {
        var model = StateModel.Of(filter.Sections, filter.ZeroPoleGain);
        return model.Step(spacing.Seconds, points);
    }

    private static StepFigures Read(double[] values, double final, double step, double tolerance)
    {
        double within = tolerance * (final == 0 ? 1 : Math.Abs(final));
        int last = Array.FindLastIndex(values, v => within < Math.Abs(v - final));
        return new StepFigures(final, values.Max(), values.Min(), Duration.FromSeconds((last + 1) * step));
    }

    // Rounded coefficients leave a gain of 1e-12 at 0 Hz where it is 0 by design.
    private static double CleanZero(double gain) => Math.Abs(gain) < 1e-9 ? 0 : gain;
}
