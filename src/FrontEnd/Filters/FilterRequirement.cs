namespace FrontEnd.Filters;

/// <summary>What a filter has to do: pass band, stop band, largest loss in the one and least loss in the other.</summary>
/// <param name="Pass">Shape with the edges of the pass band(s).</param>
/// <param name="Stop">The same shape with the edges of the stop band(s): outside the pass band, for a band-stop inside.</param>
/// <param name="Ripple">Largest loss in the pass band [dB].</param>
/// <param name="Attenuation">Least loss in the stop band [dB].</param>
public sealed record FilterRequirement(ResponseShape Pass, ResponseShape Stop, Decibels Ripple, Decibels Attenuation)
{
    /// <summary>What is wrong with it; empty where an order can be sought.</summary>
    public IReadOnlyList<Finding> Check(Frequency? rate = null, string field = "")
    {
        // A prototype with both losses carries their checks; its order plays no part.
        var findings = new List<Finding>(FilterDesign.Check(new EllipticPrototype(1, Ripple, Attenuation), Pass, rate, field));
        findings.AddRange(FilterDesign.Check(new ButterworthPrototype(1), Stop, rate, field));
        if (Pass.GetType() != Stop.GetType())
        {
            throw new InvalidOperationException(
                $"Pass band {Pass.GetType().Name} and stop band {Stop.GetType().Name} must be of one shape.");
        }

        if (findings.Count == 0)
        {
            for (int i = 0; i < Pass.Corners.Count; i++)
            {
                (Frequency pass, Frequency stop) = (Pass.Corners[i], Stop.Corners[i]);
                if (!(StopLiesAbove(i) ? pass.Hertz < stop.Hertz : stop.Hertz < pass.Hertz))
                {
                    findings.Add(FilterMessages.StopEdgeOnWrongSide(field, pass, stop));
                }
            }
        }

        return findings;
    }

    private bool StopLiesAbove(int corner) => Pass switch
    {
        LowPass => true,
        HighPass => false,
        BandPass => corner == 1,
        BandStop => corner == 0,
        _ => throw new InvalidOperationException($"Shape {Pass.GetType().Name} is not handled."),
    };
}
