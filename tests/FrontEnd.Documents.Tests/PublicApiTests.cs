using System.Reflection;
using System.Xml.Linq;
using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Recordings;
using FrontEnd.Documents.Sheets;
using FrontEnd.Tests.Library;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>What the library of files shows to those who add it to a project: decided, written down, and no more than that.</summary>
public class PublicApiTests
{
    private static readonly Assembly Library = typeof(DesignDocument).Assembly;

    /// <summary>Opening, changing and saving design files with their cards; sheets; coefficients; recordings.</summary>
    private static readonly Type[] Decided =
    [
        typeof(DesignDocument), typeof(DesignWriter), typeof(EditResult), typeof(TakenOver), typeof(DocumentFormat), typeof(FieldOrigin), typeof(OriginKind),
        typeof(CardTexts), typeof(CardText), typeof(Sheet), typeof(SheetFormats), typeof(FindingText), typeof(CoefficientWriting), typeof(MeasuredSignal),
    ];

    [Fact]
    public void Documents_WhatTheyShow_IsWrittenDown() =>
        Assert.Null(WrittenApi.Difference(Library, Path.Combine(Repository.Root, "reference", "api", "documents.txt")));

    [Fact]
    public void Documents_TypesTheyShow_AreThoseThatWereDecided() =>
        Assert.Equal(Decided.Select(type => type.FullName).Order(StringComparer.Ordinal), Library.GetExportedTypes().Select(type => type.FullName).Order(StringComparer.Ordinal));

    /// <summary>Every type says what it is, and every member whose name does not.</summary>
    [Fact]
    public void Documents_WhatTheyShow_IsDocumented()
    {
        string[] said = [.. XDocument.Load(Path.ChangeExtension(Library.Location, ".xml")).Descendants("member").Where(one => one.Elements().Any()).Select(one => one.Attribute("name")!.Value)];
        Assert.Equal([], Decided.Where(type => !said.Contains("T:" + type.FullName)).Select(type => type.Name));
        IEnumerable<string> calls = Decided.SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(method => !method.IsSpecialName && method.GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>() is null && method.Name is not ("ToString" or "Equals" or "GetHashCode" or "Deconstruct"))
            .Select(method => $"M:{type.FullName}.{method.Name}"));
        Assert.Equal([], calls.Distinct().Where(call => !said.Any(one => one.StartsWith(call, StringComparison.Ordinal))));
    }
}
