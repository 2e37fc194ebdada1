using System.Numerics;

namespace FrontEnd.Tests.Teaching;

/// <summary>The answer of every template by another way than its own, from the given values alone: plain arithmetic, sums instead of integrals, circuits instead of formulas.</summary>
internal static class SecondWays
{
    private const double K = 1.380649e-23;   // CODATA 2018, exact
    private static readonly double[] E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];
    private static readonly double[] E24 = [1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];

    /// <summary>By template: the answer from the given values, and how near ours must be (relative; sums and searches are coarser than arithmetic).</summary>
    internal static readonly Dictionary<string, (Func<Func<string, double>, double> Answer, double Tolerance)> All = new(StringComparer.Ordinal)
    {
        // Two densities of half the size and twice the band (two-sided): the same variance.
        ["noise-thermal"] = (g => Math.Sqrt(2 * (g("f₂") - g("f₁")) * 2 * K * g("T") * g("R")), 1e-9),
        ["noise-peak-to-peak"] = (g => 2 * 3.3 * g("σ"), 1e-9),
        ["noise-together"] = (g => new Complex(new Complex(g("σ₁"), g("σ₂")).Magnitude, g("σ₃")).Magnitude, 1e-9),
        ["noise-amplifier"] = (g => Math.Sqrt(Sum(f => g("e") * g("e") * (1 + (g("f_c") / f)), g("f₁"), g("f₂"))), 1e-6),
        ["noise-current"] = (g => Math.Sqrt(Sum(_ => Math.Pow(g("i") * g("R"), 2), g("f₁"), g("f₂"))), 1e-9),
        ["noise-referred"] = (g => new Complex(g("e_ni") * g("G"), g("e_no")).Magnitude / g("G"), 1e-9),
        ["noise-sweeps"] = (g => Enumerable.Range(1, 2_000_000).First(n => g("S") * (1 - 1e-9) <= g("A") / (g("σ") / Math.Sqrt(n))), 1e-12),
        ["noise-bandwidth"] = (g => Math.Sqrt(SumToInfinity(f => g("e") * g("e") / (1 + Math.Pow(f / g("f_c"), 2 * g("n"))), g("f_c"))), 1e-4),
        ["noise-corner"] = (g => Root(f => (g("e") * g("e") * (1 + (f / g("f₁")))) - (g("e₁") * g("e₁")), 1e-3, 1e7), 1e-9),
        ["gain-stage"] = (g => 1 / (g("Rg") / (g("Rg") + g("Rf"))), 1e-9),
        ["gain-decibels"] = (g => 10 * Math.Log10(g("G") * g("G")), 1e-9),
        // Ideal single-pole op-amp in the circuit: |out/in| has fallen to 1/√2 of its value at 0 Hz.
        ["gain-bandwidth"] = (g => Root(f => Closed(g, f) - (g("Rf") / g("Rin") / Math.Sqrt(2)), 1, 1e8), 1e-4),
        ["gain-first-stage"] = (g => Root(gain => (gain * (g("V_off") + g("V_sig"))) + g("h") - (g("V_s") / 2), 1e-3, 1e4), 1e-9),
        ["gain-supply-ripple"] = (g => g("V") * Math.Exp(-g("PSRR") * Math.Log(10) / 20), 1e-9),
        ["gain-inner-nodes"] = (g => Root(gain => Math.Max(g("V_cm") + (gain * g("V_d") / 2) - (g("V_s") - g("h")), g("h") - (g("V_cm") - (gain * g("V_d") / 2))), 1e-3, 1e4), 1e-9),
        ["gain-settling"] = (g => Root(t => g("V_tol") - (g("V₀") * Math.Exp(-t / (g("R") * g("C")))), 1e-6, 1e6), 1e-9),
        ["converter-step"] = (g => g("FS") / (g("G") * (1L << (int)g("N"))), 1e-9),
        ["converter-ideal-ratio"] = (g => 10 * Math.Log10(1.5 * Math.Pow(4, g("N")) / Math.Pow(10, g("A") / 10)), 1e-9),
        ["converter-data-rate"] = (g => g("N") * g("f_s") * g("b") * (100 + (100 * g("overhead"))) / 100, 1e-9),
        ["converter-quantisation"] = (g => UniformRms(g("FS") / (1L << (int)g("N"))) / g("G"), 1e-6),
        ["converter-noise-free-bits"] = (g => Math.Log(g("span") / (2 * 3.3 * g("σ"))) / Math.Log(2), 1e-9),
        ["converter-enob"] = (g => (g("SINAD") - 1.76) / 6.02, 1e-9),
        ["converter-dynamic-range"] = (g => 10 * Math.Log10(Math.Pow(g("FS") / g("G") / 2, 2) / 2 / (g("σ") * g("σ"))), 1e-9),
        ["sampling-lands-at"] = (g => SampledSine(g("h") * g("f₀"), g("f_s")), 1e-9),
        ["sampling-fold-frequency"] = (g => Root(f => g("f₂") - Math.Abs(f - g("f_s")), g("f_s") / 2, g("f_s")), 1e-9),
        ["sampling-order"] = (g => Enumerable.Range(1, 60).Select(n => Butterworth(n, (g("f_s") - g("f₂")) / g("f_c"))).First(reached => g("A") * (1 - 1e-9) <= reached), 1e-9),
        ["sampling-fold-attenuation"] = (g => Butterworth((int)g("n"), (g("f_s") - g("f₂")) / g("f_c")), 1e-9),
        ["sampling-skew"] = (g => -20 * Math.Log10((Complex.One - Complex.FromPolarCoordinates(1, 2 * Math.PI * g("f") * g("Δt"))).Magnitude), 1e-7),
        ["sampling-sinc"] = (g => -20 * g("K") * Math.Log10(MovingAverage((int)g("M"), g("f/f_d"))), 1e-7),
        ["cmrr-residue"] = (g => g("V_cm") * Math.Exp(-g("CMRR") * Math.Log(10) / 20), 1e-9),
        ["cmrr-needed"] = (g => 10 * Math.Log10(Math.Pow(g("V_cm") / g("V"), 2)), 1e-9),
        ["cmrr-body-current"] = (g => g("V") / Reactance(g("f"), g("C_p")), 1e-9),
        ["cmrr-divider"] = (g => -20 * Math.Log10((Share(0, g("C_in"), g("f")) - Share(g("ΔZ"), g("C_in"), g("f"))).Magnitude), 1e-4),
        ["cmrr-common-mode"] = (g => g("Z_g") * g("V") / Reactance(g("f"), g("C_p")), 1e-9),
        ["cmrr-resistors"] = (g => FourResistors(g("G"), g("tol")), 1e-4),
        ["cmrr-loop"] = (g => Math.Sqrt(2) * g("B") * g("A") * 2 * Math.PI * g("f") / Math.Sqrt(2), 1e-9),
        ["cmrr-combined"] = (g => -20 * Math.Log10(new[] { "CMRR₁", "CMRR₂", "CMRR₃" }.Sum(name => Math.Pow(10, -g(name) / 20))), 1e-9),
        ["cmrr-shared-reference"] = (g => -20 * Math.Log10((Share(g("Z_e"), g("C"), g("f")) - Share(g("Z_e"), g("N") * g("C"), g("f"))).Magnitude), 1e-7),
        ["electrode-bias"] = (g => g("I_b") / (1 / g("R")), 1e-9),
        ["electrode-impedance"] = (g => (g("R_s") + (1 / ((1 / g("R_d")) + new Complex(0, 2 * Math.PI * g("f") * g("C_d"))))).Magnitude, 1e-9),
        ["electrode-plate"] = (g => 8.8541878128e-12 * g("εr") * g("A") / g("d"), 1e-9),
        ["electrode-contact-check"] = (g => (g("I") * g("Z₁")) + (g("I") * g("Z₂")), 1e-9),
        ["electrode-pair-noise"] = (g => Math.Sqrt(Sum(f => 8 * K * g("T") * (1 / ((1 / g("R_d")) + new Complex(0, 2 * Math.PI * f * g("C_d")))).Real, g("f₁"), g("f₂"))), 1e-6),
        ["filter-rc"] = (g => Root(f => 0.5 - Math.Pow(Share(g("R"), g("C"), f).Magnitude, 2), 1e-3, 1e6), 1e-9),
        ["filter-choose-capacitor"] = (g => Members(E12).MinBy(c => Math.Abs(Math.Log(2 * Math.PI * g("f_c") * g("R") * c))), 1e-9),
        ["filter-sallen-key"] = (g => Root(f => -SallenKey(g, f).Real, 1e-2, 1e6), 1e-9),
        ["filter-sallen-key-q"] = (g => 1 / SallenKey(g, Root(f => -SallenKey(g, f).Real, 1e-2, 1e6)).Magnitude, 1e-7),
        ["filter-butterworth"] = (g => Butterworth((int)g("n"), g("f/f_c")), 1e-9),
        ["filter-equal-sections"] = (g => Root(f => Math.Pow(1 + Math.Pow(f / g("f₁"), 2), g("n")) - 2, 1e-3, 1e6), 1e-9),
        ["notch-width"] = (g => NotchWidth(g("f₀"), g("Q")), 1e-6),
        ["notch-ring"] = (g => Ringing(g("f₀"), g("Q"), g("f_s"), g("share")), 1e-6),
        ["notch-deviation"] = (g => -20 * Math.Log10(Notch(g("f₀") + g("Δ"), g("f₀"), g("Q"))), 1e-7),
        ["drive-loop-gain"] = (g => 10 * Math.Log10(Math.Pow(g("f_u") / g("f"), 2)), 1e-9),
        // Circuit: common mode 1 V through R_a/2 into the inverting input, R_f back: the output moves −2·R_f/R_a.
        ["drive-resistance"] = (g => 1 / ((1 + (g("R_f") / (g("R_a") / 2))) / g("R_o")), 1e-9),
        ["drive-common-mode"] = (g => Root(v => v + (g("T") * v) - (g("i") * (g("R_o") + g("R_e"))), 1e-12, 1), 1e-9),
        ["drive-margin"] = (g => 180 + (Loop(g, Root(f => 1 - Loop(g, f).Magnitude, 1, g("f_u"))).Phase * 180 / Math.PI), 1e-7),
        ["safety-current"] = (g => g("V_max") / g("R"), 1e-9),
        ["safety-resistor"] = (g => Members(E24).Where(r => g("V_max") / (r * (1 - g("tol"))) <= g("I") * (1 + 1e-9)).Min(), 1e-9),
        ["safety-leads"] = (g =>
        {
            // The skin's voltage by Kirchhoff's sum, then what of it flows through the ground.
            double into = Enumerable.Range(0, (int)g("N")).Sum(_ => 1 / (g("R") - (g("R") * g("tol")))), back = 1 / (g("R_g") - (g("R_g") * g("tol")));
            return g("V_max") * into / (into + back) * back;
        }, 1e-9),
        ["chain-noise"] = (g => Math.Sqrt(Sum(
            _ => (8 * K * g("T") * (g("R_e") + g("R_p"))) + (g("e") * g("e")) + (2 * Math.Pow(g("i") * (g("R_e") + g("R_p")), 2)), g("f₁"), g("f₂")) + Math.Pow(g("σ_adc") / g("G"), 2)), 1e-9),
        ["chain-mains"] = (g =>
        {
            double common = g("Z_g") * g("V") / Reactance(g("f"), g("C_p"));
            return common * (((Share(0, g("C_in"), g("f")) - Share(g("ΔZ"), g("C_in"), g("f"))).Magnitude) + Math.Pow(10, -g("CMRR") / 20));
        }, 1e-4),
        ["chain-noise-free-bits"] = (g => Math.Log(g("FS") / g("G") / (6.6 * new Complex(g("σ_in"), g("σ_adc") / g("G")).Magnitude)) / Math.Log(2), 1e-9),
    };

    /// <summary>Midpoint sum on a logarithmic grid.</summary>
    private static double Sum(Func<double, double> density, double low, double high)
    {
        const int steps = 4000;
        double ratio = Math.Pow(high / low, 1.0 / steps), sum = 0;
        for (int i = 0; i < steps; i++)
        {
            double from = low * Math.Pow(ratio, i);
            sum += density(from * Math.Sqrt(ratio)) * from * (ratio - 1);
        }

        // The midpoint of a logarithmic step is not that of the step; for a constant the widths are exact, for the rest the error falls with the square of the step.
        return sum;
    }

    private static double SumToInfinity(Func<double, double> density, double scale) =>
        Sum(density, scale * 1e-6, scale * 1e6) + (density(0) * scale * 1e-6);

    private static double Root(Func<double, double> rising, double low, double high)
    {
        bool up = rising(low) < 0;
        Assert(up != (rising(high) < 0));
        for (int i = 0; i < 200; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = rising(middle) < 0 == up ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static void Assert(bool condition) => Xunit.Assert.True(condition, "the search has no bracket");

    private static double Closed(Func<string, double> g, double f)
    {
        // Node at (−): (in − x)/Rin = (x − out)/Rf, out = −A·x, A = GBW/(jf).
        Complex a = g("GBW") / new Complex(0, f);
        Complex x = 1 / g("Rin") / ((1 / g("Rin")) + ((1 + a) / g("Rf")));
        return (a * x).Magnitude;
    }

    private static double UniformRms(double step)
    {
        const int n = 20_000;
        return Math.Sqrt(Enumerable.Range(0, n).Sum(i => Math.Pow(step * (((i + 0.5) / n) - 0.5), 2)) / n);
    }

    /// <summary>The lowest frequency whose samples are those of the sine, found by comparing samples.</summary>
    private static double SampledSine(double frequency, double rate)
    {
        // All frequencies here are whole hertz, so the answer is one too.
        return Enumerable.Range(0, (int)(rate / 2) + 1).First(candidate =>
            Enumerable.Range(0, 64).All(n => Math.Abs(Math.Cos(2 * Math.PI * frequency * n / rate) - Math.Cos(2 * Math.PI * candidate * n / rate)) < 1e-9));
    }

    /// <summary>Attenuation from the poles on the unit circle's left half.</summary>
    private static double Butterworth(int order, double x)
    {
        Complex product = Complex.One;
        for (int k = 0; k < order; k++)
        {
            product *= new Complex(0, x) - Complex.FromPolarCoordinates(1, Math.PI / 2 * (1 + (((2 * k) + 1.0) / order)));
        }

        return 20 * Math.Log10(product.Magnitude);
    }

    private static double MovingAverage(int length, double frequencyOverOutput) =>
        Enumerable.Range(0, length).Aggregate(Complex.Zero, (sum, n) => sum + Complex.FromPolarCoordinates(1.0 / length, -2 * Math.PI * frequencyOverOutput * n / length)).Magnitude;

    private static double Reactance(double f, double c) => 1 / (2 * Math.PI * f * c);

    private static Complex Share(double r, double c, double f) => 1 / (1 + new Complex(0, 2 * Math.PI * f * r * c));

    /// <summary>Difference amplifier as a circuit, its resistors off by a thousandth of the tolerance, so that only the first order is left.</summary>
    private static double FourResistors(double gain, double tolerance)
    {
        double t = tolerance / 1000, r1 = 1 - t, r2 = gain * (1 + t), r3 = 1 + t, r4 = gain * (1 - t);
        double common = (r4 / (r3 + r4) * (1 + (r2 / r1))) - (r2 / r1);
        double difference = 0.5 * ((r4 / (r3 + r4) * (1 + (r2 / r1))) + (r2 / r1));
        return (20 * Math.Log10(difference / Math.Abs(common))) - 60;
    }

    /// <summary>Denominator of the section by its two nodes: 1/H with the follower's output equal to P.</summary>
    private static Complex SallenKey(Func<string, double> g, double f)
    {
        Complex s = new(0, 2 * Math.PI * f);
        Complex xPerOut = 1 + (s * g("C₂") * g("R₂"));
        return xPerOut + (g("R₁") * (((xPerOut - 1) / g("R₂")) + (s * g("C₁") * (xPerOut - 1))));
    }

    private static double Notch(double f, double centre, double q)
    {
        Complex s = new(0, f / centre);
        return (((s * s) + 1) / ((s * s) + (s / q) + 1)).Magnitude;
    }

    private static double NotchWidth(double centre, double q)
    {
        double Edge(double low, double high) => Root(f => Notch(f, centre, q) - Math.Sqrt(0.5), low, high);
        return Edge(centre, centre * 10) - Edge(centre / 10, centre);
    }

    /// <summary>The notch's own recursion run on an impulse; the decay of its energy, two samples being one oscillator's state.</summary>
    private static double Ringing(double centre, double q, double rate, double share)
    {
        double b = 1 / (1 + Math.Tan(Math.PI * centre / q / rate)), w = 2 * Math.PI * centre / rate;
        double a1 = -2 * b * Math.Cos(w), a2 = (2 * b) - 1;
        double y1 = 1, y2 = 0;
        int n = 0;

        // y1² + a1·y1·y2 + a2·y2² falls by exactly a2 a sample whatever the phase.
        double Energy() => (y1 * y1) + (a1 * y1 * y2) + (a2 * y2 * y2);
        double start = Energy();
        while (n < 50)
        {
            (y1, y2) = ((-a1 * y1) - (a2 * y2), y1);
            n++;
        }

        double perSample = Math.Log(start / Energy()) / 2 / n;
        return Math.Log(1 / share) / perSample / rate;
    }

    private static Complex Loop(Func<string, double> g, double f) =>
        g("f_u") / new Complex(0, f) / (1 + new Complex(0, f / g("f₁"))) / (1 + new Complex(0, f / g("f₂")));

    private static IEnumerable<double> Members(double[] series) =>
        from power in Enumerable.Range(-12, 21) from member in series select member * Math.Pow(10, power);
}
