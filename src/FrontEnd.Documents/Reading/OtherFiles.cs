namespace FrontEnd.Documents.Reading;

/// <summary>Files of the program, told by what stands in them: whoever gives one to a command that wants another is told which command reads it, and not that
/// each of its keys is unknown.</summary>
internal static class OtherFiles
{
    private static readonly (WantedFile What, string Command, Func<TableNode, bool> Is)[] Kinds =
    [
        (WantedFile.Sizing, "size {0}", root => At(root, "sizing") is TableNode),
        (WantedFile.Card, "cards {0}", root => At(root, "class") is TextNode && At(root, "values") is TableNode),
        (WantedFile.Templates, "problems --templates {0} --list", root => At(root, "templates") is ListNode { Items: [TableNode, ..] }),
        (WantedFile.Homework, "problems --homework {0}", root => new[] { "templates", "topics" }.Any(key => At(root, key) is ListNode { Items: [TextNode, ..] })
            || At(root, "rubric") is TableNode || At(root, "points") is TableNode),
        (WantedFile.Design, "check {0}", root => new[] { "electrodes", "input", "amplifier", "converter" }.Count(key => At(root, key) is TableNode) >= 2),
    ];

    /// <summary>What a file is, if it is none that was wanted.</summary>
    public static Finding? Of(string? file, TableNode root, WantedFile wanted) =>
        Array.Find(Kinds, kind => kind.Is(root)) is ({ } what, { } command, _) && what != wanted ? ReadingMessages.OtherFile(file, what.Name, command, wanted.Name) : null;

    private static Node? At(TableNode root, string key) => root.Find(key)?.Value;
}
