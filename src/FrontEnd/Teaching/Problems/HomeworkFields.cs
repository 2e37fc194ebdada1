using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Teaching.Problems;

/// <summary>The keys of a homework's file.</summary>
internal static class HomeworkFields
{
    /// <summary>Most questions on a sheet.</summary>
    public const int MostQuestions = 100;

    /// <summary>The key of <see cref="HomeworkPlan.Templates"/>.</summary>
    public const string TemplatesKey = "templates";

    /// <summary>The key of <see cref="HomeworkPlan.Topics"/>.</summary>
    public const string TopicsKey = "topics";

    /// <summary>The key of <see cref="HomeworkPlan.Count"/>.</summary>
    public const string CountKey = "count";

    public static IReadOnlyList<Field<HomeworkPlan>> All { get; } =
    [
        Wording("course", "", "printed above the questions", (HomeworkPlan plan) => plan.Course, (plan, value) => plan with { Course = value }),
        Wording("due", "", "until when it is handed in, as it is to be printed", (HomeworkPlan plan) => plan.Due, (plan, value) => plan with { Due = value }),
        Texts(TemplatesKey, "kinds of problems that are asked first, in this order; `frontend problems --list` shows them",
            plan => plan.Templates, (plan, value) => plan with { Templates = value }),
        Texts(TopicsKey, "what the other questions are about; without it all topics take turns",
            plan => plan.Topics, (plan, value) => plan with { Topics = value }),
        Maybe("level", "level", Closed(1, 3), "all", "all", ByDesign,
            "1: one formula, 2: choose or convert first, 3: several steps or a judgement; without it levels are mixed so that every seed weighs nearly the same",
            (HomeworkPlan plan) => plan.Level, (plan, value) => plan with { Level = value }),
        Maybe(CountKey, CountKey, Closed(1, MostQuestions), "any", "10, or one for each listed template", Practice, "questions on a sheet",
            (HomeworkPlan plan) => plan.Count, (plan, value) => plan with { Count = value }),
        Value("seed", "seed", Closed(0, int.MaxValue), "1", Practice, "makes this homework another than the last one, with the secret",
            (HomeworkPlan plan) => plan.Seed, (plan, value) => plan with { Seed = value }),
        Word("paper", "paper", "a4", Practice, "what the sheets are printed on",
            [new ChoiceWord("a4", SheetPaper.A4), new ChoiceWord("letter", SheetPaper.Letter)],
            (HomeworkPlan plan) => plan.Paper, (plan, value) => plan with { Paper = value }),
        Word("space", "space", "line", Practice, "a line for each answer, or a side to work the question out on",
            [new ChoiceWord("line", WorkingSpace.Line), new ChoiceWord("side", WorkingSpace.Side)],
            (HomeworkPlan plan) => plan.Space, (plan, value) => plan with { Space = value }),
    ];

    private static Field<HomeworkPlan> Texts(string key, string meaning, Func<HomeworkPlan, IReadOnlyList<string>> get,
        Func<HomeworkPlan, IReadOnlyList<string>, HomeworkPlan> set) => new()
    {
        Key = key, JsonKey = key, Kind = FieldKind.TextList, Meaning = meaning, DefaultText = "none", DefaultSource = ByDesign,
        Get = plan => get(plan), Set = (plan, value) => set(plan, (IReadOnlyList<string>)value!),
    };
}
