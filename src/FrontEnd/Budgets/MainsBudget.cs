using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>Signs of the built deviations: mismatch of the electrodes, tolerance of the resistors, tolerance of the capacitors.</summary>
internal readonly record struct BuiltSigns(int Mismatch, int Resistors, int Capacitors)
{
    public static readonly BuiltSigns Built = new(1, 1, 1);
}

/// <summary>What the mains does at the input at one frequency, rms RTI [V] unless said otherwise.</summary>
internal sealed record MainsAtInput
{
    /// <summary>Body against the amplifier's common, without the leads' own couplings.</summary>
    public double BodyCommonMode { get; init; }

    public double Divider { get; init; }

    public double Leads { get; init; }

    public double Imbalance { get; init; }

    public double Amplifier { get; init; }

    public double Loop { get; init; }

    public double Total => Imbalance + Amplifier + Loop;

    public double RootSumOfSquares => Math.Sqrt((Imbalance * Imbalance) + (Amplifier * Amplifier) + (Loop * Loop));

    /// <summary>Mean of the amplifier's inputs against common [V rms, at the amplifier].</summary>
    public double CommonMode { get; init; }

    /// <summary>Difference of the amplifier's inputs [V rms, at the amplifier].</summary>
    public double Difference { get; init; }

    /// <summary>Driven ground's output against common [V rms]; 0 without one.</summary>
    public double Drive { get; init; }
}

/// <summary>One harmonic of the mains on its way through the chain, rms RTI [V].</summary>
internal sealed record MainsHarmonic(int Order, double Hertz, MainsAtInput AtInput, double Converter, double Recorded, double LandsAt, double LandsLow, double LandsHigh, bool InBand);

/// <summary>The mains and its harmonics from the room to the recording.</summary>
internal sealed class MainsBudget
{
    private const double OpenFactor = 1e6;

    private readonly Design _design;
    private readonly InputModel _model;
    private readonly BuiltParts? _built;

    public MainsBudget(Design design, SignalPath path, DigitalChain digital, double gainMid, BuiltParts? built = null)
    {
        _design = design;
        _built = built;
        _model = new InputModel(design, Varying.Tolerances, built);
        Mains mains = design.Mains;
        double f0 = mains.Frequency.Hertz;
        Signs = BuiltSigns.Built;
        AtInput = new MainsAtInput();
        BuiltSigns[] all = built is not null ? [BuiltSigns.Built] : [.. from m in new[] { 1, -1 } from r in new[] { 1, -1 } from c in new[] { 1, -1 } select new BuiltSigns(m, r, c)];
        MainsAtInput[] combinations = Solve([.. all.Select(signs => new Lane(f0, Share(mains.Harmonics, 0), FieldShare(0), signs))]);
        for (int i = 0; i < all.Length; i++)
        {
            if (AtInput.Total < combinations[i].Total)
            {
                (AtInput, Signs) = (combinations[i], all[i]);
            }
        }

        Harmonics = Walk(path, digital, gainMid);
    }

    private readonly record struct Lane(double Hertz, double Share, double FieldShare, BuiltSigns Signs)
    {
        /// <summary>The electrode that has come off: 0 active, 1 reference, 2 ground; −1 for none.</summary>
        public int Open { get; init; } = -1;
    }

    /// <summary>The signs with the largest total, used for everything mains.</summary>
    public BuiltSigns Signs { get; }

    /// <summary>At the fundamental.</summary>
    public MainsAtInput AtInput { get; }

    public IReadOnlyList<MainsHarmonic> Harmonics { get; }

    /// <summary>Worst-case sum of what is recorded inside the band.</summary>
    public double Recorded => Harmonics.Where(harmonic => harmonic.InBand).Sum(harmonic => harmonic.Recorded);

    public double RecordedEverywhere => Harmonics.Sum(harmonic => harmonic.Recorded);

    /// <summary>√2·Σ_h of the driven ground's mains voltage: its peak without dc.</summary>
    public double DriveSwing => Math.Sqrt(2) * Harmonics.Sum(harmonic => harmonic.AtInput.Drive);

    /// <summary>The fundamental with the active, the reference and the ground electrode come off in turn: a million times its impedance.</summary>
    public MainsAtInput[] WithOpenElectrodes()
    {
        var lane = new Lane(_design.Mains.Frequency.Hertz, Share(_design.Mains.Harmonics, 0), FieldShare(0), BuiltSigns.Built);
        return Solve([lane with { Open = 0 }, lane with { Open = 1 }, lane with { Open = 2 }]);
    }

    private static double Share(IReadOnlyList<double> shares, int index) => index < shares.Count ? shares[index] : 0;

    private double FieldShare(int index) => Share(_design.Mains.FieldHarmonics ?? _design.Mains.Harmonics, index);

    private List<MainsHarmonic> Walk(SignalPath path, DigitalChain digital, double gainMid)
    {
        Mains mains = _design.Mains;
        AnalogDigitalConverter converter = _design.Converter;
        double f0 = mains.Frequency.Hertz, deviation = mains.Deviation.Fraction;
        int count = Math.Max(mains.Harmonics.Count, mains.FieldHarmonics?.Count ?? 0);
        var lanes = new List<Lane>();
        for (int h = 1; h <= count; h++)
        {
            foreach (double factor in new[] { 1, 1 + deviation, 1 - deviation })
            {
                lanes.Add(new Lane(h * f0 * factor, Share(mains.Harmonics, h - 1), FieldShare(h - 1), Signs));
            }
        }

        MainsAtInput[] atInput = Solve([.. lanes]);
        var converted = new double[lanes.Count];
        for (int first = 0; first < lanes.Count; first += SignalPath.Chunk)
        {
            double[] hertz = [.. lanes.Skip(first).Take(SignalPath.Chunk).Select(lane => lane.Hertz)];
            path.Sweep(hertz);
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                converted[first + lane] = atInput[first + lane].Total * path.Path(lane).Magnitude * converter.Response(hertz[lane]) / gainMid;
            }
        }

        double fs = converter.Rate.Hertz;
        var harmonics = new List<MainsHarmonic>();
        for (int h = 1; h <= count; h++)
        {
            int at = 3 * (h - 1);
            double recorded = 0;
            for (int side = 1; side <= 2; side++)
            {
                double landing = Folding.LandsAt(lanes[at + side].Hertz, fs);
                recorded = Math.Max(recorded, converted[at + side] * Math.Sqrt(digital.Power(landing)));
            }

            (double low, double high) = Folding.LandsWithin(lanes[at + 2].Hertz, lanes[at + 1].Hertz, fs);
            bool inBand = low <= _design.Band.High.Hertz + 1e-9 && _design.Band.Low.Hertz - 1e-9 <= high;
            harmonics.Add(new MainsHarmonic(h, h * f0, atInput[at], converted[at], recorded, Folding.LandsAt(h * f0, fs), low, high, inBand));
        }

        return harmonics;
    }

    /// <summary>Solves the input network with and without the leads' couplings on every lane.</summary>
    private MainsAtInput[] Solve(Lane[] lanes)
    {
        int n = lanes.Length;
        NetworkSweep sweep = _model.Program.CreateSweep(2 * n);
        var electrodes = new ElectrodeLanes(sweep.Capacity);
        double[] active = new double[sweep.Capacity], reference = new double[sweep.Capacity], ground = new double[sweep.Capacity];
        double m = _design.Electrodes.EffectiveMismatch;
        InputNetwork input = _design.Input;
        double leads = _design.Mains.LeadToMains.Farads * (1 - input.DrivenShield.Fraction);
        for (int lane = 0; lane < sweep.Capacity; lane++)
        {
            Lane at = lanes[Math.Min(lane / 2, n - 1)];
            double w = 2 * Math.PI * at.Hertz;
            sweep.Omega[lane] = w;
            active[lane] = (1 + (at.Signs.Mismatch * m / 2)) * (at.Open == 0 ? OpenFactor : 1);
            reference[lane] = (1 - (at.Signs.Mismatch * m / 2)) * (at.Open == 1 ? OpenFactor : 1);
            ground[lane] = at.Open == 2 ? OpenFactor : 1;
            double r = InputModel.ProtectionOhms(_design), dr = at.Signs.Resistors * input.ResistorTolerance.Fraction;
            double c = input.ShuntCapacitor.Farads, dc = at.Signs.Capacitors * input.CapacitorTolerance.Fraction;
            sweep.SlotReal(_model.ActiveResistor)[lane] = 1 / (r * (1 + dr));
            sweep.SlotReal(_model.ReferenceResistor)[lane] = 1 / (r * (1 - dr));
            sweep.SlotImaginary(_model.ActiveShunt)[lane] = w * c * (1 + dc);
            sweep.SlotImaginary(_model.ReferenceShunt)[lane] = w * c * (1 - dc);
            if (_built is { } own)
            {
                // A device that stands there has its own values and no signs.
                active[lane] = own.ActiveFactor * (at.Open == 0 ? OpenFactor : 1);
                reference[lane] = own.ReferenceFactor * (at.Open == 1 ? OpenFactor : 1);
                ground[lane] = own.GroundFactor * (at.Open == 2 ? OpenFactor : 1);
                sweep.SlotReal(_model.ActiveResistor)[lane] = 1 / own.ActiveOhms;
                sweep.SlotReal(_model.ReferenceResistor)[lane] = 1 / own.ReferenceOhms;
                sweep.SlotImaginary(_model.ActiveShunt)[lane] = w * own.ActiveFarads;
                sweep.SlotImaginary(_model.ReferenceShunt)[lane] = w * own.ReferenceFarads;
            }

            double lead = lane % 2 == 0 ? w * leads : 0;
            sweep.SlotImaginary(_model.ActiveLead)[lane] = lead;
            sweep.SlotImaginary(_model.ReferenceLead)[lane] = lead;
        }

        _model.SetElectrodes(sweep, sweep.Capacity, active, reference, ground, electrodes);
        int outputs = 0 <= _model.Drive ? 4 : 3;
        sweep.SolveAdjoint(2 * n, outputs);
        var results = new MainsAtInput[n];
        for (int i = 0; i < n; i++)
        {
            results[i] = AtLane(sweep, lanes[i], 2 * i, leads);
        }

        return results;
    }

    private MainsAtInput AtLane(NetworkSweep sweep, Lane lane, int with, double leads)
    {
        Mains mains = _design.Mains;
        int without = with + 1;
        double volts = mains.Voltage.Volts * lane.Share;
        Complex Phasor(int output, int at, double lead) => new Complex(0, 2 * Math.PI * lane.Hertz * volts) * (
            (mains.BodyToMains.Farads * sweep.Transfer(output, _model.BodyMainsPort, at))
            + (mains.AmplifierToMains.Farads * sweep.Transfer(output, _model.CommonMainsPort, at))
            + (lead * (sweep.Transfer(output, _model.ActiveLeadPort, at) + sweep.Transfer(output, _model.ReferenceLeadPort, at))));

        var admittance = new Complex(sweep.SlotReal(_model.ActiveElectrode)[with], sweep.SlotImaginary(_model.ActiveElectrode)[with]);
        double front = (admittance * sweep.Transfer(_model.Difference, _model.SignalPort, with)).Magnitude;
        Complex difference = Phasor(_model.Difference, with, leads), plain = Phasor(_model.Difference, without, 0);
        double common = Phasor(_model.Mean, with, leads).Magnitude;
        double x = _design.Amplifier.CmrrCorner.Hertz == 0 ? 0 : lane.Hertz / _design.Amplifier.CmrrCorner.Hertz;
        double rejection = _design.Amplifier.Cmrr.VoltageRatio / Math.Sqrt(1 + (x * x));
        return new MainsAtInput
        {
            BodyCommonMode = Phasor(_model.Body, without, 0).Magnitude,
            Divider = plain.Magnitude / front,
            Leads = (difference - plain).Magnitude / front,
            Imbalance = difference.Magnitude / front,
            Amplifier = common / rejection / front,
            Loop = 2 * Math.PI * lane.Hertz * mains.Field.Teslas * lane.FieldShare * mains.LoopArea.SquareMetres,
            CommonMode = common,
            Difference = difference.Magnitude,
            Drive = 0 <= _model.Drive ? Phasor(_model.Drive, with, leads).Magnitude : 0,
        };
    }
}
