using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Reporting;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about the whole chain: totals of several parts, and judgements that are answered by evaluating the design with each
/// change.</summary>
internal static class WholeChainProblems
{
    // So that a judgement does not hang on the last per cent, the best change must be this much ahead of the next.
    private const double Lead = 0.05;
    private const int MostDraws = 40;
    private const string Listed = " Not everything that is listed matters; what is not listed stays the same.";

    public static IReadOnlyList<Template> All { get; } =
    [
        new("chain-noise", Topic.WholeChain, 3, "Noise budget of a chain", d =>
        {
            Resistance electrode = d.Part<Resistance>("R_e", "each of two electrodes, resistive", 10e3, 330e3);
            Resistance protection = d.Part<Resistance>("R_p", "protection resistor in each of the two leads", 10e3, 100e3);
            VoltageNoiseDensity e = d.Part<VoltageNoiseDensity>("e", "voltage noise density of the amplifier, white", 15e-9, 82e-9);
            CurrentNoiseDensity i = d.Part<CurrentNoiseDensity>("i", "current noise density of each input, white", 10e-15, 220e-15);
            Ratio gain = d.OneOf<Ratio>("G", "gain up to the converter", 5, 8, 12, 24);
            VoltageRms converter = d.Part<VoltageRms>("σ_adc", "noise of the converter in the band, at its pin, rms", 2e-6, 15e-6);
            Temperature t = d.OneOf<Temperature>("T", "temperature of skin and board", 298.15);
            (Frequency low, Frequency high) = NoiseProblems.Band(d);
            Resistance two = Resistance.FromOhms(2 * electrode.Ohms), both = Resistance.FromOhms(2 * protection.Ohms);
            TextbookFigure skin = NoiseFormulas.Thermal(two, t, low, high), board = NoiseFormulas.Thermal(both, t, low, high);
            TextbookFigure voltage = NoiseFormulas.Amplifier(e, default, low, high);
            TextbookFigure one = NoiseFormulas.Current(i, electrode + protection, default, low, high);
            double currents = Math.Sqrt(2) * one.Value, referred = converter.Volts / gain.Fraction;
            VoltageRms[] parts = [.. new[] { skin.Value, board.Value, voltage.Value, currents, referred }.Select(VoltageRms.FromVolts)];
            TextbookFigure total = NoiseFormulas.Together(parts);
            double Without(int part) => Math.Sqrt(parts.Where((_, k) => k != part).Sum(p => p.Volts * p.Volts));
            return new ProblemText("How large is the noise of the whole chain in the band, referred to the electrodes, rms? Skin noise beyond the thermal one is left out.")
                .Step("Thermal noise of both electrodes in series", skin)
                .Step("Thermal noise of both protection resistors", board)
                .Step("The amplifier's voltage noise", voltage)
                .Step("One input's current through its electrode and resistor", one)
                .Step("Both inputs' currents are independent", "√2·σ", $"√2 · {Put.In(one.Value, "V")}", currents, "V")
                .Step("The converter's noise, referred to the electrodes", "σ_adc/G",
                    $"{Put.In(converter.Volts, "V")}/{Put.In(gain.Fraction)}", referred, "V", Sources.CommonPractice)
                .Step("Independent noises add as squares", total)
                .Answers<VoltageRms>(total.Value)
                .Slip(Slips.LinearSum, parts.Sum(part => part.Volts))
                .Slip(Slips.NotReferred, Math.Sqrt(Math.Pow(Without(4), 2) + (converter.Volts * converter.Volts)))
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * total.Value)
                .Slip(Slips.HalfTheBand, Math.Sqrt((Math.Pow(Without(4), 2) / 2) + (referred * referred)))
                .Slip(Slips.LargestAlone, parts.Max(part => part.Volts));
        }),
        new("chain-mains", Topic.WholeChain, 3, "Mains budget of a chain", d =>
        {
            (VoltageRms mains, Frequency line) = CmrrProblems.Mains(d);
            Capacitance body = d.Part<Capacitance>("C_p", "capacitance from the mains to the body", 1e-12, 4.7e-12);
            Resistance ground = d.Part<Resistance>("Z_g", "ground electrode with its resistor; the box is earthed", 10e3, 100e3);
            Resistance difference = d.Part<Resistance>("ΔZ", "difference of the two electrodes", 10e3, 100e3);
            Capacitance input = d.Part<Capacitance>("C_in", "capacitance from each input to common", 10e-12, 100e-12);
            Decibels rejection = d.OneOf<Decibels>("CMRR", "of the amplifier at the mains", 70, 80, 86, 90, 100);
            TextbookFigure current = MainsFormulas.DisplacementCurrent(mains, line, body);
            double common = current.Value * ground.Ohms;
            double reactance = 1 / (2 * Math.PI * line.Hertz * input.Farads);
            TextbookFigure divider = MainsFormulas.DividerVoltage(VoltageRms.FromVolts(common), reactance, difference.Ohms);
            TextbookFigure amplifier = MainsFormulas.Residue(VoltageRms.FromVolts(common), rejection);
            double total = divider.Value + amplifier.Value;
            return new ProblemText("How much mains stands at the electrodes as if it were signal, rms, in the worst case? Leads and loop are left out.")
                .Step("The current through the body", current)
                .Step("Its voltage at the ground electrode is the common mode", "i·Z_g",
                    $"{Put.In(current.Value, "A")} · {Put.In(ground)}", common, "V", Sources.BodyCurrent)
                .Step("Unequal electrodes turn a share of it into signal", divider)
                .Step("The amplifier's rejection leaves a share too", amplifier)
                .Step("In the worst case the two add", "divider + amplifier",
                    $"{Put.In(divider.Value, "V")} + {Put.In(amplifier.Value, "V")}", total, "V")
                .Answers<VoltageRms>(total)
                .Slip(Slips.PartForgotten, divider.Value)
                .Slip(Slips.PartForgotten, amplifier.Value)
                .Slip(Slips.RootSumForWorst, Math.Sqrt((divider.Value * divider.Value) + (amplifier.Value * amplifier.Value)))
                .Slip(Slips.NoTwoPi, (divider.Value / (2 * Math.PI)) + amplifier.Value)
                .Slip(Slips.RmsForPeak, Math.Sqrt(2) * total);
        }),
        new("chain-noise-free-bits", Topic.WholeChain, 3, "Noise-free bits of a chain", d =>
        {
            VoltagePeakToPeak scale = d.OneOf<VoltagePeakToPeak>("FS", "full scale of the converter, peak-to-peak", 2.5, 3, 4.096, 5, 9);
            Ratio gain = d.OneOf<Ratio>("G", "gain in front of it", 4, 6, 12, 24);
            VoltageRms board = d.Part<VoltageRms>("σ_in", "noise of electrodes and amplifier at the electrodes, rms", 0.3e-6, 2.2e-6);
            VoltageRms converter = d.Part<VoltageRms>("σ_adc", "noise of the converter at its pin, rms", 2.2e-6, 33e-6);
            double referred = converter.Volts / gain.Fraction, span = scale.Volts / gain.Fraction;
            TextbookFigure total = NoiseFormulas.Together(board, VoltageRms.FromVolts(referred));
            TextbookFigure figure = ConverterFormulas.NoiseFreeBits(VoltagePeakToPeak.FromVolts(span), VoltageRms.FromVolts(total.Value));
            return new ProblemText("How many noise-free bits has the whole chain?")
                .Step("The converter's noise at the electrodes", "σ_adc/G", $"{Put.In(converter.Volts, "V")}/{Put.In(gain.Fraction)}",
                    referred, "V", Sources.CommonPractice)
                .Step("Both noises together", total)
                .Step("The full scale at the electrodes", "FS/G", $"{Put.In(scale.Volts, "V")}/{Put.In(gain.Fraction)}", span, "V",
                    Sources.CommonPractice)
                .Step("In powers of two, peak-to-peak", figure)
                .AnswersWithin<BitCount>(figure.Value, 0.1)
                .Slip(Slips.EffectiveForNoiseFree, Math.Log2(span / total.Value))
                .Slip(Slips.NotReferred, Math.Log2(scale.Volts / TradeConstants.NoisePeakToPeak / total.Value))
                .Slip(Slips.TwoForTenLog, Math.Log10(span / TradeConstants.NoisePeakToPeak / total.Value));
        }),
        new("chain-judge-noise", Topic.WholeChain, 3, "Which change lowers the noise most", d => Judge(
            d,
            design => $"Which single change lowers the total noise at the electrodes most? {Temperatures(design)}",
            draw => Base(draw),
            design =>
            [
                new("an amplifier with half the voltage noise",
                    design with { Amplifier = design.Amplifier with { InputNoise = Half(design.Amplifier.InputNoise),
                    OutputNoise = Half(design.Amplifier.OutputNoise) } }),
                new("an amplifier with a third of the current noise",
                    design with { Amplifier = design.Amplifier with { CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(design.Amplifier.CurrentNoise.AmperesPerRootHertz / 3) } }),
                new("electrodes of half the impedance",
                    design with { Electrodes = design.Electrodes with { Active = design.Electrodes.Active.Scaled(0.5),
                    Reference = design.Electrodes.Reference.Scaled(0.5) } }),
                new("a converter with a third of the noise and two bits more",
                    design with { Converter = design.Converter with { Noise = VoltageRms.FromVolts(design.Converter.NoiseVolts / 3),
                    Bits = design.Converter.Bits + 2 } }),
            ],
            evaluation => evaluation.Noise.Total,
            ResultIds.Noise.Total,
            "V",
            least: true)),
        new("chain-judge-mains", Topic.WholeChain, 3, "Which change lowers the mains most", d => Judge(
            d,
            design => $"Which single change lowers the mains at the electrodes most (worst case, at the mains frequency)? {Surroundings(design)}",
            draw => Base(draw),
            design =>
            [
                new("an amplifier with 20 dB more common-mode rejection",
                    design with { Amplifier = design.Amplifier with { Cmrr = Decibels.FromStated(design.Amplifier.Cmrr.Value + 20) } }),
                new("a third of the difference between the electrodes",
                    design with { Electrodes = design.Electrodes with { Mismatch = Ratio.FromFraction(design.Electrodes.EffectiveMismatch / 3) } }),
                new("a fourth of the loop's area, the leads twisted",
                    design with { Mains = design.Mains with { LoopArea = Area.FromSquareMetres(design.Mains.LoopArea.SquareMetres / 4) } }),
                new("a tenth of the ground electrode's series resistor",
                    design with { GroundDrive = design.GroundDrive with { SeriesResistor = Resistance.FromOhms(design.GroundDrive.SeriesResistor.Ohms / 10) } }),
            ],
            evaluation => evaluation.Mains.AtInput.Total,
            ResultIds.Mains.Total,
            "V",
            least: true)),
        new("chain-judge-fold", Topic.WholeChain, 3, "Which change protects best against folding", d => Judge(
            d,
            design => $"Which single change attenuates most what folds into the band first? {Edges(design)}",
            draw => Base(draw),
            design =>
            [
                new("twice the sampling rate",
                    design with { Converter = design.Converter with { Rate = Frequency.FromHertz(2 * design.Converter.Rate.Hertz) } }),
                new("a second, equal RC section with its buffer",
                    design with { Stages = [.. design.Stages, ((RcSection)design.Stages[^1]) with { Name = "anti-alias 2" }] }),
                new("twice the capacitor of the RC section",
                    design with { Stages = [.. design.Stages.Take(design.Stages.Count - 1),
                    ((RcSection)design.Stages[^1]) with { C = Capacitance.FromFarads(2 * ((RcSection)design.Stages[^1]).C.Farads) }] }),
                new("four more bits in the converter",
                    design with { Converter = design.Converter with { Bits = design.Converter.Bits + 4 } }),
            ],
            FoldAttenuation,
            ResultIds.Alias.FoldAttenuation,
            "dB",
            least: false)),
        new("chain-judge-offset", Topic.WholeChain, 3, "Which change survives more offset", d => Judge(
            d,
            design => $"Which single change lets the chain survive the largest electrode offset? {Rails(design)}",
            draw => Base(draw),
            design =>
            [
                new("half the gain of the first stage",
                    design with { Amplifier = design.Amplifier with { Gain = design.Amplifier.Gain / 2 } }),
                new("0.6 V more supply",
                    design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(design.Supply.Lowest.Volts + 0.6),
                    Highest = Voltage.FromVolts(design.Supply.Highest.Volts + 0.6) } }),
                new("half the gain of the second, ac-coupled stage", HalfSecondGain(design)),
                new("a converter with four more bits",
                    design with { Converter = design.Converter with { Bits = design.Converter.Bits + 4 } }),
            ],
            evaluation => evaluation.Levels.OffsetSurvived ?? 0,
            ResultIds.Levels.OffsetSurvived,
            "V",
            least: false)),
        new("chain-judge-dominant", Topic.WholeChain, 3, "Which source dominates the noise", d =>
        {
            (string Name, Func<SourceId, bool> Is)[] groups =
            [
                ("the electrodes' own noise", source => source.IsElectrode),
                ("the protection resistors", source => source == SourceId.ProtectionResistors),
                ("the differential amplifier, voltage and current", source =>
                    source == SourceId.AmplifierVoltage || source == SourceId.AmplifierCurrent),
                ("the converter, its steps included", source => source == SourceId.Converter || source == SourceId.Quantisation),
            ];
            double[] parts;
            Design design;
            do
            {
                design = Base(d);
                NoiseRow[] rows = [.. new Evaluation(design).Noise.Rows()];
                parts = [.. groups.Select(group => Math.Sqrt(rows.Where(row => group.Is(row.Id)).Sum(row => row.Rms * row.Rms)))];
            }
            while (!Ahead(parts, -1, least: false) && d.Again());

            return Choice(d,
                new ProblemText($"Which of these makes the largest part of the noise at the electrodes? {Temperatures(design)}{Listed}"),
                [.. groups.Select(group => group.Name)], parts, "V", ResultIds.Noise.Sources.Name, least: false, Slips.Dominant);
        }),
    ];

    private static ProblemText Judge(
        Draw d, Func<Design, string> question, Func<Draw, Design> make, Func<Design, IReadOnlyList<(string Text, Design Design)>> changes,
        Func<Evaluation, double> figure, ResultId id, string unit, bool least)
    {
        double before;
        double[] after;
        IReadOnlyList<(string Text, Design Design)> options;
        Design design;
        int draws = 0;
        do
        {
            design = make(d);
            var asDrawn = new Evaluation(design);
            before = figure(asDrawn);
            options = changes(design);
            after = [.. options.Select(option => figure(new Evaluation(option.Design, null, asDrawn)))];
        }
        while (!Ahead(after, before, least) && ++draws < MostDraws && d.Again());

        ProblemText text = new ProblemText(question(design) + Listed)
            .Say($"As drawn, {id} is {QuantityText.Format(before, unit)}; the whole network is solved again with each change");
        return Choice(d, text, [.. options.Select(option => option.Text)], after, unit, id.Text, least, Slips.Judgement);
    }

    private static ProblemText Choice(Draw d, ProblemText text, string[] names, double[] values, string unit, string id, bool least,
        SlipKind slip)
    {
        int[] order = d.Order(names.Length);
        int right = Best(values, least);
        foreach (int i in order)
        {
            text.Say($"{ChoiceAnswer.Letter(Array.IndexOf(order, i))}: {names[i]}: {id} {QuantityText.Format(values[i], unit)}");
        }

        return text.Chooses([.. order.Select(i => names[i])], Array.IndexOf(order, right), [.. order.Select(_ => slip)]);
    }

    // What a judgement rests on besides the values drawn; taken from the design, so that the sheet cannot differ from what is worked out.
    private static string Edges(Design design) => $"The band is {design.Band.Low.Hertz:0.##} Hz to {design.Band.High.Hertz:0.##} Hz.";

    private static string Temperatures(Design design) =>
        $"{Edges(design)} The board is at {Put.In(design.BoardTemperature)}, the skin at {Put.In(design.SkinTemperature)}.";

    private static string Surroundings(Design design) =>
        $"The mains is {Put.In(design.Mains.Voltage)} at {Put.In(design.Mains.Frequency)}, with {Put.In(design.Mains.BodyToMains)} to the body and {Put.In(design.Mains.LeadToMains)} to each lead; the body has {Put.In(design.Mains.BodyToEarth)} to earth, the box {Put.In(design.Mains.AmplifierToEarth)}. "
        + $"Each input has {Put.In(design.Input.LeadToCommon.Farads + design.Input.ShuntCapacitor.Farads + design.Amplifier.CommonModeCapacitance.Farads, "F")} to common, the lead included.";

    private static string Rails(Design design) =>
        $"The supply is {Put.In(design.Supply.Lowest)} at its lowest, the reference at half of it; the first stage's output comes within {Put.In(design.Amplifier.OutputMargin)} of the rails, the others' within {Put.In(design.Stages[0].FittedOpAmp!.OutputMargin)}; the signal's peak is {Put.In(design.LargestSignal)}.";

    private static int Best(double[] values, bool least) => Array.IndexOf(values, least ? values.Min() : values.Max());

    /// <summary>True where the best is well ahead of the next, and of no change.</summary>
    private static bool Ahead(double[] values, double before, bool least)
    {
        double best = values[Best(values, least)];
        double next = values.Where((_, i) => i != Best(values, least)).Select(value => value)
            .Aggregate(before < 0 ? (least ? double.MaxValue : 0) : before, (a, b) => least ? Math.Min(a, b) : Math.Max(a, b));
        return least ? best * (1 + Lead) < next : next * (1 + Lead) < best;
    }

    private static double FoldAttenuation(Evaluation evaluation)
    {
        var list = new ResultList();
        AliasReport.AddFold(list, evaluation);
        return list.Results.First(result => result.Id == ResultIds.Alias.FoldAttenuation).Value?.SiValue ?? 0;
    }

    private static Design HalfSecondGain(Design design)
    {
        GainStage stage = (GainStage)design.Stages[0];
        double gain = stage.NominalGain / 2;
        return design with { Stages = [stage with { FeedbackResistor = Resistance.FromOhms(stage.GroundResistor!.Value.Ohms * (gain - 1)) }, .. design.Stages.Skip(1)] };
    }

    /// <summary>A chain of two gain stages, one RC section and a successive-approximation converter, its values drawn.</summary>
    internal static Design Base(Draw d)
    {
        Resistance contact = d.OneOf<Resistance>("R_d", "contact resistance of each electrode", 20e3, 51e3, 150e3, 620e3);
        Capacitance across = d.OneOf<Capacitance>("C_d", "capacitance across it", 4.7e-9, 22e-9, 47e-9);
        Ratio mismatch = d.OneOf<Ratio>("m", "difference of the two electrodes over their mean", 0.2, 0.5, 1);
        Resistance protection = d.OneOf<Resistance>("R_p", "protection resistor in each measuring lead", 10e3, 47e3, 100e3, 220e3);
        Resistance ground = d.OneOf<Resistance>("R_g", "series resistor of the passive ground electrode", 10e3, 100e3, 330e3);
        VoltageNoiseDensity e = d.OneOf<VoltageNoiseDensity>("e",
            "amplifier's voltage noise density at its input, white; three times that at its output", 15e-9, 50e-9, 120e-9);
        CurrentNoiseDensity i = d.OneOf<CurrentNoiseDensity>("i", "amplifier's current noise density, each input", 1e-15, 100e-15, 300e-15);
        Decibels cmrr = d.OneOf<Decibels>("CMRR", "amplifier's common-mode rejection at dc; corner 150 Hz", 70, 86, 100);
        Ratio gain = d.OneOf<Ratio>("G₁", "gain of the first, dc-coupled stage", 4, 5, 6);
        Ratio second = d.OneOf<Ratio>("G₂", "gain of the second, ac-coupled stage (1 µF, 1 MΩ)", 11, 34, 101);
        Capacitance low = d.OneOf<Capacitance>("C", "capacitor of the RC low-pass with 10 kΩ", 100e-9, 150e-9, 220e-9);
        Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", 250, 500, 1000);
        VoltageRms converter = d.OneOf<VoltageRms>("σ_adc", "converter's noise at its pin, 12 bit, 3 V full scale, rms", 150e-6, 300e-6,
            600e-6);
        Area loop = d.OneOf<Area>("A", "area of the leads' loop, in a field of 0.1 µT", 10e-4, 20e-4, 80e-4);
        Electrode electrode = new() { ContactResistance = contact, ContactCapacitance = across };
        return new Design
        {
            Name = "teaching chain",
            Electrodes = new ElectrodeSet { Active = electrode, Reference = electrode, Ground = electrode, Mismatch = mismatch },
            Input = new InputNetwork { SeriesResistor = protection },
            Amplifier = new DifferentialAmplifier { Gain = gain.Fraction, InputNoise = e,
                OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(3 * e.VoltsPerRootHertz), CurrentNoise = i, Cmrr = cmrr },
            GroundDrive = new GroundDrive { SeriesResistor = ground },
            Mains = new Mains { LoopArea = loop, Harmonics = [1] },
            Stages =
            [
                new GainStage { Name = "gain 2", CouplingCapacitor = Capacitance.FromMicrofarads(1),
                    FeedbackResistor = Resistance.FromKilohms(second.Fraction - 1), GroundResistor = Resistance.FromKilohms(1) },
                new RcSection { Name = "anti-alias 1", R = Resistance.FromKilohms(10), C = low },
            ],
            Converter = new AnalogDigitalConverter { Rate = rate, Noise = converter },
        };
    }

    private static VoltageNoiseDensity Half(VoltageNoiseDensity density) =>
        VoltageNoiseDensity.FromVoltsPerRootHertz(density.VoltsPerRootHertz / 2);
}
