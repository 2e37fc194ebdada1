using FrontEnd.Findings;

namespace FrontEnd.Documents.Recordings;

/// <summary>Carries the one finding that ends the reading of a file up to where the file was opened; never leaves this folder.</summary>
#pragma warning disable CA1032, CA1064 // It is made in one way and caught in one place.
internal sealed class BadRecordingException(Finding finding) : Exception(finding.Message)
#pragma warning restore CA1032, CA1064
{
    public Finding Finding { get; } = finding;
}
