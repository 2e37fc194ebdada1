using FrontEnd.Amplifier;
using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Identity;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>Corners, settling and delay of every block, the digital filters, latency and skew.</summary>
internal static class FilterReport
{
    private const int PerDecade = 8;
    private const double LowestHertz = 1e-4;
    private const int Decades = 13;
    private const int RiseDecades = 5;

    /// <summary>|ln| of the power over its half at which a corner is found.</summary>
    private const double AtCorner = 1e-13;

    private const string OneCorner = "the formula is for a single corner; the block's other parts, its op-amp or the input network ahead of the amplifier, and the reference at the band's centre are left out";

    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        int blocks = evaluation.Path.Nodes;
        string[] names = ["amplifier", .. design.Stages.Select(stage => stage.Name)];
        double[] delays = evaluation.Path.Delays(evaluation.CentreHertz);
        (double? Low, double? High)[] corners = Corners(evaluation);
        for (int block = 0; block < blocks; block++)
        {
            FilterIds ids = ResultIds.Filter.Of(block == 0 ? NodeId.Amplifier : NodeId.Of(names[block]));
            if (block != 0 && design.Stages[block - 1].Notch is { } notch)
            {
                AddNotch(list, ids, design.Stages[block - 1], notch, design);
            }
            else
            {
                AddCorners(list, ids, names[block], corners[block], block == 0
                    ? AmplifierHand(design)
                    : design.Stages[block - 1].UpperCorner, block == 0
                    ? null
                    : design.Stages[block - 1].LowerCorner);
            }

            if (block != 0 && design.Stages[block - 1].Role == StageRole.LowPass)
            {
                AddRise(list, ids, names[block], design.Stages[block - 1]);
            }

            list.Number(ids.GroupDelay, $"group delay of {names[block]}", "τ", Duration.FromSeconds(delays[block]), Equations.GroupDelay);
            if (block != 0)
            {
                AddSettling(list, ids, names[block], [evaluation.IdealStages[block - 1]]);
            }
        }

        AddCorners(list, ResultIds.Filter.Path, "the whole analogue path", corners[blocks], null, null);
        list.Number(ResultIds.Filter.Path.GroupDelay, "group delay of the analogue path", "τ", Duration.FromSeconds(delays.Sum()),
            Equations.GroupDelay);
        AddSettling(list, ResultIds.Filter.Path, "the whole analogue path", evaluation.IdealStages, design.Amplifier);
        AddPathRise(list, findings, evaluation);
        AddDigital(list, findings, evaluation);
    }

    /// <summary>Where the section's stop band turns up again, and what is left of it; nothing where it falls all the way.</summary>
    private static void AddRise(ResultList list, FilterIds ids, string name, Stage section)
    {
        if (StopBandRise.Of([section]) is not { } rise)
        {
            return;
        }

        AddRise(list, ids, name, rise, section.StopBandTurn, section.StopBandFloor);
    }

    private static void AddRise(ResultList list, FilterIds ids, string name, StopBandRise rise, TextbookFigure? turn, TextbookFigure? floor)
    {
        list.Number(
            ids.StopBandTurn, $"where the stop band of {name} rises again", "", rise.TurnsAt, Equations.StopBandTurn, hand: turn,
            assumption: "the formula assumes poles far below, and an op-amp bandwidth far above",
            text: $"{QuantityText.Format(rise.LossAtTurn, "dB")} there");
        list.Number(
            ids.StopBandFloor, $"lowest loss of {name} above that", "", Decibels.FromStated(rise.LeastLossBeyond), Equations.StopBandFloor,
            hand: floor, assumption: "the formula assumes that the capacitors are shorts",
            text: $"at {QuantityText.Format(rise.LeastAt)}");
    }

    /// <summary>The anti-alias sections together; a warning where what rises again passes the whole path by more than is asked for at the
    /// fold.</summary>
    private static void AddPathRise(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        Stage[] sections = [.. design.Stages.Where(stage => stage.Role == StageRole.LowPass)];
        if (sections.Length == 0 || StopBandRise.Of(sections) is not { } rise)
        {
            return;
        }

        if (1 < sections.Length)
        {
            AddRise(list, ResultIds.Filter.Path, "all anti-alias sections", rise, null, null);
        }

        // What the amplifier and the input take off counts as well: the path's greatest gain above the turn, on a grid that its slow slopes
        // do not need finer.
        double[] grid = [.. Enumerable.Range(0, RiseDecades * PerDecade).Select(i =>
            rise.TurnsAt.Hertz * Math.Pow(10, (double)i / PerDecade))];
        double[] power = Powers(evaluation, grid)[^1];
        int at = Enumerable.Range(0, grid.Length).MaxBy(i => power[i]);
        double loss = 10 * Math.Log10(Powers(evaluation, [evaluation.CentreHertz])[^1][0] / power[at]);
        if (loss < design.Requirements.Fold.Value)
        {
            int first = Array.FindIndex([.. design.Stages], stage => stage.Role == StageRole.LowPass);
            findings.Add(RealisationMessages.StopBandRises($"stages[{first + 1}]", rise.TurnsAt, rise.LossAtTurn, loss,
                Frequency.FromHertz(grid[at]), design.Requirements.Fold));
        }
    }

    private static void AddNotch(ResultList list, FilterIds ids, Stage stage, NotchFacts notch, Design design)
    {
        NotchCircuit circuit = notch.Circuit;
        // The harmonic that it is tuned to, with the mains moved.
        double mains = design.Mains.Frequency.Hertz * Math.Max(1, Math.Round(notch.Centre / design.Mains.Frequency));
        double deviation = design.Mains.Deviation.Fraction;
        double[] points = [mains * (1 - deviation), mains * (1 + deviation)];
        TextbookFigure? hand = deviation == 0 && mains == notch.Centre.Hertz
            ? null
            : FilterFormulas.NotchAttenuation(Frequency.FromHertz(points[1]), notch.Centre, notch.Q);
        AddDepth(ids.NotchDepth, $"depth of {stage.Name} over the mains' deviation",
            points.Min(f => circuit.Loss(f) ?? double.PositiveInfinity), Equations.AnalogNotchDepth, hand);
        AddDepth(
            ids.NotchDepthWorst, $"the same with every part of {stage.Name} at its worst-case tolerance",
            circuit.LeastLoss(stage.ResistorTolerance.Fraction, stage.CapacitorTolerance.Fraction, points), Equations.AnalogNotchCorners,
                null);

        void AddDepth(ResultId id, string name, double loss, Equation equation, TextbookFigure? formula) => list.Decibel(
            id, name, "", 1 / Math.Pow(10, -loss / 20), equation, "the parts match and the mains does not deviate", formula,
                "the formula assumes matched parts and the mains on its upper side");
    }

    /// <param name="list">Where the figure goes.</param>
    /// <param name="ids">Its block's ids.</param>
    /// <param name="name">What settles.</param>
    /// <param name="stages">In their order.</param>
    /// <param name="amplifier">The differential amplifier where it stands before the stages: its bandwidth rounds off what a resonance
    /// behind it would overshoot.</param>
    private static void AddSettling(ResultList list, FilterIds ids, string name, IReadOnlyList<StateSpace> stages,
        DifferentialAmplifier? amplifier = null)
    {
        if (!stages.Any(stage => 0 < stage.Order))
        {
            return;
        }

        IEnumerable<StateSpace> chain = amplifier is null ? stages
            : stages.Prepend(StateSpace.LowPass(amplifier.Gain, amplifier.Bandwidth.Hertz));
        if (TimeResponse.Of(chain).Settle() is { } settling)
        {
            string of = settling.IsOfPeak ? "its largest value (it ends near nothing, as behind a high-pass)" : "its end value";
            list.Number(ids.Settling, $"settling of {name} after a small step, to 0.1 % of {of}", "t",
                Duration.FromSeconds(settling.Seconds), Equations.Settling, text: "ideal op-amps, nothing clips");
        }
        else
        {
            list.Unbounded(ids.Settling, $"settling of {name} after a small step, to 0.1 %", "t", "s", Equations.Settling,
                "it never comes to rest");
        }
    }

    private static void AddCorners(ResultList list, FilterIds ids, string name, (double? Low, double? High) corner, TextbookFigure? hand,
        TextbookFigure? lowHand)
    {
        if (corner.High is { } high)
        {
            list.Number(ids.MinusThree, $"upper -3 dB frequency of {name}", "f_3dB", Frequency.FromHertz(high), Equations.MinusThree,
                hand: hand, assumption: hand is null ? null : OneCorner);
        }
        else
        {
            list.Unbounded(ids.MinusThree, $"upper -3 dB frequency of {name}", "f_3dB", "Hz", Equations.MinusThree, "none below 1 GHz");
        }

        if (corner.Low is { } low)
        {
            list.Number(ids.MinusThreeLow, $"lower -3 dB frequency of {name}", "f_3dB", Frequency.FromHertz(low), Equations.MinusThree,
                hand: lowHand);
        }
    }

    private static TextbookFigure? AmplifierHand(Design design) =>
        new(design.Amplifier.Bandwidth.Hertz, "f_bw",
            () => $"{QuantityText.FormatPart(design.Amplifier.Bandwidth)} = {QuantityText.Format(design.Amplifier.Bandwidth, 4)}",
            Equations.CommonPractice) { Unit = "Hz" };

    /// <summary>−3 dB frequencies below and above the band's centre, of every block and (last) of the whole path without its analogue
    /// notches, whose flanks are no corners.</summary>
    private static (double? Low, double? High)[] Corners(Evaluation evaluation)
    {
        int nodes = evaluation.Path.Nodes;
        double[] grid = [.. Enumerable.Range(0, (Decades * PerDecade) + 1).Select(i => LowestHertz * Math.Pow(10, (double)i / PerDecade))];
        double[][] power = Powers(evaluation, grid);
        double[][] centre = Powers(evaluation, [evaluation.CentreHertz]);
        var corners = new (double? Low, double? High)[nodes + 1];
        var open = new List<(int Block, bool Upper, double Inside, double Outside)>();
        int start = Array.FindIndex(grid, f => evaluation.CentreHertz <= f);
        for (int block = 0; block <= nodes; block++)
        {
            double half = centre[block][0] / 2;
            for (int i = start; i < grid.Length; i++)
            {
                if (power[block][i] < half)
                {
                    open.Add((block, true, i == start ? evaluation.CentreHertz : grid[i - 1], grid[i]));
                    break;
                }
            }

            for (int i = start - 1; 0 <= i; i--)
            {
                if (power[block][i] < half)
                {
                    open.Add((block, false, i == start - 1 ? evaluation.CentreHertz : grid[i + 1], grid[i]));
                    break;
                }
            }
        }

        // Regula falsi (Illinois) on ln(power/half) against ln f, all corners in one sweep a round.
        var values = open.Select(_ => (Inside: Math.Log(2.0), Outside: double.NaN, Last: 0)).ToArray();
        for (int i = 0; i < open.Count; i++)
        {
            (int block, _, double inside, double outside) = open[i];
            double half = centre[block][0] / 2;
            int at = Array.IndexOf(grid, inside);
            values[i] = (at < 0
                ? Math.Log(2)
                : Math.Log(power[block][at] / half), Math.Log(Math.Max(1e-300, power[block][Array.IndexOf(grid, outside)]) / half), 0);
        }

        for (int round = 0; round < 12 && open.Count != 0; round++)
        {
            double[] middle = [.. open.Select((bracket, i) =>
                bracket.Inside * Math.Pow(bracket.Outside / bracket.Inside, values[i].Inside / (values[i].Inside - values[i].Outside)))];
            double[][] powers = Powers(evaluation, middle);
            bool isFound = true;
            for (int i = 0; i < open.Count; i++)
            {
                (int block, bool upper, double inside, double outside) = open[i];
                double value = Math.Log(Math.Max(1e-300, powers[block][i]) / (centre[block][0] / 2));
                (double valueInside, double valueOutside, int last) = values[i];
                if (value < 0)
                {
                    open[i] = (block, upper, inside, middle[i]);
                    values[i] = (last == 1 ? valueInside / 2 : valueInside, value, 1);
                }
                else
                {
                    open[i] = (block, upper, middle[i], outside);
                    values[i] = (value, last == -1 ? valueOutside / 2 : valueOutside, -1);
                }

                corners[block] = upper ? (corners[block].Low, middle[i]) : (middle[i], corners[block].High);
                isFound &= Math.Abs(value) < AtCorner;
            }

            if (isFound)
            {
                break;
            }
        }

        return corners;
    }

    private static double[][] Powers(Evaluation evaluation, double[] hertz)
    {
        int nodes = evaluation.Path.Nodes;
        double[][] power = [.. Enumerable.Range(0, nodes + 1).Select(_ => new double[hertz.Length])];
        for (int first = 0; first < hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, hertz.Length - first);
            evaluation.Path.SweepTransfer(hertz.AsSpan(first, n));
            for (int i = 0; i < n; i++)
            {
                double product = 1;
                for (int block = 0; block < nodes; block++)
                {
                    power[block][first + i] = evaluation.Path.BlockPower[block][i];
                    product *= block != 0 && evaluation.Design.Stages[block - 1].Role == StageRole.Notch
                        ? 1
                        : evaluation.Path.BlockPower[block][i];
                }

                power[nodes][first + i] = product;
            }
        }

        return power;
    }

    private static void AddDigital(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double fs = design.Converter.Rate.Hertz;
        var words = WordReport.Of(evaluation);
        for (int i = 0; i < evaluation.Digital.Stages.Count; i++)
        {
            DigitalStage stage = evaluation.Digital.Stages[i];
            SecondOrderSections sections = evaluation.Digital.Filters[i];
            DigitalIds ids = ResultIds.Digital.Of(stage.Name);
            list.Number(ids.GroupDelay, $"group delay of {stage.Name}", "τ",
                Duration.FromSeconds(sections.GroupDelay(evaluation.CentreHertz, fs)), Equations.GroupDelay);
            words?.AddTo(list, findings, i, ids);
            double radius = sections.PoleRadius;
            if (0 < radius && radius < 1)
            {
                double tau = -1 / (fs * Math.Log(radius));
                list.Number(
                    ids.RingTime, $"time for {stage.Name} to ring down to 1 %", "t", Duration.FromSeconds(Math.Log(100) * tau),
                    Equations.RingTime,
                    hand: stage is DigitalNotch named
                        ? FilterFormulas.NotchRingTime(named.Centre, named.Q, design.Converter.Rate, Ratio.FromPercent(1))
                        : null);
            }

            if (stage is DigitalNotch notch)
            {
                double deviation = design.Mains.Deviation.Fraction, f0 = notch.Centre.Hertz;
                double power = Math.Max(sections.PowerResponse(f0 * (1 + deviation), fs), sections.PowerResponse(f0 * (1 - deviation), fs));
                list.Decibel(
                    ids.NotchDepth, $"depth of {stage.Name} over the mains' deviation", "", 1 / Math.Sqrt(power), Equations.NotchDepth,
                    "the mains does not deviate",
                    deviation == 0
                        ? null
                        : FilterFormulas.NotchAttenuation(Frequency.FromHertz(f0 * (1 + deviation)), notch.Centre, notch.Q),
                            "the formula is for an analogue notch");
            }
        }
    }
}
