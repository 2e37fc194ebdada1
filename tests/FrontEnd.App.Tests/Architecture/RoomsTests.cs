using System.Reflection;
using FrontEnd.App.Commands;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>Folders are a one-way street: the order of the rooms stands in DEVELOPERS.md, and nothing refers uphill.</summary>
public class RoomsTests
{
    public static TheoryData<string> Projects => ["FrontEnd", "FrontEnd.Documents", "FrontEnd.Terminal", "FrontEnd.App"];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Rooms_OfOneProject_ReferToEarlierRoomsOnly(string project)
    {
        string[] rooms = RoomOrder.Of(project);
        SortedSet<string> uphill = [];
        foreach (Type type in Assembly(project).GetTypes())
        {
            int own = Room(type, project, rooms);
            foreach (Type other in TypeReferences.Of(type).Where(other => other.Assembly == type.Assembly))
            {
                if (own < Room(other, project, rooms))
                {
                    uphill.Add($"{rooms[own]} -> {rooms[Room(other, project, rooms)]}: {Outer(type)} names {Outer(other)}");
                }
            }
        }

        Assert.True(uphill.Count == 0, $"{uphill.Count} references uphill:\n{string.Join('\n', uphill)}");
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Rooms_OfOneProject_AreItsFolders(string project)
    {
        string folder = Path.Combine(Repository.Root, "src", project);
        string[] rooms = RoomOrder.Of(project);
        HashSet<string> found = new(StringComparer.Ordinal);
        foreach (string path in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories))
        {
            string inside = Path.GetRelativePath(folder, Path.GetDirectoryName(path)!).Replace(Path.DirectorySeparatorChar, '.');
            string? space = File.ReadLines(path).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal));
            if (space is null || inside.StartsWith("obj", StringComparison.Ordinal) || inside.StartsWith("bin", StringComparison.Ordinal))
            {
                continue;
            }

            // A folder below a room may be the room's own drawer; its files then say the room's name.
            string room = space["namespace ".Length..^1][project.Length..].TrimStart('.');
            bool isDrawer = room.Length == 0 ? !rooms.Contains(inside.Split('.')[0]) : inside.StartsWith(room + ".", StringComparison.Ordinal);
            Assert.True(inside == "." ? room.Length == 0 : inside == room || isDrawer, $"{path} says {space}");
            found.Add(room.Length == 0 ? RoomOrder.Top : room);
        }

        Assert.Equal(rooms.Where(room => room != RoomOrder.Top).Order(StringComparer.Ordinal), found.Where(room => room != RoomOrder.Top).Order(StringComparer.Ordinal));
    }

    private static Assembly Assembly(string project) => project switch
    {
        "FrontEnd" => typeof(Design).Assembly,
        "FrontEnd.Documents" => typeof(DesignDocument).Assembly,
        "FrontEnd.Terminal" => typeof(Updater).Assembly,
        _ => typeof(CommandLine).Assembly,
    };

    /// <summary>The place of a type's room in the order.</summary>
    private static int Room(Type type, string project, string[] rooms)
    {
        if (type.Namespace is not { } space)
        {
            // The program's entry stands in no namespace; what else has none is the compiler's own.
            return Outer(type) == "Program" ? Array.IndexOf(rooms, RoomOrder.Top) : 0;
        }

        if (!(space + ".").StartsWith(project + ".", StringComparison.Ordinal))
        {
            return 0;
        }

        string name = space.Length == project.Length ? RoomOrder.Top : space[(project.Length + 1)..];
        int at = Array.IndexOf(rooms, name);
        return at < 0 ? throw new InvalidOperationException($"{type} stands in no room that DEVELOPERS.md names.") : at;
    }

    private static string Outer(Type type)
    {
        while (type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type.FullName!;
    }
}

/// <summary>The rooms of a project from the first to the last, as DEVELOPERS.md lists them.</summary>
internal static class RoomOrder
{
    /// <summary>The name of the project's own folder in the list.</summary>
    public const string Top = "(top)";

    public static string[] Of(string project)
    {
        string[] lines = File.ReadAllLines(Path.Combine(Repository.Root, "DEVELOPERS.md"));
        int heading = Array.FindIndex(lines, line => line.Trim() == $"rooms of {project}:");
        Assert.True(0 <= heading, $"DEVELOPERS.md has no line `rooms of {project}:`");
        return [.. lines.Skip(heading + 1).TakeWhile(line => line.Trim().Length > 0).SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
    }
}
