using System.Numerics;
using System.Runtime.CompilerServices;

namespace FrontEnd.Networks;

/// <summary>A complex number for every lane of a group.</summary>
internal readonly record struct ComplexLanes(Vector<double> Re, Vector<double> Im)
{
    /// <summary>Squared magnitude.</summary>
    public Vector<double> Power
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => (Re * Re) + (Im * Im);
    }

    /// <summary>Magnitude.</summary>
    public Vector<double> Magnitude
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Vector.SquareRoot((Re * Re) + (Im * Im));
    }

    /// <summary>−dφ/dω [s] of a transfer whose d/dω is known.</summary>
    public static Vector<double> Delay(ComplexLanes transfer, ComplexLanes slope) => -(slope / transfer).Im;

    public Complex this[int lane] => new(Re[lane], Im[lane]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator +(ComplexLanes a, ComplexLanes b) => new(a.Re + b.Re, a.Im + b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator -(ComplexLanes a, ComplexLanes b) => new(a.Re - b.Re, a.Im - b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(ComplexLanes a, ComplexLanes b) =>
        new((a.Re * b.Re) - (a.Im * b.Im), (a.Re * b.Im) + (a.Im * b.Re));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(Vector<double> a, ComplexLanes b) => new(a * b.Re, a * b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator /(ComplexLanes a, ComplexLanes b)
    {
        Vector<double> inverse = Vector<double>.One / b.Power;
        return new(((a.Re * b.Re) + (a.Im * b.Im)) * inverse, ((a.Im * b.Re) - (a.Re * b.Im)) * inverse);
    }
}
