using BenchmarkDotNet.Attributes;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Benchmarks;

/// <summary>Sheets and marks of a class; the files are written and flushed to the disk.</summary>
[MemoryDiagnoser]
public class HomeworkBenchmarks
{
    private readonly string _folder = Directory.CreateTempSubdirectory("frontend-benchmark-").FullName;
    private Student[] _class = [];
    private byte[] _key = [];
    private GivenAnswer[] _answers = [];

    [Params(200, 2000)]
    public int Students { get; set; }

    [GlobalSetup]
    public void Make()
    {
        _class = [.. Enumerable.Range(1, Students).Select(i => new Student($"s{i}", $"Student {i}"))];
        Key key = Key.Of(Homework.Make([], null, 10, 1, _class));
        _key = System.Text.Encoding.UTF8.GetBytes(KeyFile.Write(key));
        _answers = [.. key.Sheets.SelectMany(sheet => sheet.Questions.Select(question => new GivenAnswer(sheet.Student, question.Id, question.Answer, 1)))];
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark]
    public object? Problems() => HomeworkFiles.Write(_folder, Homework.Make([], null, 10, 1, _class));

    [Benchmark]
    public string Mark()
    {
        Key key = KeyFile.Read(_key, "key.json", out _)!;
        return ReturnedHtml.Page(key, Marker.Mark(key, _answers));
    }
}
