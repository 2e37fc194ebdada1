namespace FrontEnd.Identity;

/// <summary>Names that would give a result an id that something built in has, fitted or not: a design keeps its names when a part is put
/// in.</summary>
internal static class ReservedNames
{
    /// <summary>The built-in results that a stage of this name would share ids with; null where the name is free.</summary>
    public static ResultFamily? OfStage(string name)
    {
        NodeId node = NodeId.Of(name);
        if (NodeId.BuiltIn.Contains(node))
        {
            return node == NodeId.Path || node == NodeId.Amplifier ? ResultIds.Filter.Figures(node) : ResultIds.Levels.At(node);
        }

        SourceId taken = SourceId.Of(name).FirstOrDefault(SourceId.BuiltIn.Contains);
        return taken == default ? null : new(ResultIds.Noise.Source(taken).Text);
    }

    /// <summary>The same for an interferer: images of the band's edges and mains harmonics of any order are built in.</summary>
    public static ResultFamily? OfInterferer(string name)
    {
        ResultId stem = ResultIds.Alias.Interferer(name).Stem;
        string slug = Slug.Of(name);
        bool isHarmonic = 1 < slug.Length && slug[0] == 'h' && slug.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0;
        return isHarmonic || stem == ResultIds.Alias.LowEdge.Stem || stem == ResultIds.Alias.HighEdge.Stem ? new($"{stem}.") : null;
    }

    /// <summary>The name with the least number behind it that makes it free: "amplifier 2".</summary>
    /// <param name="name">The name that is not free.</param>
    /// <param name="isFree">What a name has to hold to.</param>
    public static string Proposal(string name, Predicate<string> isFree)
    {
        string stem = name.TrimEnd();
        int number = 2;
        while (!isFree($"{stem} {number}"))
        {
            number++;
        }

        return $"{stem} {number}";
    }
}
