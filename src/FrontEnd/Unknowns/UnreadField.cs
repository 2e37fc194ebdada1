using FrontEnd.Designs;

namespace FrontEnd.Unknowns;

/// <summary>A field that a design's file gives in a form that cannot be read; the design holds another value in its place.</summary>
/// <param name="Key">The field's concrete key.</param>
/// <param name="Problem">What is wrong with what stands there.</param>
internal sealed record UnreadField(string Key, Finding Problem);

/// <summary>A design of which some values could not be read, and designs that it might be.</summary>
/// <param name="Design">The design, something in place of what could not be read.</param>
/// <param name="Unread">What could not be read; one field at least.</param>
/// <param name="Tries">The same file with legal values in those places; none where nothing can be said of it.</param>
internal sealed record PartlyReadDesign(Design Design, IReadOnlyList<UnreadField> Unread, IReadOnlyList<PartlyReadTry> Tries);

/// <summary>One design that a file might mean.</summary>
/// <param name="Design">The design.</param>
/// <param name="Places">Which of its values each field has, in their order.</param>
/// <param name="Moved">The field that is at another value than in the first try; the first one where several are.</param>
internal sealed record PartlyReadTry(Design Design, IReadOnlyList<int> Places, int Moved);
