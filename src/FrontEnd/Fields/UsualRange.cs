namespace FrontEnd.Fields;

/// <summary>What builders of small headsets choose for a field, or what is usual in rooms and on skin: drawn from where a design says
/// that nobody knows the value. Not what is legal.</summary>
/// <param name="Least">Least usual value in the field's SI unit; of a choice or a flag 0.</param>
/// <param name="Greatest">Greatest usual value; of a choice or a flag the number of its last word, and all are drawn alike.</param>
/// <param name="Source">Where the range comes from.</param>
/// <param name="KnownBy">Who could say the value.</param>
/// <param name="WhenBought">True where the value counts as unknown in a bought device whose file does not give it.</param>
public sealed record UsualRange(double Least, double Greatest, string Source, KnownBy KnownBy = KnownBy.Maker, bool WhenBought = true);

/// <summary>Who could say what a value is.</summary>
public enum KnownBy
{
    /// <summary>Whoever built the device: a fact that does not change.</summary>
    Maker,

    /// <summary>Nobody beforehand: the room and how the leads lie.</summary>
    Room,

    /// <summary>Nobody beforehand: how the electrodes sit on the skin.</summary>
    Contact,
}
