using System.Reflection;
using FrontEnd.Designs;
using FrontEnd.Networks;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>A fault of the program is seen as one: nothing between where it happens and the outermost frame takes it for something else.</summary>
public class FaultTests
{
    private static readonly Assembly Core = typeof(Design).Assembly;

    private static readonly Assembly Files = typeof(Documents.DesignDocument).Assembly;

    /// <summary>What the core catches: the solver's own, which becomes a finding, and what parallel work wraps, which is thrown on as it was.</summary>
    [Fact]
    public void Core_Catches_NoFaultOfOurs() => Assert.Equal(
        ["FrontEnd.Networks.NetworkHasNoAnswer", "System.AggregateException"], Caught(Core).Select(pair => pair.What).Distinct().Order(StringComparer.Ordinal));

    /// <summary>A filter, such as <c>when (error is IOException)</c>, chooses; a bare catch of everything does not.</summary>
    [Fact]
    public void Files_Catch_NothingWithoutSayingWhat() => Assert.DoesNotContain(
        Caught(Files), pair => pair.What is "System.Exception" or "System.SystemException" or "System.Object");

    /// <summary>The solver alone throws what becomes a finding.</summary>
    [Fact]
    public void NetworkHasNoAnswer_IsThrownByTheSolverAlone() => Assert.Equal(
        ["FrontEnd.Networks"], Reached.Makers(typeof(NetworkHasNoAnswer)).Select(method => method.DeclaringType!.Namespace).Distinct());

    private static IEnumerable<(string What, MethodBase By)> Caught(Assembly assembly) =>
        from type in assembly.GetTypes()
        from method in Reached.MethodsOf(type)
        from clause in method.GetMethodBody()?.ExceptionHandlingClauses ?? []
        where clause.Flags == ExceptionHandlingClauseOptions.Clause
        select (clause.CatchType!.FullName!, method);
}
