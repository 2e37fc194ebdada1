using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Contact, noise and mains at the times after the electrodes were put on for which an electrode says how its contact is; nothing where
/// none does.</summary>
internal static class ContactTimesReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        IReadOnlyList<Duration> times = design.ContactTimes;
        (Evaluation before, ContactFactors[] known) = (evaluation, [.. design.Worn.Select(_ => new ContactFactors(1, 1))]);
        foreach (Duration time in times)
        {
            // A contact that has settled stays the same from time to time.
            ContactFactors[] factors = [.. design.Worn.Select(one => one.OverTime.At(time))];
            if (!factors.AsSpan().SequenceEqual(known))
            {
                known = factors;
                before = Array.TrueForAll(factors, one => one is { Impedance: 1, Excess: 1 })
                    ? evaluation
                    : new Evaluation(design.AfterContact(time), null, evaluation);
            }

            Add(list, ContactOverTime.Words(time), time, before, evaluation);
        }
    }

    private static void Add(ResultList list, string words, Duration time, Evaluation then, Evaluation today)
    {
        ContactTimeIds ids = ResultIds.Contact.After(words);
        Evaluation noise = then.ForNoise, mains = then.ForMains;
        Electrode active = noise.Design.Electrodes.Active;
        (string? noisy, string? humming) = (Of(then.ChannelOf(noise)), Of(then.ChannelOf(mains)));
        ContactFactors factors = Today(today, then, noise).OverTime.At(time);
        list.Number(ids.Resistance, $"resistance of the active electrode {words} after it was put on", "", active.DcResistance, Equations.ContactAfter,
            text: Joined($"{QuantityText.FormatNumber(factors.Impedance, 3)} times as designed", noisy));
        Design design = noise.Design;
        list.Number(ids.Excess, $"excess noise of the active electrode {words} after it was put on, in the band, rms", "",
            VoltageRms.FromVolts(NoiseFormulas.Excess(active.ExcessNoise, active.ExcessSlope, design.Band.Low, design.Band.High).Value), Equations.ExcessAfter,
            text: Joined($"{QuantityText.FormatNumber(factors.Excess, 3)} times as designed", noisy));
        list.Number(ids.Noise, $"noise at the electrodes {words} after they were put on, rms", "σ", VoltageRms.FromVolts(noise.Noise.Total), Equations.NoiseAfter,
            text: noisy);
        list.Number(ids.BoardShare, $"noise {words} after the electrodes were put on without their excess noise, peak-to-peak",
            $"{TradeConstants.NoisePeakToPeak}·σ_board", VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * noise.Noise.WithoutExcess), Equations.NoiseAfter,
            text: noisy);
        list.Number(ids.MainsRecorded, $"mains recorded in the band {words} after the electrodes were put on, worst-case sum, rms", "",
            VoltageRms.FromVolts(mains.Mains.Recorded), Equations.MainsAfter, text: humming);
    }

    /// <summary>The active electrode as designed of the channel that is the noisiest at the time.</summary>
    private static Electrode Today(Evaluation today, Evaluation then, Evaluation noise)
    {
        int channel = then.ChannelOf(noise) is { } name ? today.Design.ChannelList.ToList().FindIndex(one => string.Equals(one.Name, name, StringComparison.Ordinal)) : 0;
        return today.Design.AsSeenBy(channel).Electrodes.Active;
    }

    private static string? Of(string? channel) => channel is null ? null : $"channel {channel}";

    private static string Joined(string text, string? channel) => channel is null ? text : $"{text}; {channel}";
}
