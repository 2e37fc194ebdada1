using FrontEnd.Sizing;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>size --json</c>: what a search for a design found.</summary>
internal sealed record SizeJson(
    string Name, int Candidates, int Evaluated, IReadOnlyList<SizedJson> Designs, IReadOnlyList<Obstacle> Obstacles,
    IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    public static SizeJson From(SizingRequest request, SizingOutcome outcome, IReadOnlyList<Finding> findings) => new(
        request.Fixed.Name, outcome.Candidates, outcome.Evaluated,
        [.. outcome.Front.Select((one, at) => SizedJson.From(one, at + 1, DesignWriter.Stated(request.Stated, request.Fixed, one.Design)))],
        outcome.Obstacles, FindingJson.From(findings))
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(outcome.Front.Select(one => one.Design).Prepend(request.Fixed)),
    };
}

/// <summary>One design that meets everything, with the text of its file.</summary>
/// <param name="Number">From 1; <c>--take</c> chooses by it.</param>
internal sealed record SizedJson(
    int Number, string Summary, IQuantity Noise, IQuantity BoardNoisePeakToPeak, IQuantity Current, int Parts, IQuantity MainsMargin,
    string LimitedBy, string Toml)
{
    public static SizedJson From(SizedDesign one, int number, IReadOnlyCollection<string> stated) => new(
        number, one.Summary, one.Noise, one.BoardNoise, one.Current, one.Parts, one.MainsMargin, one.LimitedBy,
            DesignWriter.ToToml(one.Design, stated));
}
