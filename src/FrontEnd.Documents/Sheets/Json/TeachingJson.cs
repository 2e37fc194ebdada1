using FrontEnd.Head;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>sites --json</c>: where the sites lie on one head, lengths in metres.</summary>
/// <param name="Distance">Between the two sites that were asked for; null for none.</param>
internal sealed record SitesJson(
    HeadJson Head, SiteDistanceJson? Distance, IReadOnlyList<SiteDistanceJson> Pairs, IReadOnlyList<ArcJson> Arcs, IQuantity RulesApart,
    IQuantity FromF3ToFz)
{
    public required IReadOnlyList<string> Notes { get; init; }

    public required IReadOnlyList<ResultJson> Results { get; init; }

    public static SitesJson From(HeadSites sites) => new(
        new HeadJson(sites.Sphere.Size.NasionInion, sites.Sphere.Size.Preauricular, sites.Sphere.Size.Circumference),
        sites.Asked is { } asked
            ? SiteDistanceJson.From(asked)
            : null, [.. sites.Pairs.Select(SiteDistanceJson.From)], [.. sites.Arcs.Select(ArcJson.From)],
        sites.RulesApart, sites.FromF3ToFz)
    {
        Notes = sites.Notes,
        Results = [.. sites.Results.Select(ResultJson.From)],
    };
}

/// <summary>The three measures of a head.</summary>
internal sealed record HeadJson(IQuantity NasionInion, IQuantity Preauricular, IQuantity Circumference);

/// <summary>How far two sites are apart; along an arc null where none is shared.</summary>
/// <param name="Rough">True for an ear lobe or mastoid, which a sphere does not have.</param>
internal sealed record SiteDistanceJson(string First, string Second, IQuantity OverTheSkin, IQuantity Straight, string? Arc,
    IQuantity? AlongTheArc, bool Rough)
{
    public static SiteDistanceJson From(SiteDistance one) =>
        new(one.First.Name, one.Second.Name, one.Over, one.Straight, one.Arc is { } arc ? HeadWords.Of(arc) : null, one.Along,
            one.IsRough);
}

/// <summary>A measured arc and where its sites lie from its beginning.</summary>
internal sealed record ArcJson(string Arc, IQuantity Length, IReadOnlyList<SiteJson> Sites)
{
    public static ArcJson From(MeasuredArc arc) =>
        new(HeadWords.Of(arc.Arc), arc.Length, [.. arc.Marks.Select(mark => new SiteJson(mark.Site.Name, mark.Site.Alias, mark.At))]);
}

/// <summary>A site on an arc.</summary>
internal sealed record SiteJson(string Name, string Alias, IQuantity At);

/// <summary>Members of <c>mark --json</c>: what the class did. Without marks all but the marks and findings is null.</summary>
/// <param name="Share">Share of all points, 0 to 1.</param>
internal sealed record MarkJson(int Students, int Asked, double? Share, double? Least, double? Middle, double? Most,
    IReadOnlyList<QuestionSummary> Questions)
{
    public required IReadOnlyList<StudentShare> Shares { get; init; }

    public required IReadOnlyList<SlipCount> Slips { get; init; }

    /// <summary>Who has a sheet and no answers; they are in no mean.</summary>
    public required IReadOnlyList<Student> Absent { get; init; }

    public required IReadOnlyList<Mark> Marks { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static MarkJson From(Marks marks, IEnumerable<Finding> findings)
    {
        ClassSummary? all = ClassSummary.Of(marks);
        return new(all?.Students ?? 0, all?.Asked
            ?? 0, all?.Share, all?.Shares[0].Share, all?.Middle, all?.Shares[^1].Share, all?.Questions ?? [])
        {
            Shares = all?.Shares ?? [], Slips = all?.Slips ?? [], Absent = marks.Absent, Marks = marks.Rows, Findings = FindingJson.From(findings),
        };
    }
}

/// <summary>Members of <c>problems --list --json</c>: the kinds of problems that there are.</summary>
internal sealed record ProblemsJson(int Count, IReadOnlyList<ProblemKindJson> Problems)
{
    /// <summary>What stands on every sheet.</summary>
    public string Caution { get; } = FrontEnd.Results.Cautions.Exercise;

    public static ProblemsJson From(IReadOnlyList<Template> templates) =>
        new(templates.Count,
            [.. templates.Select(one => new ProblemKindJson(one.Id, Topics.Word(one.Topic), one.Level, one.Points, one.Title))]);
}

/// <summary>Members of <c>problems --json</c> where sheets are written: what is on them and whose is which. Neither the secret nor an answer is
/// here, nor the homework's code, from which all sheets' codes follow.</summary>
/// <param name="Secret">Whether the sheets were drawn with one.</param>
/// <param name="Templates">Version of the set of templates that drew the numbers.</param>
/// <param name="Generator">Of the random numbers.</param>
internal sealed record WrittenHomeworkJson(ulong Seed, bool Secret, string Templates, string Generator, IReadOnlyList<AskedQuestionJson> Questions,
    IReadOnlyList<WrittenSheetJson> Sheets)
{
    /// <summary>What stands on every sheet.</summary>
    public string Caution { get; } = FrontEnd.Results.Cautions.Exercise;

    /// <summary>What stood in the folder and was put under a name of its own.</summary>
    public required IReadOnlyList<string> Kept { get; init; }

    /// <summary>Of the files those that hold answers and are not for students.</summary>
    public required IReadOnlyList<string> WithAnswers { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static WrittenHomeworkJson From(WrittenHomework written)
    {
        Homework homework = written.Homework;
        return new(homework.Seed, homework.HasSecret, homework.TemplateVersion, Homework.Generator,
            [.. homework.Sheets[0].Questions.Select(one => new AskedQuestionJson(one.Id, one.Problem.TemplateId, one.Problem.Title, one.Problem.Points))],
            [.. (written.Students is [] ? [new Student("", "")] : written.Students).Select(one => new WrittenSheetJson(one.Id, one.Name, SheetCode.Of(homework.Code, one.Id)))])
        {
            Kept = written.Kept, WithAnswers = written.WithAnswers, Findings = FindingJson.From(written.Findings),
        };
    }
}

/// <summary>A question as every sheet has it, each with its own numbers.</summary>
internal sealed record AskedQuestionJson(string Id, string Template, string Title, int Points);

/// <summary>One student's sheet; "" where all share one.</summary>
/// <param name="Code">As it is printed on the sheet.</param>
internal sealed record WrittenSheetJson(string Student, string Name, string Code);

/// <summary>A kind of problems.</summary>
internal sealed record ProblemKindJson(string Id, string Topic, int Level, int Points, string Title);

/// <summary>Members of <c>glossary --json</c>.</summary>
internal sealed record GlossaryJson(IReadOnlyList<Term> Terms);
