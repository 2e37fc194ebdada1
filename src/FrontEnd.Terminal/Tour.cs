using FrontEnd.Identity;

namespace FrontEnd.Terminal;

/// <summary>One step of the guided tour: what to look at, what to change, and which figure tells.</summary>
/// <param name="Field">The field that it points at; "" for none.</param>
/// <param name="Try">What to set it to, as it is typed; "" where there is nothing to change.</param>
/// <param name="Result">The figure to watch.</param>
public sealed record TourStep(string Title, string Text, string Place, string Field, string Try, ResultId Result);

/// <summary>The lessons, each on real controls of the design in hand.</summary>
public static class Tour
{
    /// <summary>The steps, in order.</summary>
    public static readonly IReadOnlyList<TourStep> Steps =
    [
        new("the path is the map",
            "The strip above is the way of the signal, from scalp to samples. Left and right walk along it. Left below stands what you may change, right what it does, worst first. Tab goes across, Enter on a figure says why.",
            Place.Electrodes, "", "", ResultIds.Noise.Total),
        new("the offset eats the gain",
            "Two electrodes never have the same half-cell voltage: up to 300 mV dc stand on microvolts of signal. The first amplifier must carry both, so its gain is bounded by the offset, not by the signal. Raise it and see what survives.",
            Place.Amplifier, DesignKeys.Amplifier.Gain, "10", ResultIds.Levels.OffsetSurvived),
        new("the imbalance eats the CMRR",
            "An amplifier of 100 dB rejects nothing that the electrodes have made unequal already: with the input impedance they are a divider each, and what differs is signal. Make them more unequal and watch the whole system's rejection.",
            Place.Electrodes, DesignKeys.Electrodes.Mismatch, "150 %", ResultIds.Mains.SystemCmrr),
        new("dry skin makes the noise",
            "The contact's resistance is a noise source of its own, √(4kTR·B), and dry metal adds its drift. Choose the dry card: the electrodes' noise rises, whatever amplifier follows.",
            Place.Electrodes, DesignKeys.Electrodes.ActiveCard, "dry-multipin", ResultIds.Noise.Electrodes),
        new("the lead is an aerial",
            "Each lead's few femtofarads to the mains drive a current through its electrode. More contact impedance, more hum: no amplifier can tell it from signal. Take the shield away, ten times the coupling, and see.",
            "mains", DesignKeys.Mains.LeadToMains, "5 fF", ResultIds.Mains.Leads),
        new("the alias in the alpha band",
            "Whatever lies near the sampling rate folds down. Sampled 250 times a second, the fourth harmonic of 60 Hz, 240 Hz, lands at 10 Hz and looks like alpha. Change the rate and see where it goes; g draws them all.",
            "aliases", DesignKeys.Converter.Rate, "500 Hz", ResultIds.Mains.Harmonic(4).LandsAt),
        new("the filter must be ready in time",
            "At the fold frequency, rate less the band's edge, the anti-alias filter must already be deep. At 125 samples a second the room is gone: the attenuation falls.",
            "aliases", DesignKeys.Converter.Rate, "125 Hz", ResultIds.Alias.FoldAttenuation),
        new("bits are not resolution",
            "Steps far below the noise say nothing; steps above it hide the signal. The noise decides what is needed. Take half the bits away and see what the steps add.",
            Place.Converter, DesignKeys.Converter.Bits, "12", ResultIds.Noise.Source(SourceId.Quantisation)),
        new("a resistor saves the wearer",
            "If a part fails, the highest voltage in the box stands on an electrode. Only the series resistor bounds the current. It makes a little noise, and it stays: the program never lowers it. Lower it by hand and see the verdict; then undo.",
            "safety", DesignKeys.Input.SeriesResistor, "10 kΩ", ResultIds.Safety.FaultCurrent),
        new("fix the worst first",
            "The verdicts, worst on top. Under a figure stands the single change that helps most; h makes it, u takes it back, w saves, y writes the sheet. The tour ends here: the design is yours.",
            Place.Verdicts, "", "", ResultIds.Mains.Total),
    ];

    /// <summary>The figure to watch, as it is now and as it was before the last change.</summary>
    public static string Watch(TourStep step, OpenDesign design)
    {
        if (design.Shown?.Find(step.Result) is not { } now)
        {
            return "";
        }

        string value = ResultText.Value(now);
        string? was = design.Before?.Find(step.Result) is { } before && ResultText.Value(before) is var old && old != value ? old : null;
        return $"{now.Name}: {value}" + (was is null ? "" : $" (was {was})");
    }
}
