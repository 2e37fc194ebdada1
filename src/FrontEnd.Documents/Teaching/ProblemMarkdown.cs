using System.Text;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Problem sheets and the key with worked solutions as Markdown.</summary>
internal static class ProblemMarkdown
{
    /// <summary>One sheet, without answers.</summary>
    public static string Sheet(Homework homework, ProblemSheet sheet)
    {
        StringBuilder text = new();
        text.Append("# Problems: small scalp-biopotential front ends\n\n");
        text.Append(SheetField.Of(sheet.Student, homework.Plan.Fields) switch
        {
            _ when sheet.Student is null && homework.Plan.Fields.Count == 0 => "Name: ______________________________",
            [] => $"{Plain(sheet.Student!.Name)} ({Plain(sheet.Student.Id)})",
            var asked => string.Join("\n\n", asked.Select(field => $"{Plain(field.Label)}: {(field.Value is { } value ? Plain(value) : "______________________________")}")),
        }).Append("\n\n");
        text.Append(homework.Plan.Heading.Length == 0 ? "" : $"{Plain(homework.Plan.Heading)}\n\n");
        text.Append(FrontEnd.Results.Cautions.Exercise).Append("\n\n");
        text.Append(HowToAnswer).Append(".\n");
        foreach (Question question in sheet.Questions)
        {
            AppendQuestion(text, question, "##");
            text.Append($"{AskedUnit.Label(question.Problem.Answer)}: ______________________________\n");
        }

        text.Append('\n').Append(Footing(sheet)).Append(".\n");
        return text.ToString();
    }

    /// <summary>What stands above the key's sheets.</summary>
    internal static string KeyHead(Homework homework) =>
        $"# Key with worked solutions\n\n{MadeFrom(homework)}.\n\n{FrontEnd.Results.Cautions.Exercise}\n";

    /// <summary>The key of one sheet: worked solutions, accepted ranges, slips.</summary>
    internal static string KeySheet(ProblemSheet sheet)
    {
        StringBuilder text = new("\n## ");
        text.Append(sheet.Student is { } student ? $"{Plain(student.Name)} ({Plain(student.Id)})" : "Common sheet").Append('\n');
        foreach (Question question in sheet.Questions)
        {
            AppendQuestion(text, question, "###");
            AppendSolution(text, question.Problem);
        }

        return text.ToString();
    }

    /// <summary>What stands below the key's sheets: where the worked steps come from.</summary>
    internal static string KeyFoot(KeyBook book) =>
        "\n## Sources\n\n" + string.Concat(book.Sources.Select(one => $"- {Plain(one.Source)} ({string.Join(", ", one.Questions)})\n"));

    /// <summary>What tells a sheet from every other, and nothing else: who knows seed and templates can draw the key.</summary>
    internal static string Footing(ProblemSheet sheet) => $"Sheet {sheet.Code}";

    /// <summary>What makes the same sheets again; for the key alone.</summary>
    internal static string MadeFrom(Homework homework) =>
        FormattableString.Invariant($"Homework {homework.Code}: seed {homework.Seed}{(homework.HasSecret ? " with its secret" : ", no secret")}, template set {homework.TemplateVersion}, generator {Homework.Generator}");

    internal const string HowToAnswer = "Write a number and its unit, with three digits (150 nV, 4.7 kΩ, 86.1 dB, 17.5 bit) or another unit that fits; a number without a unit is read in the one named at its answer; a choice is its letter. Attenuations, rejections and gains in decibels are positive. Noise stays within its peak-to-peak value for 99.9 % of the time. Constants: k = 1.380649·10⁻²³ J/K, ε₀ = 8.854 pF/m, 0 °C = 273.15 K";

    /// <summary>The accepted range as text.</summary>
    internal static string Range(Answer answer) => answer is QuantityAnswer quantity
        ? $"{Wide(quantity, quantity.Low)} to {Wide(quantity, quantity.High)}"
        : "";

    private static string Wide(QuantityAnswer answer, double value) => (answer with { Digits = 4 }).Write(value);

    internal static string SlipValue(Problem problem, Slip slip) => problem.Answer switch
    {
        QuantityAnswer quantity => quantity.Write(slip.Value),
        ChoiceAnswer => ChoiceAnswer.Letter((int)slip.Value),
        _ => throw new ArgumentOutOfRangeException(nameof(problem), problem.Answer, "Answer is not handled."),
    };

    private static void AppendQuestion(StringBuilder text, Question question, string heading)
    {
        Problem problem = question.Problem;
        text.Append($"\n{heading} {question.Id}. {problem.Title} ({SheetText.Points(problem.Points)})\n\n{problem.Text}\n\n");
        if (problem.Givens.Count > 0)
        {
            text.Append("| given | value | |\n|---|---|---|\n");
            foreach (Given given in problem.Givens)
            {
                text.Append($"| {Cell(given.Symbol)} | {Cell(given.Text)} | {Cell(given.Name)} |\n");
            }

            text.Append('\n');
        }

        if (problem.Answer is ChoiceAnswer choice)
        {
            for (int i = 0; i < choice.Options.Count; i++)
            {
                text.Append($"- {ChoiceAnswer.Letter(i)}: {choice.Options[i]}\n");
            }

            text.Append('\n');
        }
    }

    private static void AppendSolution(StringBuilder text, Problem problem)
    {
        text.Append("Solution\n\n");
        int number = 1;
        foreach (Step step in problem.Steps)
        {
            text.Append($"{number++}. {step.Says}");
            text.Append(step.Formula.Length == 0 ? "\n" : $":\n   `{step.Formula}`\n   `{step.Substituted}`\n");
        }

        text.Append($"\n**Answer: {problem.Answer.Text}**");
        text.Append(Range(problem.Answer) is { Length: > 0 } range ? $" (accepted: {range})\n" : "\n");
        if (problem.Slips.Count > 0)
        {
            text.Append("\n| wrong answer | slip | points |\n|---|---|---|\n");
            foreach (Slip slip in problem.Slips)
            {
                text.Append($"| {SlipValue(problem, slip)} | {Cell(slip.Kind.Remark)} | {QuantityText.FormatTrimmed(slip.Share * problem.Points, "1", 3)} |\n");
            }
        }
    }

    private static string Cell(string text) => text.Replace("|", "\\|");

    /// <summary>A name is not markup.</summary>
    private static string Plain(string name)
    {
        StringBuilder plain = new();
        foreach (char letter in name)
        {
            plain.Append(letter is '*' or '_' or '`' or '#' or '[' or ']' or '<' or '>' or '|' or '\\'
                ? "\\"
                : "").Append(char.IsControl(letter)
                ? ' '
                : letter);
        }

        return plain.ToString();
    }
}
