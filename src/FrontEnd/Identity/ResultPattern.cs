namespace FrontEnd.Identity;

/// <summary>Which results a text or a picture belongs to: one id, or one with <c>*</c> for one or more words of a family; a second <c>*</c>
/// may end it.</summary>
/// <param name="Text">The pattern as it is shown.</param>
public readonly record struct ResultPattern(string Text)
{
    public static implicit operator ResultPattern(ResultId id) => new(id.Text);

    public static implicit operator ResultPattern(ResultFamily family) => family.Any;

    /// <summary>True where the id is one of those meant.</summary>
    public bool Fits(ResultId id)
    {
        int star = Text.IndexOf('*', StringComparison.Ordinal);
        if (star < 0)
        {
            return string.Equals(Text, id.Text, StringComparison.Ordinal);
        }

        string head = Text[..star], tail = Text[(star + 1)..];
        return head.Length + tail.Length <= id.Text.Length && id.Text.StartsWith(head, StringComparison.Ordinal)
            && (tail.EndsWith('*')
                ? id.Text.AsSpan(head.Length).Contains(tail.AsSpan(0, tail.Length - 1), StringComparison.Ordinal)
                : id.Text.EndsWith(tail, StringComparison.Ordinal));
    }

    public override string ToString() => Text;
}
