using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Teaching.Problems;

/// <summary>Judgements that are answered by evaluating a design with each of several changes.</summary>
/// <remarks>The choice that shall be right is drawn first, each as likely as another, and then values until it is; so no choice is there only
/// to be wrong.</remarks>
internal static class JudgementProblems
{
    // So that a judgement does not hang on the last per cent, the best change must be this much ahead of the next.
    private const double Lead = 0.15;

    // Draws until the wanted choice is right; the judgements' lists make some three enough.
    private const int MostDraws = 2000;

    private const string Listed = " Not everything that is listed matters; what is not listed stays the same.";

    private static readonly TeachingChain Quiet = new() { SecondGain = [101, 201, 301], ConverterNoise = [50e-6, 100e-6] };

    // The chain in which the electrodes, the amplifier's voltage noise, its current noise and the converter, in this order, weigh most.
    private static readonly TeachingChain OfElectrodes = Quiet with
    {
        Contact = [150e3, 330e3, 620e3], Across = [2.2e-9, 4.7e-9], Protection = [10e3, 47e3], VoltageNoise = [10e-9, 15e-9],
        CurrentNoise = [1e-15, 10e-15],
    };

    private static readonly TeachingChain OfVoltage = Quiet with
    {
        Contact = [20e3, 51e3, 150e3], Protection = [10e3, 47e3, 100e3], VoltageNoise = [50e-9, 82e-9, 120e-9], CurrentNoise = [1e-15, 100e-15],
    };

    private static readonly TeachingChain OfCurrent = Quiet with
    {
        Contact = [150e3, 330e3, 620e3], Across = [4.7e-9, 10e-9], Protection = [47e3, 100e3, 220e3], VoltageNoise = [10e-9, 15e-9, 25e-9],
        CurrentNoise = [300e-15, 500e-15, 700e-15],
    };

    private static readonly TeachingChain OfConverter = new();

    private static readonly TeachingChain OfProtection = OfElectrodes with { Contact = [20e3, 51e3], Protection = [100e3, 220e3, 470e3] };

    private static readonly TeachingChain NearMains = new()
    {
        Field = [0.1e-6, 0.5e-6, 1e-6], LeadToMains = [0.1e-15, 0.5e-15, 2e-15], Rejection = [60, 70, 86, 100],
    };

    public static IReadOnlyList<Template> All { get; } =
    [
        new("chain-judge-noise", Topic.WholeChain, 3, "Which change lowers the noise most", d => Judge(d, new Judgement(
            design => $"Which single change lowers the total noise at the electrodes most? {NoiseAround(design)}",
            [OfVoltage, OfCurrent, OfElectrodes, OfConverter],
            (_, design) =>
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
            evaluation => evaluation.Noise.Total, "the noise at the electrodes, rms,", "V", Least: true))),
        new("chain-judge-mains", Topic.WholeChain, 3, "Which change lowers the mains most", d => Judge(d, new Judgement(
            design => $"Which single change lowers the mains at the electrodes most (worst case, at the mains frequency)? {Surroundings(design)}",
            [
                NearMains with { Contact = [51e3, 150e3], Mismatch = [0.1, 0.2], Ground = [10e3, 47e3], Rejection = [60, 66], LeadToMains = [0.1e-15, 0.5e-15], Field = [0.1e-6] },
                NearMains with { Mismatch = [0.5, 1] },
                NearMains with { Contact = [20e3, 51e3], Mismatch = [0.1, 0.2], Loop = [20e-4, 80e-4, 150e-4], Field = [0.5e-6, 1e-6] },
                NearMains with { Contact = [20e3, 51e3, 150e3], Mismatch = [0.1, 0.2], Ground = [330e3, 1e6], LeadToMains = [0.1e-15, 0.5e-15], Field = [0.1e-6], Rejection = [66, 70, 86] },
            ],
            (_, design) =>
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
            evaluation => evaluation.Mains.AtInput.Total, "the mains at the electrodes, rms,", "V", Least: true))),
        new("chain-judge-fold", Topic.WholeChain, 3, "Which change protects best against folding", d => Judge(d, new Judgement(
            design => $"Which single change attenuates most what folds into the band first? {Edges(design)}",
            [FoldChain, FoldChain, FoldChain],
            FoldChanges, FoldAttenuation, "the attenuation of what folds into the band first", "dB", Least: false))),
        new("chain-judge-offset", Topic.WholeChain, 3, "Which change survives more offset", d => Judge(d, new Judgement(
            design => $"Which single change lets the chain survive the largest electrode offset? {Rails(design)}",
            [
                OffsetChain with { Supply = [2.4, 2.7, 3, 3.3, 3.6], Margin = [0.1, 0.2, 0.3] },
                OffsetChain with { Supply = [1.8, 2.4, 2.7], Margin = [0.1, 0.2] },
                OffsetChain with { Supply = [1.8, 2.4, 2.7, 3] , Margin = [0.4, 0.5, 0.6] },
            ],
            OffsetChanges, evaluation => evaluation.Levels.OffsetSurvived ?? 0, "the largest offset that is survived", "V", Least: false))),
        new("chain-judge-dominant", Topic.WholeChain, 3, "Which source dominates the noise", Dominant),
    ];

    private static TeachingChain FoldChain => new() { LowPass = [47e-9, 100e-9, 150e-9, 220e-9, 330e-9], Rate = [200, 250, 400, 500] };

    private static TeachingChain OffsetChain => new()
    {
        FirstGain = [4, 5, 6, 8, 10, 12],
    };

    private static (string Text, Design Design)[] FoldChanges(Draw d, Design design)
    {
        RcSection section = (RcSection)design.Stages[^1];
        (string Word, int Times) rate = Pick(d, ("twice", 2), ("three times", 3), ("four times", 4));
        (string Word, int More) sections = Pick(d, ("a second, equal RC section with its buffer", 1), ("two more, equal RC sections with buffers", 2));
        (string Word, int Times) capacitor = Pick(d, ("three times", 3), ("five times", 5), ("ten times", 10));
        return
        [
            new($"{rate.Word} the sampling rate",
                design with { Converter = design.Converter with { Rate = Frequency.FromHertz(rate.Times * design.Converter.Rate.Hertz) } }),
            new(sections.Word,
                design with { Stages = [.. design.Stages, .. Enumerable.Range(2, sections.More).Select(i => section with { Name = $"anti-alias {i}" })] }),
            new($"{capacitor.Word} the capacitor of the RC section",
                design with { Stages = [.. design.Stages.Take(design.Stages.Count - 1),
                section with { C = Capacitance.FromFarads(capacitor.Times * section.C.Farads) }] }),
        ];
    }

    private static (string Text, Design Design)[] OffsetChanges(Draw d, Design design)
    {
        (string Word, double Times) gain = Pick(d, ("four fifths of the", 0.8), ("three quarters of the", 0.75), ("half the", 0.5));
        double volts = Pick(d, 0.3, 0.6, 1, 1.5);
        return
        [
            new($"{gain.Word} gain of the first stage", design with { Amplifier = design.Amplifier with { Gain = design.Amplifier.Gain * gain.Times } }),
            new($"{Put.In(volts, "V")} more supply",
                design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(design.Supply.Lowest.Volts + volts),
                Highest = Voltage.FromVolts(design.Supply.Highest.Volts + volts) } }),
            new("a first stage whose output comes within 20 mV of the rails",
                design with { Amplifier = design.Amplifier with { OutputMargin = Voltage.FromMillivolts(20) } }),
        ];
    }

    private static T Pick<T>(Draw d, params ReadOnlySpan<T> of) => of[d.Index(of.Length)];

    private static ProblemText Judge(Draw d, Judgement judgement)
    {
        int wanted = d.Index(judgement.Chains.Count), draws = 0;
        Figures figures;
        (string Text, Design Design)[] options;
        Design design;
        do
        {
            design = judgement.Chains[wanted].Draw(d);
            options = judgement.Changes(d, design);
            figures = new Figures(judgement, design, [.. options.Select(option => option.Design)]);
        }
        while (!IsAsked(figures.Of, options.Length, judgement.Least, wanted, ++draws) && d.Again());

        ProblemText text = new ProblemText(judgement.Question(design) + Listed)
            .Say($"As drawn, {judgement.Name} is {QuantityText.Format(figures.Of(-1), judgement.Unit)}; the whole network is solved again with each change");
        return Choice(d, text, [.. options.Select(option => option.Text)], [.. options.Select((_, i) => figures.Of(i))], judgement.Unit,
            judgement.Least, Slips.Judgement);
    }

    private static ProblemText Dominant(Draw d)
    {
        (string Name, TeachingChain Chain, Func<SourceId, bool> Is)[] groups =
        [
            ("the electrodes' own noise", OfElectrodes, source => source.IsElectrode),
            ("the protection resistors", OfProtection, source => source == SourceId.ProtectionResistors),
            ("the differential amplifier, voltage and current", OfCurrent, source =>
                source == SourceId.AmplifierVoltage || source == SourceId.AmplifierCurrent),
            ("the converter, its steps included", OfConverter, source => source == SourceId.Converter || source == SourceId.Quantisation),
        ];
        int wanted = d.Index(groups.Length), draws = 0;
        double[] parts;
        Design design;
        do
        {
            design = groups[wanted].Chain.Draw(d);
            NoiseRow[] rows = [.. new Evaluation(design).Noise.Rows()];
            parts = [.. groups.Select(group => Math.Sqrt(rows.Where(row => group.Is(row.Id)).Sum(row => row.Rms * row.Rms)))];
        }
        while (!IsAsked(i => i < 0 ? 0 : parts[i], groups.Length, least: false, wanted, ++draws) && d.Again());

        return Choice(d,
            new ProblemText($"Which of these makes the largest part of the noise at the electrodes? {NoiseAround(design)}{Listed}").Say("The rms at the electrodes that each makes alone; independent noises add as squares"),
            [.. groups.Select(group => group.Name)], parts, "V", least: false, Slips.Dominant);
    }

    private static ProblemText Choice(Draw d, ProblemText text, string[] names, double[] values, string unit, bool least,
        SlipKind slip)
    {
        int[] order = d.Order(names.Length);
        int right = Best(values, least);
        foreach (int i in order)
        {
            text.Say($"{ChoiceAnswer.Letter(Array.IndexOf(order, i))}: {names[i]}: {QuantityText.Format(values[i], unit)}");
        }

        return text.Chooses([.. order.Select(i => names[i])], Array.IndexOf(order, right), [.. order.Select(_ => slip)]);
    }

    // What a judgement rests on besides the values drawn; taken from the design, so that the sheet cannot differ from what is worked out.
    private static string Edges(Design design) => $"The band is {design.Band.Low.Hertz:0.##} Hz to {design.Band.High.Hertz:0.##} Hz.";

    private static string NoiseAround(Design design)
    {
        ExcessNoise excess = design.Electrodes.Active.ExcessNoise;
        string contact = excess == default ? "The electrodes have their thermal noise alone, no excess noise." : $"Each electrode's excess noise at 1 Hz is {Put.In(excess)}.";
        return $"{Edges(design)} The board is at {Put.In(design.BoardTemperature)}, the skin at {Put.In(design.SkinTemperature)}. {contact} The op-amp of the second stage has {Put.In(design.Stages[0].FittedOpAmp!.VoltageNoise)}. What folds into the band counts too.";
    }

    private static string Surroundings(Design design) =>
        $"The mains is {Put.In(design.Mains.Voltage)} at {Put.In(design.Mains.Frequency)}, with {Put.In(design.Mains.BodyToMains)} to the body; the body has {Put.In(design.Mains.BodyToEarth)} to earth, the box {Put.In(design.Mains.AmplifierToEarth)}. "
        + $"Each input has {Put.In(design.Input.LeadToCommon.Farads + design.Input.ShuntCapacitor.Farads + design.Amplifier.CommonModeCapacitance.Farads, "F")} to common, the lead included.";

    private static string Rails(Design design) =>
        $"The reference is at half the supply; the other stages' outputs come within {Put.In(design.Stages[0].FittedOpAmp!.OutputMargin)} of the rails; the signal's peak is {Put.In(design.LargestSignal)}.";

    private static int Best(double[] values, bool least) => Array.IndexOf(values, least ? values.Min() : values.Max());

    /// <summary>True where the wanted choice is well ahead of every other, and of no change.</summary>
    /// <param name="figure">By the choice's place; −1 for no change. Not asked for more than it takes.</param>
    private static bool IsAsked(Func<int, double> figure, int choices, bool least, int wanted, int draws)
    {
        if (MostDraws < draws)
        {
            throw new InvalidOperationException($"The judgement's lists make choice {wanted} right too seldom.");
        }

        bool Ahead(double other) => least ? figure(wanted) * (1 + Lead) < other : other * (1 + Lead) < figure(wanted);
        return Enumerable.Range(-1, choices + 1).All(i => i == wanted || Ahead(figure(i)));
    }

    private static double FoldAttenuation(Evaluation evaluation)
    {
        var list = new ResultList();
        AliasReport.AddFold(list, evaluation);
        return list.Results.First(result => result.Id == ResultIds.Alias.FoldAttenuation).Value?.SiValue ?? 0;
    }

    private static VoltageNoiseDensity Half(VoltageNoiseDensity density) =>
        VoltageNoiseDensity.FromVoltsPerRootHertz(density.VoltsPerRootHertz / 2);

    /// <summary>What a design is judged by, with each change, worked out when it is asked for.</summary>
    private sealed class Figures(Judgement judgement, Design design, Design[] changed)
    {
        private readonly Evaluation _asDrawn = new(design);
        private readonly double?[] _known = new double?[changed.Length + 1];

        /// <param name="change">Its place; −1 for none.</param>
        public double Of(int change) => _known[change + 1] ??=
            judgement.Figure(change < 0 ? _asDrawn : new Evaluation(changed[change], null, _asDrawn));
    }

    /// <summary>One judgement.</summary>
    /// <param name="Question">Its words, with what they say of the design.</param>
    /// <param name="Chains">For each choice the chain that is drawn where it shall be right.</param>
    /// <param name="Changes">The choices; what they say may be drawn too.</param>
    /// <param name="Figure">What is judged by.</param>
    /// <param name="Name">What that is called in a sentence.</param>
    /// <param name="Least">True where the least figure is the best.</param>
    private sealed record Judgement(
        Func<Design, string> Question, IReadOnlyList<TeachingChain> Chains,
        Func<Draw, Design, (string Text, Design Design)[]> Changes, Func<Evaluation, double> Figure, string Name, string Unit, bool Least);
}
