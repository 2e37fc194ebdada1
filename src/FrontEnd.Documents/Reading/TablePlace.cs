namespace FrontEnd.Documents.Reading;

/// <summary>Which table is being read: of the design file, or of a card on its behalf.</summary>
/// <param name="Text">The file's or the card's text.</param>
/// <param name="Card">The card; null in the design file.</param>
/// <param name="Path">The table's path in the field set, without the last dot.</param>
/// <param name="Display">What stands before the path in keys: "stages[1]." or nothing.</param>
internal sealed record TablePlace<TOwner>(SourceText Text, PartCard? Card, FieldSet<TOwner> Set, string Path, string Display)
{
    /// <summary>What stands before the table's own keys.</summary>
    public string Prefix => Display + (Path.Length == 0 ? "" : Path + ".");

    /// <summary>Another table of the same file and owner.</summary>
    public TablePlace<TOwner> At(string path) => this with { Path = path };

    /// <summary>Cards are TOML whatever the design file is.</summary>
    public DocumentFormat FormatOf(DocumentFormat design) => Card is null ? design : DocumentFormat.Toml;
}
