namespace FrontEnd.Identity;

/// <summary>Which node of the path something stands at, and so which block makes it: the output of a stage is the stage's.</summary>
/// <param name="Text">The word that stands in the result's id, such as <c>amplifier-inner-plus</c>.</param>
public readonly record struct NodeId(string Text)
{
    public static readonly NodeId ActiveBuffer = new("buffer-active");
    public static readonly NodeId ReferenceBuffer = new("buffer-reference");
    public static readonly NodeId AmplifierInnerPlus = new("amplifier-inner-plus");
    public static readonly NodeId AmplifierInnerMinus = new("amplifier-inner-minus");
    public static readonly NodeId Amplifier = new("amplifier");
    public static readonly NodeId Converter = new("converter");
    public static readonly NodeId Drive = new("drive");

    /// <summary>Not one node but all of the analogue path, where a block is asked for.</summary>
    public static readonly NodeId Path = new("path");

    /// <summary>Every node that is there without a stage, fitted or not.</summary>
    public static readonly IReadOnlyList<NodeId> BuiltIn =
        [ActiveBuffer, ReferenceBuffer, AmplifierInnerPlus, AmplifierInnerMinus, Amplifier, Converter, Drive, Path];

    /// <summary>The output of the stage of this name.</summary>
    public static NodeId Of(string stage) => new(Slug.Of(stage));

    /// <summary>In words: "amplifier inner plus".</summary>
    public string Words => Text.Replace('-', ' ');

    public override string ToString() => Text;
}
