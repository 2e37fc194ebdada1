using FrontEnd.Bench;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>The bench plan of a sheet: the tests of <c>frontend bench</c> in the order of powering up, with room to write the readings in, and
/// what to check before each recording.</summary>
internal static class BenchBlocks
{
    /// <summary>Named in both places, so that one is found from the other.</summary>
    private const string FurtherTests = "further bench tests, and the reading to expect";

    public static IEnumerable<Block> Of(Sheet sheet)
    {
        if (sheet.Bench.Count == 0)
        {
            yield break;
        }

        yield return new Block.Heading("bench plan, in order of powering up: go on only where all before it agrees");
        yield return new Block.Paragraph(BenchPlan.Caution);
        if (sheet.Bench[0].Channel is { } channel)
        {
            yield return new Block.Paragraph(BenchWording.OfChannel(channel));
        }

        yield return new Block.Table(
            [new("test", true, IsWhole: true), new("agrees", true, IsWhole: true), new("reading", IsBox: true), new("what to set up and read; what to suspect if the reading is off", true)],
            [.. sheet.Bench.Where(test => test.Step != BenchStep.Further).GroupBy(test => test.Step).SelectMany(step => Rows(step.Key, [.. step])),
                .. Worn(sheet.Assessment)], Small: true);
        foreach (Block block in BeforeARecording(sheet.Assessment))
        {
            yield return block;
        }

        int further = sheet.Bench.Count(test => test.Step == BenchStep.Further);
        yield return new Block.Items(
            [$"`frontend bench` shows these tests in full, and {further} more for a first board{(sheet.HasAppendix ? ", which are in the appendix" : "; so has the appendix: --appendix")}."],
            Small: true);
    }

    /// <summary>The tests that a first board is characterised with besides.</summary>
    public static IEnumerable<Block> Further(Sheet sheet)
    {
        BenchReading[] tests = [.. sheet.Bench.Where(test => test.Step == BenchStep.Further)];
        if (tests.Length == 0)
        {
            yield break;
        }

        yield return new Block.Heading(FurtherTests);
        yield return new Block.Paragraph(BenchPlan.Caution);
        yield return new Block.Table([new("test", true), new("expect", true), new("figure", true)], [.. tests.Select(BenchWording.Whole)], Small: true);
    }

    /// <summary>What differs from recording to recording, and how far it may go.</summary>
    private static IEnumerable<Block> BeforeARecording(Assessment assessment)
    {
        Result[] limits = [.. assessment.Results.Where(result => ResultIds.Limit.All.Has(result.Id))];
        if (limits.Length == 0)
        {
            yield break;
        }

        yield return new Block.Heading(BudgetTables.BeforeARecording);
        yield return new Block.Table([new("figure", true), new("up to"), new("found", IsBox: true), new("what it is", true)],
            [.. limits.Select(limit => new Row([limit.Id.Text, Wording.Value(limit), "", limit.Name]))], Small: true);
    }

    /// <summary>A step under its name and what all its tests are set up with: a row for each way of setting up, its tests a line each.</summary>
    private static IEnumerable<Row> Rows(BenchStep step, BenchReading[] tests)
    {
        string shared = Shared([.. tests.Select(test => test.Fixture)]);
        string heading = BenchWording.Heading(step);
        yield return new Row([char.ToUpperInvariant(heading[0]) + heading[1..] + (shared.Length == 0 ? "" : $": {shared}")], IsHeading: true);
        Dictionary<string, string> said = new(StringComparer.Ordinal);
        foreach (IGrouping<string, BenchReading> alike in tests.GroupBy(test => ToDo(test, shared), StringComparer.Ordinal))
        {
            string suspects = Suspects([.. alike]);
            string told = suspects.Length == 0 ? "" : said.TryAdd(suspects, alike.First().Name) ? $" If off: {suspects}." : $" If off: as {said[suspects]}.";
            yield return new Row([Lines(alike.Select(Name)), Lines(alike.Select(BenchWording.Range)), "", $"{alike.Key}.{told}"]);
        }
    }

    private static string ToDo(BenchReading test, string shared)
    {
        string own = test.Fixture[shared.Length..].TrimStart(':', ';', ' ');
        return test.Brief ?? (own.Length == 0 ? test.Setting : $"{own}; {test.Setting}");
    }

    private static string Name(BenchReading test) => test.At is { } at ? $"{test.Name}: {at.Name}, {at.Net}"
        : test.Particular is { } particular ? $"{test.Name}: {particular}" : test.Name;

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines);

    /// <summary>What to suspect; where some of the tests that are set up alike point elsewhere than the most of them, those under their
    /// names.</summary>
    private static string Suspects(BenchReading[] tests) => string.Join("; ", tests.GroupBy(BenchWording.IfOff, StringComparer.Ordinal)
        .Where(same => same.Key.Length > 0).OrderByDescending(same => same.Count())
        .Select((same, at) => at == 0 ? same.Key : $"{string.Join(", ", same.Select(test => test.Name))}: {same.Key}"));

    /// <summary>The clauses that all of them begin with; "" for none.</summary>
    private static string Shared(string[] fixtures)
    {
        if (fixtures.Distinct(StringComparer.Ordinal).Count() == 1)
        {
            return fixtures[0];
        }

        int colon = fixtures[0].IndexOf(": ", StringComparison.Ordinal);
        return 0 < colon && Array.TrueForAll(fixtures, fixture => fixture.StartsWith(fixtures[0][..(colon + 1)], StringComparison.Ordinal)) ? fixtures[0][..colon] : "";
    }

    /// <summary>Behind all tests: what the first recordings on a wearer should show.</summary>
    private static IEnumerable<Row> Worn(Assessment assessment)
    {
        yield return new Row(["then, on battery: the first recordings on a wearer; before each, check the list below"], IsHeading: true);
        foreach (WornReading worn in BenchFigures.Worn(assessment))
        {
            yield return new Row([worn.Figure.Id.Text, (worn.Figure.State == ResultState.Number ? worn.Before + " " : "") + Wording.Value(worn.Figure), "", worn.What]);
        }
    }
}
