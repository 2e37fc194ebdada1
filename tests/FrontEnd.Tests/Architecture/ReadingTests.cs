using System.Reflection;
using FrontEnd.Designs;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>What makes code plain to read, where a program can see it.</summary>
public class ReadingTests
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly string[] Rooms =
    [
        "Quantities", "Findings", "Text", "Numbers", "Networks", "Filters", "Circuits", "Electrodes", "Interference", "Converter", "Digital",
        "Designs", "Fields", "Results", "Textbook", "Advice", "Sizing", "Teaching", "Teaching.Problems",
    ];

    /// <summary>Ten values in a row are a record without a name.</summary>
    [Fact]
    public void Methods_OfThePlainRooms_HaveFewerThanTenParameters()
    {
        IEnumerable<Type> types = typeof(Design).Assembly.GetTypes()
            .Where(type => Rooms.Any(room => string.Equals(type.Namespace, $"FrontEnd.{room}", StringComparison.Ordinal)));
        IEnumerable<MethodBase> methods = types.SelectMany(type => type.GetMethods(All).Cast<MethodBase>().Concat(type.GetConstructors(All)));
        Assert.Empty(methods.Where(method => 10 <= method.GetParameters().Length).Select(method => $"{method.DeclaringType}.{method.Name}"));
    }
}
