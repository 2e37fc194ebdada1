namespace FrontEnd.Teaching;

/// <summary>Patterns of result ids: an id, or one with <c>*</c> for one or more words of a family; a second <c>*</c> may end it.</summary>
internal static class IdPattern
{
    public static bool Fits(string pattern, string id)
    {
        int star = pattern.IndexOf('*', StringComparison.Ordinal);
        if (star < 0)
        {
            return string.Equals(pattern, id, StringComparison.Ordinal);
        }

        string head = pattern[..star], tail = pattern[(star + 1)..];
        return head.Length + tail.Length <= id.Length && id.StartsWith(head, StringComparison.Ordinal)
            && (tail.EndsWith('*') ? id.AsSpan(head.Length)
                .Contains(tail.AsSpan(0, tail.Length - 1), StringComparison.Ordinal) : id.EndsWith(tail, StringComparison.Ordinal));
    }
}
