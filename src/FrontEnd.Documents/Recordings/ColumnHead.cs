namespace FrontEnd.Documents.Recordings;

/// <summary>The heading of a column of samples: its name and the unit that is written with it, as in <c>ch1 [µV]</c>, <c>ch1 (µV)</c>,
/// <c>ch1_µV</c>, <c>ch1/µV</c>, <c>ch1 µV</c> or <c>µV</c> alone.</summary>
/// <param name="Name">The name without the unit; the unit where there is no other name.</param>
/// <param name="Unit">The unit as written; null for none.</param>
internal readonly record struct ColumnHead(string Name, string? Unit)
{
    private static readonly string[] TimeWords = ["t", "time", "timestamp", "time stamp", "elapsed", "elapsed time"];

    /// <summary>True where the column says when its row was taken: a word for time, or a unit of time alone.</summary>
    public bool IsTime =>
        TimeWords.Contains(Name.ToLowerInvariant())
            ? Unit is null || RecordingUnits.Volts(Unit) is null
            : Unit is not null && string.Equals(Name, Unit, StringComparison.Ordinal) && RecordingUnits.Seconds(Unit) is not null;

    public static ColumnHead Of(string text)
    {
        string head = text.Trim().Trim('"').Trim();
        if (IsUnit(head))
        {
            return new(head, head);
        }

        return InBrackets(head, '[', ']') ?? InBrackets(head, '(', ')') ?? AfterSign(head) ?? new(head, null);
    }

    /// <summary>What stands in square brackets is a unit whatever it is; in round ones it may be a remark, which stays in the name, except
    /// after a word for time.</summary>
    private static ColumnHead? InBrackets(string head, char open, char close)
    {
        int from = head.IndexOf(open, StringComparison.Ordinal), to = head.LastIndexOf(close);
        if (from < 0 || to < from)
        {
            return null;
        }

        string name = head[..from].Trim(' ', '_', '/'), unit = head[(from + 1)..to].Trim();
        return open == '[' || IsUnit(unit) || TimeWords.Contains(name.ToLowerInvariant())
            ? new(name.Length == 0 ? unit : name, unit) : null;
    }

    /// <summary>A single letter for a unit other than of time and voltage is part of the name: `Fp1_A`.</summary>
    private static ColumnHead? AfterSign(string head)
    {
        int at = head.LastIndexOfAny(['_', '/', ' ']);
        if (at < 1)
        {
            return null;
        }

        string name = head[..at].Trim(' ', '_', '/'), unit = head[(at + 1)..].Trim();
        bool single = unit.Length == 1 && unit is not ("V" or "v" or "s" or "%" or "Ω");
        return name.Length != 0 && !single && IsUnit(unit) ? new(name, unit) : null;
    }

    private static bool IsUnit(string text) =>
        RecordingUnits.Volts(text) is not null || RecordingUnits.IsSteps(text) || RecordingUnits.Seconds(text) is not null
            || RecordingUnits.IsOther(text);
}
