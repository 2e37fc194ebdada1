using FrontEnd.Circuits;
using FrontEnd.Fields;

namespace FrontEnd.Topologies;

/// <summary>The topologies that a stage can have: one line each.</summary>
internal static class TopologyCatalogue
{
    /// <summary>In the order of the key table; of one kind the first is taken where a design does not say which.</summary>
    public static readonly IReadOnlyList<Variant> Variants =
    [
        .. GainStage.Variants,
        .. RcSection.Variants,
        .. SallenKeySection.Variants,
        .. MultipleFeedbackSection.Variants,
        .. TwinTNotch.Variants,
        .. StateVariableNotch.Variants,
    ];

    /// <summary>The row of a stage's field, such as "r1"; null for none of that name.</summary>
    public static Field<object>? Field(Stage stage, string key) =>
        Variants.First(variant => variant.Matches(stage)).Fields.FirstOrDefault(field => field.Key == key);

    /// <summary>A stage with one of its parts at another value [SI].</summary>
    public static Stage With(Stage stage, string role, double value)
    {
        Field<object> field = Field(stage, role) ?? throw new ArgumentException($"`{role}` is no part of a {stage.Word}.", nameof(role));
        return (Stage)field.WithSiValue(stage, value);
    }

    /// <summary>A stage with one of its fitted parts times a factor.</summary>
    public static Stage Times(Stage stage, string role, double factor)
    {
        CircuitPart part = stage.Circuit().Find(role)
            ?? throw new ArgumentException($"`{role}` of {stage.Name} is not fitted.", nameof(role));
        return With(stage, role, part.Value * factor);
    }
}
