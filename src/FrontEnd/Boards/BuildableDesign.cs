using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Topologies;

namespace FrontEnd.Boards;

/// <summary>A design with values that can be bought: each resistor and capacitor at the nearest member of its series, the gain that the gain
/// resistor in E96 sets, the driven ground's gain and frequency that its parts set, the middle that the divider sets.</summary>
/// <remarks>A resistor that protects the wearer goes to the next member above, never below. The buildable design of a buildable design is
/// itself.</remarks>
/// <param name="Design">What is built; its figures are the board's.</param>
/// <param name="GainResistor">R_G; null where none is fitted or where its value is not known.</param>
/// <param name="Drive">Parts of the driven ground; null where the ground is not driven.</param>
/// <param name="Averaging">Each of the resistors that average the two inputs for it.</param>
/// <param name="DividerUpper">Of the middle of the supply, from the analogue supply to the tap.</param>
/// <param name="DividerLower">From the tap to common.</param>
/// <param name="Findings">What cannot be built as stated.</param>
internal sealed record BuildableDesign(
    Design Design, Resistance? GainResistor, GroundIntegrator? Drive, Resistance Averaging, Resistance DividerUpper, Resistance DividerLower,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>How many nodes are averaged for the driven ground: a channel's input and the reference's.</summary>
    public const int AveragedNodes = 2;

    /// <summary>What a follower drives without error worth counting (common practice, no source).</summary>
    public static readonly Resistance LeastAveraging = Resistance.FromKilohms(1);

    /// <summary>The largest film capacitor that a board has room for (common practice, no source).</summary>
    public static readonly Capacitance LargestFilm = Capacitance.FromMicrofarads(10);

    /// <summary>A ceramic capacitor below this is no part any more but the board's own (common practice, no source).</summary>
    public static readonly Capacitance LeastCapacitor = Capacitance.FromPicofarads(10);

    private const PreferredSeries Fine = PreferredSeries.E96;

    /// <summary>Of a design that has no errors.</summary>
    public static BuildableDesign Of(Design stated)
    {
        List<Finding> findings = [];
        Design design = Inputs(stated) with { Stages = [.. stated.Stages.Select(Bought)], Board = Bought(stated.Board) };
        Resistance? gain = null;
        if (design.Amplifier.GainResistor is { } resistor)
        {
            gain = PreferredValues.Nearest(resistor, Fine);
            design = design with { Amplifier = design.Amplifier with { Gain = 1 + (design.Amplifier.GainConstant!.Value / gain.Value) } };
        }
        else if (design.Amplifier is { HasGainResistor: true, GainConstant: null })
        {
            findings.Add(Finding.Warning(Messages.GainResistorUnknown, DesignKeys.Amplifier.GainConstant,
                $"the gain resistor of the differential amplifier has no value: its gain is {QuantityText.FormatNumber(design.Amplifier.Gain)}, but how a resistor sets it is not known",
                "the gain is 1 + k/R_G; k is in the amplifier's data sheet; 49.4 kΩ, 50 kΩ and 100 kΩ are usual (from memory)",
                "set amplifier.gain-constant, or amplifier.gains if the part has fixed ones"));
        }

        GroundIntegrator? drive = null;
        Resistance averaging = default;
        if (design.GroundIsDriven)
        {
            drive = Integrator(design, findings);
            averaging = drive.Averaging(AveragedNodes);
            design = design with { GroundDrive = design.GroundDrive with { DcGain = drive.DcGain, UnityGainFrequency = drive.UnityGain } };
        }

        (Resistance upper, Resistance lower) = Divider(ref design);
        return new BuildableDesign(design, gain, drive, averaging, upper, lower, findings);
    }

    /// <summary>Protection, buffers, capacitors, bias and ground resistors.</summary>
    private static Design Inputs(Design design)
    {
        InputNetwork input = design.Input;
        return design with
        {
            Input = input with
            {
                SeriesResistor = AtLeast(input.SeriesResistor, input.ResistorTolerance),
                ShuntCapacitor = Nearest(input.ShuntCapacitor, input.CapacitorTolerance),
                DifferentialCapacitor = Nearest(input.DifferentialCapacitor, input.CapacitorTolerance),
                BiasResistor = input.BiasResistor is { } bias ? Nearest(bias, input.ResistorTolerance) : null,
            },
            Electrodes = design.Electrodes with
            {
                ActiveBuffer = Bought(design.Electrodes.ActiveBuffer, input.ResistorTolerance),
                ReferenceBuffer = Bought(design.Electrodes.ReferenceBuffer, input.ResistorTolerance),
            },
            ChannelList = [.. design.ChannelList.Select(channel => channel with
            {
                Buffer = Bought(channel.Buffer, input.ResistorTolerance),
                Minus = channel.Minus is { } minus ? minus with { Buffer = Bought(minus.Buffer, input.ResistorTolerance) } : null,
            })],
            GroundDrive = design.GroundDrive with { SeriesResistor = AtLeast(design.GroundDrive.SeriesResistor, design.GroundDrive.ResistorTolerance) },
        };
    }

    private static ElectrodeBuffer? Bought(ElectrodeBuffer? buffer, Ratio tolerance) => buffer is null ? null : buffer with
    {
        SkinResistor = AtLeast(buffer.SkinResistor, tolerance), OutputResistance = Nearest(buffer.OutputResistance, tolerance),
    };

    /// <summary>What stands on the board beside the signal's path, of the tolerances that it is ordered in.</summary>
    private static BoardChoices Bought(BoardChoices board) => board with
    {
        MidSupplyCapacitor = Nearest(board.MidSupplyCapacitor, BoardTolerances.Capacitors), Decoupling = Nearest(board.Decoupling, BoardTolerances.Decoupling),
        Bulk = Nearest(board.Bulk, BoardTolerances.Decoupling), SupplyResistor = Nearest(board.SupplyResistor, BoardTolerances.Resistors),
        DataResistor = Nearest(board.DataResistor, BoardTolerances.Resistors),
    };

    /// <summary>A stage with each of its pieces at the nearest value that can be bought.</summary>
    private static Stage Bought(Stage stage)
    {
        Stage bought = stage;
        foreach (CircuitPart part in stage.Circuit().Parts.Where(part => 0 < part.Value))
        {
            double one = part.OnePiece.SiValue;
            double nearest = PartValue.Of(part.OnePiece, Ratio.FromFraction(part.Tolerance)).Nearest?.SiValue ?? one;
            if (nearest != one)
            {
                bought = TopologyCatalogue.With(bought, part.Role, part.Kind == PartKind.Resistor ? nearest / part.Pieces : nearest * part.Pieces);
            }
        }

        return bought;
    }

    private static Resistance Nearest(Resistance value, Ratio tolerance) =>
        value.Ohms <= 0 ? value : (Resistance?)PartValue.Of(value, tolerance).Nearest ?? value;

    private static Capacitance Nearest(Capacitance value, Ratio tolerance) =>
        value.Farads <= 0 ? value : (Capacitance?)PartValue.Of(value, tolerance).Nearest ?? value;

    private static Resistance AtLeast(Resistance value, Ratio tolerance) =>
        value.Ohms <= 0 || PartValue.Of(value, tolerance) is not { Nearest: not null } bought ? value : PreferredValues.AtLeast(value, bought.Series);

    /// <summary>The parts whose gain and frequency are nearest to the stated ones: a capacitor of E12, resistors of E96, R_f at most what the
    /// board allows.</summary>
    private static GroundIntegrator Integrator(Design design, List<Finding> findings)
    {
        double gain = design.GroundDrive.DcGain, unity = design.GroundDrive.UnityGainFrequency.Hertz, largest = design.Board.GroundFeedback.Ohms;
        double leastInput = LeastAveraging.Ohms / AveragedNodes;
        if (largest / gain < leastInput * (1 - Same))
        {
            double can = largest / leastInput;
            findings.Add(Finding.Warning(Messages.GroundGainTooLarge, DesignKeys.GroundDrive.DcGain,
                $"the driven ground's gain of {QuantityText.FormatNumber(gain)} at dc cannot be built: with {QuantityText.FormatPart(design.Board.GroundFeedback)} across its amplifier the averaging resistors would be {QuantityText.FormatTrimmed(Resistance.FromOhms(AveragedNodes * largest / gain), 3)}",
                $"a follower can drive {QuantityText.FormatPart(LeastAveraging)} or more; the board is drawn with the nearest gain that can be built",
                $"set {DesignKeys.GroundDrive.DcGain} to {QuantityText.FormatNumber(Rounded(can, up: false))} or less, or raise {DesignKeys.Board.GroundFeedback}"));
            gain = can;
        }

        double largestInput = largest / gain, greatest = LargestFilm.Farads, least = LeastCapacitor.Farads;
        if (1 / (2 * Math.PI * largestInput * unity) is var capacitor && (greatest * (1 + Same) < capacitor || largestInput < leastInput))
        {
            double can = 1 / (2 * Math.PI * largestInput * greatest);
            findings.Add(Finding.Warning(Messages.GroundFrequencyTooLow, DesignKeys.GroundDrive.UnityGainFrequency,
                $"the driven ground's unity-gain frequency of {QuantityText.FormatPart(design.GroundDrive.UnityGainFrequency)} needs {QuantityText.FormatTrimmed(Capacitance.FromFarads(capacitor), 3)} across its amplifier",
                $"a film capacitor above {QuantityText.FormatPart(LargestFilm)} does not fit on the board; it is drawn with the nearest frequency that can be built",
                $"set {DesignKeys.GroundDrive.UnityGainFrequency} to {QuantityText.FormatPart(Frequency.FromHertz(Rounded(can, up: true)))} or more, or lower {DesignKeys.GroundDrive.DcGain}"));
            unity = can;
        }
        else if (capacitor < least * (1 - Same))
        {
            double can = 1 / (2 * Math.PI * largestInput * least);
            if (leastInput <= 1 / (2 * Math.PI * unity * least))
            {
                largestInput = 1 / (2 * Math.PI * unity * least);
            }
            else
            {
                can = 1 / (2 * Math.PI * leastInput * least);
                findings.Add(Finding.Warning(Messages.GroundFrequencyTooHigh, DesignKeys.GroundDrive.UnityGainFrequency,
                    $"the driven ground's unity-gain frequency of {QuantityText.FormatPart(design.GroundDrive.UnityGainFrequency)} needs {QuantityText.FormatTrimmed(Capacitance.FromFarads(capacitor), 3)} across its amplifier",
                    $"below {QuantityText.FormatPart(LeastCapacitor)} the board's own capacitance dominates; it is drawn with the nearest frequency that can be built",
                    $"set {DesignKeys.GroundDrive.UnityGainFrequency} to {QuantityText.FormatPart(Frequency.FromHertz(Rounded(can, up: false)))} or less"));
                unity = can;
                largestInput = leastInput;
            }
        }

        return Nearest(gain, unity, leastInput, largestInput);
    }

    /// <summary>A value of three digits that keeps a limit: what is asked for is then built without a word.</summary>
    private static double Rounded(double value, bool up)
    {
        const int Digits = 3;
        double step = Math.Pow(10, Math.Floor(Math.Log10(value)) - Digits + 1), steps = value / step;
        return (up ? Math.Ceiling(steps * (1 - Same)) : Math.Floor(steps * (1 + Same))) * step;
    }

    /// <summary>Values that differ by less are one after some arithmetic.</summary>
    private const double Same = 1e-9;

    private static GroundIntegrator Nearest(double gain, double unity, double leastInput, double largestInput)
    {
        GroundIntegrator? best = null;
        double bestError = double.PositiveInfinity, largest = PreferredValues.AtMost(gain * largestInput * (1 + AsGood), Fine);
        double smallest = 1 / (2 * Math.PI * largestInput * unity), reach = Math.Clamp(1 / (2 * Math.PI * leastInput * unity), smallest, Decade * smallest);
        foreach (double farads in PreferredValues.Between(
            PreferredValues.AtMost(smallest, PreferredSeries.E12), PreferredValues.AtLeast(reach, PreferredSeries.E12), PreferredSeries.E12))
        {
            double exact = Math.Clamp(1 / (2 * Math.PI * unity * farads), leastInput, largestInput);
            double input = PreferredValues.Nearest(AveragedNodes * exact, Fine) / AveragedNodes;
            double feedback = Math.Min(PreferredValues.Nearest(gain * input, Fine), largest);
            GroundIntegrator parts = new(Resistance.FromOhms(input), Resistance.FromOhms(feedback), Capacitance.FromFarads(farads));

            // The largest R_f comes first and gives way only to parts that are plainly nearer.
            double error = Math.Pow(Math.Log(parts.DcGain / gain), 2) + Math.Pow(Math.Log(parts.UnityGain.Hertz / unity), 2);
            if (error < bestError - Same)
            {
                (best, bestError) = (parts, error);
            }
        }

        return best!;
    }

    private const double Decade = 10;

    /// <summary>A member of E96 that is above a limit by less is as good as the limit.</summary>
    private const double AsGood = 0.005;

    private static (Resistance Upper, Resistance Lower) Divider(ref Design design)
    {
        Resistance lower = PreferredValues.Nearest(design.Board.MidSupplyResistor, Fine);
        if (design.Supply.MidRail is not { } middle)
        {
            return (lower, lower);
        }

        double lowest = design.Supply.Lowest.Volts;
        double upper = middle.Volts <= 0 || lowest <= middle.Volts ? lower.Ohms : PreferredValues.Nearest(lower.Ohms * ((lowest / middle.Volts) - 1), Fine);
        design = design with { Supply = design.Supply with { MidRail = Voltage.FromVolts(lowest * lower.Ohms / (lower.Ohms + upper)) } };
        return (Resistance.FromOhms(upper), lower);
    }
}
