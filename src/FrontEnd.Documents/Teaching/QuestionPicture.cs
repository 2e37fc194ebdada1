using System.Collections.Concurrent;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The circuits of questions as pictures: a stage of the catalogue with the question's values, other circuits each drawn once.</summary>
internal static class QuestionPicture
{
    private static readonly ConcurrentDictionary<string, Picture?> Drawn = new(StringComparer.Ordinal);

    /// <summary>The circuit of a question, its values at their parts; null where it has none.</summary>
    public static Picture? Of(QuestionView question) =>
        QuestionSchematic.Of(question.Template, [.. question.Givens.Select(given => (given.Symbol, given.Value))]) is { } stage ? SchematicDrawing.Of(stage) : Of(question.Template);

    /// <summary>The circuit of a template's questions, without values; null where they have none.</summary>
    public static Picture? Of(string templateId) => Drawn.GetOrAdd(templateId, id =>
        QuestionSchematic.Of(id, null) is { } stage ? SchematicDrawing.Of(stage)
        : QuestionCircuits.Find(id) is { } circuit ? DiagramDrawing.Of(circuit.Lines, circuit.Title) : null);
}
