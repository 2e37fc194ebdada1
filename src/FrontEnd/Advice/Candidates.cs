using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Topologies;

namespace FrontEnd.Advice;

/// <summary>The single changes that are tried for every verdict: what a builder can do with contacts, leads, parts, rates and
/// filters.</summary>
/// <remarks>None connects anything to earth or to a mains-powered device, asks for abraded skin, or takes a protection resistor below what
/// the fault limit needs; <see cref="Advisor"/> checks the safety figures of each all the same. A value that is beyond what is usual already is
/// not moved further: made one after the other, thirds of a lead's length would end at a lead of a centimetre.</remarks>
internal static class Candidates
{
    public static IEnumerable<Candidate> For(Design design, Assessment assessment) =>
        All(design, assessment).Select(candidate => candidate with { Design = DesignFields.WithoutStaleRanges(candidate.Design) });

    private static IEnumerable<Candidate> All(Design design, Assessment assessment) =>
        Contacts(design).Concat(Leads(design)).Concat(Ground(design)).Concat(Amplifiers(design,
            assessment)).Concat(AntiAliasing(design)).Concat(Conversion(design)).Concat(DigitalFilters(design, assessment)).Concat(EveryLead(design));

    /// <summary>True while a value is not below the least, or not above the greatest, that is usual.</summary>
    private static bool IsUsual(Design design, string key, bool goingDown = true) =>
        DesignFields.Find(design, key) is not { Usual: { } usual } field || field.SiValue(design) is not { } si
        || (goingDown ? usual.Least <= si : si <= usual.Greatest);

    private static string P(IQuantity quantity) => QuantityText.FormatPart(quantity);

    private static string F(IQuantity quantity) => QuantityText.Format(quantity);

    private static Candidate Contact(Design design, string change, Func<ElectrodeSet, ElectrodeSet> with) =>
        new(change, design with { Electrodes = with(design.Electrodes) });

    private static IEnumerable<Candidate> Contacts(Design design)
    {
        ElectrodeSet set = design.Electrodes;
        double m = set.EffectiveMismatch;
        if (0.02 < m)
        {
            yield return Contact(design,
                $"both contacts alike: mismatch {QuantityText.FormatPercent(Ratio.FromFraction(m))} -> {QuantityText.FormatPercent(Ratio.FromFraction(m / 2))}",
                s => s with { Mismatch = Ratio.FromFraction(m / 2) });
        }

        if (IsUsual(design, DesignKeys.Electrodes.ActiveContactResistance))
        {
            yield return Contact(
                design, $"twice the contact area at both electrodes: {P(set.Active.ContactResistance)} -> {P(Half(set.Active.ContactResistance))}", s => s with { Active = s.Active.OfArea(2), Reference = s.Reference.OfArea(2) });
        }

        if (set.Contact == ContactKind.Dry)
        {
            // The wet surrogate of the ECG standards' skin-electrode network stands for an unprepared gel contact.
            var gel = new Electrode
            {
                SeriesResistance = Resistance.FromOhms(200), ContactResistance = Resistance.FromKilohms(51),
                ContactCapacitance = Capacitance.FromNanofarads(47), Contact = ContactKind.Wet,
                ExcessNoise = ExcessNoise.FromRms(VoltageRms.FromMicrovolts(2), Frequency.FromHertz(0.5), Frequency.FromHertz(500), 2),
            };
            yield return Contact(design, $"gel electrodes: contact {P(set.Active.ContactResistance)} -> {P(gel.ContactResistance)}", s =>
                s with { Active = gel, Reference = gel, Mismatch = Ratio.FromFraction(Math.Min(m, 0.5)) }) with { IsOfKind = true };
        }

        Resistance skin = NeededInLead(design);
        if (set.ActiveBuffer is null && set.ReferenceBuffer is null)
        {
            var buffer = new ElectrodeBuffer { SkinResistor = skin };
            yield return Contact(design, $"a buffer at each electrode, {P(buffer.SkinResistor)} in front of it", s =>
                s with { ActiveBuffer = buffer, ReferenceBuffer = buffer }) with { IsOfKind = true };
        }

        if (new[] { set.ActiveBuffer, set.ReferenceBuffer }.OfType<ElectrodeBuffer>().Any(one => one.SkinResistor.Ohms < skin.Ohms))
        {
            yield return Contact(design, $"skin resistors in front of the electrodes' buffers, {P(skin)} at least", s => s with
            {
                ActiveBuffer = AtLeast(s.ActiveBuffer),
                ReferenceBuffer = AtLeast(s.ReferenceBuffer),
            });

            ElectrodeBuffer? AtLeast(ElectrodeBuffer? one) => one is not null && one.SkinResistor.Ohms < skin.Ohms
                ? one with { SkinResistor = skin }
                : one;
        }
    }

    /// <summary>The next preferred resistor that keeps what one lead carries, or all of them together, below the fault limit.</summary>
    private static Resistance NeededInLead(Design design) =>
        design.Requirements.FaultCurrent.Amperes <= 0
            ? Resistance.FromMegohms(10)
            : Resistance.FromOhms(PreferredValues.AtLeast(Math.Max(1,
                SafetyLanes.NeededInLead(design, design.Requirements.FaultCurrent.Amperes)), PreferredSeries.E24));

    private static Resistance Half(Resistance r) => Resistance.FromOhms(r.Ohms / 2);

    /// <summary>The next preferred resistor that keeps the current below a limit at −tolerance.</summary>
    private static Resistance Needed(Design design, Current limit, Ratio tolerance) =>
        limit.Amperes <= 0
            ? Resistance.FromMegohms(10)
            : Resistance.FromOhms(PreferredValues.AtLeast(Math.Max(1,
                design.Supply.Highest.Volts / limit.Amperes / (1 - tolerance.Fraction)), PreferredSeries.E24));

    private static IEnumerable<Candidate> Leads(Design design)
    {
        InputNetwork input = design.Input;
        Resistance needed = NeededInLead(design);
        if (input.SeriesResistor != needed)
        {
            yield return new($"series resistors in the leads {P(input.SeriesResistor)} -> {P(needed)}",
                design with { Input = input with { SeriesResistor = needed } });
        }

        if (input.DrivenShield.Fraction < 0.85 && 0 < input.LeadToCommon.Farads)
        {
            yield return new("driven shield on the leads, 90 %",
                design with { Input = input with { DrivenShield = Ratio.FromFraction(0.9) } }) { IsOfKind = input.DrivenShield.Fraction == 0 };
        }

        if (0 < design.Mains.LeadToMains.Farads && IsUsual(design, DesignKeys.Mains.LeadToMains))
        {
            Capacitance mains = Capacitance.FromFarads(design.Mains.LeadToMains.Farads / 3),
                common = Capacitance.FromFarads(input.LeadToCommon.Farads / 3);
            yield return new(
                $"leads one third as long: lead to mains {F(design.Mains.LeadToMains)} -> {F(mains)}",
                    design with { Mains = design.Mains with { LeadToMains = mains }, Input = input with { LeadToCommon = common } });
        }

        if (0 < design.Mains.LoopArea.SquareMetres && IsUsual(design, DesignKeys.Mains.LoopArea))
        {
            Area area = Area.FromSquareMetres(design.Mains.LoopArea.SquareMetres / 4);
            yield return new($"leads twisted together: loop {F(design.Mains.LoopArea)} -> {F(area)}",
                design with { Mains = design.Mains with { LoopArea = area } });
        }

        if (0.011 < input.CapacitorTolerance.Fraction && 0 < input.ShuntCapacitor.Farads)
        {
            yield return new($"shunt capacitors matched to 1 % (now {QuantityText.FormatPercent(input.CapacitorTolerance)})",
                design with { Input = input with { CapacitorTolerance = Ratio.FromPercent(1) } });
        }

        if (0 < input.ShuntCapacitor.Farads)
        {
            Capacitance smaller = PreferredValues.AtMost(Capacitance.FromFarads(input.ShuntCapacitor.Farads / 3), PreferredSeries.E12);
            yield return new($"shunt capacitors {P(input.ShuntCapacitor)} -> {P(smaller)}",
                design with { Input = input with { ShuntCapacitor = smaller } });
        }

        if (input.BiasResistor is { } bias)
        {
            Resistance larger = Resistance.FromOhms(bias.Ohms * 10);
            yield return new($"bias resistors {P(bias)} -> {P(larger)}", design with { Input = input with { BiasResistor = larger } });
        }

        if (1 < design.EffectiveReferenceInputs)
        {
            yield return new(
                $"one buffer for the reference of all {design.EffectiveReferenceInputs} channels",
                design with { Montage = design.Montage with { ReferenceBuffered = true }, Input = input with { ReferenceInputs = null } }) { IsOfKind = true };
        }
    }

    private static IEnumerable<Candidate> Ground(Design design)
    {
        GroundDrive drive = design.GroundDrive;
        if (design.Electrodes.Ground is null)
        {
            yield break;
        }

        if (drive.Kind == GroundKind.Passive)
        {
            Resistance series = Needed(design, design.Requirements.DrivenGroundCurrent, drive.ResistorTolerance);
            var driven = drive with { Kind = GroundKind.Driven, SeriesResistor = series };
            yield return new($"driven ground through {P(series)}, unity gain at {P(driven.UnityGainFrequency)}",
                design with { GroundDrive = driven }) { IsOfKind = true };
            Resistance fault = Needed(design, design.Requirements.FaultCurrent, drive.ResistorTolerance);
            if (drive.SeriesResistor != fault)
            {
                yield return new($"series resistor in the ground lead {P(drive.SeriesResistor)} -> {P(fault)}",
                    design with { GroundDrive = drive with { SeriesResistor = fault } });
            }

            yield break;
        }

        Resistance needed = Needed(design, design.Requirements.DrivenGroundCurrent, drive.ResistorTolerance);
        if (drive.SeriesResistor != needed)
        {
            yield return new($"series resistor of the driven ground {P(drive.SeriesResistor)} -> {P(needed)}",
                design with { GroundDrive = drive with { SeriesResistor = needed } });
        }

        foreach (double factor in new[] { 0.25, 0.5, 2 })
        {
            Frequency unity = Frequency.FromHertz(drive.UnityGainFrequency.Hertz * factor);
            yield return new($"{(factor < 1 ? "slower" : "faster")} driven ground: unity gain at {P(drive.UnityGainFrequency)} -> {P(unity)}", design with { GroundDrive = drive with { UnityGainFrequency = unity } });
        }

        yield return new(
            $"passive ground through {P(needed)} in place of the driven one",
                design with { GroundDrive = drive with { Kind = GroundKind.Passive, SeriesResistor = needed } }) { IsOfKind = true };
    }

    /// <summary>Where measuring leads and the ground lead both lack their resistors, neither alone holds the current. Last: of two changes that do the same
    /// the smaller one is named.</summary>
    private static IEnumerable<Candidate> EveryLead(Design design)
    {
        GroundDrive drive = design.GroundDrive;
        if (design.Electrodes.Ground is null)
        {
            yield break;
        }

        Resistance lead = NeededInLead(design), back = Needed(design, drive.Kind == GroundKind.Passive ? design.Requirements.FaultCurrent : design.Requirements.DrivenGroundCurrent, drive.ResistorTolerance);
        if (design.Input.SeriesResistor.Ohms < lead.Ohms && drive.SeriesResistor.Ohms < back.Ohms)
        {
            yield return new($"series resistors in every lead: measuring {P(design.Input.SeriesResistor)} -> {P(lead)}, ground {P(drive.SeriesResistor)} -> {P(back)}",
                design with { Input = design.Input with { SeriesResistor = lead }, GroundDrive = drive with { SeriesResistor = back } });
        }
    }

    private static IEnumerable<Candidate> Amplifiers(Design design, Assessment assessment)
    {
        DifferentialAmplifier amplifier = design.Amplifier;
        var gains = new SortedSet<double> { Nice(amplifier.Gain / 2), Nice(amplifier.Gain * 0.8), Nice(amplifier.Gain * 2) };
        if (assessment.Find(ResultIds.Levels.FirstGainLimit) is { State: ResultState.Number } limit && 1 <= limit.Si)
        {
            // The limit leaves no headroom: what is asked for, and 3 dB more so that it is not met barely.
            gains.Add(Math.Floor(limit.Si));
            foreach (double spare in (double[])[0, 3])
            {
                gains.Add(Math.Floor(2 * limit.Si / Decibels.FromStated(design.Requirements.Headroom.Value + spare).VoltageRatio) / 2);
            }
        }

        if (amplifier.Gains is { } offered)
        {
            gains = [.. offered];
        }

        foreach (double gain in gains.Where(gain => 1 <= gain && 0.01 < Math.Abs((gain / amplifier.Gain) - 1)))
        {
            yield return new($"amplifier's gain {QuantityText.FormatNumber(amplifier.Gain)} -> {QuantityText.FormatNumber(gain)}",
                design with { Amplifier = amplifier with { Gain = gain } });
        }

        foreach (Candidate other in OtherAmplifiers(design))
        {
            yield return other;
        }

        for (int i = 0; i < design.Stages.Count; i++)
        {
            Stage stage = design.Stages[i];
            if (stage.Role != StageRole.Gain)
            {
                continue;
            }

            Circuit circuit = stage.Circuit();
            if (circuit.Find("ground-resistor") is not null && circuit.Find("feedback-resistor") is { Value: > 0 } feedback)
            {
                foreach (double factor in new[] { 0.5, 0.75, 2 })
                {
                    Resistance rf = PreferredValues.Nearest(Resistance.FromOhms(feedback.Value * factor), PreferredSeries.E24);
                    Stage changed = TopologyCatalogue.With(stage, "feedback-resistor", rf.Ohms);
                    changed = circuit.Find("feedback-capacitor") is { } cf
                        ? TopologyCatalogue.With(changed, cf.Role, cf.Value * (feedback.Value / rf.Ohms))
                        : changed;
                    yield return new($"{stage.Name}: Rf {P(feedback.Quantity)} -> {P(rf)}, gain {QuantityText.FormatNumber(stage.NominalGain)} -> {QuantityText.FormatNumber(changed.NominalGain)}", Replace(design, i, changed));
                }
            }

            if (!circuit.IsAcCoupled && TopologyCatalogue.Field(stage, "coupling-capacitor") is not null)
            {
                Stage coupled = TopologyCatalogue.With(TopologyCatalogue.With(stage, "coupling-capacitor", 1e-6), "coupling-resistor", 1e6);
                yield return new($"ac coupling in front of {stage.Name}: 1 µF and 1 MΩ", Replace(design, i, coupled)) { IsOfKind = true };
            }
        }

        Voltage lowest = Voltage.FromVolts(Math.Min(design.Supply.Highest.Volts, design.Supply.Lowest.Volts * 1.1));
        if (design.Supply.Lowest.Volts * 1.01 < lowest.Volts)
        {
            yield return new($"switch off earlier: lowest supply {P(design.Supply.Lowest)} -> {F(lowest)}",
                design with { Supply = design.Supply with { Lowest = lowest, MidRail = null } });
        }
    }

    /// <summary>Amplifiers with one better figure.</summary>
    private static IEnumerable<Candidate> OtherAmplifiers(Design design)
    {
        DifferentialAmplifier amplifier = design.Amplifier;
        if (IsUsual(design, DesignKeys.Amplifier.InputNoise))
        {
            VoltageNoiseDensity quieter = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.InputNoise.VoltsPerRootHertz / 2);
            yield return new(
                $"an amplifier with half the voltage noise: {F(amplifier.InputNoise)} -> {F(quieter)}",
                design with { Amplifier = amplifier with { InputNoise = quieter,
                    OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.OutputNoise.VoltsPerRootHertz / 2) } });
        }

        if (IsUsual(design, DesignKeys.Amplifier.CurrentNoise))
        {
            CurrentNoiseDensity lower = CurrentNoiseDensity.FromAmperesPerRootHertz(amplifier.CurrentNoise.AmperesPerRootHertz / 10);
            yield return new($"an amplifier with a tenth of the current noise: {F(amplifier.CurrentNoise)} -> {F(lower)}",
                design with { Amplifier = amplifier with { CurrentNoise = lower } });
        }

        if (IsUsual(design, DesignKeys.Amplifier.Cmrr, goingDown: false))
        {
            Decibels more = Decibels.FromStated(amplifier.Cmrr.Value + 20);
            yield return new($"an amplifier with more rejection: CMRR {F(amplifier.Cmrr)} -> {F(more)}",
                design with { Amplifier = amplifier with { Cmrr = more } });
        }
    }

    private static double Nice(double gain) => gain < 10 ? Math.Round(gain * 2) / 2 : Math.Round(gain);

    private static Design Replace(Design design, int index, Stage stage)
    {
        Stage[] stages = [.. design.Stages];
        stages[index] = stage;
        return design with { Stages = stages };
    }

    private static IEnumerable<Candidate> AntiAliasing(Design design)
    {
        Stage[] sections = [.. design.Stages.Where(stage => stage.Role == StageRole.LowPass)];
        foreach (double factor in new[] { 1.5, 1 / 1.5 })
        {
            if (sections.Length != 0)
            {
                Stage[] scaled = [.. design.Stages.Select(stage => Scaled(stage, factor))];
                yield return new(1 < factor
                    ? "anti-alias corner lower by a third (capacitors × 1.5)"
                    : "anti-alias corner higher by half (capacitors ÷ 1.5)", design with { Stages = scaled });
            }
        }

        Frequency corner = Frequency.FromHertz(1.6 * design.Band.High.Hertz);
        if (corner.Hertz < design.Converter.Rate.Hertz)
        {
            int at = design.Stages.Count == 0 || design.Stages[^1].FittedOpAmp is not null ? design.Stages.Count : design.Stages.Count - 1;
            Stage[] stages = [.. design.Stages.Take(at), NewSection(design, corner), .. design.Stages.Skip(at)];
            yield return new($"one more anti-alias section: second order, {F(corner)}", design with { Stages = stages });
        }
    }

    private static Stage Scaled(Stage stage, double factor)
    {
        Capacitance Times(Capacitance c) =>
            c.Farads <= 0 ? c : PreferredValues.Nearest(Capacitance.FromFarads(c.Farads * factor), PreferredSeries.E12);
        return stage.Role != StageRole.LowPass
            ? stage
            : stage.Circuit().Parts.Where(part => part.Kind == PartKind.Capacitor)
                .Aggregate(stage, (scaled, part) =>
                    TopologyCatalogue.With(scaled, part.Role, Times(Capacitance.FromFarads(part.Value)).Farads));
    }

    /// <summary>A unity-gain Butterworth section of equal resistors: C1 = 2Q/(2πf0R), C2 = 1/(2Q·2πf0R), Q = 1/√2.</summary>
    private static SallenKeySection NewSection(Design design, Frequency corner)
    {
        double w = 2 * Math.PI * corner.Hertz, r = 22e3, q = Math.Sqrt(0.5);
        var names = new HashSet<string>(design.Stages.Select(stage => stage.Name), StringComparer.Ordinal);
        int number = 1;
        while (names.Contains($"anti-alias {number}"))
        {
            number++;
        }

        return new SallenKeySection
        {
            Name = $"anti-alias {number}", R1 = Resistance.FromOhms(r), R2 = Resistance.FromOhms(r),
            C1 = PreferredValues.Nearest(Capacitance.FromFarads(2 * q / (w * r)), PreferredSeries.E12),
            C2 = PreferredValues.Nearest(Capacitance.FromFarads(1 / (2 * q * w * r)), PreferredSeries.E12),
            OpAmp = design.Stages.Select(stage => stage.FittedOpAmp).OfType<OpAmp>().FirstOrDefault() ?? OpAmp.MicropowerCmos,
        };
    }

    private static IEnumerable<Candidate> Conversion(Design design)
    {
        AnalogDigitalConverter converter = design.Converter;

        // Sections given as numbers belong to their rate.
        if (!design.Digital.Any(stage => stage is DigitalSections))
        {
            foreach (double factor in new[] { 2.0, 4.0 })
            {
                Frequency rate = Frequency.FromHertz(converter.Rate.Hertz * factor);
                yield return new($"sampling rate {P(converter.Rate)} -> {P(rate)}",
                    design with { Converter = converter with { Rate = rate } });
            }
        }

        // Converters for such signals end at 24 bits (common practice, no source).
        if (20 < converter.Bits)
        {
            yield break;
        }

        yield return new(
            $"a converter with 4 more bits and a quarter of the noise: {QuantityText.FormatNumber(converter.Bits)} -> {QuantityText.FormatNumber(converter.Bits + 4)} bit",
            design with { Converter = converter with { Bits = converter.Bits + 4, Lsb = converter.Lsb is { } lsb
                ? Voltage.FromVolts(lsb.Volts / 16)
                : null, Noise = VoltageRms.FromVolts(converter.NoiseVolts / 4) } });
    }

    private static IEnumerable<Candidate> DigitalFilters(Design design, Assessment assessment)
    {
        double half = design.Converter.Rate.Hertz / 2;
        var landings = new SortedSet<double>();
        for (int h = 1; assessment.Find(ResultIds.Mains.Harmonic(h).LandsAt) is { State: ResultState.Number } landing; h++)
        {
            if (assessment.Find(ResultIds.Mains.Harmonic(h).Recorded) is { State: ResultState.Number } recorded
                && design.SmallestSignal.Volts / 10 < recorded.Si)
            {
                landings.Add(Math.Round(landing.Si, 6));
            }
        }

        foreach (double landing in landings.Where(landing => 0.1 < landing && landing < 0.98 * half).Take(4))
        {
            var notch = new DigitalNotch { Name = Unique(design, $"notch {P(Frequency.FromHertz(landing))}"),
                Centre = Frequency.FromHertz(landing), Q = 10 };
            yield return new($"a notch at {P(notch.Centre)}, Q 10", design with { Digital = [.. design.Digital, notch] });
        }

        if (!design.Digital.Any(stage => stage is DigitalHighPass))
        {
            var high = new DigitalHighPass { Name = Unique(design, "high-pass"), Corner = design.Band.Low, Order = 2 };
            yield return new($"a digital high-pass at {P(high.Corner)}, second order", design with { Digital = [.. design.Digital, high] });
        }

        if (!design.Digital.Any(stage => stage is DigitalLowPass) && design.Band.High.Hertz * 1.02 < half)
        {
            var low = new DigitalLowPass { Name = Unique(design, "low-pass"), Corner = design.Band.High, Order = 4 };
            yield return new($"a digital low-pass at {P(low.Corner)}, fourth order", design with { Digital = [.. design.Digital, low] });
        }
    }

    private static string Unique(Design design, string name)
    {
        string candidate = name;
        for (int i = 2; design.Digital.Any(stage => stage.Name == candidate); i++)
        {
            candidate = $"{name} ({i})";
        }

        return candidate;
    }
}
