namespace FrontEnd.Networks;

/// <summary>A network whose equations have no single solution, such as one with no resistance anywhere: of all that solving can throw the
/// one thing that the design's values are to blame for.</summary>
/// <remarks>It becomes a finding. Whatever else is thrown is a fault of the program and is not caught in the core.</remarks>
#pragma warning disable CA1710 // The name is the sentence that a reader of a catch needs.
internal sealed class NetworkHasNoAnswer : Exception
#pragma warning restore CA1710
{
    public NetworkHasNoAnswer()
        : this("its equations have no single solution")
    {
    }

    /// <param name="message">What is wrong, as the end of a sentence about the network.</param>
    public NetworkHasNoAnswer(string message)
        : base(message)
    {
    }

    public NetworkHasNoAnswer(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
