namespace FrontEnd.Filters;

/// <summary>State equations of a cascade of analogue sections, in time scaled to the filter's own speed.</summary>
internal sealed class StateModel
{
    private readonly double[,] states;
    private readonly double[] inputs;
    private readonly double[] outputs;
    private readonly double direct;
    private readonly double speed;

    private StateModel(double[,] states, double[] inputs, double[] outputs, double direct, double speed) =>
        (this.states, this.inputs, this.outputs, this.direct, this.speed) = (states, inputs, outputs, direct, speed);

    internal static StateModel Of(AnalogSections sections, ZeroPoleGain filter)
    {
        // s = scale·σ brings all coefficients near 1, or the powers of 2πf would spoil the exponential.
        double scale = Math.Exp(filter.Poles.Average(p => Math.Log(System.Numerics.Complex.Abs(p))));
        int size = sections.Sections.Sum(s => s.IsFirstOrder ? 1 : 2);
        double[,] a = new double[size, size];
        double[] b = new double[size];
        double[] c = new double[size];
        double d = 1;
        int at = 0;
        foreach (AnalogSection section in sections.Sections)
        {
            // The section's input is c·x + d·u of what went before.
            int count = section.IsFirstOrder ? 1 : 2;
            int input = at + count - 1;
            for (int j = 0; j < at; j++)
            {
                a[input, j] = c[j];
            }

            b[input] = d;
            double through;
            if (count == 1)
            {
                a[at, at] = -section.A2 / scale;
                through = section.B1;
                double output = (section.B2 / scale) - (through * section.A2 / scale);
                Append(c, at, through, [output]);
            }
            else
            {
                double a1 = section.A1 / scale;
                double a2 = section.A2 / scale / scale;
                a[at, at + 1] = 1;
                a[at + 1, at] = -a2;
                a[at + 1, at + 1] = -a1;
                through = section.B0;
                Append(c, at, through, [(section.B2 / scale / scale) - (through * a2), (section.B1 / scale) - (through * a1)]);
            }

            d *= through;
            at += count;
        }

        return new StateModel(a, b, c, d, scale);
    }

    internal double[] Step(double spacing, int points)
    {
        int size = inputs.Length;
        // exp of [A B; 0 0] holds the state's transition and the step's share of it at once.
        double[,] m = new double[size + 1, size + 1];
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
            {
                m[i, j] = states[i, j] * spacing * speed;
            }

            m[i, size] = inputs[i] * spacing * speed;
        }

        double[,] transition = Exponential(m, size + 1);
        double[] state = new double[size + 1];
        state[size] = 1;
        double[] next = new double[size + 1];
        double[] values = new double[points];
        for (int k = 0; k < points; k++)
        {
            double value = direct;
            for (int i = 0; i < size; i++)
            {
                value += outputs[i] * state[i];
            }

            values[k] = value;
            for (int i = 0; i <= size; i++)
            {
                double sum = 0;
                for (int j = 0; j <= size; j++)
                {
                    sum += transition[i, j] * state[j];
                }

                next[i] = sum;
            }

            (state, next) = (next, state);
        }

        return values;
    }

    private static void Append(double[] c, int at, double through, double[] own)
    {
        for (int j = 0; j < at; j++)
        {
            c[j] *= through;
        }

        own.CopyTo(c, at);
    }

    /// <summary>e^M by halving M until small, a series of 18 terms, and squaring.</summary>
    private static double[,] Exponential(double[,] m, int n)
    {
        double norm = 0;
        for (int i = 0; i < n; i++)
        {
            double row = 0;
            for (int j = 0; j < n; j++)
            {
                row += Math.Abs(m[i, j]);
            }

            norm = Math.Max(norm, row);
        }

        int halvings = Math.Max(0, (int)Math.Ceiling(Math.Log2(norm + 1e-300)) + 2);
        double factor = Math.Pow(2, -halvings);
        double[,] result = Identity(n);
        double[,] term = Identity(n);
        for (int k = 1; k <= 18; k++)
        {
            term = Multiply(term, m, n, factor / k);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    result[i, j] += term[i, j];
                }
            }
        }

        for (int k = 0; k < halvings; k++)
        {
            result = Multiply(result, result, n, 1);
        }

        return result;
    }

    private static double[,] Identity(int n)
    {
        double[,] identity = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            identity[i, i] = 1;
        }

        return identity;
    }

    private static double[,] Multiply(double[,] x, double[,] y, int n, double factor)
    {
        double[,] product = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                double xik = x[i, k] * factor;
                for (int j = 0; j < n; j++)
                {
                    product[i, j] += xik * y[k, j];
                }
            }
        }

        return product;
    }
}
