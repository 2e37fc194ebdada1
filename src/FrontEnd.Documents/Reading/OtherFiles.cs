namespace FrontEnd.Documents.Reading;

/// <summary>Files of the program that are no designs, told by what stands in them: whoever gives one to a command that wants a design is told which command reads
/// it, and not that each of its keys is unknown.</summary>
internal static class OtherFiles
{
    private static readonly (string What, string Command, Func<TableNode, bool> Is)[] Kinds =
    [
        ("a file of requirements", "size {0}", root => At(root, "sizing") is TableNode),
        ("a part card", "cards {0}", root => At(root, "class") is TextNode && At(root, "values") is TableNode),
        ("a file of problem templates", "problems --templates {0} --list", root => At(root, "templates") is ListNode { Items: [TableNode, ..] }),
        ("a homework's file", "problems --homework {0}", root => new[] { "templates", "topics" }.Any(key => At(root, key) is ListNode { Items: [TextNode, ..] })
            || At(root, "rubric") is TableNode || At(root, "points") is TableNode),
    ];

    /// <summary>What a file is, if it is none that holds a design.</summary>
    public static Finding? Of(string? file, TableNode root) =>
        Array.Find(Kinds, kind => kind.Is(root)) is ({ } what, { } command, _) ? ReadingMessages.OtherFile(file, what, command) : null;

    private static Node? At(TableNode root, string key) => root.Find(key)?.Value;
}
