using System.Collections.Concurrent;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The circuits of questions as pictures, each drawn once.</summary>
internal static class QuestionPicture
{
    private static readonly ConcurrentDictionary<string, Picture?> Drawn = new(StringComparer.Ordinal);

    /// <summary>The circuit of a template's questions; null where they have none.</summary>
    public static Picture? Of(string templateId) => Drawn.GetOrAdd(templateId, id =>
        QuestionCircuits.Find(id) is { } circuit ? DiagramDrawing.Of(circuit.Lines, circuit.Title) : null);
}
