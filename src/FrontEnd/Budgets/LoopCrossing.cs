using System.Numerics;

namespace FrontEnd.Budgets;

/// <summary>Where the loop gain of one surrounding falls through 1 for the last time: between two points of a grid first, then ever
/// closer.</summary>
internal sealed class LoopCrossing
{
    /// <summary>|ln|T|| at which the crossing is found.</summary>
    private const double Near = 1e-10;

    private readonly Complex _anchor;
    private readonly double[] _size;
    private readonly double[] _turn;
    private readonly int _lowAt;
    private double _low;
    private double _high;
    private double _valueLow;
    private double _valueHigh;
    private int _lastMoved;

    /// <param name="low">The interval's ends [Hz].</param>
    /// <param name="high">Its upper end.</param>
    /// <param name="values">ln|T| at both.</param>
    /// <param name="anchor">β at the lower end.</param>
    /// <param name="size">ln|β| at the grid's points about the interval.</param>
    /// <param name="turn">arg β there, followed from the lowest point of the grid [rad].</param>
    /// <param name="lowAt">The lower end among them.</param>
    private LoopCrossing(double low, double high, (double Low, double High) values, Complex anchor, double[] size, double[] turn, int lowAt)
    {
        (_low, _high, _valueLow, _valueHigh) = (low, high, values.Low, values.High);
        (_anchor, _size, _turn, _lowAt) = (anchor, size, turn, lowAt);
        Hertz = low;
    }

    /// <summary>What it is the crossing of.</summary>
    public LoopSurroundings Surroundings { get; set; }

    /// <summary>The crossing as far as it is known [Hz].</summary>
    public double Hertz { get; private set; }

    /// <summary>180° + arg T there.</summary>
    public double MarginDegrees { get; private set; }

    /// <summary>The margin as first estimated [°].</summary>
    public double Estimated { get; private set; }

    /// <summary>True once it is found.</summary>
    public bool IsNear { get; private set; }

    /// <summary>Where to look next [Hz].</summary>
    public double Next => _low * Math.Pow(_high / _low, _valueLow / (_valueLow - _valueHigh));

    /// <summary>The highest interval of a grid in which |T| falls through 1; null for none.</summary>
    /// <param name="hertz">The grid [Hz].</param>
    /// <param name="gainSquared">|K|² there.</param>
    /// <param name="re">Re β there.</param>
    /// <param name="im">Im β there.</param>
    public static LoopCrossing? Highest(double[] hertz, double[] gainSquared, ReadOnlySpan<double> re, ReadOnlySpan<double> im)
    {
        for (int i = hertz.Length - 1; 1 <= i; i--)
        {
            double above = gainSquared[i] * Square(re, im, i), below = gainSquared[i - 1] * Square(re, im, i - 1);
            if (!(above < 1 && 1 <= below))
            {
                continue;
            }

            // Two points on either side make a cubic; at the grid's end there are fewer.
            int from = Math.Max(0, i - 2), to = Math.Min(hertz.Length - 1, i + 1);
            double[] size = new double[to - from + 1], turn = new double[size.Length];
            double wraps = 0;
            for (int j = 0; j <= to; j++)
            {
                wraps += j == 0 ? 0 : Wrap(re, im, j);
                if (from <= j)
                {
                    (size[j - from], turn[j - from]) = (Math.Log(Square(re, im, j)) / 2, Math.Atan2(im[j], re[j]) + wraps);
                }
            }

            return new LoopCrossing(hertz[i - 1], hertz[i], (Math.Log(below) / 2, Math.Log(above) / 2), new Complex(re[i - 1], im[i - 1]),
                size, turn, i - 1 - from);
        }

        return null;
    }

    /// <summary>Crossing and margin from straight lines between the interval's ends; enough to tell which are far from the least.</summary>
    public void EstimateRoughly(in GroundDriveGain gain)
    {
        double at = _valueLow / (_valueLow - _valueHigh), low = _turn[_lowAt] + gain.Phase(_low), high = _turn[_lowAt + 1] + gain.Phase(_high);
        MarginDegrees = Estimated = 180 + ((low + (at * (high - low))) * 180 / Math.PI);
    }

    /// <summary>Crossing and margin from cubics through ln|β| and arg β against ln f, and K itself.</summary>
    public void Estimate(in GroundDriveGain gain)
    {
        double low = 0, high = 1, valueLow = _valueLow, valueHigh = _valueHigh, at = 0, ratio = Math.Log(_high / _low), hertz = _low;
        for (int round = 0; round < 4; round++)
        {
            at = low + ((high - low) * valueLow / (valueLow - valueHigh));
            hertz = _low * Math.Exp(at * ratio);
            Complex k = gain.At(hertz);
            double value = Cubic(_size, at) + (Math.Log((k.Real * k.Real) + (k.Imaginary * k.Imaginary)) / 2);
            (low, valueLow, high, valueHigh) = value < 0 ? (low, valueLow, at, value) : (at, value, high, valueHigh);
        }

        MarginDegrees = Estimated = 180 + ((Cubic(_turn, at) + gain.Phase(hertz)) * 180 / Math.PI);
    }

    /// <summary>Takes in β at a frequency; true where |T| is 1 there.</summary>
    public bool Move(double hertz, Complex beta, in GroundDriveGain gain)
    {
        Complex k = gain.At(hertz);
        double value = Math.Log(((beta.Real * beta.Real) + (beta.Imaginary * beta.Imaginary)) * ((k.Real * k.Real) + (k.Imaginary * k.Imaginary))) / 2;

        // The grid's point says which turn, β itself where on it.
        double phase = beta.Phase, followed = _turn[_lowAt] + (beta / _anchor).Phase;
        phase += 2 * Math.PI * Math.Round((followed - phase) / (2 * Math.PI));
        Hertz = hertz;
        MarginDegrees = 180 + ((phase + gain.Phase(hertz)) * 180 / Math.PI);
        int moved = value < 0 ? 1 : -1;
        if (value < 0)
        {
            (_high, _valueHigh) = (hertz, value);
            _valueLow = _lastMoved == moved ? _valueLow / 2 : _valueLow;
        }
        else
        {
            (_low, _valueLow) = (hertz, value);
            _valueHigh = _lastMoved == moved ? _valueHigh / 2 : _valueHigh;
        }

        _lastMoved = moved;
        return IsNear = Math.Abs(value) <= Near;
    }

    private static double Square(ReadOnlySpan<double> re, ReadOnlySpan<double> im, int at) => (re[at] * re[at]) + (im[at] * im[at]);

    /// <summary>A whole turn where β crosses the negative real axis between a point and the one before; a third of a decade turns it by far
    /// less than half a turn.</summary>
    private static double Wrap(ReadOnlySpan<double> re, ReadOnlySpan<double> im, int at)
    {
        double turned = (im[at] * re[at - 1]) - (re[at] * im[at - 1]);
        return 0 <= im[at - 1] && im[at] < 0 && 0 < turned ? 2 * Math.PI
            : im[at - 1] < 0 && 0 <= im[at] && turned < 0 ? -2 * Math.PI : 0;
    }

    /// <summary>The polynomial through all values at a place between the bracket's points (0 and 1), by Lagrange.</summary>
    private double Cubic(double[] values, double at)
    {
        double sum = 0, x = at + _lowAt;
        for (int i = 0; i < values.Length; i++)
        {
            double weight = values[i];
            for (int j = 0; j < values.Length; j++)
            {
                weight *= j == i ? 1 : (x - j) / (i - j);
            }

            sum += weight;
        }

        return sum;
    }
}
