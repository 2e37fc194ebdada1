namespace FrontEnd.Documents.Sheets;

/// <summary>Members of every answer that judges a design.</summary>
internal abstract record CautionedJson
{
    /// <summary>What the designs say of their own danger; empty where they say nothing.</summary>
    public required IReadOnlyList<string> DesignCautions { get; init; }

    /// <summary>What must be said wherever a design is judged.</summary>
    public IReadOnlyList<string> Cautions { get; } = FrontEnd.Results.Cautions.All;
}
