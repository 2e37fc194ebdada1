using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>How the sheets of a homework are printed.</summary>
internal sealed record SheetLook
{
    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>True where every question begins a page, whose rest is for working it out.</summary>
    public bool RoomToWork { get; init; }

    /// <summary>Course and date due, under the heading; "" for neither.</summary>
    public string Under { get; init; } = "";

    /// <summary>What is asked for at the top of a sheet, see <see cref="HomeworkPlan.Fields"/>.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>As a homework's file wants it.</summary>
    public static SheetLook Of(HomeworkPlan plan) => new()
    {
        Paper = plan.Paper == SheetPaper.Letter ? Paper.Letter : Paper.A4, RoomToWork = plan.Space == WorkingSpace.Side, Under = plan.Heading,
        Fields = plan.Fields,
    };

    internal PrintStyle Title { get; } = new(13.5, 17, IsBold: true);

    internal PrintStyle Heading { get; } = new(10, 13.5, IsBold: true);

    internal PrintStyle Body { get; } = new(9.5, 12.6);

    internal PrintStyle Quiet { get; } = new(7.5, 9.6, Colour: "#444");

    internal PrintStyle Small { get; } = new(7.5, 9.8);
}
