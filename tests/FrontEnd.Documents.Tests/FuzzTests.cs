using System.Diagnostics;
using System.Text;
using FrontEnd.Documents.Reading;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Whatever is in a design file, reading it neither throws nor hangs.</summary>
/// <remarks>Each run mutates a design that comes with the program. The seed is fixed; FUZZ_RUNS sets the number of runs, FUZZ_SEED another seed.</remarks>
public sealed class FuzzTests
{
    private static readonly int Runs = int.TryParse(Environment.GetEnvironmentVariable("FUZZ_RUNS"), out int runs) ? runs : 3000;
    private static readonly int Seed = int.TryParse(Environment.GetEnvironmentVariable("FUZZ_SEED"), out int seed) ? seed : 20260103;

    // A design is read in about a millisecond; a run that takes this long on a busy machine hangs.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private static readonly string[] Pieces =
    [
        "[", "]", "[[", "]]", "{", "}", "=", "\"", "'", "\"\"\"", "#", ".", ",", ":", "\\", "\\u12", "\0", "\uFFFF", "\uD800", "µ", "Ω", "\r", "\n", "\t", " ", "-", "+", "1e308", "1e999", "-0", "0x", "nan", "inf", "null", "true",
        "1979-05-27", "99999999999999999999", "[[stages]]\n", "[[digital]]\n", "kind = \"gain\"\n", "card = \"gel-prepared\"\n", "electrodes.", "opamp", "\"none\"", "\"unlimited\"", "\"auto\"", "[electrodes.ground]\n", "excess-rms = \"5 µV\"\n",
        "\"digital_sos\": [[1]],", "\"1 Hz\"", "rows = [[1,2,3]]\n", "rate = \"0 Hz\"\n", "{}", "[]", "\"\"",
    ];

    [Fact]
    public void Toml_AnyText_IsReadWithoutThrowing() => Run("*.toml", Repository.Designs, DocumentFormat.Toml, Seed);

    [Fact]
    public void Json_AnyText_IsReadWithoutThrowing() => Run("*.json", Repository.Worked, DocumentFormat.Json, Seed + 1);

    [Theory]
    [InlineData("[", 200_000)]
    [InlineData("{", 200_000)]
    [InlineData("a.", 20_000)]
    [InlineData("[a]\n", 20_000)]
    [InlineData("[[stages]]\n", 5_000)]
    [InlineData("[[a]]\n", 20_000)]
    [InlineData("a={a=", 50_000)]
    [InlineData("\"", 100_001)]
    [InlineData("a = 1\n", 20_000)]
    public void Text_ThatRepeatsOnePiece_IsReadInTime(string piece, int times)
    {
        string text = new StringBuilder().Insert(0, piece, times).ToString();
        foreach (DocumentFormat format in new[] { DocumentFormat.Toml, DocumentFormat.Json })
        {
            Read(text, format, $"{times} times {piece}");
        }
    }

    /// <summary>What a key of a hundred thousand signs was meant to be is not asked at each of them.</summary>
    [Theory]
    [InlineData("a-")]
    [InlineData("aB")]
    [InlineData("_")]
    public void Key_OfAnyLength_IsReadInTime(string piece)
    {
        Stopwatch watch = Stopwatch.StartNew();
        Read($"[converter]\n{new StringBuilder().Insert(0, piece, 100_000 / piece.Length)}0 = 1\n", DocumentFormat.Toml, $"a key of {piece}");
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), $"a key of {piece} took {watch.Elapsed.TotalSeconds:0.0} s");
    }

    private static void Run(string pattern, string folder, DocumentFormat format, int seed)
    {
        string[] originals = [.. Directory.GetFiles(folder, pattern).Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        Random random = new(seed);
        for (int run = 0; run < Runs; run++)
        {
            string text = originals[random.Next(originals.Length)];
            int changes = 1 + random.Next(6);
            for (int i = 0; i < changes; i++)
            {
                text = Mutate(text, originals, random);
            }

            DesignDocument document = Read(text, format, $"seed {seed}, run {run}");
            if (run % 10 == 0)
            {
                // What can be read can be changed or refused, too.
                string[] keys = [.. document.Origins.Select(origin => origin.Key)];
                string key = keys[random.Next(keys.Length)];
                EditResult result = Try(() => document.Set(key, document.OriginOf(key)!.Text), $"seed {seed}, run {run}, set {key}\n{text}");
                Assert.True(result.Finding is not null || result.Document.Format == format);
            }
        }
    }

    private static DesignDocument Read(string text, DocumentFormat format, string context)
    {
        Stopwatch watch = Stopwatch.StartNew();
        DesignDocument document = Try(() => DesignDocument.Parse(text, format, "fuzz"), context + "\n" + (text.Length < 20_000 ? text : ""));
        Assert.True(watch.Elapsed < Patience, $"{watch.Elapsed} for {context}");
        Assert.All(document.Findings, finding => Assert.True(finding.Line is null or > 0, finding.Message));
        return document;
    }

    private static T Try<T>(Func<T> action, string context)
    {
        try
        {
            return action();
        }
        catch (Exception error)
        {
            throw new InvalidOperationException($"{error.GetType().Name}: {error.Message} for {context}", error);
        }
    }

    private static string Mutate(string text, string[] originals, Random random)
    {
        int at = random.Next(text.Length + 1);
        int length = Math.Min(random.Next(1, 12), text.Length - at);
        switch (random.Next(9))
        {
            case 0:
                return text.Remove(at, length);
            case 1:
                return text.Insert(at, Pieces[random.Next(Pieces.Length)]);
            case 2:
                return text.Remove(at, length).Insert(at, Pieces[random.Next(Pieces.Length)]);
            case 3:
                return text[..at];
            case 4:
                return text.Insert(random.Next(text.Length + 1), text.Substring(at, length));
            case 5:
                string[] lines = text.Split('\n');
                int line = random.Next(lines.Length);
                (lines[line], lines[^1]) = (lines[^1], lines[line]);
                return string.Join('\n', lines);
            case 6:
                string[] doubled = text.Split('\n');
                return text + "\n" + doubled[random.Next(doubled.Length)];
            case 7:
                string other = originals[random.Next(originals.Length)];
                int from = random.Next(other.Length + 1);
                return text.Insert(at, other.Substring(from, Math.Min(random.Next(200), other.Length - from)));
            default:
                return text.Length == 0 || at == text.Length ? text : text.Remove(at, 1).Insert(at, ((char)random.Next(1, 0x250)).ToString());
        }
    }
}
