using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Compares a text with a file under a test project's Expected folder.</summary>
/// <remarks>Where a change is meant, run the tests once with FRONTEND_ACCEPT=1: the files are written anew, and a person reads the difference before it is committed.</remarks>
internal static class ExpectedText
{
    public static void Matches(string actual, string project, string file)
    {
        string path = Path.Combine(Repository.Root, "tests", project, "Expected", file);
        if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") is "1")
        {
            File.WriteAllText(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"{path} is not there; FRONTEND_ACCEPT=1 writes it");
        string[] expected = File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n'), lines = actual.ReplaceLineEndings("\n").Split('\n');
        for (int at = 0; at < Math.Max(expected.Length, lines.Length); at++)
        {
            string wanted = at < expected.Length ? expected[at] : "(end)", got = at < lines.Length ? lines[at] : "(end)";
            Assert.True(string.Equals(wanted, got, StringComparison.Ordinal), $"{file}, line {at + 1}\n  expected: {wanted}\n  actual:   {got}\nFRONTEND_ACCEPT=1 accepts the change");
        }
    }
}
