using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>One stage solved at a frequency of each lane, as <see cref="StageLanes"/> names the figures.</summary>
internal sealed record StageSolution(
    ComplexLanes Transfer, Vector<double> ResistorNoise, Vector<double> CurrentNoise, Vector<double> VoltageNoise,
    ComplexLanes[] InnerTransfer, Vector<double>[] InnerNoise);

/// <summary>The stages behind channels that differ in their electrodes alone, solved once at each frequency: the integrals of one channel ask for
/// the frequencies of the next.</summary>
internal sealed class StageMemory
{
    /// <summary>More groups of lanes than the integrals of a channel take; what is beyond is solved again.</summary>
    private const int Most = 20_000;

    private static readonly Electrode Any = new();

    private readonly Dictionary<Vector<double>, StageSolution[]> _silent = [], _noisy = [];
    private readonly List<(ElectrodeSet Others, int Inputs, double Mismatch, InputMemory Memory)> _inputs = [];

    /// <summary>What is kept of the input networks that differ from a channel's in the active electrode alone, and whether this channel is the first
    /// of them.</summary>
    /// <param name="design">The design as the channel sees it.</param>
    public (InputMemory Memory, bool IsFirst) InputOf(Design design)
    {
        ElectrodeSet rest = design.Electrodes with { Active = Any };
        foreach ((ElectrodeSet known, int inputs, double mismatch, InputMemory memory) in _inputs)
        {
            if (known == rest && inputs == design.EffectiveReferenceInputs && mismatch == design.Electrodes.EffectiveMismatch)
            {
                return (memory, false);
            }
        }

        _inputs.Add((rest, design.EffectiveReferenceInputs, design.Electrodes.EffectiveMismatch, new InputMemory()));
        return (_inputs[^1].Memory, true);
    }

    /// <summary>Puts into the stages what they were solved to at these frequencies; false where that is not known.</summary>
    /// <param name="withNoise">Whether their noise must be known too.</param>
    public bool Recall(Vector<double> hertz, bool withNoise, StageLanes[] stages)
    {
        if (!_noisy.TryGetValue(hertz, out StageSolution[]? known) && (withNoise || !_silent.TryGetValue(hertz, out known)))
        {
            return false;
        }

        for (int i = 0; i < stages.Length; i++)
        {
            stages[i].Solution = known[i];
        }

        return true;
    }

    /// <summary>Keeps what the stages were solved to.</summary>
    public void Keep(Vector<double> hertz, bool withNoise, StageLanes[] stages)
    {
        Dictionary<Vector<double>, StageSolution[]> memory = withNoise ? _noisy : _silent;
        if (memory.Count < Most)
        {
            memory[hertz] = Array.ConvertAll(stages, stage => stage.Solution);
        }
    }
}
