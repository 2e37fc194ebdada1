using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Inputs;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>Signs of the built deviations: mismatch of the electrodes, tolerance of the resistors, tolerance of the capacitors.</summary>
internal readonly record struct BuiltSigns(int Mismatch, int Resistors, int Capacitors)
{
    public static readonly BuiltSigns Built = new(1, 1, 1);

    /// <summary>All eight, <see cref="Built"/> first.</summary>
    public static readonly BuiltSigns[] All =
        [.. from m in new[] { 1, -1 } from r in new[] { 1, -1 } from c in new[] { 1, -1 } select new BuiltSigns(m, r, c)];
}

/// <summary>What the mains does at the input at one frequency, rms RTI [V] unless said otherwise: one lane of
/// <see cref="MainsLanes"/>.</summary>
internal record MainsAtInput
{
    public MainsAtInput()
    {
    }

    public MainsAtInput(in MainsLanes lanes, int lane)
    {
        (Imbalance, Amplifier, Loop, Total) = (lanes.Imbalance[lane], lanes.Amplifier[lane], lanes.Loop[lane], lanes.Total[lane]);
        (CommonMode, Difference, Drive) = (lanes.CommonMode[lane], lanes.Difference[lane], lanes.Drive[lane]);
        (FirstBuffer, SecondBuffer) = (lanes.FirstBuffer[lane], lanes.SecondBuffer[lane]);
    }

    /// <summary>Dividers and leads together.</summary>
    public double Imbalance { get; }

    /// <summary>The common mode through the amplifier's finite rejection.</summary>
    public double Amplifier { get; }

    /// <summary>Induced in the leads' loop.</summary>
    public double Loop { get; }

    public double Total { get; }

    public double RootSumOfSquares => Math.Sqrt((Imbalance * Imbalance) + (Amplifier * Amplifier) + (Loop * Loop));

    /// <summary>Mean of the amplifier's inputs against common [V rms, at the amplifier].</summary>
    public double CommonMode { get; }

    /// <summary>Difference of the amplifier's inputs [V rms, at the amplifier].</summary>
    public double Difference { get; }

    /// <summary>Driven ground's output against common [V rms]; 0 without one.</summary>
    public double Drive { get; }

    /// <summary>Output of the first of the electrodes' buffers that are there [V rms]; 0 without one.</summary>
    public double FirstBuffer { get; }

    /// <summary>Output of the second [V rms]; 0 without one.</summary>
    public double SecondBuffer { get; }
}

/// <summary>The mains at the input with its parts told apart: one lane of <see cref="MainsPartsLanes"/> besides.</summary>
internal sealed record MainsPartsAtInput : MainsAtInput
{
    public MainsPartsAtInput()
    {
    }

    public MainsPartsAtInput(in MainsLanes lanes, in MainsPartsLanes parts, int lane)
        : base(lanes, lane)
    {
        (BodyCommonMode, Divider, Leads) = (parts.BodyCommonMode[lane], parts.Divider[lane], parts.Leads[lane]);
    }

    /// <summary>Body against the amplifier's common, without the leads' own couplings.</summary>
    public double BodyCommonMode { get; }

    /// <summary>Through the unequal dividers of electrodes and inputs.</summary>
    public double Divider { get; }

    /// <summary>What the leads' couplings add.</summary>
    public double Leads { get; }
}

/// <summary>One harmonic of the mains on its way through the chain, rms RTI [V].</summary>
internal sealed record MainsHarmonic(
    int Order, double Hertz, MainsAtInput AtInput, double Converter, double Recorded, double LandsAt, double LandsLow, double LandsHigh,
    bool InBand);

/// <summary>The mains and its harmonics from the room to the recording.</summary>
internal sealed class MainsBudget
{
    /// <summary>An electrode that is off has its impedance so many times: even a short circuit then lies above every leak.</summary>
    private const double OpenFactor = 1e15;

    private readonly Design _design;
    private readonly InputLanes _input;
    private readonly BuildLanes _builds;
    private readonly BuiltParts? _built;
    private readonly double[] _hertz = new double[Vector<double>.Count];
    private readonly double[] _share = new double[Vector<double>.Count];
    private readonly double[] _fieldShare = new double[Vector<double>.Count];
    private readonly BuiltParts[] _parts = new BuiltParts[Vector<double>.Count];

    public MainsBudget(Design design, SignalPath path, DigitalChain digital, double gainMid, BuiltParts? built = null)
    {
        _design = design;
        _built = built;
        InputModel model = path.Model.Input;
        string[] changing = [InputCircuit.ActiveResistor, InputCircuit.ReferenceResistor, InputCircuit.ActiveShunt, InputCircuit.ReferenceShunt];
        _input = new InputLanes(design, model, isChecked: true,
            [.. changing.Select(model.Part).OfType<NetworkPart>().Select(part => part.Element), model.ActiveLeadElement, model.ReferenceLeadElement]);
        _builds = new BuildLanes(path.Model, BuiltParts.Balanced(design));
        Signs = BuiltSigns.Built;
        AtInput = new MainsPartsAtInput();
        BuiltSigns[] all = built is not null ? [BuiltSigns.Built] : BuiltSigns.All;
        MainsPartsAtInput[] combinations = SolveParts([.. all.Select(signs => At(1, 1, Parts(signs)))]);
        for (int i = 0; i < all.Length; i++)
        {
            if (AtInput.Total < combinations[i].Total)
            {
                (AtInput, Signs) = (combinations[i], all[i]);
            }
        }

        Choices = SolveChoices();
        Harmonics = Walk(path, digital, gainMid);
    }

    private readonly record struct Lane(double Hertz, double Share, double FieldShare, BuiltParts Built);

    /// <summary>The signs with the largest total, used for everything mains.</summary>
    public BuiltSigns Signs { get; }

    /// <summary>At the fundamental.</summary>
    public MainsPartsAtInput AtInput { get; }

    /// <summary>At the fundamental with either side of the pair at its larger or its smaller values, for channels that are derived from this one
    /// and others; alike where one device's own parts are given.</summary>
    public MainsChoices Choices { get; }

    public IReadOnlyList<MainsHarmonic> Harmonics { get; }

    /// <summary>Worst-case sum of what is recorded inside the band.</summary>
    public double Recorded => Harmonics.Where(harmonic => harmonic.InBand).Sum(harmonic => harmonic.Recorded);

    public double RecordedEverywhere => Harmonics.Sum(harmonic => harmonic.Recorded);

    /// <summary>√2·Σ_h of the driven ground's mains voltage: its peak without dc.</summary>
    public double DriveSwing => Math.Sqrt(2) * Harmonics.Sum(harmonic => harmonic.AtInput.Drive);

    /// <summary>Every harmonic with one electrode off, as <see cref="InputLanes"/> numbers them: of so much impedance that nothing comes
    /// through it.</summary>
    public MainsAtInput[] WithOpenElectrode(int electrode)
    {
        BuiltParts parts = Parts(Signs), open = electrode switch
        {
            InputLanes.Active => parts with { ActiveFactor = parts.ActiveFactor * OpenFactor },
            InputLanes.Reference => parts with { ReferenceFactor = parts.ReferenceFactor * OpenFactor },
            _ => parts with { GroundFactor = parts.GroundFactor * OpenFactor },
        };
        return Solve([.. Harmonics.Select(harmonic => At(harmonic.Order, 1, open))]);
    }

    /// <summary>One harmonic at frequencies that are off its own by factors.</summary>
    public MainsAtInput[] At(int order, IReadOnlyList<double> factors)
    {
        BuiltParts parts = Parts(Signs);
        return Solve([.. factors.Select(factor => At(order, factor, parts))]);
    }

    /// <summary>Share of the fundamental that a harmonic has, by its order; 0 beyond those that are given.</summary>
    internal static double Share(IReadOnlyList<double> shares, int order) => order <= shares.Count ? shares[order - 1] : 0;

    /// <summary>Share of the field at the fundamental that a harmonic has.</summary>
    internal static double FieldShare(Mains mains, int order) => Share(mains.FieldHarmonics ?? mains.Harmonics, order);

    /// <summary>What is recorded of a line at the input [V rms RTI]: through path and converter to the samples, over the mid-band gain,
    /// then through the digital filters where it lands.</summary>
    /// <param name="atInput">The line [V rms RTI].</param>
    /// <param name="path">|H_path·H_adc| there over the mid-band gain.</param>
    /// <param name="digital">The digital filters.</param>
    /// <param name="hertz">The line's frequency [Hz].</param>
    /// <param name="rate">Sampling rate [Hz].</param>
    internal static Vector<double> RecordedAt(
        Vector<double> atInput, Vector<double> path, DigitalChain digital, double hertz, double rate) =>
        atInput * path * Math.Sqrt(digital.Power(Folding.LandsAt(hertz, rate)));

    /// <summary>A device's own parts, which have no signs, or those that the tolerances' signs give.</summary>
    private BuiltParts Parts(BuiltSigns signs) =>
        _built ?? BuiltParts.Signed(_design, signs.Mismatch, signs.Resistors, signs.Capacitors);

    /// <summary>A harmonic at a frequency off its own by a factor, with some parts.</summary>
    private Lane At(int order, double factor, BuiltParts parts)
    {
        Mains mains = _design.Mains;
        return new Lane(order * mains.Frequency.Hertz * factor, Share(mains.Harmonics, order), FieldShare(mains, order), parts);
    }

    private List<MainsHarmonic> Walk(SignalPath path, DigitalChain digital, double gainMid)
    {
        Mains mains = _design.Mains;
        AnalogDigitalConverter converter = _design.Converter;
        double fs = converter.Rate.Hertz, deviation = mains.Deviation.Fraction;
        int count = mains.HighestHarmonic;
        BuiltParts parts = Parts(Signs);
        var lanes = new Lane[3 * count];
        for (int order = 1; order <= count; order++)
        {
            int at = 3 * (order - 1);
            (lanes[at], lanes[at + 1], lanes[at + 2]) = (At(order, 1, parts), At(order, 1 + deviation, parts), At(order, 1 - deviation, parts));
        }

        MainsAtInput[] atInput = Solve(lanes);
        double[] hertzOf = Array.ConvertAll(lanes, lane => lane.Hertz), gain = new double[lanes.Length];
        for (int first = 0; first < lanes.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, lanes.Length - first);
            path.SweepTransfer(hertzOf.AsSpan(first, n));
            for (int lane = 0; lane < n; lane++)
            {
                gain[first + lane] = path.Size(path.Nodes - 1, lane) * converter.Response(hertzOf[first + lane]) / gainMid;
            }
        }

        var harmonics = new List<MainsHarmonic>(count);
        for (int order = 1; order <= count; order++)
        {
            int at = 3 * (order - 1);
            double hertz = lanes[at].Hertz, recorded = 0;
            for (int side = at + 1; side <= at + 2; side++)
            {
                recorded = Math.Max(recorded, RecordedAt(new(atInput[side].Total), new(gain[side]), digital, lanes[side].Hertz, fs)[0]);
            }

            (double low, double high) = Folding.LandsWithin(lanes[at + 2].Hertz, lanes[at + 1].Hertz, fs);
            bool inBand = low <= _design.Band.High.Hertz + 1e-9 && _design.Band.Low.Hertz - 1e-9 <= high;
            harmonics.Add(
                new MainsHarmonic(
                    order, hertz, atInput[at], atInput[at].Total * gain[at], recorded, Folding.LandsAt(hertz, fs), low, high, inBand));
        }

        return harmonics;
    }

    private MainsAtInput[] Solve(Lane[] lanes)
    {
        var results = new MainsAtInput[lanes.Length];
        for (int first = 0; first < lanes.Length; first += Vector<double>.Count)
        {
            MainsLanes group = SolveGroup(lanes, first, out _, out _);
            for (int lane = 0; lane < Math.Min(Vector<double>.Count, lanes.Length - first); lane++)
            {
                results[first + lane] = new MainsAtInput(group, lane);
            }
        }

        return results;
    }

    private MainsPartsAtInput[] SolveParts(Lane[] lanes)
    {
        var results = new MainsPartsAtInput[lanes.Length];
        for (int first = 0; first < lanes.Length; first += Vector<double>.Count)
        {
            MainsLanes group = SolveGroup(lanes, first, out Vector<double> hertz, out Vector<double> share);
            MainsPartsLanes parts = MainsPartsLanes.At(_input, _builds, hertz, share, group);
            for (int lane = 0; lane < Math.Min(Vector<double>.Count, lanes.Length - first); lane++)
            {
                results[first + lane] = new MainsPartsAtInput(group, parts, lane);
            }
        }

        return results;
    }

    private MainsChoices SolveChoices()
    {
        BuiltParts high = Parts(BuiltSigns.Built), low = Parts(new BuiltSigns(-1, -1, -1));

        // Where one side of the pair stands at its larger values the signs put the other at its smaller.
        Lane[] lanes = [.. new[] { high.WithReferenceOf(low), low, high, low.WithReferenceOf(high) }.Select(parts => At(1, 1, parts))];
        var choices = new MainsChoice[lanes.Length];
        for (int first = 0; first < lanes.Length; first += Vector<double>.Count)
        {
            MainsLanes group = SolveGroup(lanes, first, out _, out _);
            ComplexLanes atTheSite = group.AtTheSite;
            for (int lane = 0; lane < Math.Min(Vector<double>.Count, lanes.Length - first); lane++)
            {
                choices[first + lane] = new MainsChoice(atTheSite[lane], group.Amplifier[lane] + group.Loop[lane]);
            }
        }

        return new MainsChoices((choices[0], choices[1]), (choices[2], choices[3]));
    }

    /// <summary>Solves a group of lanes; the last lane is repeated where there are too few.</summary>
    private MainsLanes SolveGroup(Lane[] lanes, int first, out Vector<double> hertz, out Vector<double> share)
    {
        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            (_hertz[lane], _share[lane], _fieldShare[lane], _parts[lane]) = lanes[Math.Min(first + lane, lanes.Length - 1)];
        }

        (hertz, share) = (new Vector<double>(_hertz), new Vector<double>(_share));
        _builds.SetLeads(_parts);
        _input.Set(_builds);
        return MainsLanes.At(_input, _design, _builds, hertz, share, new Vector<double>(_fieldShare));
    }
}
