using FrontEnd.Quantities;

namespace FrontEnd.Digital;

/// <summary>The design's digital filters as second-order sections at the converter's rate, in the order in which they run.</summary>
public sealed class DigitalChain
{
    private readonly double[] _sections;
    private readonly double _rate;

    public DigitalChain(IReadOnlyList<DigitalStage> stages, Frequency rate)
    {
        _rate = rate.Hertz;
        var all = new List<double>();
        foreach (DigitalStage stage in stages)
        {
            all.AddRange(Sections(stage, _rate));
        }

        _sections = [.. all];
    }

    /// <summary>Rows of b0 b1 b2 a1 a2, a0 = 1.</summary>
    public ReadOnlySpan<double> Sections5 => _sections;

    /// <summary>|H_dig|² at a frequency [Hz].</summary>
    public double Power(double hertz)
    {
        double product = 1, w = 2 * Math.PI * hertz / _rate;
        (double s1, double c1) = Math.SinCos(w);
        double c2 = (2 * c1 * c1) - 1, s2 = 2 * s1 * c1;
        for (int i = 0; i < _sections.Length; i += 5)
        {
            double nr = _sections[i] + (_sections[i + 1] * c1) + (_sections[i + 2] * c2), ni = -(_sections[i + 1] * s1) - (_sections[i + 2] * s2);
            double dr = 1 + (_sections[i + 3] * c1) + (_sections[i + 4] * c2), di = -(_sections[i + 3] * s1) - (_sections[i + 4] * s2);
            product *= ((nr * nr) + (ni * ni)) / ((dr * dr) + (di * di));
        }

        return product;
    }

    private static IEnumerable<double> Sections(DigitalStage stage, double fs) => stage switch
    {
        DigitalHighPass high => Butterworth(high.Corner.Hertz, high.Order, fs, true),
        DigitalLowPass low => Butterworth(low.Corner.Hertz, low.Order, fs, false),
        DigitalNotch notch => Notch(notch.Centre.Hertz, notch.Q, fs),
        DigitalSections rows => rows.Rows.SelectMany(row => new[] { row[0] / row[3], row[1] / row[3], row[2] / row[3], row[4] / row[3], row[5] / row[3] }),
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Digital stage is not handled."),
    };

    private static IEnumerable<double> Notch(double f0, double q, double fs)
    {
        double b = 1 / (1 + Math.Tan(Math.PI * f0 / q / fs)), c = Math.Cos(2 * Math.PI * f0 / fs);
        return [b, -2 * b * c, b, -2 * b * c, (2 * b) - 1];
    }

    private static IEnumerable<double> Butterworth(double corner, int order, double fs, bool high)
    {
        double k = Math.Tan(Math.PI * corner / fs);
        for (int i = 0; i < order / 2; i++)
        {
            double damping = 2 * Math.Sin(Math.PI * ((2 * i) + 1) / (2.0 * order)), a0 = 1 + (damping * k) + (k * k);
            double b = (high ? 1 : k * k) / a0;
            foreach (double x in new[] { b, high ? -2 * b : 2 * b, b, 2 * ((k * k) - 1) / a0, (1 - (damping * k) + (k * k)) / a0 })
            {
                yield return x;
            }
        }

        if (order % 2 == 1)
        {
            double b = (high ? 1 : k) / (1 + k);
            foreach (double x in new[] { b, high ? -b : b, 0, (k - 1) / (k + 1), 0 })
            {
                yield return x;
            }
        }
    }
}
