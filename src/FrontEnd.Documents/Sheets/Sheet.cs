using FrontEnd.Documents.Reading;

namespace FrontEnd.Documents.Sheets;

/// <summary>What is printed: the design as it was read, and what follows from it.</summary>
public sealed record Sheet(DesignDocument Document, Assessment Assessment)
{
    /// <summary>How the figures of many builds spread, which adds a page; null where nobody asked.</summary>
    public Spread.SpreadResult? Spread { get; init; }

    /// <summary>What the built board is put through; empty where nobody asked.</summary>
    internal IReadOnlyList<Bench.BenchReading> Bench { get; init; } = [];

    /// <summary>True where settings, defaults, sources, terms, theory drawings, filters and coefficients are asked for too.</summary>
    public bool HasAppendix { get; init; }

    /// <summary>Pieces, order list and what the values that can be bought move; null where nobody asked.</summary>
    internal BoardAnswers? Board { get; init; }

    /// <summary>True for the page for a layman alone.</summary>
    public bool PlainOnly { get; init; }

    /// <summary>The day that a printed sheet says it is of; null for none, so that the same design gives the same file.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>The design that is shown.</summary>
    public Design Design => Assessment.Design;

    /// <summary>The same with what a builder needs, as the command writes it: parts list, circuit diagram and bench plan. A design of which
    /// something is not known, or that contradicts itself, has none.</summary>
    public Sheet ForBuilding() => Assessment.PartlyKnown is not null || !Assessment.HasFigures
        ? this
        : this with { Board = BoardAnswers.Of(Assessment), Bench = FrontEnd.Bench.BenchPlan.Of(Design).Readings };

    /// <summary>The findings of reading and of evaluating, each once; errors first.</summary>
    /// <remarks>The design check runs in both; its findings carry a line only where the design came from a file.</remarks>
    public IReadOnlyList<Finding> Findings =>
    [
        .. Document.Findings.Concat(Assessment.Findings).Concat(Board?.Board.Findings ?? []).DistinctBy(finding =>
            (finding.Code, finding.Field, finding.Message)).OrderByDescending(finding => finding.Severity),
    ];

    /// <summary>True where the file says next to nothing of the circuit, as of a device that somebody else built, and yet has every value: the program
    /// made up the rest.</summary>
    internal bool DescribesNoCircuit
    {
        get
        {
            const int most = 2;
            string[] stated = [.. Document.Stated.Where(key => Array.Exists(OfCircuit, table => key.StartsWith(table, StringComparison.Ordinal)))];
            return Document.PartlyKnown is null && stated.Length <= most
                && !Document.Origins.Any(origin => origin.Kind != OriginKind.Default && origin.Key.StartsWith("stages[", StringComparison.Ordinal));
        }
    }

    /// <summary>Tables of which whoever built a device can say something.</summary>
    private static readonly string[] OfCircuit =
        ["amplifier.", "input.", "ground-drive.", "supply.", "board.", "electrodes.active-buffer.", "electrodes.reference-buffer."];

    /// <summary>True where the design cannot be used: the sheet would show figures of another.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>The fields that the design file says nothing about.</summary>
    public IEnumerable<FieldOrigin> DefaultsUsed => Document.Origins.Where(origin => origin.Kind == OriginKind.Default);
}
