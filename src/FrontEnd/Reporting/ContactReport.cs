using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Filters;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The contact check's readings, and what it adds to the recording.</summary>
internal static class ContactReport
{
    /// <summary>A poor contact is ten times the design's (common practice, no source).</summary>
    private const double Poor = 10;

    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (design.ContactCheck is { } check)
        {
            AddCheck(list, findings, evaluation, check);
        }
    }

    private static void AddCheck(ResultList list, List<Finding> findings, Evaluation evaluation, ContactCheck check)
    {
        Design design = evaluation.Design;
        ElectrodeSet set = design.Electrodes;
        (Lead Lead, Electrode Electrode, double Ohms)[] contacts =
        [
            (Lead.Active, NoiseReport.Built(design, 0), InTheLead(design, set.ActiveBuffer).Ohms),
            (Lead.Reference, NoiseReport.Built(design, 1), InTheLead(design, set.ReferenceBuffer).Ohms),
            .. set.Ground is { } ground
                ? [(Lead.Ground, ground, design.GroundDrive.SeriesResistor.Ohms)]
                : Array.Empty<(Lead, Electrode, double)>(),
        ];
        double swing = design.Supply.Lowest.Volts / 2;
        for (int i = 0; i < contacts.Length; i++)
        {
            // A path is two electrodes: the one that is read and the one the current returns through.
            (Lead lead, Electrode electrode, double ohms) = contacts[i];
            string name = lead.Word();
            ContactIds ids = ResultIds.Contact.Of(lead);
            (_, Electrode back, double backOhms) = i == contacts.Length - 1 ? contacts[0] : contacts[^1];
            Complex own = electrode.Impedance(check.Frequency), rest = ohms + backOhms + back.Impedance(check.Frequency);
            double good = check.Current.Amperes * (own + rest).Magnitude, poor = check.Current.Amperes * ((own * Poor) + rest).Magnitude;
            list.Number(
                ids.Good, $"contact check: reading for the {name} electrode as designed, peak", "", Voltage.FromVolts(good),
                Equations.ContactReading,
                () => $"{QuantityText.Format(check.Current)} · {QuantityText.Format((own + rest).Magnitude, "Ω")}");
            list.Number(ids.Poor, $"contact check: reading for the {name} electrode at ten times its impedance, peak", "",
                Voltage.FromVolts(poor), Equations.ContactReading, text: "ten times: common practice, no source");
            list.Word(ids.Open, $"contact check: reading with the {name} electrode off",
                $"at the rail, {QuantityText.Format(swing, "V")} or more: the current has nowhere to go", Equations.ContactReading);
        }

        AddBeat(list, findings, evaluation, check);
    }

    /// <summary>What the check's current passes between the electrode and where it comes from: behind a buffer its skin resistor.</summary>
    private static Resistance InTheLead(Design design, ElectrodeBuffer? buffer) => buffer?.SkinResistor ?? design.Input.SeriesResistor;

    private static void AddBeat(ResultList list, List<Finding> findings, Evaluation evaluation, ContactCheck check)
    {
        Design design = evaluation.Design;
        double fs = design.Converter.Rate.Hertz, lands = Folding.LandsAt(check.Frequency.Hertz, fs);
        MainsHarmonic? nearest = evaluation.Mains.Harmonics.MinBy(harmonic => Math.Abs(harmonic.LandsAt - lands));
        if (nearest is not null)
        {
            list.Number(
                ResultIds.Contact.Beat, $"beat of the contact check with mains harmonic {nearest.Order}, the one of {design.Mains.LookedAt} that lands nearest", "",
                Frequency.FromHertz(Math.Abs(nearest.LandsAt - lands)), Equations.Beat,
                text: $"it lands at {QuantityText.Format(lands, "Hz")}, the harmonic at {QuantityText.Format(nearest.LandsAt, "Hz")}");
        }

        bool inBand = design.Band.Low.Hertz <= lands && lands <= design.Band.High.Hertz;
        double ohms = evaluation.Path.AtTheSites(evaluation.Path.Model.Input.ContactPort, check.Frequency.Hertz),
            atInput = check.Current.Amperes / Math.Sqrt(2) * ohms, left = evaluation.RecordedAt(1, check.Frequency.Hertz);
        double added = check.OnWhileRecording && inBand ? atInput * left : 0;
        list.Number(
            ResultIds.Contact.AddsInBand, "what the contact check adds to the recording in the band, rms", "", VoltageRms.FromVolts(added),
            Equations.ContactAdds,
            () => 0 < added
                ? $"{QuantityText.Format(check.Current, 4)}/√2 · {QuantityText.Format(ohms, "Ω", 4)} · {QuantityText.FormatNumber(left, 4)}"
                : "",
            text: check.OnWhileRecording ? (inBand ? "on, in the band" : "on, outside the band") : "off while recording");
        if (0 < added)
        {
            findings.Add(Messages.CheckCurrentInBand(QuantityText.Format(lands, "Hz")));
        }
    }
}
