namespace FrontEnd.Quantities;

/// <summary>A current noise density, the square root of a one-sided power density. Symbol i, held in A/√Hz.</summary>
public readonly record struct CurrentNoiseDensity : IQuantity
{
    private CurrentNoiseDensity(double amperesPerRootHertz) => AmperesPerRootHertz = Require.Finite(amperesPerRootHertz);

    public double AmperesPerRootHertz { get; }
    public double FemtoamperesPerRootHertz => AmperesPerRootHertz * 1e15;
    double IQuantity.SiValue => AmperesPerRootHertz;
    string IQuantity.SiUnit => "A/√Hz";

    public static CurrentNoiseDensity FromAmperesPerRootHertz(double amperesPerRootHertz) => new(amperesPerRootHertz);
    public static CurrentNoiseDensity FromFemtoamperesPerRootHertz(double femtoamperesPerRootHertz) => new(femtoamperesPerRootHertz / 1e15);
}
