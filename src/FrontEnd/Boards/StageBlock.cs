using FrontEnd.Circuits;
using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>A gain stage or a section of a filter: the parts of its circuit, its op-amps, and nets after its short name.</summary>
internal static class StageBlock
{
    public static void AddTo(BoardDraft draft, int stage)
    {
        draft.In(new BoardBlock(BlockKind.Stage, stage));
        Design design = draft.Design;
        Circuit circuit = design.Stages[stage].Circuit();
        string key = $"stages[{stage + 1}]";
        Dictionary<string, string> nets = NetsOf(design, stage, circuit);
        foreach (CircuitPart part in circuit.Parts)
        {
            for (int piece = 0; piece < part.Pieces; piece++)
            {
                string role = BoardRoles.Piece(part.Role, piece), from = At(part.From), to = At(part.To), fieldKey = $"{key}.{part.Role}";
                Ratio tolerance = Ratio.FromFraction(part.Tolerance);
                if (part.Kind == PartKind.Resistor)
                {
                    draft.Resistor(role, part.Label, from, to, Resistance.FromOhms(part.OnePiece.SiValue), tolerance, fieldKey);
                }
                else
                {
                    draft.Capacitor(role, part.Label, from, to, Capacitance.FromFarads(part.OnePiece.SiValue), tolerance, fieldKey);
                }
            }
        }

        foreach (CircuitOpAmp opAmp in circuit.OpAmps)
        {
            draft.OpAmp(opAmp.Role, opAmp.Role, opAmp.Model, $"{key}.{opAmp.Key}.card", (At(opAmp.Plus), At(opAmp.Minus), At(opAmp.Output)));
        }

        draft.TestPoint(draft.Net(Nets.Stage(design, stage)));

        string At(string node) => nets[node] == Nets.Middle ? Nets.Middle : draft.Net(nets[node]);
    }

    /// <summary>Net of each node of a stage's circuit, without prefix.</summary>
    private static Dictionary<string, string> NetsOf(Design design, int stage, Circuit circuit)
    {
        string name = Nets.Short(design, stage);
        Dictionary<string, string> nets = new(StringComparer.Ordinal)
        {
            [Circuit.Input] = stage == 0 ? Nets.AmplifierOf(design) : Nets.Stage(design, stage - 1),
            [Circuit.Common] = Nets.Middle,
            [circuit.Output] = Nets.Stage(design, stage),
        };
        foreach (string node in circuit.Parts.SelectMany(part => new[] { part.From, part.To })
            .Concat(circuit.OpAmps.SelectMany(opAmp => new[] { opAmp.Plus, opAmp.Minus, opAmp.Output })))
        {
            nets.TryAdd(node, name + Suffix(node));
        }

        return nets;
    }

    /// <summary>P and N are an op-amp's inputs, M the node between two parts; other nodes keep their name's letters.</summary>
    private static string Suffix(string node) => node switch
    {
        "plus" or "P" => "P",
        "minus" => "N",
        "X" => "M",
        "between the resistors" => "MR",
        "between the capacitors" => "MC",
        _ => new string([.. node.Where(char.IsAsciiLetterOrDigit)]).ToUpperInvariant(),
    };
}
