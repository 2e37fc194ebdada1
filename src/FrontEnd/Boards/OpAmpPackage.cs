namespace FrontEnd.Boards;

/// <summary>Pins of op-amp packages as most makers number them (common practice, no source; a part's own data sheet decides).</summary>
/// <param name="Count">Op-amps in it: 1, 2 or 4.</param>
/// <param name="Positive">Number of the positive supply's pin.</param>
/// <param name="Negative">Number of the negative supply's pin.</param>
/// <param name="Pins">Non-inverting input, inverting input and output of each op-amp.</param>
internal sealed record OpAmpPackage(int Count, int Positive, int Negative, IReadOnlyList<(int Plus, int Minus, int Output)> Pins)
{
    private static readonly OpAmpPackage Single = new(1, 7, 4, [(3, 2, 6)]);
    private static readonly OpAmpPackage Dual = new(2, 8, 4, [(3, 2, 1), (5, 6, 7)]);
    private static readonly OpAmpPackage Quad = new(4, 4, 11, [(3, 2, 1), (5, 6, 7), (10, 9, 8), (12, 13, 14)]);

    public static OpAmpPackage Of(int count) => count switch { 1 => Single, 2 => Dual, _ => Quad };

    public string Letter(int at) => Count == 1 ? "" : ((char)('A' + at)).ToString();

    public BoardPin Supply(bool positive, string net) => positive ? new($"{Positive}", "V+", net) : new($"{Negative}", "V−", net);

    public (BoardPin Plus, BoardPin Minus, BoardPin Output) Section(int at, string plus, string minus, string output)
    {
        (int plusPin, int minusPin, int outputPin) = Pins[at];
        return (new($"{plusPin}", $"+{Letter(at)}", plus), new($"{minusPin}", $"−{Letter(at)}", minus), new($"{outputPin}", $"OUT{Letter(at)}", output));
    }

    /// <summary>What one orders: "dual op-amp, one half unused".</summary>
    public string Words(int used) => Count switch
    {
        1 => "single op-amp",
        2 => used == 2 ? "dual op-amp" : "dual op-amp, one half unused",
        _ => used == 4 ? "quad op-amp" : $"quad op-amp, {4 - used} unused",
    };
}
