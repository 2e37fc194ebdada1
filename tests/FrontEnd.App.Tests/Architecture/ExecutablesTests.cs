using System.Reflection;
using System.Text.Json;
using FrontEnd.App.Commands;
using FrontEnd.Documents.Tests;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>Two executables, side by side: the one with the commands is not linked with the widget library, whose start-up code reads files and would run before every command.</summary>
public class ExecutablesTests
{
    private static readonly Assembly Commands = typeof(CommandLine).Assembly;

    private static readonly Assembly Screens = typeof(Updater).Assembly;

    /// <summary>Whatever the commands refer to, and whatever that refers to.</summary>
    [Fact]
    public void Commands_WithAllTheyReferTo_AreWithoutTheWidgetLibraryAndTheScreens()
    {
        string[] reached = [.. Closure(Commands)];
        Assert.Contains("FrontEnd.Core", reached);
        Assert.DoesNotContain(Executables.WidgetLibrary, reached);
        Assert.DoesNotContain(Executables.Screens, reached);
    }

    /// <summary>The walk does find the library where it is.</summary>
    [Fact]
    public void Screens_WithAllTheyReferTo_HoldTheWidgetLibraryAndNoCommand()
    {
        string[] reached = [.. Closure(Screens)];
        Assert.Contains(Executables.WidgetLibrary, reached);
        Assert.DoesNotContain(Commands.GetName().Name, reached);
    }

    /// <summary>What the native compiler is given, and what the runtime looks for: the list that the build writes.</summary>
    [Fact]
    public void Commands_ListOfTheBuild_IsWithoutTheWidgetLibrary()
    {
        Assert.DoesNotContain(Executables.WidgetLibrary, ListOf(Executables.Commands), StringComparison.OrdinalIgnoreCase);
        Assert.Contains(Executables.WidgetLibrary, ListOf(Executables.Screens), StringComparison.OrdinalIgnoreCase);

        static string ListOf(string program) => File.ReadAllText(Path.Combine(Executables.Folder, program + ".deps.json"));
    }

    /// <summary>The build puts the screens beside the commands, with all they need to run.</summary>
    [Theory]
    [InlineData("frontend-screens.dll")]
    [InlineData("frontend-screens.deps.json")]
    [InlineData("frontend-screens.runtimeconfig.json")]
    [InlineData("Terminal.Gui.dll")]
    public void Screens_StandBesideTheCommands(string file) => Assert.True(File.Exists(Path.Combine(Executables.Folder, file)), $"no {file} in {Executables.Folder}");

    /// <summary>Published they share a folder, where an assembly is there once: one that was found only for the other would not load.</summary>
    [Fact]
    public void Packages_ThatBothStandOn_AreOfOneVersion()
    {
        Dictionary<string, string> commands = Resolved("FrontEnd.App"), screens = Resolved("FrontEnd.Terminal");
        string[] both = [.. commands.Keys.Intersect(screens.Keys, StringComparer.OrdinalIgnoreCase)];
        Assert.Contains("PDFsharp", both);
        Assert.Equal(both.Select(name => $"{name} {screens[name]}"), both.Select(name => $"{name} {commands[name]}"));
    }

    /// <summary>A file moved away from its neighbour is the user's business.</summary>
    [Fact]
    public void Open_WithoutTheScreensBeside_IsAFinding()
    {
        using TemporaryFolder folder = new();
        using StringWriter output = new(), messages = new();
        Assert.Equal(2, ScreensProgram.Open(null, new Outlet(output, messages), folder.Path));
        Assert.StartsWith("FE0970 error: the screens cannot be opened", messages.ToString(), StringComparison.Ordinal);
        Assert.Equal("", output.ToString());
    }

    private static Dictionary<string, string> Resolved(string project)
    {
        using JsonDocument locked = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "src", project, "packages.lock.json")));
        return locked.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(framework => framework.Value.EnumerateObject())
            .Where(package => package.Value.TryGetProperty("resolved", out _))
            .ToDictionary(package => package.Name, package => package.Value.GetProperty("resolved").GetString()!, StringComparer.OrdinalIgnoreCase);
    }

    private static HashSet<string> Closure(Assembly root)
    {
        HashSet<string> seen = [];
        Queue<Assembly> open = new([root]);
        while (open.TryDequeue(out Assembly? assembly))
        {
            foreach (AssemblyName name in assembly.GetReferencedAssemblies().Where(name => seen.Add(name.Name!) && !name.Name!.StartsWith("System.", StringComparison.Ordinal)))
            {
                open.Enqueue(Assembly.Load(name));
            }
        }

        return seen;
    }
}

/// <summary>The two executables as the build makes them.</summary>
internal static class Executables
{
    public const string Commands = "frontend";

    public const string Screens = "frontend-screens";

    public const string WidgetLibrary = "Terminal.Gui";

    /// <summary>Where the build of the commands' project has put them, in the configuration of the tests.</summary>
    public static string Folder { get; } =
        Path.Combine(Repository.Root, "src", "FrontEnd.App", "bin", Path.GetRelativePath(Path.Combine(Repository.Root, "tests", "FrontEnd.App.Tests", "bin"), AppContext.BaseDirectory));
}
