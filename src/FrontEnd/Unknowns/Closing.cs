using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Networks;
using FrontEnd.Numbers;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>The single fact or measurement that would close an open verdict. No measurement sends a current through anybody, none is done
/// while the device is worn, and of what protects the wearer none is proposed at all: the maker is asked.</summary>
/// <param name="InShort">In a few words.</param>
/// <param name="Whole">As it is done.</param>
/// <param name="InPlainWords">The same without keys of the file.</param>
internal sealed record Closing(string InShort, string Whole, string InPlainWords)
{
    /// <summary>In a few words, and as it is done.</summary>
    /// <param name="design">The design.</param>
    /// <param name="result">The open result.</param>
    /// <param name="decided">The unknown that moves it most; null for none.</param>
    /// <param name="with">The designs that have the result.</param>
    /// <param name="met">Which of them meet the requirement.</param>
    public static Closing Of(PartlyKnownDesign design, Result result, UnknownField? decided, DrawnFigures[] with, bool?[] met)
    {
        if (ResultIds.Safety.All.Has(result.Id))
        {
            const string And = "; do not send current through a device that you did not build to find out, and until the maker answers treat nothing here as below a limit";
            UnknownField[] open = [.. design.Unknowns.Where(one => one.Field.Safety)];
            string asked = $"ask the maker for {string.Join(", ", open.Select(one => one.Key))}";
            return new(asked, asked + And, $"ask the maker: {string.Join("; ", open.Select(Plain))}{And}");
        }

        return Measured(design, result, with, met) ?? Asked(decided);
    }

    private static Closing? Measured(PartlyKnownDesign design, Result result, DrawnFigures[] with, bool?[] met)
    {
        string limit = result.Verdict.Limit is { } known ? QuantityText.Format(known, 2) : "";
        if (result.Id == ResultIds.Noise.BoardShare || result.Id == ResultIds.Converter.BitsNeeded)
        {
            return Shorted(FixtureNoise.ChannelOf(design), with, met);
        }

        if (result.Id == ResultIds.Levels.OffsetSurvived)
        {
            return Done("a battery cell through a divider", $"put {limit} dc between an active and the reference lead; if the recording does not stick at the end of its range, the requirement is met");
        }

        if (result.Id == ResultIds.Levels.LeastHeadroom)
        {
            return Done("a battery-driven generator through a divider", $"the largest required signal between an active and the reference lead; if the tops stay round, the requirement is met");
        }

        return result.Id == ResultIds.Alias.FoldAttenuation || result.Id == ResultIds.Alias.ModulatorFoldAttenuation
            ? Done("a battery-driven generator through a divider", $"the same small sine at 10 Hz and at the frequency that folds; if the second is recorded smaller by {limit}, the requirement is met")
            : null;
    }

    /// <summary>A recording whose reading decides fewer of the designs leaves open what is open, more often than not (chosen).</summary>
    private const double LeastDecided = 0.25;

    /// <summary>Below the least reading of those that fail all are met; above the greatest of those that meet it none is. Null where hardly any reading
    /// would decide.</summary>
    private static Closing? Shorted(int channel, DrawnFigures[] with, bool?[] met)
    {
        double below = double.PositiveInfinity, above = 0;
        double[] readings = InParallel.Map(with, one => WithWires(one, channel));
        for (int i = 0; i < with.Length; i++)
        {
            (below, above) = met[i] switch
            {
                false => (Math.Min(below, readings[i]), above),
                true => (below, Math.Max(above, readings[i])),
                null => (below, above),
            };
        }

        int decided = readings.Count(reading => reading < below || above < reading);
        return double.IsFinite(below) && 0 < above && double.IsFinite(above) && LeastDecided * with.Length <= decided
            ? Done("a recording with the inputs shorted", "inputs shorted", $"{Messages.ShortedMinute}; rms noise in the band below {Text(below)} means that the requirement is met, above {Text(above)} that it is not")
            : null;

        static string Text(double volts) => QuantityText.Format(volts, "V", 2);
    }

    /// <summary>What wires in place of the electrodes read: without what the amplifier's current makes of the electrodes' resistance [V rms].</summary>
    private static double WithWires(DrawnFigures one, int channel)
    {
        try
        {
            return new FixtureNoise(one.Design, channel, Fixture.Short, filtered: true).Rms;
        }
        catch (NetworkHasNoAnswer)
        {
            return double.NaN;
        }
    }

    /// <summary>A measurement: what is used, and how.</summary>
    private static Closing Done(string with, string how) => Done(with, with, how);

    private static Closing Done(string inShort, string with, string how)
    {
        string whole = $"{with}: {Messages.OnTheTable}, {how}";
        return new(inShort, whole, whole);
    }

    /// <summary>Asking whoever can know the value.</summary>
    public static Closing Asked(UnknownField? decided) => decided?.KnownBy switch
    {
        KnownBy.Room => new($"a range of {decided.Key} measured in the room", $"not a fact about the device: {decided.Key} ({decided.Field.Meaning}) depends on the room and the leads; a range measured there narrows it",
            $"it is not a fact about the device; it depends on the room and the leads: {Plain(decided)}"),
        KnownBy.Contact => new($"an electrode with a known range of {decided.Key}", $"not a fact about the device: {decided.Key} ({decided.Field.Meaning}) depends on the contact; an electrode with a known range narrows it",
            $"it is not a fact about the device; it depends on how the electrodes touch the skin: {Plain(decided)}"),
        KnownBy.Maker => new($"ask the maker for {decided.Key}", $"ask the maker for {decided.Key}: {decided.Field.Meaning}", $"ask the maker: {Plain(decided)}"),
        _ => new("ask the maker for what is not known", "ask the maker for what is not known", "ask the maker for what is not known"),
    };

    /// <summary>What the field is, without the remarks behind it.</summary>
    private static string Plain(UnknownField one) => one.Field.Meaning.Split(';')[0];
}
