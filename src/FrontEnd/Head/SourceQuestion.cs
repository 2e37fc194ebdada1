namespace FrontEnd.Head;

/// <summary>A source, how large it is known to be, and the frequencies that are looked at.</summary>
/// <param name="Name">What the source is called.</param>
/// <param name="Statement">Null where nobody said how large it is: then shares alone can be given.</param>
internal sealed record SourceQuestion(string Name, CorticalSource Source, RhythmStatement? Statement, Frequency Low, Frequency High)
{
    /// <summary>What the band is called, "" for none.</summary>
    public string BandName { get; init; } = "";
}

/// <summary>A derivation and the front end's noise in the band that is asked about.</summary>
/// <param name="Noise">Null where it is not known: it is then left out.</param>
internal sealed record NoisyChannel(Derivation Derivation, VoltageRms? Noise);
