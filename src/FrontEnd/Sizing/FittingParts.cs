using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;

namespace FrontEnd.Sizing;

/// <summary>The parts of a shelf that work on a design's supply; converters with a reference that fits it.</summary>
internal sealed class FittingParts
{
    /// <summary>Voltages at which references are sold (common practice, no source).</summary>
    private static readonly double[] References = [1.2, 1.8, 2.048, 2.5, 3, 3.3, 4.096, 5];

    private readonly Supply _supply;

    public FittingParts(SizingRequest request)
    {
        _supply = request.Fixed.Supply;
        PartShelf shelf = request.Shelf;
        Amplifiers = [.. shelf.Amplifiers.Where(amplifier => Fits(amplifier.SupplyRange, null))];
        OpAmps = [.. shelf.OpAmps.Where(opAmp => Fits(opAmp.SupplyRange, null))];
        Converters =
        [
            .. shelf.Converters.Where(converter => Fits(converter.SupplyRange, converter.OwnSupply))
                .Select(converter => WithReference(converter, shelf.MayChangeReference)).OfType<AnalogDigitalConverter>(),
        ];
        LeftOut = shelf.Amplifiers.Count + shelf.OpAmps.Count + shelf.Converters.Count - Amplifiers.Count - OpAmps.Count - Converters.Count;
        WhyLeftOut =
        [
            .. shelf.Amplifiers.Except(Amplifiers).Select(one => Why("amplifier", one.Card, one.SupplyRange, null)),
            .. shelf.OpAmps.Except(OpAmps).Select(one => Why("op-amp", one.Card, one.SupplyRange, null)),
            .. shelf.Converters.Where(one => !Converters.Any(kept => kept.Card == one.Card))
                .Select(one => Why("converter", one.Card, one.SupplyRange, one)),
        ];
    }

    public IReadOnlyList<DifferentialAmplifier> Amplifiers { get; }

    public IReadOnlyList<OpAmp> OpAmps { get; }

    public IReadOnlyList<AnalogDigitalConverter> Converters { get; }

    /// <summary>How many parts of the shelf cannot be used.</summary>
    public int LeftOut { get; }

    /// <summary>Each of them in words.</summary>
    public IReadOnlyList<string> WhyLeftOut { get; }

    private Voltage Highest => _supply.RailsHighest ?? _supply.Highest;

    private bool Fits(SupplyRange range, Voltage? own) => range.Holds(own ?? _supply.Lowest, own ?? Highest);

    /// <summary>The converter itself where its range fits, else with the largest reference that does; null where none does.</summary>
    private AnalogDigitalConverter? WithReference(AnalogDigitalConverter converter, bool mayChange)
    {
        if (ConverterSupply.Fits(converter, _supply.Lowest))
        {
            return converter;
        }

        double most = ConverterSupply.Largest(converter, _supply.Lowest).Volts;
        int times = ConverterSupply.IsDifferential(converter) ? 2 : 1;
        double fullScale = References.Select(volts => times * volts).Where(volts => volts <= most).DefaultIfEmpty(0).Max();
        return mayChange && 0 < fullScale ? converter with { FullScale = VoltagePeakToPeak.FromVolts(fullScale) } : null;
    }

    private string Why(string kind, string card, SupplyRange range, AnalogDigitalConverter? converter)
    {
        string name = card.Length == 0 ? $"the design's own {kind}" : $"{kind} {card}";
        Voltage lowest = converter?.OwnSupply ?? _supply.Lowest;
        return range.IsMissedBy(lowest) ? $"{name} needs at least {QuantityText.FormatPart(range.Lowest)}"
            : range.IsExceededBy(converter?.OwnSupply ?? Highest) ? $"{name} withstands {QuantityText.FormatPart(range.Highest)}"
            : $"the full scale of {name} is {QuantityText.FormatPart(converter!.FullScale)} of at most {QuantityText.FormatPart(ConverterSupply.Largest(converter, lowest))}";
    }
}
