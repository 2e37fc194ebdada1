using FrontEnd.AntiAlias;
using FrontEnd.Quantities;
using FrontEnd.Textbook;

namespace FrontEnd.DesignedFilters;

/// <summary>One part of a circuit.</summary>
/// <param name="Name">"R1", "C2".</param>
/// <param name="Value">A <see cref="Resistance"/> or a <see cref="Capacitance"/>.</param>
/// <param name="Place">Where it goes, where its name does not say it: "to the output"; else null.</param>
public sealed record BuiltPart(string Name, IQuantity Value, string? Place = null);

/// <summary>f0 and Q of a section by the textbooks' formulas, with an ideal op-amp.</summary>
/// <param name="Frequency">f0 [Hz].</param>
/// <param name="Q">Null for a section of first order.</param>
public sealed record SectionFormulas(TextbookFigure Frequency, TextbookFigure? Q);

/// <summary>The parts of the low-pass sections by name, and their textbook formulas.</summary>
internal static class StageParts
{
    internal static SectionKind KindOf(Stage section) => section switch
    {
        RcSection => SectionKind.Rc,
        SallenKeySection { GroundResistor: not null } => SectionKind.SallenKeyEqual,
        SallenKeySection => SectionKind.SallenKey,
        MultipleFeedbackSection => SectionKind.MultipleFeedback,
        _ => throw NoSection(section),
    };

    internal static IReadOnlyList<BuiltPart> Of(Stage section) => section switch
    {
        RcSection s => [new("R", s.R), new("C", s.C)],
        SallenKeySection s => [new("R1", s.R1), new("R2", s.R2), new("C1", s.C1, "to the output"), new("C2", s.C2, "to common"), .. Gain(s.FeedbackResistor, s.GroundResistor)],
        MultipleFeedbackSection s =>
            [new("R1", s.R1), new("R2", s.R2), new("R3", s.R3), new("C1", s.C1, "to common"), new("C2", s.C2, "to the output")],
        _ => throw NoSection(section),
    };

    internal static SectionFormulas Formulas(Stage section) => section switch
    {
        RcSection s => new(FilterFormulas.RcCorner(s.R, s.C), null),
        SallenKeySection s => new(
            FilterFormulas.SallenKeyFrequency(s.R1, s.R2, s.C1, s.C2),
            s.GroundResistor is null ? FilterFormulas.SallenKeyQ(s.R1, s.R2, s.C1, s.C2) : FilterFormulas.SallenKeyQ(
                s.R1, s.R2, s.C1, s.C2, s.NominalGain)),
        MultipleFeedbackSection s => new(
            FilterFormulas.MultipleFeedbackFrequency(s.R2, s.R3, s.C1, s.C2), FilterFormulas.MultipleFeedbackQ(
                s.R1, s.R2, s.R3, s.C1, s.C2)),
        _ => throw NoSection(section),
    };

    /// <summary>Rf and Rg; none for a follower.</summary>
    private static BuiltPart[] Gain(Resistance feedback, Resistance? ground) =>
        ground is { } rg ? [new("Rf", feedback), new("Rg", rg)] : [];

    private static ArgumentOutOfRangeException NoSection(Stage stage) => new(nameof(stage), stage, "The stage is not a low-pass section.");
}
