using FrontEnd.Filters;

namespace FrontEnd.Digital;

/// <summary>The word that a microcontroller computes its filters with.</summary>
public enum DigitalWord
{
    /// <summary>64-bit floating point.</summary>
    Double,

    /// <summary>32-bit floating point.</summary>
    Single,

    /// <summary>32-bit coefficients, whole numbers.</summary>
    Q31,

    /// <summary>16-bit coefficients, whole numbers; the states are held in 32 bits.</summary>
    Q15,
}

/// <summary>How the digital filters are computed: word, form, and bits kept below the LSB.</summary>
public sealed record DigitalArithmetic
{
    /// <summary>Word of coefficients and states.</summary>
    public DigitalWord Word { get; init; } = DigitalWord.Double;

    /// <summary>Form of the sections.</summary>
    public FilterForm Form { get; init; } = FilterForm.TransposedDirectII;

    /// <summary>Fixed point: bits below the sample's LSB in the states and between sections, 0…16.</summary>
    public int StateFraction { get; init; }

    /// <summary>The word as a number format.</summary>
    public NumberFormat Format => Word switch
    {
        DigitalWord.Double => NumberFormat.Double,
        DigitalWord.Single => NumberFormat.Single,
        DigitalWord.Q31 => NumberFormat.Q31 with { StateFraction = StateFraction },
        DigitalWord.Q15 => NumberFormat.Q15 with { StateFraction = StateFraction },
        _ => throw new InvalidOperationException($"Word {Word} is not handled."),
    };

    /// <summary>"q15": the word's name in a design file.</summary>
    public static string WordOf(DigitalWord word) => word switch
    {
        DigitalWord.Double => "double",
        DigitalWord.Single => "single",
        DigitalWord.Q31 => "q31",
        DigitalWord.Q15 => "q15",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "The word is not handled."),
    };

    /// <summary>"transposed-2": the form's name in a design file.</summary>
    public static string FormOf(FilterForm form) => form switch
    {
        FilterForm.DirectI => "direct-1",
        FilterForm.TransposedDirectII => "transposed-2",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "The form is not handled."),
    };

    /// <summary>True for words of whole numbers.</summary>
    public bool IsFixed => Word is DigitalWord.Q31 or DigitalWord.Q15;
}
