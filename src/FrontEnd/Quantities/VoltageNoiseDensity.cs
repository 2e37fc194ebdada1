namespace FrontEnd.Quantities;

/// <summary>A voltage noise density, the square root of a one-sided power density. Symbol e, held in V/√Hz.</summary>
public readonly record struct VoltageNoiseDensity : IQuantity
{
    private VoltageNoiseDensity(double voltsPerRootHertz) => VoltsPerRootHertz = Require.Finite(voltsPerRootHertz);

    public double VoltsPerRootHertz { get; }
    public double NanovoltsPerRootHertz => VoltsPerRootHertz * 1e9;
    double IQuantity.SiValue => VoltsPerRootHertz;
    string IQuantity.SiUnit => "V/√Hz";

    public static VoltageNoiseDensity FromVoltsPerRootHertz(double voltsPerRootHertz) => new(voltsPerRootHertz);
    public static VoltageNoiseDensity FromNanovoltsPerRootHertz(double nanovoltsPerRootHertz) => new(nanovoltsPerRootHertz / 1e9);
}
