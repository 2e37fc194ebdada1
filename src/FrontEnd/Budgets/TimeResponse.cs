using FrontEnd.AntiAlias;
using FrontEnd.Filters;

namespace FrontEnd.Budgets;

/// <summary>Step responses in time: the stages as rational sections with ideal op-amps, joined into one state space, and the digital filters behind the sampler.</summary>
/// <remarks>
/// The input network and the amplifier settle within microseconds of what is shown here (milliseconds to seconds) and count as instantaneous;
/// the op-amps' finite bandwidth moves the poles used here by less than the parts' tolerance. Sampling the state space with its matrix exponential is exact.
/// </remarks>
internal sealed class TimeResponse
{
    private readonly double[,] _a;
    private readonly double[] _b;
    private readonly double[] _c;
    private readonly double _d;

    private TimeResponse(double[,] a, double[] b, double[] c, double d, double slowest, double fastest)
    {
        (_a, _b, _c, _d) = (a, b, c, d);
        SlowestSeconds = slowest;
        FastestSeconds = fastest;
    }

    /// <summary>Longest time constant; 0 without any state.</summary>
    public double SlowestSeconds { get; }

    public double FastestSeconds { get; }

    /// <summary>One stage or several, in order.</summary>
    public static TimeResponse Of(params IEnumerable<Stage> stages)
    {
        var sections = stages.SelectMany(Sections).ToList();
        int n = sections.Sum(section => section.Order);
        double[,] a = new double[n, n];
        double[] b = new double[n], c = new double[n];
        double d = 1;
        int at = 0;
        double slowest = 0, fastest = double.PositiveInfinity;
        foreach (Section section in sections)
        {
            // The section sees u = c·x + d·input of everything before it.
            section.Fill(a, b, at, c, d);
            var next = new double[n];
            for (int i = 0; i < n; i++)
            {
                next[i] = section.Through * c[i];
            }

            section.Output(next, at);
            c = next;
            d *= section.Through;
            at += section.Order;
            if (section.Order != 0)
            {
                slowest = Math.Max(slowest, section.Slowest);
                fastest = Math.Min(fastest, section.Fastest);
            }
        }

        return new TimeResponse(a, b, c, d, slowest, fastest);
    }

    /// <summary>Response to a unit step at t = 0, dt, 2dt …: the analogue path alone, or sampled at dt and filtered.</summary>
    public double[] Step(double dt, int samples, SecondOrderSections? digital = null)
    {
        int n = _b.Length;
        var y = new double[samples];
        (double[,] phi, double[] gamma) = Discretise(dt);
        double[] x = new double[n], next = new double[n];
        double[] states = new double[2 * (digital?.Count ?? 0)];
        ReadOnlySpan<double> k = digital is null ? [] : digital.Coefficients;
        for (int i = 0; i < samples; i++)
        {
            double value = _d;
            for (int j = 0; j < n; j++)
            {
                value += _c[j] * x[j];
            }

            for (int s = 0; s < states.Length / 2; s++)
            {
                int p = 5 * s;
                double output = (k[p] * value) + states[2 * s];
                states[2 * s] = (k[p + 1] * value) - (k[p + 3] * output) + states[(2 * s) + 1];
                states[(2 * s) + 1] = (k[p + 2] * value) - (k[p + 4] * output);
                value = output;
            }

            y[i] = value;
            for (int row = 0; row < n; row++)
            {
                double sum = gamma[row];
                for (int column = 0; column <= row; column++)
                {
                    sum += phi[row, column] * x[column];
                }

                next[row] = row + 1 < n ? sum + (phi[row, row + 1] * x[row + 1]) : sum;
            }

            (x, next) = (next, x);
        }

        return y;
    }

    /// <summary>Last time at which the response is further than a tolerance from its end value; null where it has not settled by the end.</summary>
    public static double? Settled(double[] response, double dt, double end, double tolerance)
    {
        int last = response.Length - 1;
        while (0 <= last && Math.Abs(response[last] - end) <= tolerance)
        {
            last--;
        }

        if (response.Length - Math.Max(1, response.Length / 50) <= last)
        {
            return null;
        }

        if (last < 0)
        {
            return 0;
        }

        // Between the last sample outside and the first inside, straight in the size.
        double outside = Math.Abs(response[last] - end), inside = Math.Abs(response[last + 1] - end);
        return (last + ((outside - tolerance) / (outside - inside))) * dt;
    }

    /// <summary>x(t + dt) = Φx + Γ for a unit input: exp of the augmented matrix by scaling and squaring.</summary>
    private (double[,] Phi, double[] Gamma) Discretise(double dt)
    {
        int n = _b.Length, size = n + 1;
        var m = new double[size, size];
        double norm = 0;
        for (int i = 0; i < n; i++)
        {
            double row = Math.Abs(_b[i] * dt);
            for (int j = 0; j < n; j++)
            {
                m[i, j] = _a[i, j] * dt;
                row += Math.Abs(m[i, j]);
            }

            m[i, n] = _b[i] * dt;
            norm = Math.Max(norm, row);
        }

        int squarings = norm < 0.5 ? 0 : (int)Math.Ceiling(Math.Log2(norm / 0.5));
        double scale = Math.Pow(2, -squarings);
        var term = new double[size, size];
        var sum = new double[size, size];
        for (int i = 0; i < size; i++)
        {
            term[i, i] = sum[i, i] = 1;
            for (int j = 0; j < size; j++)
            {
                m[i, j] *= scale;
            }
        }

        for (int order = 1; order <= 16; order++)
        {
            term = Multiply(term, m, 1.0 / order);
            for (int i = 0; i < size; i++)
            {
                for (int j = 0; j < size; j++)
                {
                    sum[i, j] += term[i, j];
                }
            }
        }

        for (int i = 0; i < squarings; i++)
        {
            sum = Multiply(sum, sum, 1);
        }

        var gamma = new double[n];
        for (int i = 0; i < n; i++)
        {
            gamma[i] = sum[i, n];
        }

        return (sum, gamma);
    }

    private static double[,] Multiply(double[,] left, double[,] right, double scale)
    {
        int n = left.GetLength(0);
        var product = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                double a = left[i, k] * scale;
                for (int j = 0; a != 0 && j < n; j++)
                {
                    product[i, j] += a * right[k, j];
                }
            }
        }

        return product;
    }

    private static IEnumerable<Section> Sections(Stage stage)
    {
        switch (stage)
        {
            case GainStage gain:
                if (gain.CouplingCapacitor is { } coupling)
                {
                    double tau = coupling.Farads * gain.CouplingResistor.Ohms;
                    yield return Section.First(tau, 1, -1);
                }

                double rise = gain.NominalGain - 1;
                yield return gain.FeedbackCapacitor is { } cf && 0 < gain.FeedbackResistor.Ohms && 0 < cf.Farads
                    ? Section.First(cf.Farads * gain.FeedbackResistor.Ohms, 1, rise)
                    : Section.Constant(gain.NominalGain);
                break;
            case RcSection rc:
                yield return Section.First(rc.R.Ohms * rc.C.Farads, 0, 1);
                break;
            case SallenKeySection s:
                yield return Section.Second(
                    (s.C2.Farads * (s.R1.Ohms + s.R2.Ohms)) - ((s.NominalGain - 1) * s.R1.Ohms * s.C1.Farads), s.R1.Ohms * s.R2.Ohms * s.C1.Farads * s.C2.Farads, s.NominalGain);
                break;
            case TwinTNotch notch:
                // With matched parts G·(1 + S²)/(1 + S/Q + S²) = G − G·(S/Q)/(1 + S/Q + S²); parts off by their tolerance leave a residue that settles alike.
                double period = 1 / (2 * Math.PI * notch.Centre.Hertz);
                yield return Section.Stop(period / notch.Q, period * period, notch.NominalGain);
                break;
            case MultipleFeedbackSection s:
                {
                    double gain = s.NominalGain;
                    yield return Section.Second(s.C2.Farads * (s.R2.Ohms + s.R3.Ohms + (s.R2.Ohms * gain)), s.R2.Ohms * s.R3.Ohms * s.C1.Farads * s.C2.Farads, -gain);
                    break;
                }

            default:
                throw new ArgumentOutOfRangeException(nameof(stage), stage, "Stage is not handled.");
        }
    }

    /// <summary>through + gain/(1 + s·τ) or through + (gain + s·slope)/(1 + s·a1 + s²·a2).</summary>
    private sealed record Section(int Order, double Through, double Gain, double A1, double A2, double Slope = 0)
    {
        public double Slowest => Order == 1 || A1 * A1 < 4 * A2 ? (Order == 1 ? A1 : 2 * A2 / A1) : 2 * A2 / (A1 - Math.Sqrt((A1 * A1) - (4 * A2)));

        public double Fastest => Order == 1 ? A1 : Math.Sqrt(A2);

        public static Section Constant(double gain) => new(0, gain, 0, 0, 0);

        public static Section First(double tau, double through, double gain) => tau <= 0 ? Constant(through + gain) : new(1, through, gain, tau, 0);

        public static Section Second(double a1, double a2, double gain) => a2 <= 0 ? First(a1, 0, gain) : new(2, 0, gain, a1, a2);

        public static Section Stop(double a1, double a2, double gain) => new(2, gain, 0, a1, a2, -gain * a1);

        /// <summary>State rows with input u = c·x + d·input.</summary>
        public void Fill(double[,] a, double[] b, int at, double[] c, double d)
        {
            if (Order == 0)
            {
                return;
            }

            int driven = at + Order - 1;
            double scale = Order == 1 ? 1 / A1 : 1 / A2;
            if (Order == 1)
            {
                a[at, at] = -scale;
            }
            else
            {
                a[at, at + 1] = 1;
                a[at + 1, at] = -scale;
                a[at + 1, at + 1] = -A1 * scale;
            }

            for (int j = 0; j < at; j++)
            {
                a[driven, j] = scale * c[j];
            }

            b[driven] = scale * d;
        }

        public void Output(double[] c, int at)
        {
            if (Order != 0)
            {
                c[at] = Gain;
            }

            if (Order == 2)
            {
                c[at + 1] = Slope;
            }
        }
    }
}
