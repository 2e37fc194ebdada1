using FrontEnd.Designs;

namespace FrontEnd.Advice;

/// <summary>A change that someone could make to the design, in words.</summary>
internal sealed record Candidate(string Change, Design Design);
