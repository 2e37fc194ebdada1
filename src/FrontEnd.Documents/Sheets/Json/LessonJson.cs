using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>lesson --json</c> without a name.</summary>
internal sealed record LessonsJson(int Count, IReadOnlyList<LessonNameJson> Lessons)
{
    public static LessonsJson From(IReadOnlyList<Lesson> lessons) => new(lessons.Count, [.. lessons.Select(lesson => new LessonNameJson(lesson.Name, lesson.Title))]);
}

/// <summary>A lesson in the list.</summary>
internal sealed record LessonNameJson(string Name, string Title);

/// <summary>Members of <c>lesson NAME --json</c>: question, change, figures before and after, why.</summary>
/// <param name="Setting">What the lesson's own design is; null on a user's.</param>
/// <param name="Answer">Letter of the choice that the figures bear out; null where none of them describes what the design does.</param>
internal sealed record LessonJson(string Lesson, string Title, string Design, string? Setting, string Question, string? Answer) : CautionedJson
{
    public required LessonChangeJson Change { get; init; }

    public required IReadOnlyList<LessonValueJson> Values { get; init; }

    public required IReadOnlyList<LessonChoiceJson> Choices { get; init; }

    public required IReadOnlyList<LessonFigureJson> Figures { get; init; }

    public required IReadOnlyList<string> Sentences { get; init; }

    public required string Why { get; init; }

    public required IReadOnlyList<ExplainLine> Reasons { get; init; }

    public required string Next { get; init; }

    public required string NextCommand { get; init; }

    /// <summary>What is to be said about the design with the change and was not before.</summary>
    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static LessonJson From(LessonOutcome outcome, string? design)
    {
        Lesson lesson = outcome.Lesson;
        return new(lesson.Name, lesson.Title, outcome.Before.Design.Name, outcome.IsOnItsDesign ? lesson.Setting : null, outcome.Question, outcome.Right is { } right ? $"{LessonText.Letter(right)}" : null)
        {
            Change = new(lesson.Key, outcome.From, outcome.To), Values = [.. LessonText.Values(outcome).Select(one => new LessonValueJson(one.Key, one.Value))],
            Choices = [.. outcome.Choices.Select((choice, at) => new LessonChoiceJson($"{LessonText.Letter(at)}", choice.Text, choice.Thought, at == outcome.Right))],
            Figures = [.. outcome.Figures.Select(LessonFigureJson.From)], Sentences = [.. LessonText.Sentences(outcome)], Why = lesson.Why,
            Reasons = LessonText.Reasons(outcome), Next = LessonText.Next(outcome, design), NextCommand = LessonText.Command(outcome, design), Findings = FindingJson.From(outcome.NewFindings),
            DesignCautions = FrontEnd.Results.Cautions.Own(outcome.Before.Design),
        };
    }
}

/// <summary>The one change, as a design file writes it.</summary>
internal sealed record LessonChangeJson(string Key, string From, string To);

/// <summary>A value of the design.</summary>
internal sealed record LessonValueJson(string Key, string Value);

/// <summary>One answer to the question.</summary>
/// <param name="Holds">True where the figures bear it out.</param>
internal sealed record LessonChoiceJson(string Letter, string Text, string Thought, bool Holds);

/// <summary>A figure before and after; null where there is none.</summary>
/// <param name="Ratio">How many times as large it is; null where that says nothing.</param>
/// <param name="Difference">How much more it is, for decibels, degrees and bits; null for every other kind.</param>
internal sealed record LessonFigureJson(string Id, ResultJson? Before, ResultJson? After, double? Ratio, double? Difference)
{
    public static LessonFigureJson From(LessonFigure figure) => new(
        figure.Id.Text, figure.Before is { } before ? ResultJson.From(before) : null, figure.After is { } after ? ResultJson.From(after) : null, figure.Ratio, figure.Difference);
}
