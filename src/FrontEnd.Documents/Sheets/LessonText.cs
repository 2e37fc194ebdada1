using System.Globalization;
using FrontEnd.Catalogue;
using FrontEnd.Citations;
using FrontEnd.Fields;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>A lesson as text in two halves: what is asked, and what came of it. Every sentence with a figure is made of the figure.</summary>
internal static class LessonText
{
    private static readonly string[] Rule = ["before", "after"];

    /// <summary>All lessons, one a line.</summary>
    public static string List(IReadOnlyList<Lesson> lessons)
    {
        TextPage page = new();
        page.Paragraph("Experiments on small designs: a question, a prediction, one change, and the figures before and after. `frontend lesson NAME` runs one.");
        page.Blank();
        page.Table([new("lesson", true), new("what it is about", true)], [.. lessons.Select(lesson => new Row([lesson.Name, lesson.Title]))]);
        return page.ToString();
    }

    /// <summary>The letter of a choice: a, b, c.</summary>
    public static char Letter(int choice) => (char)('a' + choice);

    /// <summary>The whole lesson, question first.</summary>
    public static string Of(LessonOutcome outcome, string? design = null) =>
        Question(outcome) + "\nPredict first: note a, b or c before you read on.\n\n" + Answer(outcome, null, design);

    /// <summary>What is there, what is changed, what is to be predicted.</summary>
    public static string Question(LessonOutcome outcome)
    {
        TextPage page = new();
        page.Ends(outcome.Lesson.Title, outcome.Lesson.Name);
        page.OwnCautions(outcome.Before.Design);
        page.Blank();
        if (outcome.IsOnItsDesign)
        {
            page.Paragraph(outcome.Lesson.Setting);
            page.Blank();
        }

        AddChange(page, outcome);
        page.Blank();
        AddQuestion(page, outcome);
        page.Blank();
        AddDesign(page, outcome);
        return page.ToString();
    }

    /// <summary>The same below a title, for a window of a few rows: what is asked stands first.</summary>
    public static string QuestionInFewRows(LessonOutcome outcome, int width)
    {
        TextPage page = new(width);
        AddQuestion(page, outcome);
        page.Blank();
        AddChange(page, outcome);
        page.Blank();
        page.Paragraph(outcome.Lesson.Setting);
        page.Blank();
        AddDesign(page, outcome);
        return page.ToString();
    }

    private static void AddChange(TextPage page, LessonOutcome outcome)
    {
        page.Paragraph(Change(outcome), Label("change"));
        page.Paragraph(Now(outcome), Label("now"));
    }

    private static void AddQuestion(TextPage page, LessonOutcome outcome)
    {
        page.Paragraph(outcome.Question);
        for (int at = 0; at < outcome.Choices.Count; at++)
        {
            page.Paragraph(outcome.Choices[at].Text, $"  {Letter(at)}  ");
        }
    }

    private static void AddDesign(TextPage page, LessonOutcome outcome)
    {
        page.Paragraph(outcome.Before.Design.Name, Label("design"));
        page.Table([new("", true), new("", true)], [.. Values(outcome).Select(one => new Row([one.Key, one.Value]))], heads: false);
    }

    /// <summary>What came of it, and why.</summary>
    /// <param name="said">Which choice was predicted, from 0; null for none.</param>
    /// <param name="design">The user's file, where the lesson is on one; null where it is on its own design.</param>
    /// <param name="way">The key that takes the next step, and what it does; null for the command that does.</param>
    public static string Answer(LessonOutcome outcome, int? said, string? design = null, int width = TextPage.Width, string? way = null)
    {
        Lesson lesson = outcome.Lesson;
        TextPage page = new(width);
        page.Paragraph(Change(outcome), Label("changed"));
        page.Blank();
        page.Table([new("figure", true), .. Rule.Select(head => new Column(head)), new("")], [.. outcome.Figures.Select(Row)]);
        page.Blank();
        page.Paragraph(Verdict(outcome, said), Label("answer"));
        foreach (string sentence in Sentences(outcome))
        {
            page.Paragraph(sentence, Label(""));
        }

        string[] thoughts = [.. Thoughts(outcome)];
        for (int at = 0; at < thoughts.Length; at++)
        {
            if (at == 0)
            {
                page.Blank();
            }

            page.Paragraph(thoughts[at], Label(at == 0 ? "thoughts" : ""));
        }

        page.Blank();
        page.Paragraph(lesson.Why, Label("why"));
        foreach (ExplainLine line in Reasons(outcome))
        {
            page.Paragraph(line.Text, Label(line.Label));
        }

        page.Blank();
        page.Paragraph(way is null || outcome.IsAsWritten ? Next(outcome, design) : "The next lesson.", Label("next"));
        if (way is null)
        {
            page.Line(Label("") + Command(outcome, design));
        }
        else
        {
            page.Paragraph(way, Label(""));
        }

        page.Cautions();
        return page.ToString();
    }

    /// <summary>Values of the design that are worth seeing beside the question, as it writes them.</summary>
    internal static IEnumerable<(string Key, string Value)> Values(LessonOutcome outcome) =>
        from key in outcome.Lesson.Shown
        where DesignFields.IsPresent(outcome.Before.Design, key)
        let field = DesignFields.Find(outcome.Before.Design, key)
        where field is not null
        select (key, FieldText.Format(field, field.Get(outcome.Before.Design)));

    internal static string Change(LessonOutcome outcome) => $"{outcome.Lesson.Key}: {outcome.From} -> {outcome.To}";

    /// <summary>The figure that is to be predicted as it is without the change.</summary>
    internal static string Now(LessonOutcome outcome) =>
        outcome.Asked.Before is { } before ? $"{before.Name}: {Value(before)}" : "the design has no such figure without the change";

    /// <summary>Which answer the figures bear out, beside what was predicted.</summary>
    internal static string Verdict(LessonOutcome outcome, int? said)
    {
        string right = outcome.Right is { } at ? $"{Letter(at)}: {outcome.Choices[at].Text}." : "none of the three describes what this design does.";
        return said is not { } choice ? right : choice == outcome.Right ? $"you said {Letter(choice)}, and so it is. {right}" : $"you said {Letter(choice)}; the figures say {right}";
    }

    /// <summary>Each answer with what speaks for it or against it; nothing where the lesson's own answers were not asked.</summary>
    internal static IEnumerable<string> Thoughts(LessonOutcome outcome) => outcome.Choices.Select((choice, at) =>
        choice.Thought.Length == 0 ? "" : $"{Letter(at)}, \"{choice.Text}\": {(at == outcome.Right ? "so it is" : "not so")}. {choice.Thought}").Where(text => text.Length > 0);

    /// <summary>What the figures did, those first that moved or changed their verdict; then what is newly to be said of the design.</summary>
    internal static IEnumerable<string> Sentences(LessonOutcome outcome) =>
    [
        Sentence(outcome.Asked),
        .. outcome.Figures.Skip(1).Where(figure => figure.OtherVerdict || figure.Before is null || figure.After is null).Select(Sentence),
        .. outcome.NewFindings.Select(finding => $"New {Wording.Word(finding.Severity)} {finding.Code}: {finding.Message}."),
    ];

    /// <summary>What one figure did.</summary>
    internal static string Sentence(LessonFigure figure)
    {
        string text = figure switch
        {
            { Before: { } before, After: { } after } when Value(before) == Value(after) => $"{Capital(after.Name)}: {Value(after)} as before",
            { Before: { } before, After: { } after } => $"{Capital(after.Name)}: from {Value(before)} to {Value(after)}{(Moved(figure) is { Length: > 0 } moved ? $", {moved}" : "")}",
            { After: { } after } => $"{Capital(after.Name)}: {Value(after)}; without the change there is none",
            { Before: { } before } => $"{Capital(before.Name)}: {Value(before)} before; with the change there is none",
            _ => "there is no such figure",
        };
        return text + Judged(figure) + ".";
    }

    /// <summary>The figure's equation with its source, and the same by hand where a textbook has it.</summary>
    internal static IReadOnlyList<ExplainLine> Reasons(LessonOutcome outcome)
    {
        if (outcome.Reason is not { } result)
        {
            return [];
        }

        List<ExplainLine> lines = [new("equation", $"{result.Name}: {result.Equation.Text}"), new("source", SourceList.Of(result.Equation.Source))];
        if (result.Hand is { } hand)
        {
            lines.Add(new("by hand", hand.Formula));
            lines.Add(new("", hand.Substituted));
            lines.Add(new("source", SourceList.Of(hand.Source)));
        }
        else if (result.Substituted.Length > 0)
        {
            lines.Insert(1, new("numbers", result.Substituted));
        }

        if (Explanations.Of(result.Id)?.Read is SourceRef read && read != result.Equation.Source)
        {
            lines.Add(new("to read", SourceList.Of(read)));
        }

        return lines;
    }

    /// <summary>What to look at next.</summary>
    /// <param name="design">The user's file; null for none.</param>
    internal static string Next(LessonOutcome outcome, string? design) => outcome.IsAsWritten ? outcome.Lesson.Next
        : design is null ? "The lesson's design as a file: change anything in it, and give it back to the lesson with --design."
        : "Where the figure comes from in this design, and what else moves it.";

    /// <summary>The command for it.</summary>
    /// <param name="design">The user's file; null for none.</param>
    internal static string Command(LessonOutcome outcome, string? design)
    {
        Lesson lesson = outcome.Lesson;
        return !outcome.IsAsWritten
            ? design is null ? $"frontend lesson {lesson.Name} -o {lesson.Name}.toml" : $"frontend explain {Quoted(design)} {lesson.Asked.Text}"
            : lesson.NextLesson.Length > 0 ? $"frontend lesson {lesson.NextLesson}"
            : $"frontend lesson {lesson.Name} --to {Quoted(lesson.NextValue)}";
    }

    /// <summary>A figure's row: name, before, after, how it moved.</summary>
    internal static Row Row(LessonFigure figure)
    {
        Result named = (figure.After ?? figure.Before)!;
        return new Row([named.Name, Cell(figure.Before), Cell(figure.After), Moved(figure)]);
    }

    /// <summary>Value and sign of the verdict.</summary>
    private static string Cell(Result? result) => result is null ? "-"
        : Value(result) + (result.Verdict.Kind == VerdictKind.NotJudged ? "  " : $" {Wording.Sign(result.Verdict.Kind)}");

    /// <summary>How far it moved, in words; "" where that cannot be said.</summary>
    private static string Moved(LessonFigure figure) => figure switch
    {
        { Before: { } before, After: { } after } when Value(before) == Value(after) => "the same",
        { Ratio: { } ratio } => $"{QuantityText.Format(ratio, "1")} times",
        { Difference: { } by, After: { } after } => $"{QuantityText.Format(Math.Abs(by), after.Unit)} {(by < 0 ? "less" : "more")}",
        _ => "",
    };

    private static string Judged(LessonFigure figure)
    {
        if (figure.After is not { Verdict: { Kind: not VerdictKind.NotJudged } verdict })
        {
            return "";
        }

        string word = $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind)}";
        return figure is { OtherVerdict: true, Before.Verdict.Kind: not VerdictKind.NotJudged and var was }
            ? $"; its verdict goes from {Wording.Sign(was)} {Wording.Word(was)} to {word}: {verdict.Because}"
            : $"; its verdict is {word}: {verdict.Because}";
    }

    private static string Value(Result result) => Wording.Value(result);

    private static string Capital(string name) => char.ToUpper(name[0], CultureInfo.InvariantCulture) + name[1..];

    private static string Quoted(string text) => text.Contains(' ', StringComparison.Ordinal) ? $"\"{text}\"" : text;

    private static string Label(string label) => label.PadRight(10);
}
