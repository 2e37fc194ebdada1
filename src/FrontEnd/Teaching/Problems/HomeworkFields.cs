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

    /// <summary>The key of <see cref="HomeworkPlan.Own"/>.</summary>
    public const string OwnKey = "own";

    /// <summary>The key of <see cref="HomeworkPlan.Fields"/>.</summary>
    public const string FieldsKey = "fields";

    /// <summary>The table of <see cref="HomeworkPlan.Points"/>: a key for each template, with a whole number from 1 to <see cref="MostPoints"/>.</summary>
    public const string PointsKey = "points";

    /// <summary>The table of <see cref="HomeworkPlan.Rubric"/>, with the keys of <see cref="Rubric"/> for all questions, and one like it for each
    /// question that differs.</summary>
    public const string RubricKey = "rubric";

    /// <summary>Most points of a question.</summary>
    public const int MostPoints = 1000;

    /// <summary>Most lines to fill in at the top of a sheet, and letters of what stands in front of one.</summary>
    public const int MostFields = 6, LongestField = 40;

    public static IReadOnlyList<Field<HomeworkPlan>> All { get; } =
    [
        Wording("course", "", "printed above the questions", (HomeworkPlan plan) => plan.Course, (plan, value) => plan with { Course = value }),
        Wording("due", "", "until when it is handed in, as it is to be printed", (HomeworkPlan plan) => plan.Due, (plan, value) => plan with { Due = value }),
        Texts(FieldsKey, "what is asked for at the top of a sheet; on a student's own sheet the first is the name and the second the id of the list",
            plan => plan.Fields, (plan, value) => plan with { Fields = value }),
        Texts(OwnKey, "files of your own templates, as seen from this file; they can be listed, and are chosen by topic with the program's",
            plan => plan.Own, (plan, value) => plan with { Own = value }),
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

    /// <summary>The keys of a rubric, shares of the question's points from 0 to 1, or in percent.</summary>
    public static IReadOnlyList<Field<QuestionRubric>> Rubric { get; } =
    [
        Maybe("slip", "slip", Closed(0, 1), "template", "template", Practice, "for a known slip; without it what the template gives it, which is half mostly",
            (QuestionRubric rubric) => rubric.Slip is { } share ? Ratio.FromFraction(share) : (Ratio?)null, (rubric, value) => rubric with { Slip = value?.Fraction }),
        Earned("rounding", "for a value that was not rounded as asked, or that was rounded on the way", rubric => rubric.Rounding, (rubric, value) => rubric with { Rounding = value }),
        Earned("unit", "for a number without a unit that is right in the SI unit, where the sheet asks for another one, or with a part of its unit", rubric => rubric.UnitLeftOut, (rubric, value) => rubric with { UnitLeftOut = value }),
        Earned("kind", "for a right number of another kind, such as rms in place of peak-to-peak", rubric => rubric.OtherKind, (rubric, value) => rubric with { OtherKind = value }),
        Earned("sign", "for a value that is right but for its sign", rubric => rubric.WrongSign, (rubric, value) => rubric with { WrongSign = value }),
    ];

    private static Field<QuestionRubric> Earned(string key, string meaning, Func<QuestionRubric, double> get, Func<QuestionRubric, double, QuestionRubric> set) =>
        Value(key, key, Closed(0, 1), "0.5", Practice, meaning,
            (QuestionRubric rubric) => Ratio.FromFraction(get(rubric)), (rubric, value) => set(rubric, value.Fraction));

    private static Field<HomeworkPlan> Texts(string key, string meaning, Func<HomeworkPlan, IReadOnlyList<string>> get,
        Func<HomeworkPlan, IReadOnlyList<string>, HomeworkPlan> set) => new()
    {
        Key = key, JsonKey = key, Kind = FieldKind.TextList, Meaning = meaning, DefaultText = "none", DefaultSource = ByDesign,
        Get = plan => get(plan), Set = (plan, value) => set(plan, (IReadOnlyList<string>)value!),
    };
}
