using FrontEnd.Building;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet's list of parts.</summary>
internal static class SheetParts
{
    public static IEnumerable<Block> Of(Sheet sheet)
    {
        Design design = sheet.Design;
        string channels = $"for {design.Channels} channel{(design.Channels == 1 ? "" : "s")}";
        IReadOnlyList<ListedPart> parts = PartsList.Of(design);
        yield return new Block.Heading("parts, " + channels);
        yield return new Block.Table(
            [new("part", true), new("value"), new("tolerance"), new("preferred value", true), new("per channel"), new("once"), new(channels)],
            [
                .. parts.Select(part => new Row([part.Where, .. PartText.Cells(part), Count(part.PerChannel), Count(part.Once), $"{part.For(design.Channels)}"])),
                new Row(["all parts", "", "", "", Count(parts.Sum(part => part.PerChannel)), Count(parts.Sum(part => part.Once)),
                    $"{parts.Sum(part => part.For(design.Channels))}"], IsSum: true),
            ],
            Small: true);
    }

    private static string Count(int pieces) => pieces == 0 ? "" : $"{pieces}";
}
