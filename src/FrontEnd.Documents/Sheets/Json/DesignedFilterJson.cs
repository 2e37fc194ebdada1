using FrontEnd.DesignedFilters;

namespace FrontEnd.Documents.Sheets;

/// <summary>What <c>filter</c> and the commands below it answer, as JSON: SI units, losses in dB, null where a loss is without bound. Every
/// number reads back as the same double.</summary>
public static class DesignedFilterJson
{
    /// <summary>The answer in the envelope that all commands share.</summary>
    /// <param name="command">"filter", "filter notch" …</param>
    public static string Of(DesignedFilter filter, string command) => filter switch
    {
        DesignedSections sections => FilterEnvelope.Write(FilterJson.From(sections)),
        DesignedFir fir => FilterEnvelope.Write(FirJson.From(fir)),
        DesignedComb comb => FilterEnvelope.Write(CombJson.From(comb)),
        DesignedNotches notches => FilterEnvelope.Write(NotchJson.From(notches)),
        DesignedSinc sinc => FilterEnvelope.Write(SincJson.From(sinc)),
        _ => throw new ArgumentOutOfRangeException(nameof(filter), filter, "The filter is not handled."),
    };
}
