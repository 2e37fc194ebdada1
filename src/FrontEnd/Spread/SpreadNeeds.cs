namespace FrontEnd.Spread;

/// <summary>What must be solved for the figures that are asked for.</summary>
[Flags]
internal enum SpreadNeeds
{
    None = 0,

    /// <summary>The middle of the band.</summary>
    Middle = 1,

    /// <summary>All points of the band and of what folds.</summary>
    Noise = 2,

    /// <summary>The first point of what folds.</summary>
    Fold = 4,

    /// <summary>The modulator's first fold.</summary>
    ModulatorFold = 8,

    /// <summary>The mains' fundamental at the input.</summary>
    Mains = 16,

    /// <summary>That without what the leads pick up.</summary>
    Rejection = 32,

    /// <summary>Harmonics that land in the band, at both sides of their frequency.</summary>
    Recorded = 64,

    /// <summary>All points of the band, all harmonics and dc at every node.</summary>
    Levels = 128,

    /// <summary>The driven ground's loop as the design stands.</summary>
    Margin = 256,

    /// <summary>The loop in its worst surroundings.</summary>
    WorstMargin = 512,

    All = (2 * WorstMargin) - 1,
}
