namespace FrontEnd.Documents.Reading;

/// <summary>The file that a reader was asked for, in the words of what it says of another one.</summary>
/// <param name="Name">As in "not a design" and "name a design".</param>
/// <param name="Start">How one begins such a file.</param>
internal sealed record WantedFile(string Name, string Start)
{
    public static WantedFile Design { get; } = new("a design", "`frontend new` writes a design to start from");

    public static WantedFile Homework { get; } = new("a homework's file", "a homework's file has lines such as `topics = [\"noise\", \"gain\"]` and `count = 10`");

    public static WantedFile Templates { get; } = new("a file of problem templates", "each template begins with [[templates]]");

    public static WantedFile Sizing { get; } = new("a file of requirements", "a file of requirements has a table [sizing]");

    public static WantedFile Card { get; } = new("a part card", "`frontend cards new` writes a card to start from");
}
