namespace FrontEnd.Topologies;

/// <summary>How a stage is drawn in a schematic: which parts stand where.</summary>
public enum StageShape
{
    /// <summary>An amplifier, perhaps behind a coupling capacitor.</summary>
    Gain,

    /// <summary>A resistor and a capacitor, perhaps with a follower.</summary>
    Rc,

    SallenKey,
    MultipleFeedback,
    TwinT,
    StateVariable,
}
