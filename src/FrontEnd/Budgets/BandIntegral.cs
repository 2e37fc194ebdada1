namespace FrontEnd.Budgets;

/// <summary>Fills values[quantity][lane] with each integrand at each frequency.</summary>
internal delegate void LaneIntegrand(ReadOnlySpan<double> hertz, double[][] values);

/// <summary>
/// Integrals over frequency of many integrands at once, in log f by adaptive Gauss–Kronrod (7, 15) panels. A batch of panels is evaluated
/// together so that the network solver's lanes are full; the general-purpose library's quadrature takes one frequency of one integrand at
/// a time.
/// </summary>
/// <remarks>Nodes and weights: Piessens et al., QUADPACK (1983), routine QK15, to 33 digits. A panel is halved until its error estimate
/// is below its share of <c>tolerance</c> times the whole of every integrand.</remarks>
internal sealed class BandIntegral
{
    private const int PanelNodes = 15;
    private const int MostPanels = 4096;

    /// <summary>Changes below this share of an integral may be rounding.</summary>
    private const double LikeRounding = 1e-5;

    private static readonly double[] Nodes =
    [
        -0.991455371120812639206854697526329, -0.949107912342758524526189684047851, -0.864864423359769072789712788640926,
        -0.741531185599394439863864773280788,
        -0.586087235467691130294144838258730, -0.405845151377397166906606412076961, -0.207784955007898467600689403773245, 0,
        0.207784955007898467600689403773245, 0.405845151377397166906606412076961, 0.586087235467691130294144838258730,
        0.741531185599394439863864773280788,
        0.864864423359769072789712788640926, 0.949107912342758524526189684047851, 0.991455371120812639206854697526329,
    ];

    private static readonly double[] KronrodWeights =
    [
        0.022935322010529224963732008058970, 0.063092092629978553290700663189204, 0.104790010322250183839876322541518,
        0.140653259715525918745189590510238,
        0.169004726639267902826583426598550, 0.190350578064785409913256402421014, 0.204432940075298892414161999234649,
        0.209482141084727828012999174891714,
        0.204432940075298892414161999234649, 0.190350578064785409913256402421014, 0.169004726639267902826583426598550,
        0.140653259715525918745189590510238,
        0.104790010322250183839876322541518, 0.063092092629978553290700663189204, 0.022935322010529224963732008058970,
    ];

    private static readonly double[] GaussWeights =
    [
        0, 0.129484966168869693270611432679082, 0, 0.279705391489276667901467771423780, 0, 0.381830050505118944950369775488975, 0,
        0.417959183673469387755102040816327, 0, 0.381830050505118944950369775488975, 0, 0.279705391489276667901467771423780, 0,
        0.129484966168869693270611432679082, 0,
    ];

    private readonly LaneIntegrand _integrand;
    private readonly double _tolerance;
    private readonly double[][] _values;
    private readonly double[] _totals;
    private readonly double[] _hertz = new double[SignalPath.Chunk];
    private readonly List<Panel> _panels = [];

    private BandIntegral(int quantities, LaneIntegrand integrand, double tolerance)
    {
        _integrand = integrand;
        _tolerance = tolerance;
        _values = [.. Enumerable.Range(0, quantities).Select(_ => new double[SignalPath.Chunk])];
        _totals = new double[quantities];
    }

    private sealed record Panel(double Low, double High, double[] Kronrod, double[] Gauss)
    {
        /// <summary>What halving the panel that it is a half of changed: the largest share of an integral; infinite for a panel of the
        /// start.</summary>
        public double Change { get; set; } = double.PositiveInfinity;

        /// <summary>True where halving it once more would change nothing but rounding.</summary>
        public bool IsSettled { get; set; }
    }

    /// <summary>False where some panel could not be brought below the tolerance.</summary>
    public bool Converged { get; private set; } = true;

    /// <summary>Integrates over consecutive intervals; no break may be zero.</summary>
    /// <param name="breaks">Frequencies [Hz], rising: ends, and every point where an integrand is not smooth or is narrow.</param>
    /// <param name="quantities">Number of integrands.</param>
    /// <param name="integrand">The integrands.</param>
    /// <param name="tolerance">Error wanted, relative to each integral.</param>
    public static BandIntegral Over(ReadOnlySpan<double> breaks, int quantities, LaneIntegrand integrand, double tolerance)
    {
        var integral = new BandIntegral(quantities, integrand, tolerance);
        var start = new List<(double Low, double High)>();
        for (int i = 1; i < breaks.Length; i++)
        {
            double low = Math.Log(breaks[i - 1]), high = Math.Log(breaks[i]);
            if (low < high)
            {
                start.Add((low, high));
            }
        }

        integral.Refine(start);
        return integral;
    }

    /// <summary>The integral of one quantity between two of the breaks [Hz].</summary>
    public double Sum(int quantity, double low, double high)
    {
        double sum = 0, a = Math.Log(low) - 1e-12, b = Math.Log(high) + 1e-12;
        foreach (Panel panel in _panels)
        {
            if (a <= panel.Low && panel.High <= b)
            {
                sum += panel.Kronrod[quantity];
            }
        }

        return sum;
    }

    /// <summary>The integral of one quantity over everything.</summary>
    public double Sum(int quantity)
    {
        double sum = 0;
        foreach (Panel panel in _panels)
        {
            sum += panel.Kronrod[quantity];
        }

        return sum;
    }

    private void Refine(List<(double Low, double High)> waiting)
    {
        var halved = new List<Panel>();
        while (waiting.Count != 0)
        {
            Evaluate(waiting);
            Array.Clear(_totals);
            foreach (Panel panel in _panels)
            {
                for (int q = 0; q < _totals.Length; q++)
                {
                    _totals[q] += panel.Kronrod[q];
                }
            }

            for (int pair = 0; pair < halved.Count; pair++)
            {
                Settle(halved[pair], _panels.Count - waiting.Count + (2 * pair));
            }

            waiting.Clear();
            halved.Clear();
            for (int i = _panels.Count - 1; 0 <= i; i--)
            {
                Panel panel = _panels[i];
                if (panel.IsSettled || Good(panel))
                {
                    continue;
                }

                if (MostPanels < _panels.Count + (2 * waiting.Count) || panel.High - panel.Low < 1e-9)
                {
                    Converged = false;
                    continue;
                }

                double middle = (panel.Low + panel.High) / 2;
                _panels.RemoveAt(i);
                halved.Add(panel);
                waiting.Add((panel.Low, middle));
                waiting.Add((middle, panel.High));
            }
        }
    }

    /// <summary>Two halves that add up to what the whole was, to an eighth of the tolerance, are as good as they get. So are two whose sum is
    /// about as far from it as the whole was from its own halving: the change of what is smooth falls by orders of magnitude each time, that
    /// of rounding does not.</summary>
    private void Settle(Panel whole, int first)
    {
        Panel left = _panels[first], right = _panels[first + 1];
        double change = 0;
        for (int q = 0; q < _totals.Length; q++)
        {
            double difference = Math.Abs(left.Kronrod[q] + right.Kronrod[q] - whole.Kronrod[q]);
            change = difference == 0 ? change : Math.Max(change, difference / Math.Abs(_totals[q]));
        }

        left.Change = right.Change = change;
        left.IsSettled = right.IsSettled = change <= _tolerance / 8 || (change < LikeRounding && whole.Change < 2 * change);
    }

    /// <summary>QUADPACK's estimate: the 15-point rule is far better than the difference to the 7-point rule says.</summary>
    private bool Good(Panel panel)
    {
        for (int q = 0; q < _totals.Length; q++)
        {
            double size = Math.Abs(panel.Kronrod[q]), difference = Math.Abs(panel.Kronrod[q] - panel.Gauss[q]);
            if (size == 0 || difference == 0)
            {
                continue;
            }

            double ratio = 200 * difference / size, error = size * Math.Min(1, ratio * Math.Sqrt(ratio));
            if (_tolerance * Math.Abs(_totals[q]) / 8 < error)
            {
                return false;
            }
        }

        return true;
    }

    private void Evaluate(List<(double Low, double High)> panels)
    {
        const int AtATime = SignalPath.Chunk / PanelNodes;
        for (int first = 0; first < panels.Count; first += AtATime)
        {
            int count = Math.Min(AtATime, panels.Count - first);
            for (int p = 0; p < count; p++)
            {
                (double low, double high) = panels[first + p];
                for (int i = 0; i < PanelNodes; i++)
                {
                    _hertz[(p * PanelNodes) + i] = Math.Exp((0.5 * (low + high)) + (0.5 * (high - low) * Nodes[i]));
                }
            }

            _integrand(_hertz.AsSpan(0, count * PanelNodes), _values);
            for (int p = 0; p < count; p++)
            {
                (double low, double high) = panels[first + p];
                _panels.Add(Rule(low, high, p * PanelNodes));
            }
        }
    }

    private Panel Rule(double low, double high, int at)
    {
        var kronrod = new double[_values.Length];
        var gauss = new double[_values.Length];
        for (int q = 0; q < _values.Length; q++)
        {
            double k = 0, g = 0;
            for (int i = 0; i < PanelNodes; i++)
            {
                double value = _values[q][at + i] * _hertz[at + i];
                k += KronrodWeights[i] * value;
                g += GaussWeights[i] * value;
            }

            kronrod[q] = 0.5 * (high - low) * k;
            gauss[q] = 0.5 * (high - low) * g;
        }

        return new Panel(low, high, kronrod, gauss);
    }
}
