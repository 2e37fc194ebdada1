namespace FrontEnd.Quantities;

/// <summary>A number with a unit. Every quantity is a struct that holds one double in its SI unit (decibels, degrees and bits count as
/// their own).</summary>
public interface IQuantity
{
    double SiValue { get; }

    /// <summary>The unit's symbol as it is printed: "V", "Ω", "V/√Hz", "1" for a ratio.</summary>
    string SiUnit { get; }
}
