using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Xml.Linq;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>The program can be compiled to a native executable: nothing of ours asks types for their members when it runs.</summary>
public class NativeTests
{
    private static readonly string[] Projects = ["FrontEnd", "FrontEnd.Documents", "FrontEnd.Terminal", "FrontEnd.App"];

    /// <summary>The libraries mark what native code cannot do; serialising by reflection is among it.</summary>
    [Fact]
    public void Calls_OfAllOurCode_AreOnesThatNativeCodeCanMake() => Assert.Empty(Reached.OutsideOurs().Where(pair => IsForbidden(pair.Member))
        .Select(pair => $"{pair.By.DeclaringType}.{pair.By.Name} -> {pair.Member.DeclaringType}.{pair.Member.Name}").Distinct());

    /// <summary>The check above sees what is there.</summary>
    [Fact]
    public void Forbidden_ReflectionSerialiser_IsSeen() => Assert.Contains(typeof(System.Text.Json.JsonSerializer).GetMethods(), IsForbidden);

    /// <summary>With it the compiler's own analyser for native code runs in every build that runs analysers.</summary>
    [Fact]
    public void Projects_AllOfThem_SayThatTheyAreFitForNativeCode() => Assert.All(Projects, name => Assert.Equal(
        "true", XDocument.Load(Path.Combine(Repository.Root, "src", name, name + ".csproj")).Descendants("IsAotCompatible").SingleOrDefault()?.Value));

    private static bool IsForbidden(MemberInfo member) => Marked(member) || (member.DeclaringType is { } type && Marked(type));

    private static bool Marked(MemberInfo member) =>
        member.IsDefined(typeof(RequiresUnreferencedCodeAttribute), inherit: false) || member.IsDefined(typeof(RequiresDynamicCodeAttribute), inherit: false);
}
