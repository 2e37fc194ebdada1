namespace FrontEnd.Documents.Sheets;

/// <summary>What a command wrote that answers with files.</summary>
/// <param name="Files">In the order of the call.</param>
internal sealed record WrittenJson(IReadOnlyList<string> Files);
