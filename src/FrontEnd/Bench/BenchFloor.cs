using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Bench;

/// <summary>The least line that a recording shows: what noise and steps let one read where there is none.</summary>
internal static class BenchFloor
{
    /// <summary>Bins of a line's main lobe.</summary>
    private const int Lobe = 5;

    /// <summary>Times the noise in the lobe: the largest of five lobes beside the line is read, less the noise beside it (chosen: once in
    /// some thousand recordings).</summary>
    private const double Sigmas = 3;

    /// <summary>Window of a recording's spectrum [s]: six periods of the band's lower edge, at least eight seconds.</summary>
    public static double WindowSeconds(Band band) => Math.Max(8, 6 / band.Low.Hertz);

    /// <summary>What may be read at a frequency without any line, rms at the electrodes [V].</summary>
    /// <param name="evaluation">The design with its fixture.</param>
    /// <param name="filtered">True behind the digital filters.</param>
    /// <param name="gain">What samples are divided by.</param>
    /// <param name="hertz">Where the line is read [Hz], 0 to half the rate.</param>
    public static double Of(Evaluation evaluation, bool filtered, double gain, double hertz)
    {
        Design design = evaluation.Design;
        double window = Math.Min(WindowSeconds(design.Band), BenchPlan.RecordSeconds / 4);

        // A line is looked for in the bins between the first and the last.
        double step = Math.Min(1 / window, design.Converter.Rate.Hertz / 4), last = (design.Converter.Rate.Hertz / 2) - step;
        double density = new PredictedSpectrum(evaluation, filtered, gain).At([Math.Clamp(hertz, step, Math.Max(step, last))])[0];
        double noise = Sigmas * Math.Sqrt(Lobe * density / window);

        // Where noise does not carry the signal over the steps, what is smaller than a step is recorded as a step or as nothing.
        double pin = evaluation.Levels.NoiseAtConverter, own = design.Converter.NoiseVolts, lsb = design.Converter.LsbVolts;
        return Math.Sqrt((pin * pin) + (own * own)) < 0.5 * lsb ? Math.Max(noise, lsb / gain) : noise;
    }
}
