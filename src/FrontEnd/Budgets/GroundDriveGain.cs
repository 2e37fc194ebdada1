using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>The driving amplifier's gain K(s) = K0/((1 + s·K0/(2πf_u))·(1 + s/(2πf_2))), f_2 the bandwidth of the averaging where it has one.</summary>
internal readonly struct GroundDriveGain
{
    private readonly double _inverse;
    private readonly double _seconds;
    private readonly double _averagingSeconds;

    public GroundDriveGain(Design design)
    {
        _inverse = 1 / design.GroundDrive.DcGain;
        _seconds = 1 / (2 * Math.PI * design.GroundDrive.UnityGainFrequency.Hertz);
        _averagingSeconds = design.EffectiveAveragingBandwidth is { } f2 ? 1 / (2 * Math.PI * f2.Hertz) : 0;
    }

    /// <summary>1/K at ω [rad/s].</summary>
    public ComplexLanes Inverse(Vector<double> omega) => new(
        new Vector<double>(_inverse) - (omega * omega * (_seconds * _averagingSeconds)), omega * (_seconds + (_inverse * _averagingSeconds)));

    /// <summary>K at a frequency [Hz].</summary>
    public Complex At(double hertz) => 1 / Inverse(new Vector<double>(2 * Math.PI * hertz))[0];

    /// <summary>arg K, followed from dc [rad].</summary>
    public double Phase(double hertz)
    {
        double omega = 2 * Math.PI * hertz;
        return -Math.Atan(omega * _seconds / _inverse) - Math.Atan(omega * _averagingSeconds);
    }
}
