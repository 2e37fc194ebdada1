using FrontEnd.Terminal;
using FrontEnd.Documents.Reading;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>What holds for the interface, whoever adds to it.</summary>
public class TerminalTests
{
    private static readonly string[] Impure =
    [
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo", "System.IO.FileSystemInfo", "System.IO.FileSystemWatcher", "System.IO.StreamWriter",
        "System.Console", "System.DateTime.get_Now", "System.DateTime.get_UtcNow", "System.Diagnostics.Process", "System.Diagnostics.Stopwatch", "System.Threading.Thread.Sleep",
        "System.Threading.Timer", "System.Environment.GetEnvironmentVariable",
    ];

    /// <summary>Updater and painter touch no file, console or clock, and nothing that they call does: every key gives the same at any time.</summary>
    [Fact]
    public void UpdaterAndPainter_WhateverTheyCall_TouchNoFileConsoleOrClock() => Assert.Empty(ImpureFrom(typeof(Updater), typeof(Painter)));

    /// <summary>The walk does find files where there are some: through a delegate, and far below.</summary>
    [Fact]
    public void Reading_IsSeenByTheSameWalk()
    {
        Assert.NotEmpty(ImpureFrom(typeof(CardTexts)));
        Assert.NotEmpty(ImpureFrom(typeof(Performer)));
    }

    /// <summary>What the interface is stands apart from what shows it: only the screens know the widget library.</summary>
    [Fact]
    public void Interface_ButForItsScreens_DoesNotKnowTheWidgetLibrary()
    {
        const string screens = "FrontEnd.Terminal.Screens";
        Type[] types = [.. typeof(Updater).Assembly.GetTypes().Where(type => type.Namespace == "FrontEnd.Terminal")];
        Assert.NotEmpty(types);
        Assert.Equal([], types.SelectMany(type => TypeReferences.Of(type).Where(used => used.Namespace == screens || IsWidget(used)).Select(used => $"{type} -> {used}")));
        Assert.Contains(typeof(Updater).Assembly.GetTypes().Where(type => type.Namespace == screens).SelectMany(TypeReferences.Of), IsWidget);

        static bool IsWidget(Type type) => type.Assembly.GetName().Name == Executables.WidgetLibrary;
    }

    private static IEnumerable<string> ImpureFrom(params Type[] types) => Reached.From(types)
        .Where(pair => Impure.Contains(pair.Member.DeclaringType?.FullName) || Impure.Contains($"{pair.Member.DeclaringType?.FullName}.{pair.Member.Name}"))
        .Select(pair => $"{pair.By.DeclaringType}.{pair.By.Name} -> {pair.Member.DeclaringType}.{pair.Member.Name}");
}
