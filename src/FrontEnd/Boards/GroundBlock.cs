using FrontEnd.Amplifier;
using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>The ground electrode: to the middle of the supply through its resistor, or to an amplifier that drives it with the inverted mean of
/// two inputs.</summary>
internal static class GroundBlock
{
    private static readonly BoardBlock Block = new(BlockKind.Ground);
    private static readonly Ratio Resistors = Ratio.FromPercent(1), Capacitors = Ratio.FromPercent(5);

    public static void AddTo(BoardDraft draft)
    {
        draft.In(Block);
        Design design = draft.Design;
        if (design.Electrodes.Ground is null)
        {
            draft.Notes.Add("There is no ground electrode: the bias resistors alone hold the inputs at the middle of the supply.");
            return;
        }

        draft.Add(PieceClass.Connector, BoardRoles.At(BoardRoles.Socket, BoardRoles.Ground), "socket of the ground electrode",
            [new("1", Nets.GroundElectrode, Nets.GroundElectrode)], DesignKeys.Board.ElectrodeConnector, Connectors.Words(draft.Choices.Electrodes));
        string end = design.GroundIsDriven ? Nets.Drive : Nets.Middle;
        BoardPart? resistor = draft.Resistor(BoardRoles.GroundSeries, "resistor to the ground electrode", end, Nets.GroundElectrode,
            design.GroundDrive.SeriesResistor, design.GroundDrive.ResistorTolerance, DesignKeys.GroundDrive.SeriesResistor);
        draft.Change(resistor, part => part with { ProtectsWearer = true });
        if (draft.Built.Drive is { } parts)
        {
            Drive(draft, parts);
        }
    }

    private static void Drive(BoardDraft draft, GroundIntegrator parts)
    {
        // The electrodes' own inputs would be loaded by resistors this small, so that each has a follower in front.
        int first = draft.FirstOnReference;
        string active = Board.NetOf(first, Nets.Positive);
        bool shared = draft.Design.Leads.Any(lead => lead.Channel is null);
        string reference = shared ? Nets.Negative : Board.NetOf(first, Nets.Negative);
        Follower(draft, BoardRoles.FollowActive, BoardRoles.AverageActive, "channel's input", active, Nets.FollowerActive);
        Follower(draft, BoardRoles.FollowReference, BoardRoles.AverageReference, "reference input", reference, Nets.FollowerReference);
        draft.OpAmp(BoardRoles.Drive, "drives the ground electrode", null, "", (Nets.Middle, Nets.DriveInput, Nets.Drive));
        draft.Resistor(BoardRoles.Feedback, "sets the gain at dc", Nets.DriveInput, Nets.Drive, parts.Feedback, Resistors, DesignKeys.Board.GroundFeedback);
        draft.Capacitor(BoardRoles.FeedbackCapacitor, "sets the unity-gain frequency", Nets.DriveInput, Nets.Drive, parts.Capacitor, Capacitors,
            DesignKeys.GroundDrive.UnityGainFrequency);
        draft.TestPoint(Nets.Drive);
        draft.Notes.Add(draft.Design.Channels == 1
            ? "The driven ground takes the mean of the two inputs through followers; the current these draw from the inputs is not in any figure."
            : "The driven ground takes the mean of one channel's input and the reference through followers; the current these draw from the inputs is not in any figure.");
    }

    private static void Follower(BoardDraft draft, string role, string average, string what, string input, string output)
    {
        draft.OpAmp(role, $"follower after the {what}", null, "", (input, output, output));
        BoardPart? resistor = draft.Resistor(average, $"averages the {what}", output, Nets.DriveInput, draft.Built.Averaging, Resistors, DesignKeys.GroundDrive.DcGain);
        draft.Pair(resistor, 0, average == BoardRoles.AverageActive ? BoardRoles.AverageReference : BoardRoles.AverageActive);
    }
}
