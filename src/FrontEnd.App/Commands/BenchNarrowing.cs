using FrontEnd.Bench;
using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Recordings;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend bench --measured</c> of a design with unknown values: a recording on a fixture narrows them.</summary>
internal static class BenchNarrowing
{
    public static int Run(string path, DesignDocument document, BenchAsked asked, Outlet outlet)
    {
        (KnownFixture? fixture, Finding? problem) = FixtureOf(asked);
        if (problem is null && asked.Narrow is { } output && File.Exists(output) && !IsSame(output, path))
        {
            problem = CallMessages.Exists(output);
        }

        if (fixture is null || problem is not null)
        {
            outlet.Tell(problem!);
            return ExitCode.Unusable;
        }

        if (Recorded(document.PartlyKnown!, fixture, asked, outlet, out int exit) is not { } recording)
        {
            return exit;
        }

        string[] stated = [.. document.Origins.Where(origin => origin.Kind == OriginKind.Given).Select(origin => origin.Key), .. PartlyKnownDesign.OfBought.Select(field => field.Key)];
        Narrowing narrowing = Narrowing.Of(document.PartlyKnown!, recording, stated);
        (DesignDocument narrowed, IReadOnlyList<Finding> unwritten) = document.WithEnds(narrowing.Fields.Where(one => one.IsNarrower).Select(one => one.After));
        List<Finding> findings = [.. new[] { narrowing.Contradiction }.OfType<Finding>().Select(document.Placed), .. asked.Narrow is null ? [] : unwritten];
        string[] files = asked.Narrow is { } named && narrowing.Contradiction is null ? [named] : [];
        foreach (string file in files)
        {
            if (Write(file, document.Format, narrowed) is { } unwritable)
            {
                outlet.Tell([.. findings, unwritable]);
                return ExitCode.Unusable;
            }
        }

        RecordingChoice[] next = narrowing.Contradiction is null ? [.. RecordingChoice.After(narrowing)] : [];
        outlet.Results.Write(asked.Json ? AnswerJson.Of(narrowing, next, findings, files) : NarrowingText.Of(narrowing, next));
        outlet.Tell(findings);
        outlet.NameBeside(asked.Json, files, narrowing.Fields.Any(one => one.IsNarrower) ? $"; evaluate it with `frontend check {asked.Narrow}`" : "; nothing in it is narrower");
        return narrowing.Contradiction is null ? ExitCode.Met : ExitCode.NotMet;
    }

    /// <summary>The fixture that the call names, or what is wrong with how it does.</summary>
    private static (KnownFixture? Fixture, Finding? Problem) FixtureOf(BenchAsked asked)
    {
        if (asked is { Test: not null, Fixture: not null })
        {
            return (null, Messages.TwoFixtures());
        }

        if (asked.Test is { } test)
        {
            return KnownFixture.Named(test) is { } named ? (named, null) : (null, Messages.NoNoiseTest(test, KnownFixture.Tests));
        }

        if (asked.Fixture is not { } words)
        {
            return (null, Messages.NeedsFixture(KnownFixture.Tests));
        }

        List<Finding> wrong = [];
        return string.Equals(words.Trim(), BenchPlan.Shorted, StringComparison.OrdinalIgnoreCase) ? (KnownFixture.Shorted, null)
            : OptionValues.Quantity<Resistance>(words, "--fixture", wrong) is { } resistor && 0 <= resistor.Ohms ? (KnownFixture.Of(resistor), null)
            : (null, wrong.FirstOrDefault() ?? Messages.NeedsFixture(KnownFixture.Tests));
    }

    /// <summary>The noise of the recording; null where there is none, and the outlet has been told.</summary>
    private static FixtureRecording? Recorded(PartlyKnownDesign design, KnownFixture fixture, BenchAsked asked, Outlet outlet, out int exit)
    {
        exit = ExitCode.Unusable;
        using MeasuredFile? file = MeasuredFile.Open(asked.Measured!, out Finding? unread);
        if (file is null || file.HoldsReadings)
        {
            outlet.Tell(unread ?? Messages.ReadingsNarrowNothing() with { File = asked.Measured });
            return null;
        }

        FixtureRecording? recording = null;
        bool whole = LongWork.Recording(file, outlet, (progress, cancellation) =>
        {
            (recording, IReadOnlyList<Finding> findings) = file.OnFixture(design, fixture, asked.Channel, asked.Raw, progress, cancellation);
            outlet.Tell(findings.Select(problem => problem with { File = problem.File ?? asked.Measured }));
        });
        exit = whole ? ExitCode.Unusable : ExitCode.Interrupted;
        return recording;
    }

    /// <summary>The text with the narrower ranges, comments kept; in another form than the design's they are lost.</summary>
    private static Finding? Write(string output, DocumentFormat format, DesignDocument narrowed)
    {
        string text = DesignDocument.FormatOf(output, narrowed.Text) == format ? narrowed.Text
            : format == DocumentFormat.Toml ? DesignWriter.ToJson(narrowed.PartlyKnown!) : DesignWriter.ToToml(narrowed);
        return TextFiles.WriteAtomically(output, text);
    }

    private static bool IsSame(string one, string other) => string.Equals(Path.GetFullPath(one), Path.GetFullPath(other), StringComparison.Ordinal);
}
