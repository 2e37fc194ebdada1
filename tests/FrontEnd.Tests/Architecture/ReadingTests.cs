using System.Reflection;
using System.Runtime.CompilerServices;
using FrontEnd.Designs;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>What makes code plain to read, where a program can see it.</summary>
public class ReadingTests
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    /// <summary>Ten values in a row are a record without a name; a record's own constructor names them.</summary>
    [Fact]
    public void Methods_OfTheCore_HaveFewerThanTenParameters()
    {
        IEnumerable<MethodBase> methods = typeof(Design).Assembly.GetTypes().Where(type => !type.IsDefined(typeof(CompilerGeneratedAttribute)))
            .SelectMany(type => type.GetMethods(All).Cast<MethodBase>().Concat(IsRecord(type) ? [] : type.GetConstructors(All)))
            .Where(method => method.Name is not "Deconstruct");
        Assert.Empty(methods.Where(method => 10 <= method.GetParameters().Length).Select(method => $"{method.DeclaringType}.{method.Name}"));
    }

    private static bool IsRecord(Type type) => type.GetMethod("<Clone>$") is not null || type.GetMethod("PrintMembers", All) is not null;
}
