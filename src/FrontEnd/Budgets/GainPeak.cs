namespace FrontEnd.Budgets;

/// <summary>The loudest place of one node within the band, between the nearest quieter places that were looked at.</summary>
internal struct GainPeak
{
    private double _left;
    private double _right;
    private double _leftGain;
    private double _rightGain;
    private double _before;
    private double _beforeGain;
    private bool _isLast;

    /// <summary>Where it is loudest so far [Hz].</summary>
    public double Hertz { get; private set; }

    /// <summary>The gain there.</summary>
    public double Gain { get; private set; }

    /// <summary>Takes in the next of rising frequencies.</summary>
    public void See(double[] hertz, int at, double gain)
    {
        if (at == 0 || Gain < gain)
        {
            (_left, _leftGain) = at == 0 ? (hertz[0], gain) : (_before, _beforeGain);
            (Hertz, Gain, _isLast) = (hertz[at], gain, true);
            (_right, _rightGain) = (Hertz, Gain);
        }
        else if (_isLast)
        {
            (_right, _rightGain, _isLast) = (hertz[at], gain, false);
        }

        (_before, _beforeGain) = (hertz[at], gain);
    }

    /// <summary>Takes in any frequency.</summary>
    public void Add(double hertz, double gain)
    {
        if (Gain < gain)
        {
            (double was, double wasGain) = (Hertz, Gain);
            (_left, _leftGain) = was < hertz ? (was, wasGain) : _left < hertz ? (_left, _leftGain) : (hertz, gain);
            (_right, _rightGain) = hertz < was ? (was, wasGain) : hertz < _right ? (_right, _rightGain) : (hertz, gain);
            (Hertz, Gain) = (hertz, gain);
        }
        else if (_left < hertz && hertz < Hertz)
        {
            (_left, _leftGain) = (hertz, gain);
        }
        else if (Hertz < hertz && hertz < _right)
        {
            (_right, _rightGain) = (hertz, gain);
        }
    }

    /// <summary>Where to look next: the top of the parabola through the three, in the logarithm of frequency, and somewhat aside where that
    /// is the loudest itself; at the band's edge, half way to the neighbour.</summary>
    public readonly double Next()
    {
        if (_left == Hertz || _right == Hertz)
        {
            return Math.Sqrt(_left * _right);
        }

        double a = Math.Log(Hertz / _left), b = Math.Log(_right / Hertz), aside = 1e-3 * Math.Min(a, b);
        double fallLeft = Gain - _leftGain, fallRight = Gain - _rightGain, down = (fallLeft * b) + (fallRight * a);
        double top = 0 < down ? ((fallLeft * b * b) - (fallRight * a * a)) / (2 * down) : 0;
        return Hertz * Math.Exp(aside < Math.Abs(top) ? Math.Clamp(top, -a / 2, b / 2) : a < b ? aside : -aside);
    }
}
