using FrontEnd.Catalogue;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Runs a lesson on its own design or on a user's: makes the one change in the file's text and has both evaluated.</summary>
internal static class LessonRun
{
    /// <summary>The text of a lesson's design, which comes with the program.</summary>
    public static string DesignText(Lesson lesson) => Embedded.Read($"designs/lessons/{lesson.Name}.toml")
        ?? throw new ArgumentException($"{lesson.Name} has no design.", nameof(lesson));

    /// <summary>A lesson's own design.</summary>
    public static DesignDocument DesignOf(Lesson lesson) => DesignDocument.Parse(DesignText(lesson), DocumentFormat.Toml);

    /// <summary>Works it out; null where the design does not take the change or has no figures, and the findings say why.</summary>
    /// <param name="own">A design of the user's, without errors and all known; null for the lesson's own.</param>
    /// <param name="value">What the lesson's key is set to, as it is typed; null for the lesson's own value.</param>
    public static LessonOutcome? Work(Lesson lesson, DesignDocument? own, string? value, List<Finding> findings)
    {
        DesignDocument document = own ?? DesignOf(lesson);
        string wanted = value ?? lesson.Value;
        if (DesignFields.Find(document.Design, lesson.Key) is not { } field || !DesignFields.IsPresent(document.Design, lesson.Key))
        {
            findings.Add(Messages.NothingToChange(lesson.Name, lesson.Key));
            return null;
        }

        EditResult edit = Edits.Set(document, field, wanted);
        if (edit.Finding is { } refused)
        {
            findings.Add(refused);
            return null;
        }

        if (edit.Document.HasErrors)
        {
            findings.AddRange(edit.Document.Findings.Where(finding => finding.Severity == Severity.Error));
            return null;
        }

        string from = Written(document.Design, lesson.Key), to = Written(edit.Document.Design, lesson.Key);
        if (string.Equals(from, to, StringComparison.Ordinal))
        {
            findings.Add(Messages.ChangesNothing(lesson.Name, lesson.Key, to));
            return null;
        }

        LessonOutcome outcome = LessonOutcome.Of(lesson, document.Design, edit.Document.Design, from, to) with { IsAsWritten = own is null && value is null, IsOnItsDesign = own is null };
        findings.AddRange(Refusals(outcome));
        return findings.Exists(finding => finding.Severity == Severity.Error) ? null : outcome;
    }

    private static Finding[] Refusals(LessonOutcome outcome)
    {
        foreach (Results.Assessment assessment in (Results.Assessment[])[outcome.Before, outcome.After])
        {
            Finding[] errors = [.. assessment.Findings.Where(finding => finding.Severity == Severity.Error)];
            if (errors.Length != 0)
            {
                return errors;
            }
        }

        return outcome.Asked is { Before: null, After: null }
            ? [Messages.NoFigureToWatch(outcome.Lesson.Name, outcome.Lesson.Asked.Text, $"the design is {outcome.Before.Design.Name}")]
            : [];
    }

    /// <summary>A field's value as a design file writes it; "" where it has none.</summary>
    private static string Written(Design design, string key) =>
        DesignFields.Find(design, key) is { } field ? FieldText.Format(field, field.Get(design)) : "";
}
