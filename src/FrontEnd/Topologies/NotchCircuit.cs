using System.Numerics;
using FrontEnd.Filters;

namespace FrontEnd.Topologies;

/// <summary>An analogue notch as built: parts by name and the transfer function they make with real op-amps; how deep it is, and what its
/// parts' tolerance does to it.</summary>
public sealed class NotchCircuit
{
    private const double SensitivityStep = 1e-4;
    private readonly double[] _values;
    private readonly Func<double[], Complex, (Complex Numerator, Complex Denominator)> _transfer;
    private readonly double _guessHertz;

    /// <param name="names">"R1", "C2" …</param>
    /// <param name="values">In ohms and farads, as many as names.</param>
    /// <param name="guessHertz">f0 by the formula for matched parts.</param>
    /// <param name="transfer">Numerator and denominator for values and s; a common factor does no harm.</param>
    internal NotchCircuit(
        IReadOnlyList<string> names, double[] values, double guessHertz,
        Func<double[], Complex, (Complex Numerator, Complex Denominator)> transfer) =>
        (Names, _values, _guessHertz, _transfer) = (names, values, guessHertz, transfer);

    /// <summary>Names of the parts: "R1", "C2" …</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Their values, in the same order [Ω, F].</summary>
    public IReadOnlyList<double> Values => _values;

    /// <summary>H(j2πf).</summary>
    public Complex Response(double hertz)
    {
        (Complex numerator, Complex denominator) = _transfer(_values, new Complex(0, 2 * Math.PI * hertz));
        return numerator / denominator;
    }

    /// <summary>Loss at a frequency against the gain far below the notch [dB]; null where it is without bound.</summary>
    public double? Loss(double hertz)
    {
        double share = Complex.Abs(Response(hertz)) / Complex.Abs(Response(_guessHertz * 1e-4));
        return share < 1e-15 ? null : -20 * Math.Log10(share);
    }

    /// <summary>Where the response is least, within a tenth of the formula's f0 [Hz].</summary>
    public double NullHertz() => MathExtra.LeastAt(f => Complex.Abs(Response(f)), 0.9 * _guessHertz, 1.1 * _guessHertz);

    /// <summary>Pole frequency [Hz] and Q as built; Q is below zero where the circuit oscillates. By Newton from the poles of matched parts
    /// with an ideal op-amp.</summary>
    /// <param name="q">Q by the formula, to start from.</param>
    public (double Hertz, double Q) Poles(double q)
    {
        Complex pole = Pole(q);
        return (Complex.Abs(pole) / (2 * Math.PI), Complex.Abs(pole) / (-2 * pole.Real));
    }

    /// <summary>The same circuit with one part times a factor.</summary>
    public NotchCircuit With(int part, double factor)
    {
        double[] values = [.. _values];
        values[part] *= factor;
        return new NotchCircuit(Names, values, _guessHertz, _transfer);
    }

    /// <summary>d ln f0/d ln x and d ln Q/d ln x of the pole pair for each part.</summary>
    public IReadOnlyList<PartSensitivity> Sensitivities(double q) => [.. Names.Select((name, part) =>
    {
        (double upHertz, double upQ) = With(part, 1 + SensitivityStep).Poles(q);
        (double downHertz, double downQ) = With(part, 1 - SensitivityStep).Poles(q);
        return new PartSensitivity(
            name, Math.Log(upHertz / downHertz) / (2 * SensitivityStep), Math.Log(upQ / downQ) / (2 * SensitivityStep));
    })];

    /// <summary>The worst of every corner: each part at plus or minus its tolerance, all combinations.</summary>
    /// <param name="hertz">Where the loss is wanted.</param>
    /// <param name="q">Q by the formula.</param>
    public NotchTolerance Corners(double tolerance, double hertz, double q)
    {
        double least = double.PositiveInfinity, lowQ = double.PositiveInfinity, highQ = 0;
        bool oscillates = false;
        for (int corner = 0; corner < 1 << _values.Length; corner++)
        {
            var built = new NotchCircuit(Names, At(corner, tolerance, tolerance), _guessHertz, _transfer);
            (_, double builtQ) = built.Poles(q);
            if (builtQ <= 0)
            {
                oscillates = true;
                continue;
            }

            least = Math.Min(least, built.Loss(hertz) ?? double.PositiveInfinity);
            (lowQ, highQ) = (Math.Min(lowQ, builtQ), Math.Max(highQ, builtQ));
        }

        return new NotchTolerance(tolerance, least, lowQ, highQ, oscillates);
    }

    /// <summary>The least loss at any of some frequencies over every corner of the parts' tolerances, against the gain far below [dB];
    /// poles are not looked at.</summary>
    public double LeastLoss(double resistorTolerance, double capacitorTolerance, IReadOnlyList<double> hertz)
    {
        double least = double.PositiveInfinity;
        for (int corner = 0; corner < 1 << _values.Length; corner++)
        {
            var built = new NotchCircuit(Names, At(corner, resistorTolerance, capacitorTolerance), _guessHertz, _transfer);
            least = Math.Min(least, hertz.Min(f => built.Loss(f) ?? double.PositiveInfinity));
        }

        return least;
    }

    /// <summary>The parts of one corner: bit i says whether part i is high.</summary>
    private double[] At(int corner, double resistorTolerance, double capacitorTolerance) => [.. _values.Select((value, i) =>
    {
        double tolerance = Names[i][0] == 'C' ? capacitorTolerance : resistorTolerance;
        return value * ((corner >> i & 1) == 0 ? 1 - tolerance : 1 + tolerance);
    })];

    private Complex Pole(double q)
    {
        double w = 2 * Math.PI * _guessHertz, real = w / (2 * q);
        return MathExtra.RootNear(
            s => _transfer(_values, s).Denominator, new Complex(-real, Math.Sqrt(Math.Max(1e-6, (w * w) - (real * real)))));
    }
}

/// <summary>What the parts' tolerance leaves of a notch, over every corner.</summary>
/// <param name="Tolerance">±, as a share.</param>
/// <param name="LeastLoss">Least loss at the wanted frequency [dB] among the corners that are stable; infinite where none is.</param>
/// <param name="LowestQ">Least Q among them.</param>
/// <param name="HighestQ">Greatest Q among them.</param>
/// <param name="CanOscillate">True where some corner has poles in the right half plane.</param>
public sealed record NotchTolerance(double Tolerance, double LeastLoss, double LowestQ, double HighestQ, bool CanOscillate);
