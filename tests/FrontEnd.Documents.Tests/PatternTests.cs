using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>No pattern that is held against a user's text takes a time that a long line of one sign could stretch.</summary>
public sealed class PatternTests
{
    private const BindingFlags Static = BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly;

    /// <summary>What is taken apart at most: what grows with the square of it passes by far, what grows with the third power does not.</summary>
    private const int Long = TomlSlips.Longest;

    /// <summary>What is held against a quantity sees no more than this.</summary>
    private const int Short = 100;

    private static readonly string[] Pieces =
    [
        .. "\"'[](){}<>,;.=:-+#/\\_~*%0a \t\n\u00A0µа".Select(sign => $"{sign}"),
        "1 ", "a ", "a=", "a.", "1.", "1,", "1_", "- ", "a, ", "\"a\" ", "\"a\",", "'a' ", "a\u00A0", "1e", "1-", "1 - ", "-> ", "; ", "to ", "x10", "[ ", "( ", " ]",
    ];

    private static readonly (string Before, string After)[] Around = [("", ""), ("", "]"), ("a", ""), ("a", "="), ("1", "!"), ("", "\""), ("[", "#"), ("\"", "1"), ("x = ", "")];

    public static TheoryData<string, string> Patterns()
    {
        TheoryData<string, string> patterns = new();
        foreach (MethodInfo method in new[] { typeof(Design).Assembly, typeof(TomlSlips).Assembly }.SelectMany(assembly => assembly.GetTypes()).SelectMany(type => type.GetMethods(Static))
            .Where(method => method.IsDefined(typeof(GeneratedRegexAttribute))))
        {
            patterns.Add(method.DeclaringType!.AssemblyQualifiedName!, method.Name);
        }

        return patterns;
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public void Pattern_OverALongLineOfOneSign_AnswersInTime(string type, string name)
    {
        Type owner = Type.GetType(type, throwOnError: true)!;
        var pattern = (Regex)owner.GetMethod(name, Static)!.Invoke(null, null)!;
        int length = owner.Namespace == "FrontEnd.Text" && owner.Name is not "NumberMeant" ? Short : Long;
        foreach (string piece in Pieces)
        {
            string run = new StringBuilder().Insert(0, piece, length / piece.Length).ToString();
            foreach ((string before, string after) in Around)
            {
                // Every pattern gives up after a second, which throws.
                Assert.True(Record.Exception(() => pattern.Count(before + run + after)) is null, $"{owner.Name}.{name}: a row of `{piece}` between `{before}` and `{after}`");
            }
        }
    }
}
