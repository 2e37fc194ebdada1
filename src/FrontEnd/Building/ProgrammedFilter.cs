using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Building;

/// <summary>A digital filter of a design as it is programmed.</summary>
/// <param name="Name">As the design calls it.</param>
/// <param name="Sections">Its second-order sections at the converter's rate in the order in which they run, a0 = 1, coefficients as the
/// design's arithmetic rounds them.</param>
internal sealed record ProgrammedFilter(string Name, IReadOnlyList<Biquad> Sections)
{
    /// <summary>All of a design, in the order of the signal.</summary>
    public static IReadOnlyList<ProgrammedFilter> AllOf(Design design)
    {
        DigitalChain chain = new(design.Digital, design.Converter.Rate, design.Arithmetic);
        return [.. chain.Stages.Zip(chain.Filters, (stage, filter) => new ProgrammedFilter(stage.Name, [.. filter.Sections]))];
    }
}
