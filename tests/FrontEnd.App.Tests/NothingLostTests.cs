using System.Diagnostics;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Nothing that an instructor has is written over: neither what a call reads nor what students answered.</summary>
public sealed class NothingLostTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-lost-");

    public void Dispose() => _folder.Delete(recursive: true);

    private string In(string name) => Path.Combine(_folder.FullName, name);

    private string Write(string name, string text)
    {
        File.WriteAllText(In(name), text);
        return In(name);
    }

    private string Homework(string name, string seed = "4", params string[] more)
    {
        string students = Write("class.csv", "id,name\ns1,Ada\ns2,Ben\ns3,Cy\n");
        Outcome made = Shell.Run(["problems", "--count", "3", "--topic", "noise", "--seed", seed, "--students", students, "-o", In(name), .. more]);
        Assert.True(made.Code == 0, made.Messages);
        return Path.Combine(In(name), "key", "key.json");
    }

    public static TheoryData<string> WaysToTheAnswers => ["itself", "dots", "relative", "link", "link to folder", "link of links", "hard link"];

    [Theory]
    [MemberData(nameof(WaysToTheAnswers))]
    public void Mark_IntoItsAnswersByAnyWay_IsRefusedAndChangesNothing(string way)
    {
        if (OperatingSystem.IsWindows() && way.Contains("link", StringComparison.Ordinal))
        {
            return;   // links want rights there
        }

        string key = Homework("h"), answers = Write("answers.csv", "student,question,answer\ns1,q1,5 V\n");
        Directory.CreateDirectory(In("sub"));
        string output = way switch
        {
            "dots" => Path.Combine(_folder.FullName, "sub", "..", ".", "answers.csv"),
            "relative" => Path.GetRelativePath(Documents.Tests.Repository.Root, answers),
            "link" => File.CreateSymbolicLink(In("marks.csv"), "answers.csv").FullName,
            "link to folder" => Path.Combine(Directory.CreateSymbolicLink(In("there"), _folder.FullName).FullName, "answers.csv"),
            "link of links" => File.CreateSymbolicLink(In("marks.csv"), File.CreateSymbolicLink(In("sub/a.csv"), "../answers.csv").FullName).FullName,
            "hard link" => HardLink(answers, In("marks.csv")),
            _ => answers,
        };
        byte[] before = File.ReadAllBytes(answers);
        Outcome outcome = Shell.Run("mark", key, answers, "-o", In("first.csv"), "-o", output);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE1073 error", outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(answers));
        Assert.False(File.Exists(In("first.csv")));
    }

    [Fact]
    public void Mark_IntoAListOfAnswersOrStudents_IsRefusedAndIntoOldMarksIsNot()
    {
        string key = Homework("h"), answers = Write("answers.csv", "student,question,answer\ns1,q1,5 V\n"), other = Write("other.csv", "sep=;\nStudent;Question;Answer\ns1;q1;7 V\n");
        foreach (string list in new[] { In("class.csv"), other, Path.Combine(In("h"), "answers-blank.csv") })
        {
            byte[] before = File.ReadAllBytes(list);
            Outcome outcome = Shell.Run("mark", key, answers, "-o", list);
            Assert.Equal(2, outcome.Code);
            Assert.Contains("FE1073 error", outcome.Messages, StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllBytes(list));
        }

        string marks = In("marks.csv");
        Assert.Equal(0, Shell.Run("mark", key, answers, "-o", marks).Code);
        string first = File.ReadAllText(marks);
        Assert.Equal(0, Shell.Run("mark", key, answers, "-o", marks).Code);
        Assert.Equal(first, File.ReadAllText(marks));
        Assert.Equal(0, Shell.Run("mark", key, answers, "-o", Write("notes.csv", "whatever\n")).Code);
    }

    [Fact]
    public void Problems_IntoAFolderWithAnswers_IsRefusedAndAgainKeepsThem()
    {
        string key = Homework("h"), blank = Path.Combine(In("h"), "answers-blank.csv"), old = File.ReadAllText(key);
        Homework("h");   // nothing is filled in yet
        string filled = string.Join('\n', File.ReadAllText(blank).Split('\n').Select(line => line.StartsWith("s1", StringComparison.Ordinal) ? line + "5 V" : line));
        File.WriteAllText(blank, filled);
        string[] call = ["problems", "--count", "3", "--seed", "5", "--students", In("class.csv"), "-o", In("h")];
        Outcome refused = Shell.Run(call);
        Assert.Equal(2, refused.Code);
        Assert.Contains("FE1074 error", refused.Messages, StringComparison.Ordinal);
        Assert.Contains("`answers-blank.csv`", refused.Messages, StringComparison.Ordinal);
        Assert.Equal((filled, old), (File.ReadAllText(blank), File.ReadAllText(key)));
        Outcome again = Shell.Run([.. call, "--again"]);
        Assert.True(again.Code == 0, again.Messages);
        Assert.Equal(filled, File.ReadAllText(Path.Combine(In("h"), "answers.csv")));
        Assert.NotEqual(old, File.ReadAllText(key));
        string kept = Assert.Single(Directory.GetFiles(Path.GetDirectoryName(key)!, "key-*.json"));
        Assert.Equal(old, File.ReadAllText(kept));

        // The kept list stands in the way of the next homework too, and the kept key marks it.
        Assert.Contains("`answers.csv`", Shell.Run(call).Messages, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run("mark", kept, Path.Combine(In("h"), "answers.csv"), "-o", In("marks.csv")).Code);
    }

    [Fact]
    public void Problems_WhoseClassOrSecretStandsInTheWay_AreRefused()
    {
        Homework("h");
        string secret = Path.Combine(In("h"), "key", "secret.txt");
        File.WriteAllText(secret, "a secret that is long enough");
        File.WriteAllText(Path.Combine(In("h"), "answers-blank.csv"), "id,name\ns1,Ada\n");
        Outcome outcome = Shell.Run("problems", "--count", "1", "--students", Path.Combine(In("h"), "answers-blank.csv"), "--secret", secret, "--again", "-o", In("h"));
        Assert.Equal(2, outcome.Code);
        Assert.Equal(3, outcome.Messages.Split("FE1073 error").Length);
        Assert.Equal("id,name\ns1,Ada\n", File.ReadAllText(Path.Combine(In("h"), "answers-blank.csv")));
    }

    [Fact]
    public void Mark_OfAnotherHomeworksAnswers_IsRefused()
    {
        string key = Homework("h"), other = Homework("other", "5");
        string answers = Write("answers.csv", Filled(Path.Combine(In("other"), "answers-blank.csv")));
        Outcome outcome = Shell.Run("mark", key, answers, "-o", In("marks.csv"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE1070 error", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(In("marks.csv")));
        Assert.Equal(0, Shell.Run("mark", other, answers, "-o", In("marks.csv")).Code);

        // One student of three answered another homework: the others are marked, and the one is named.
        string[] own = Filled(Path.Combine(In("h"), "answers-blank.csv")).Split('\n'), foreign = File.ReadAllLines(answers);
        string mixed = Write("mixed.csv", string.Join('\n', own.Where(line => !line.StartsWith("s2", StringComparison.Ordinal)).Concat(foreign.Where(line => line.StartsWith("s2", StringComparison.Ordinal)))));
        Outcome some = Shell.Run("mark", key, mixed, "-o", In("marks.csv"));
        Assert.Equal(0, some.Code);
        Assert.Contains("FE1070 warning: `s2` has 3 answers to another sheet", some.Messages, StringComparison.Ordinal);
        Assert.Contains("no answers, not counted: s2 (Ben)", some.Output, StringComparison.Ordinal);
        Assert.StartsWith("2 students, 6 answers", some.Output, StringComparison.Ordinal);
        Assert.Contains("s2,Ben,total,,,,,no answers", File.ReadAllLines(In("marks.csv")));
        Assert.DoesNotContain("s2,Ben,q", File.ReadAllText(In("marks.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void Mark_WithAKeyThatWasChanged_IsRefusedUntilItIsTrusted()
    {
        string key = Homework("h"), answers = Write("answers.csv", "student,question,answer\ns1,q1,5 V\n");
        File.WriteAllText(key, File.ReadAllText(key).Replace("\"points\": 2", "\"points\": 3", StringComparison.Ordinal));
        Outcome refused = Shell.Run("mark", key, answers, "-o", In("marks.csv"));
        Assert.Equal(2, refused.Code);
        Assert.Contains("FE1071 error", refused.Messages, StringComparison.Ordinal);
        Outcome trusted = Shell.Run("mark", key, answers, "--trust-key", "-o", In("marks.csv"));
        Assert.Equal(0, trusted.Code);
        Assert.Contains("FE1071 warning", trusted.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Mark_WithoutHalfPoints_GivesNoneForASlip()
    {
        string key = Homework("h");
        Key read = Documents.Teaching.KeyFile.Read(File.ReadAllText(key), key, out _)!;
        KeyQuestion question = read.Sheets[0].Questions.First(one => one.Kind is { } kind && kind.SiUnit != "1" && one.Slips.Count > 0);
        string answers = Write("answers.csv", FormattableString.Invariant($"student,question,answer\ns1,{question.Id},{question.Slips[0].Value:R} {question.Kind!.SiUnit}\n"));
        Assert.Equal(0, Shell.Run("mark", key, answers, "-o", In("half.csv")).Code);
        Assert.Equal(0, Shell.Run("mark", key, answers, "--half-points", "no", "-o", In("none.csv")).Code);
        Assert.Contains(FormattableString.Invariant($",{question.Points / 2.0},{question.Points},{question.Slips[0].Code},"), File.ReadAllText(In("half.csv")), StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($",0,{question.Points},{question.Slips[0].Code},"), File.ReadAllText(In("none.csv")), StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("mark", key, answers, "--half-points", "some", "-o", In("none.csv")).Code);
    }

    private static string Filled(string blank) => string.Join('\n', File.ReadAllText(blank).TrimEnd('\n').Split('\n').Select((line, at) => at == 0 ? line : line + "5 V"));

    private static string HardLink(string file, string name)
    {
        using Process process = Process.Start("ln", [file, name]);
        process.WaitForExit();
        return name;
    }
}
