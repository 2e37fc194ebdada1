using System.Collections.Concurrent;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Tests.Teaching;

/// <summary>The problems of a template for many seeds, drawn once for all tests: a judgement solves its network some ten times a draw.</summary>
internal static class Drawn
{
    public const int Seeds = 200;

    private static readonly ConcurrentDictionary<string, Lazy<Problem[]>> ById = new(StringComparer.Ordinal);

    public static IReadOnlyList<Problem> Of(string id) =>
        ById.GetOrAdd(id, key => new Lazy<Problem[]>(() => [.. Enumerable.Range(1, Seeds).Select(seed => TemplateSet.Find(key)!.For((ulong)seed, "s1"))])).Value;
}
