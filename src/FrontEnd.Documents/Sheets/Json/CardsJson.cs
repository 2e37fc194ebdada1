using System.Numerics;
using FrontEnd.Documents.Cards;
using FrontEnd.Documents.Reading;
using FrontEnd.Electrodes;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>cards --json</c>.</summary>
internal sealed record CardsJson(int Count, IReadOnlyList<CardJson> Cards)
{
    public static CardsJson From(IReadOnlyList<ShownCard> cards) => new(cards.Count, [.. cards.Select(CardJson.From)]);
}

/// <summary>A part card.</summary>
/// <param name="Figures">What decides a choice, as the list prints it.</param>
/// <param name="Defaults">What the card does not have: the default that holds.</param>
internal sealed record CardJson(string Class, string Name, string Title, string Source, string? Chip, string Figures, IReadOnlyList<CardValueJson> Values,
    IReadOnlyList<CardValueJson> Defaults)
{
    public static CardJson From(ShownCard card) => new(CardPlace.Word(card.Class), card.Name, card.Title, card.Source, card.Chip.Length == 0 ? null : card.Chip, card.Figures,
        [.. card.Values.Select(CardValueJson.From)], [.. card.Defaults.Select(CardValueJson.From)]);
}

/// <summary>A value of a card: as text, and as a number in SI units where it is one.</summary>
internal sealed record CardValueJson(string Key, string Text, double? Value, string Source)
{
    public static CardValueJson From(CardValue value) => new(value.Key, value.Text, value.Number, value.Source);
}

/// <summary>Members of <c>cards new --json</c>: the card that was written, and the fits.</summary>
internal sealed record NewCardJson(string File, string Class)
{
    public required IReadOnlyList<FittedValueJson> Fitted { get; init; }

    public required NoiseFitJson? VoltageNoise { get; init; }

    public required NoiseFitJson? CurrentNoise { get; init; }

    public required ImpedanceFitJson? Impedance { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static NewCardJson From(NewCard card, string file) => new(file, CardPlace.Word(card.Class))
    {
        Fitted = [.. card.Values.Select(value => new FittedValueJson(value.Key, QuantityText.FormatExact(value.Value), value.Value, value.Source))],
        VoltageNoise = NoiseFitJson.From(card.Voltage), CurrentNoise = NoiseFitJson.From(card.Current),
        Impedance = ImpedanceFitJson.From(card.Impedance), Findings = FindingJson.From(card.Findings),
    };
}

/// <summary>A value as the card has it.</summary>
internal sealed record FittedValueJson(string Key, string Text, IQuantity Value, string Source);

/// <summary>White noise and corner, not rounded, with every point.</summary>
/// <param name="UnitRead">The unit that densities without one were read in; null where each has one.</param>
/// <param name="RmsDb">Rms of the deviations; the worst is one of the points'.</param>
internal sealed record NoiseFitJson(string PointsFile, int Count, string? UnitRead, string Equation, IQuantity White, IQuantity Corner, IQuantity RmsDb, IReadOnlyList<NoisePointJson> Points)
{
    public static NoiseFitJson? From(FittedNoise? noise) => noise is not { Fit: var fit } ? null
        : new(noise.Name, fit.Points.Count, noise.UnitRead, "e² = e0²·(1 + fc/f)", fit.White, fit.Corner, fit.Rms,
            [.. fit.Points.Select(point => new NoisePointJson(point.Frequency, point.Measured, point.Fitted, point.Deviation))]);
}

/// <summary>A point of a plot of noise beside the fit.</summary>
internal sealed record NoisePointJson(IQuantity Frequency, IQuantity Measured, IQuantity Fitted, IQuantity DeviationDb);

/// <summary>The electrode's circuit, not rounded, with every point.</summary>
/// <param name="Choice">Why one pair or two.</param>
internal sealed record ImpedanceFitJson(string PointsFile, int Count, int Pairs, string Choice, IQuantity SeriesResistance, IQuantity ContactResistance, IQuantity ContactCapacitance,
    IQuantity? SecondResistance, IQuantity? SecondCapacitance)
{
    /// <summary>Rms of what the fit leaves, as a share of each point.</summary>
    public required IQuantity Rms { get; init; }

    public required IQuantity RmsOfOnePair { get; init; }

    public required IQuantity? RmsOfTwoPairs { get; init; }

    public required IReadOnlyList<ImpedancePointJson> Points { get; init; }

    public static ImpedanceFitJson? From(FittedImpedance? impedance)
    {
        if (impedance is not { Fit: var fit })
        {
            return null;
        }

        Electrode electrode = fit.Electrode;
        return new(impedance.Name, fit.Points.Count, fit.Pairs, FitWords.Why(fit), electrode.SeriesResistance, electrode.ContactResistance, electrode.ContactCapacitance,
            electrode.SecondResistance, electrode.SecondCapacitance)
        {
            Rms = fit.Rms, RmsOfOnePair = fit.RmsOfOne, RmsOfTwoPairs = fit.RmsOfTwo,
            Points = [.. fit.Points.Select(ImpedancePointJson.From)],
        };
    }
}

/// <summary>A point of a spectrum beside the fit: magnitudes in ohms, phases in degrees.</summary>
/// <param name="Left">|fitted − measured| over |measured|.</param>
internal sealed record ImpedancePointJson(IQuantity Frequency, double Magnitude, double Phase, double FittedMagnitude, double FittedPhase, IQuantity MagnitudeDeviation,
    IQuantity PhaseDeviation, IQuantity Left)
{
    public static ImpedancePointJson From(ImpedanceDeviation point) => new(point.Frequency, Complex.Abs(point.Measured), Degrees(point.Measured), Complex.Abs(point.Fitted), Degrees(point.Fitted),
        point.Magnitude, point.Phase, point.Left);

    private static double Degrees(Complex z) => z.Phase * 180 / Math.PI;
}
