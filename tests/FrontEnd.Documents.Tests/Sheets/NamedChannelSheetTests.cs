using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

public sealed class NamedChannelSheetTests
{
    private static Sheet Mixed()
    {
        DesignDocument document = DesignDocument.Parse(
            """
            electrodes.active = "gel-prepared"
            electrodes.reference = "gel-prepared"
            [[channels]]
            site = "O1"
            [[channels]]
            site = "O2"
            electrode = "dry-multipin"
            [[derived]]
            name = "difference"
            weights = { O1 = 1, O2 = -1 }
            """, DocumentFormat.Toml);
        return new Sheet(document, Evaluator.Evaluate(document.Design));
    }

    /// <summary>A derived channel stands at no site: what it is made of has a column of its own.</summary>
    [Fact]
    public void DerivedChannels_StandInATableOfWhatTheyAreMadeOf()
    {
        Sheet sheet = Mixed();
        IReadOnlyList<BudgetTable> tables = BudgetTables.Of(sheet.Assessment);
        BudgetTable channels = tables.Single(table => table.Title == "channels"), derived = tables.Single(table => table.Title == "derived channels");
        Assert.Equal(["O1", "O2"], channels.Rows.Select(row => row.Cells[0]));
        Assert.Equal(["channel", "made of", "noise", "mains"], derived.Columns.Select(column => column.Head));
        Assert.Equal(["difference", "O1 −O2"], derived.Rows[^1].Cells.Take(2));
        Assert.Equal(tables.ToList().IndexOf(channels) + 1, tables.ToList().IndexOf(derived));
        string json = AnswerJson.Of(sheet);
        Assert.Contains("\"made_of\": \"O1 −O2\"", json, StringComparison.Ordinal);
        Assert.DoesNotContain("\"site\": \"O1 −O2\"", json, StringComparison.Ordinal);
    }

    /// <summary>The chain begins at the electrode of the channel that its levels are of, and says whose it is.</summary>
    [Fact]
    public void Chain_ShowsTheElectrodeOfTheChannelThatItsLevelsAreOf()
    {
        Sheet sheet = Mixed();
        string channel = sheet.Assessment[FrontEnd.Identity.ResultIds.Levels.OffsetSurvived].Channel!;
        IReadOnlyList<ChainBlock> blocks = ChainBlocks.Of(sheet.Assessment);
        Assert.Equal(channel == "O2" ? "620 kΩ" : "5 kΩ", blocks[1].Lines[0]);
        Assert.Equal($"channel {channel}", blocks[1].Lines[^1]);
        Assert.DoesNotContain(blocks.Skip(2), block => block.Levels.Any(level => level.StartsWith("channel ", StringComparison.Ordinal)));
        DesignDocument dry = DesignDocument.Parse("[[channels]]\nsite = \"O1\"\nelectrode = \"dry-multipin\"\n", DocumentFormat.Toml);
        Assert.Equal("620 kΩ", ChainBlocks.Of(Evaluator.Evaluate(dry.Design))[1].Lines[0]);
    }
}
