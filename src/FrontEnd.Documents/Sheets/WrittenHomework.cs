using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Sheets;

/// <summary>A homework and the files that were written of it.</summary>
/// <param name="Students">Who got a sheet; empty for one that all share.</param>
internal sealed record WrittenHomework(Homework Homework, IReadOnlyList<Student> Students)
{
    /// <summary>Every file that was written.</summary>
    public List<string> Files { get; } = [];

    /// <summary>Of these what holds answers.</summary>
    public List<string> WithAnswers { get; } = [];

    /// <summary>What stood in the way and was put under a name of its own.</summary>
    public IReadOnlyList<string> Kept { get; set; } = [];

    /// <summary>What was said of the call.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Takes up a file that is for the instructor alone.</summary>
    public void AddKey(string file)
    {
        Files.Add(file);
        WithAnswers.Add(file);
    }
}
