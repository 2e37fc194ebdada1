using System.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace FrontEnd.Tests.Plain;

/// <summary>A transfer as poles, residues and what passes at once: d + Σ r/(s − p).</summary>
internal sealed class PlainResponse
{
    /// <summary>Poles faster than this are at once [rad/s].</summary>
    private const double Fastest = 1e11;

    private PlainResponse(Complex[] poles, Complex[] residues, double direct) => (Poles, Residues, Direct) = (poles, residues, direct);

    public Complex[] Poles { get; }

    public Complex[] Residues { get; }

    public double Direct { get; }

    public Complex At(Complex s)
    {
        Complex sum = Direct;
        for (int i = 0; i < Poles.Length; i++)
        {
            sum += Residues[i] / (s - Poles[i]);
        }

        return sum;
    }

    /// <summary>A stage: the poles are where its matrix G + s·C is singular.</summary>
    public static PlainResponse Of(PlainStage stage)
    {
        const double Shift = 3;
        (double[,] g, double[,] c, _) = stage.Circuit.Descriptor();
        Matrix<double> capacity = Matrix<double>.Build.DenseOfArray(c), shifted = Matrix<double>.Build.DenseOfArray(g) + (Shift * capacity);

        // Eigenvalues of (G + σC)⁻¹C are 1/(σ − s).
        Complex[] poles = [.. shifted.Solve(capacity).Evd().EigenValues.Where(m => 1 / Fastest < m.Magnitude).Select(m => Shift - (1 / m)).Where(s => s.Magnitude < Fastest)];
        return Of(poles, stage.Transfer);
    }

    public static PlainResponse Of(Complex[] poles, Func<Complex, Complex> transfer)
    {
        // A residue is the mean around its pole, nearer than any other.
        const int Points = 16;
        var residues = new Complex[poles.Length];
        for (int i = 0; i < poles.Length; i++)
        {
            double radius = 0.2 * poles.Where((_, k) => k != i).Select(p => (p - poles[i]).Magnitude).Append(poles[i].Magnitude).Min();
            for (int k = 0; k < Points; k++)
            {
                var arm = Complex.FromPolarCoordinates(radius, 2 * Math.PI * k / Points);
                residues[i] += transfer(poles[i] + arm) * arm / Points;
            }
        }

        var none = new PlainResponse(poles, residues, 0);
        double at = poles.Length == 0 ? 1 : Math.Exp(poles.Average(p => Math.Log(p.Magnitude)));
        return new PlainResponse(poles, residues, (transfer(at) - none.At(at)).Real);
    }

    /// <summary>One after the other.</summary>
    public static PlainResponse Chain(IReadOnlyList<PlainResponse> parts) =>
        Of([.. parts.SelectMany(p => p.Poles)], s => parts.Aggregate(Complex.One, (product, part) => product * part.At(s)));

    /// <summary>The answer to a unit step.</summary>
    public double Step(double seconds)
    {
        Complex sum = At(0);
        for (int i = 0; i < Poles.Length; i++)
        {
            sum += Residues[i] / Poles[i] * Complex.Exp(Poles[i] * seconds);
        }

        return sum.Real;
    }

    /// <summary>The last time outside a thousandth of the end value; of the greatest value where the end is below 1e-4 of it. Null without a pole.</summary>
    public double? Settling()
    {
        if (Poles.Length == 0)
        {
            return null;
        }

        double first = 1e-3 / Poles.Max(p => p.Magnitude), last = 40 / Poles.Min(p => -p.Real), end = At(0).Real;
        double[] times = [.. Enumerable.Range(0, 20001).Select(i => first * Math.Pow(last / first, i / 20000.0))], values = [.. times.Select(Step)];
        double greatest = values.Max(Math.Abs), within = 1e-3 * (Math.Abs(end) < 1e-4 * greatest ? greatest : Math.Abs(end));
        int index = Array.FindLastIndex(values, v => within < Math.Abs(v - end));
        if (index < 0)
        {
            return 0;
        }

        (double inside, double outside) = (times[Math.Min(index + 1, times.Length - 1)], times[index]);
        for (int i = 0; i < 60; i++)
        {
            double middle = (inside + outside) / 2;
            (inside, outside) = within < Math.Abs(Step(middle) - end) ? (inside, middle) : (middle, outside);
        }

        return inside;
    }

    /// <summary>Runs it from rest: each call goes one step on, a coarse or a fine one, the input straight between its samples.</summary>
    public Func<double, bool, double> Run(double coarse, double fine)
    {
        var states = new Complex[Poles.Length];
        (Complex[] Keep, Complex[] Before, Complex[] Now)[] steps = [.. new[] { coarse, fine }.Select(step =>
            (Poles.Select(p => Complex.Exp(p * step)).ToArray(), Poles.Select(p => step * (First(p * step) - Second(p * step))).ToArray(), Poles.Select(p => step * Second(p * step)).ToArray()))];
        double before = 0;
        return (now, isFine) =>
        {
            (Complex[] keep, Complex[] old, Complex[] fresh) = steps[isFine ? 1 : 0];
            Complex y = Direct * now;
            for (int i = 0; i < states.Length; i++)
            {
                states[i] = (keep[i] * states[i]) + (old[i] * before) + (fresh[i] * now);
                y += Residues[i] * states[i];
            }

            before = now;
            return y.Real;
        };
    }

    /// <summary>(eˣ − 1)/x.</summary>
    private static Complex First(Complex x) => x.Magnitude < 0.3 ? Series(x, 1) : (Complex.Exp(x) - 1) / x;

    /// <summary>(eˣ − 1 − x)/x².</summary>
    private static Complex Second(Complex x) => x.Magnitude < 0.3 ? Series(x, 2) : (Complex.Exp(x) - 1 - x) / (x * x);

    /// <summary>Σ xᵏ/(k + n)!.</summary>
    private static Complex Series(Complex x, int n)
    {
        Complex sum = 0, power = 1;
        double factorial = n == 1 ? 1 : 2;
        for (int k = 0; k < 16; k++)
        {
            sum += power / factorial;
            power *= x;
            factorial *= k + n + 1;
        }

        return sum;
    }
}
