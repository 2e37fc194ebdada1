using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Bench;

/// <summary>Polarity: pulses of one direction, a tenth of the time, and which way they go in the recording. A sine cannot tell.</summary>
internal static class BenchPulse
{
    /// <summary>The test's word.</summary>
    public const string Name = "polarity";

    /// <summary>Share of the time that the pulses last.</summary>
    private const double Duty = 0.1;

    /// <summary>Share of the pulses' height that must be left of their direction for a test to tell it.</summary>
    private const double LeastLeft = 0.3;

    /// <summary>Points of one period.</summary>
    private const int Points = 400;

    private static readonly double[] Widths = [0.2, 0.1, 0.05, 0.02, 0.01, 5e-3, 2e-3, 1e-3];

    /// <summary>Which way samples go against their baseline, with the sign [V]: pulses up to more than pulses down.</summary>
    /// <remarks>The 95th and the 5th percentile together, less twice the median: noise as any symmetric wave, a sine above all, gives 0;
    /// of pulses that last a tenth of the time it is their height.</remarks>
    public static double Direction(SampleOrder order)
    {
        double[] at = order.At(0.95, 0.05, 0.5);
        return at[0] + at[1] - (2 * at[2]);
    }

    public static IEnumerable<BenchReading> Of(Design design, double gain)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromOhms(10), default), Fixture.Short, Fixture.Short);
        var evaluation = new Evaluation(fixture);
        double rate = design.Converter.Rate.Hertz, noise = evaluation.Noise.Total * evaluation.GainMid / gain;
        double generator = 20 * noise < BenchPlan.Divider ? 1 : 10;
        (double Width, double Left)[] tried = [.. Widths.Where(width => 4 <= width * rate).Select(width =>
            (width, Direction(SampleOrder.Of(Wave(evaluation, gain, width)))))];
        (double width, double left) = tried.Length == 0 ? (Widths[0], 0) : tried.MaxBy(one => Math.Abs(one.Left));
        bool tells = LeastLeft <= Math.Abs(left);
        double height = generator * BenchPlan.Divider * left;
        string seconds = QuantityText.Format(Duration.FromSeconds(width)), period = QuantityText.Format(Duration.FromSeconds(width / Duty));
        yield return new BenchReading(Name, "polarity",
            "divider 100 kΩ : 10 Ω at the active lead; reference and ground to the divider's low side",
            $"positive pulses of {QuantityText.FormatPart(Voltage.FromVolts(generator))}, {seconds} long, one every {period}, into the divider; record {BenchPlan.RecordSeconds:0} s and read the height of the pulses above the baseline, with the sign, at the electrodes",
            tells ? ReadingKind.Pulse : ReadingKind.Other)
        {
            Brief = $"positive pulses of {QuantityText.FormatPart(Voltage.FromVolts(generator))}, {seconds}, every {period}; record {BenchPlan.RecordSeconds:0} s; from the baseline, with the sign",
            Expected = tells ? Voltage.FromVolts(height) : null,
            Least = tells ? Math.Min(height / 2, height * 2) : null,
            Greatest = tells ? Math.Max(height / 2, height * 2) : null,
            Tolerance = "the sign decides; the size between half and twice",
            Source = new SourceRef("common-practice"),
            Remark = !tells ? "the band is too narrow for pulses to keep their direction: compare with the voltage at the converter's pin by eye"
                : height < 0 ? "the path inverts: pulses up at the input go down in the samples"
                : null,
            Gain = gain,
            Design = fixture,
        };
    }

    /// <summary>One period of what is recorded of pulses of 1 V at the electrodes, by the path's response at their harmonics.</summary>
    private static double[] Wave(Evaluation evaluation, double gain, double width)
    {
        double first = Duty / width, half = evaluation.Design.Converter.Rate.Hertz / 2;
        int count = Math.Max(1, Math.Min(Points / 2, (int)Math.Ceiling(half / first) - 1));
        var response = new Complex[count];
        for (int from = 0; from < count; from += SignalPath.Chunk)
        {
            double[] hertz = [.. Enumerable.Range(from + 1, Math.Min(SignalPath.Chunk, count - from)).Select(k => k * first)];
            evaluation.Path.SweepTransfer(hertz);
            for (int i = 0; i < hertz.Length; i++)
            {
                response[from + i] = evaluation.Path.Path(i) * evaluation.Design.Converter.Response(hertz[i])
                    * evaluation.Digital.Response(hertz[i]) / gain;
            }
        }

        var wave = new double[Points];
        for (int k = 1; k <= count; k++)
        {
            // Fourier's series of pulses about t = 0: 2·sin(πkd)/(πk)·cos(2πkt/T).
            Complex line = 2 * Math.Sin(Math.PI * k * Duty) / (Math.PI * k) * response[k - 1];
            for (int i = 0; i < Points; i++)
            {
                wave[i] += (line * Complex.FromPolarCoordinates(1, 2 * Math.PI * k * i / Points)).Real;
            }
        }

        return wave;
    }
}
