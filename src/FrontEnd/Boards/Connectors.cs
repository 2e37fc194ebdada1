using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>What connectors are called in an order list.</summary>
internal static class Connectors
{
    public static string Words(ElectrodeConnector kind) => kind switch
    {
        ElectrodeConnector.TouchProof => "touch-proof socket, 1.5 mm",
        ElectrodeConnector.PressStud => "press stud, socket half",
        _ => "solder pad for a lead",
    };
}
