using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Electrodes;

/// <summary>An electrode's Z = Rs + Rd/(1 + s·Rd·Cd), with a second R ∥ C in series where it has one, over lanes.</summary>
internal readonly struct ElectrodeImpedance
{
    /// <summary>Less than this is a short circuit to every figure shown, and its conductance too large beside the others' to be solved with
    /// [Ω].</summary>
    private const double LeastOhms = 1e-6;

    private readonly double _series;
    private readonly double _contact;
    private readonly double _contactSeconds;
    private readonly double _second;
    private readonly double _secondSeconds;

    public ElectrodeImpedance(Electrode electrode)
    {
        _contact = electrode.ContactResistance.Ohms;
        _contactSeconds = _contact * electrode.ContactCapacitance.Farads;
        _second = electrode.SecondResistance?.Ohms ?? 0;
        _secondSeconds = _second * (electrode.SecondCapacitance?.Farads ?? 0);

        // A contact of no resistance at all would be a division by zero; 1 mΩ is a short circuit to every figure shown.
        _series = Math.Max(electrode.SeriesResistance.Ohms, _contact == 0 ? 1e-3 : 0);
    }

    /// <summary>1/Z [S] and Re Z [Ω] at ω [rad/s]; Z is the electrode's own times the lane's factor, which keeps the time
    /// constants.</summary>
    public (ComplexLanes Admittance, Vector<double> Resistance) At(Vector<double> omega, Vector<double> factor)
    {
        Vector<double> x = omega * _contactSeconds;
        Vector<double> g = new Vector<double>(_contact) / (Vector<double>.One + (x * x));
        Vector<double> re = g + new Vector<double>(_series);
        Vector<double> im = -g * x;
        if (_second != 0)
        {
            x = omega * _secondSeconds;
            g = new Vector<double>(_second) / (Vector<double>.One + (x * x));
            re += g;
            im -= g * x;
        }

        re = Vector.Max(re * factor, new Vector<double>(LeastOhms));
        im *= factor;
        Vector<double> inverse = Vector<double>.One / ((re * re) + (im * im));
        return (new ComplexLanes(re * inverse, -im * inverse), re);
    }

    /// <summary>d(1/Z)/dω [S·s] where 1/Z is known: −Z'·(1/Z)².</summary>
    public ComplexLanes Slope(Vector<double> omega, Vector<double> factor, ComplexLanes admittance)
    {
        ComplexLanes slope = OfBlock(omega, _contact, _contactSeconds) + OfBlock(omega, _second, _secondSeconds);
        return -factor * (slope * admittance * admittance);

        // d/dω of R/(1 + jωτ): −jRτ/(1 + jωτ)².
        static ComplexLanes OfBlock(Vector<double> omega, double ohms, double seconds)
        {
            Vector<double> x = omega * seconds, one = Vector<double>.One, size = one + (x * x), scale = new Vector<double>(-ohms * seconds) / (size * size);
            return new(scale * (x + x), scale * (one - (x * x)));
        }
    }
}
