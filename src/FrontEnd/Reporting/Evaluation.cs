using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Digital;

namespace FrontEnd.Reporting;

/// <summary>The budgets of one design, worked out once and read by every report.</summary>
internal sealed class Evaluation
{
    public Evaluation(Design design)
    {
        Design = design;
        Path = new SignalPath(design);
        Digital = new DigitalChain(design.Digital, design.Converter.Rate);
        double centre = design.Band.Centre.Hertz;
        Path.Sweep([centre]);
        CentreHertz = centre;
        Complex path = Path.Path(0);
        PathGain = path.Magnitude;
        GainMid = path.Magnitude * design.Converter.Response(centre);
        Noise = new NoiseBudget(design, Path, Digital, GainMid);
        Mains = new MainsBudget(design, Path, Digital, GainMid);
        Drive = design.GroundDrive.Kind == GroundKind.Driven && design.Electrodes.Ground is not null ? new DriveBudget(design) : null;
        Levels = new LevelsBudget(design, Path, Mains);
    }

    public Design Design { get; }

    public SignalPath Path { get; }

    public DigitalChain Digital { get; }

    public double CentreHertz { get; }

    /// <summary>|H_path| at the band's centre, without the converter's own response.</summary>
    public double PathGain { get; }

    public double GainMid { get; }

    public NoiseBudget Noise { get; }

    public MainsBudget Mains { get; }

    /// <summary>Null without a driven ground.</summary>
    public DriveBudget? Drive { get; }

    public LevelsBudget Levels { get; }

    /// <summary>|H_path·H_adc| at many frequencies.</summary>
    public double[] PathAndConverter(double[] hertz)
    {
        var gains = new double[hertz.Length];
        for (int first = 0; first < hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, hertz.Length - first);
            Path.Sweep(hertz.AsSpan(first, n));
            for (int i = 0; i < n; i++)
            {
                gains[first + i] = Path.Path(i).Magnitude * Design.Converter.Response(hertz[first + i]);
            }
        }

        return gains;
    }
}
