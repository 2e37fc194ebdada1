using FrontEnd.Designs;

namespace FrontEnd.Bench;

/// <summary>A recording of one test, its spectrum and the predicted one.</summary>
internal sealed class TakenRecording
{
    public TakenRecording(BenchReading test, Recording recording, bool isFiltered)
    {
        Test = test;
        Recording = recording;
        IsFiltered = isFiltered;
        Evaluation = new Reporting.Evaluation(test.Design);
        double scale = recording.AreSteps ? test.Design.Converter.LsbVolts / test.Gain : 1;
        ISamples samples = scale == 1 ? recording.Samples : new ScaledSamples(recording.Samples, scale);
        WelchSpectrum.Builder spectrum = new(samples.Count, test.Design.Converter.Rate.Hertz, BenchFloor.WindowSeconds(test.Design.Band));
        Sums = new RecordingSums();
        samples.Read(piece =>
        {
            Sums.Take(piece);
            spectrum.Take(piece);
        });
        Order = new SampleOrder(samples, Sums);
        Measured = spectrum.Whole();
        Hertz = [.. Enumerable.Range(1, Measured.Density.Count - 2).Select(k => k * Measured.Step)];
        Predicted = new PredictedSpectrum(Evaluation, isFiltered, test.Gain);
        double q = RecordingChecks.FinestStep(Sums), step = test.Design.Converter.LsbVolts / test.Gain, rate = test.Design.Converter.Rate.Hertz;
        bool areFiltered = isFiltered && test.Design.Digital.Count != 0;
        FileRounding = areFiltered && test.Design.Arithmetic.IsFixed ? 0 : Math.Max(0, (q * q) - (areFiltered ? 0 : step * step)) / 6 / rate;
        Density = [.. Predicted.Seen(Measured.Step, Hertz.Length).Select(density => density + FileRounding)];
    }

    public BenchReading Test { get; }

    public Recording Recording { get; }

    public bool IsFiltered { get; }

    public Reporting.Evaluation Evaluation { get; }

    /// <summary>Of its samples [V at the electrodes].</summary>
    public RecordingSums Sums { get; }

    public SampleOrder Order { get; }

    public WelchSpectrum Measured { get; }

    /// <summary>Frequencies of the bins but the first and the last.</summary>
    public double[] Hertz { get; }

    public PredictedSpectrum Predicted { get; }

    /// <summary>The predicted density at the bins, as windows show it [V²/Hz].</summary>
    public double[] Density { get; }

    /// <summary>What of it rounding in the file makes, behind the filters: q²/12 over half the rate, q the finest step of the values, where the converter's own is not
    /// that one [V²/Hz].</summary>
    public double FileRounding { get; }

    public Band Band => Test.Design.Band;

    /// <summary>The digital filters' state as the suspect where the other one fits.</summary>
    public IEnumerable<Suspect> OtherFilters(Func<int, bool> isLine, SpectrumShape? shape)
    {
        if (shape is null || Test.Design.Digital.Count == 0)
        {
            yield break;
        }

        var other = new PredictedSpectrum(Evaluation, !IsFiltered, Test.Gain);
        double[] seen = [.. other.Seen(Measured.Step, Hertz.Length).Select(density => density + FileRounding)];
        if (SpectrumShape.Worst(Measured, seen, other, Band, isLine) is null)
        {
            yield return new Suspect(SuspectKind.DigitalFilter, IsFiltered
                ? "the recording was made without the digital filters: its spectrum matches the prediction without them (--raw compares with that)"
                : "the recording was made with the digital filters on: its spectrum matches the prediction with them (the test asks for them off, or --raw says so)",
                shape.Words);
        }
    }
}
