namespace FrontEnd.Circuits;

/// <summary>Which nodes of a circuit are one, because a resistance of zero joins them.</summary>
internal sealed class JoinedNodes
{
    private readonly Dictionary<string, string> _joined = new(StringComparer.Ordinal);

    public JoinedNodes(Circuit circuit)
    {
        foreach (CircuitPart part in circuit.Parts.Where(part => part.IsJoint))
        {
            Join(part.From, part.To);
        }
    }

    /// <summary>The name that a node and all that are one with it go by.</summary>
    public string Root(string name)
    {
        while (_joined.TryGetValue(name, out string? kept))
        {
            name = kept;
        }

        return name;
    }

    private void Join(string left, string right)
    {
        (left, right) = (Root(left), Root(right));
        if (left == right)
        {
            return;
        }

        // The ports keep their names.
        (string kept, string gone) = right is Circuit.Common or Circuit.Input ? (right, left) : (left, right);
        _joined[gone] = kept;
    }
}
