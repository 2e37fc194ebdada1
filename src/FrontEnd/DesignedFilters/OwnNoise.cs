using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.DesignedFilters;

/// <summary>What a filter of parts adds by itself, at its output with the input shorted, at the board temperature that a design has by
/// default.</summary>
/// <param name="Noise">Resistors and op-amps, rms over the band.</param>
/// <param name="From">Lower edge of the band: a hundredth of the corner.</param>
/// <param name="To">Upper edge of the band: ten times the corner.</param>
/// <param name="DcError">Offsets and bias currents with the worst signs; null where the op-amp says neither.</param>
/// <param name="HasOffset">The op-amp's offset voltage is given.</param>
/// <param name="HasBias">The op-amp's bias current is given.</param>
public sealed record OwnNoise(VoltageRms Noise, Frequency From, Frequency To, Voltage? DcError, bool HasOffset, bool HasBias)
{
    internal static OwnNoise Of(IReadOnlyList<Stage> stages, Frequency corner, OpAmp opAmp)
    {
        Frequency from = Frequency.FromHertz(corner.Hertz / 100), to = Frequency.FromHertz(corner.Hertz * 10);
        bool hasOffset = opAmp.OffsetVoltage.Volts != 0, hasBias = opAmp.BiasCurrent.Amperes != 0;
        return new(
            FilterNoise.Over(stages, from, to, new Design().BoardTemperature), from, to,
            hasOffset || hasBias ? FilterNoise.Offset(stages) : null, hasOffset, hasBias);
    }
}
