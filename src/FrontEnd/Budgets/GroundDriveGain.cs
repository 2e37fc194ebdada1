using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>The driving amplifier's gain K(s) = K0/((1 + s·K0/(2πf_u))·(1 + s/(2πf_2))), f_2 the bandwidth of the averaging where it has
/// one.</summary>
internal readonly struct GroundDriveGain
{
    private readonly double _dcGain;
    private readonly double _unityHertz;
    private readonly double? _averagingHertz;

    public GroundDriveGain(Design design)
    {
        _dcGain = design.GroundDrive.DcGain;
        _unityHertz = design.GroundDrive.UnityGainFrequency.Hertz;
        _averagingHertz = design.EffectiveAveragingBandwidth?.Hertz;
    }

    /// <summary>1/K at ω [rad/s].</summary>
    public ComplexLanes Inverse(Vector<double> omega)
    {
        double k = 1 / _dcGain, first = 1 / (2 * Math.PI * _unityHertz), second = _averagingHertz is { } f2 ? 1 / (2 * Math.PI * f2) : 0;
        return new(new Vector<double>(k) - (omega * first * omega * second), omega * (first + (k * second)));
    }

    /// <summary>d(1/K)/dω at ω [s].</summary>
    public ComplexLanes InverseSlope(Vector<double> omega)
    {
        double k = 1 / _dcGain, first = 1 / (2 * Math.PI * _unityHertz), second = _averagingHertz is { } f2 ? 1 / (2 * Math.PI * f2) : 0;
        return new(omega * (-2 * first * second), new Vector<double>(first + (k * second)));
    }

    /// <summary>K at a frequency [Hz].</summary>
    public Complex At(double hertz)
    {
        Complex first = new(1 / _dcGain, hertz / _unityHertz);
        return 1 / (_averagingHertz is { } f2 ? first * new Complex(1, hertz / f2) : first);
    }

    /// <summary>arg K, followed from dc [rad].</summary>
    public double Phase(double hertz)
    {
        double phase = -Math.Atan(hertz * _dcGain / _unityHertz);
        return _averagingHertz is { } f2 ? phase - Math.Atan(hertz / f2) : phase;
    }
}
