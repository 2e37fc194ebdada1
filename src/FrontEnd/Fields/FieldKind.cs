namespace FrontEnd.Fields;

/// <summary>What sort of value a design field holds; decides how it is written and how it is read.</summary>
public enum FieldKind
{
    /// <summary>A number with a unit; <see cref="FieldDescription.Quantity"/> says which. A share or tolerance too: written "5 %" or
    /// 0.05.</summary>
    Quantity,

    /// <summary>A number without unit that need not be whole.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>Any words.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>The name of a part card.</summary>
    Card,

    /// <summary>Two frequencies, low and high.</summary>
    FrequencyRange,

    /// <summary>Numbers without unit.</summary>
    NumberList,

    /// <summary>Any words, several times.</summary>
    TextList,

    /// <summary>Rows of six numbers, second-order sections b0 b1 b2 a0 a1 a2.</summary>
    SectionRows,

    /// <summary>Least and greatest value of some of a part's other fields.</summary>
    Ranges,

    /// <summary>Numbers without unit by names that the user chose.</summary>
    NamedNumbers,

    /// <summary>Times after an electrode was put on, each with factors of its impedance and its excess noise.</summary>
    ContactOverTime,
}
