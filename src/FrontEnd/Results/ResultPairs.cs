using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>Figures that say one thing together, such as an attenuation and the frequency that it is at: a row has room for both.</summary>
internal static class ResultPairs
{
    /// <summary>The frequency that a figure is at; null for a figure that is at none, and where either is no number.</summary>
    public static Result? FrequencyOf(Assessment assessment, Result result) =>
        result.State is ResultState.Number or ResultState.Unbounded && IdOf(result.Id) is { } id
        && assessment.Find(id) is { State: ResultState.Number, Verdict.Requirement: null } frequency ? frequency : null;

    /// <summary>The figure that stands in one row with this frequency; null for a row of its own.</summary>
    public static Result? FigureAt(Assessment assessment, Result frequency)
    {
        foreach (ResultId id in Candidates(frequency.Id))
        {
            if (assessment.Find(id) is { } figure && FrequencyOf(assessment, figure)?.Id == frequency.Id)
            {
                return figure;
            }
        }

        return null;
    }

    private static ResultId? IdOf(ResultId id) =>
        id == ResultIds.Alias.FoldAttenuation ? ResultIds.Alias.FoldFrequency
        : id == ResultIds.Alias.ModulatorFoldAttenuation ? ResultIds.Alias.ModulatorFoldFrequency
        : id == ResultIds.Drive.PhaseMargin ? ResultIds.Drive.UnityGainFrequency
        : ResultIds.Filter.All.Has(id) && id == new FilterIds(id.Stem).StopBandFloor ? new FilterIds(id.Stem).StopBandTurn
        : ResultIds.Mains.Harmonics.Has(id) && id == new HarmonicIds(id.Stem).Recorded ? new HarmonicIds(id.Stem).LandsAt
        : ResultIds.Alias.All.Has(id) && id == new AliasIds(id.Stem).Attenuation ? new AliasIds(id.Stem).LandsAt
        : null;

    private static IEnumerable<ResultId> Candidates(ResultId frequency) =>
        frequency == ResultIds.Alias.FoldFrequency ? [ResultIds.Alias.FoldAttenuation]
        : frequency == ResultIds.Alias.ModulatorFoldFrequency ? [ResultIds.Alias.ModulatorFoldAttenuation]
        : frequency == ResultIds.Drive.UnityGainFrequency ? [ResultIds.Drive.PhaseMargin]
        : [new FilterIds(frequency.Stem).StopBandFloor, new HarmonicIds(frequency.Stem).Recorded, new AliasIds(frequency.Stem).Attenuation];
}
