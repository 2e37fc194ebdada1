using FrontEnd.Findings;

namespace FrontEnd.Documents.Recordings;

/// <summary>Carries the one finding that ends the reading of a file up to where the file was opened; never leaves this folder. It is made
/// in one way and caught in one place.</summary>
internal sealed class BadRecordingException(Finding finding) : Exception(finding.Message)
{
    public Finding Finding { get; } = finding;
}
