namespace FrontEnd.Filters;

/// <summary>What must hold of mains frequency, rate and band edge.</summary>
internal static class MainsChecks
{
    internal static IEnumerable<Finding> Of(Frequency mains, Frequency rate, Frequency edge)
    {
        if (rate.Hertz <= 0)
        {
            yield return FilterMessages.RateNotAboveZero("", rate);
        }
        else
        {
            foreach (Finding finding in FilterDesign.Check(new ButterworthPrototype(1), new LowPass(mains), rate))
            {
                yield return finding;
            }

            if (edge.Hertz <= 0 || rate.Hertz / 2 < edge.Hertz)
            {
                yield return FilterMessages.EdgeOutOfBand(edge, rate);
            }
        }
    }
}
