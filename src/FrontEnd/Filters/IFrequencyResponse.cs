using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Whatever has a response to sines: an analogue filter, a digital filter, a comb, an FIR.</summary>
public interface IFrequencyResponse
{
    /// <summary>H at a frequency [Hz].</summary>
    Complex Response(double hertz);

    /// <summary>|H|² at a frequency [Hz].</summary>
    double PowerResponse(double hertz);

    /// <summary>−dφ/dω [s] at a frequency [Hz], from the coefficients, not by differences.</summary>
    double GroupDelay(double hertz);
}
