using FrontEnd.Citations;
using FrontEnd.Identity;

namespace FrontEnd.Teaching;

/// <summary>Why a result is what it is, in plain words.</summary>
/// <param name="Pattern">The results it explains: an id, with <c>*</c> for one or more words of a family.</param>
/// <param name="Reason">What makes the figure, and what moves it.</param>
/// <param name="Assumes">What is taken for granted.</param>
/// <param name="Read">What to read: a page about this figure; null where none is known. That something is common practice, or follows from
/// the definitions, is the equation's source and nothing to read.</param>
internal sealed record Explanation(ResultPattern Pattern, string Reason, string Assumes, SourceRef? Read = null);
