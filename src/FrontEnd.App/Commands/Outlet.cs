using FrontEnd.Documents.Sheets;

namespace FrontEnd.App.Commands;

/// <summary>Where a command writes: results to one stream, messages to the other.</summary>
internal sealed class Outlet(TextWriter results, TextWriter messages)
{
    public TextWriter Results => results;

    public TextWriter Messages => messages;

    /// <summary>Where a person answers; null where nobody is asked anything, as in a script.</summary>
    public TextReader? Answers { get; init; }

    /// <summary>Names the files that a command wrote whose answer they are.</summary>
    /// <param name="json">True where a program asks.</param>
    /// <param name="note">What is said behind the name.</param>
    public void Wrote(string command, bool json, IReadOnlyList<string> files, string note = "")
    {
        if (json)
        {
            results.Write(AnswerJson.OfFiles(command, files));
        }

        NameBeside(json, files, note);
    }

    /// <summary>Names the files that a command wrote beside its answer, whose JSON names them itself.</summary>
    /// <param name="json">True where a program asks.</param>
    /// <param name="note">What is said behind the name.</param>
    public void NameBeside(bool json, IEnumerable<string> files, string note = "")
    {
        if (json)
        {
            return;
        }

        results.Flush();
        foreach (string file in files)
        {
            messages.WriteLine($"wrote {file}{note}");
        }
    }

    public void Tell(Finding finding)
    {
        // Where both end in one place, what was said before stands before.
        Results.Flush();
        messages.Write(FindingText.Of(finding));
    }

    public void Tell(IEnumerable<Finding> findings)
    {
        foreach (Finding finding in findings)
        {
            Tell(finding);
        }
    }
}
