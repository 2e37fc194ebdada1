using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Numbers;

namespace FrontEnd.DesignedFilters;

/// <summary>What becomes of a zero at 0 Hz when coefficients are rounded.</summary>
public enum DcZero
{
    /// <summary>The design has none.</summary>
    None,

    /// <summary>It is still there.</summary>
    Kept,

    /// <summary>It is lost: drift comes through.</summary>
    Lost,
}

/// <summary>What finite words do to a digital filter of sections, word by word, and how large its nodes can grow.</summary>
/// <param name="Words">double, single, q31, q15.</param>
/// <param name="Growth">From the input to each section's output, as designed.</param>
public sealed record WordStudy(IReadOnlyList<WordResult> Words, IReadOnlyList<OverflowNorms> Growth)
{
    /// <summary>What to do about words that do harm, each remedy once.</summary>
    public IReadOnlyList<WordRemedy> Remedies =>
    [
        .. Words.SelectMany(word =>
            word.Forms.Where(form => form.Remedy is not null).Select(form => new WordRemedy(word.Word, form.Remedy!))).Distinct(),
    ];

    internal static WordStudy Of(SecondOrderSections sections)
    {
        WordResult[] words = InParallel.Map(Enum.GetValues<DigitalWord>(), word => WordResult.Of(sections, word));
        // Double precision leaves every coefficient as it was designed.
        return new(words, words.First(one => one.Word == DigitalWord.Double).Coefficients.Overflow);
    }
}

/// <summary>One word, in both forms.</summary>
/// <param name="Word">The word.</param>
/// <param name="Forms">Direct form I and transposed direct form II. The rounded coefficients, poles and headroom are the same in
/// both.</param>
/// <param name="LimitCycles">In whole numbers, where both forms give the same bits; null in floating point and where a pole is not inside
/// the circle.</param>
public sealed record WordResult(DigitalWord Word, IReadOnlyList<WordFigures> Forms, LimitCycleSearch? LimitCycles)
{
    /// <summary>What both forms share: poles, gain at 0 Hz, headroom.</summary>
    public WordFigures Coefficients => Forms[0];

    /// <summary>What becomes of a zero at 0 Hz.</summary>
    public DcZero DcZero =>
        Coefficients.DcZeroLost ? DcZero.Lost : Coefficients.Filter.Ideal.Sections.Any(s => s.HasDcZero) ? DcZero.Kept : DcZero.None;

    internal static WordResult Of(SecondOrderSections sections, DigitalWord word)
    {
        NumberFormat format = new DigitalArithmetic { Word = word }.Format;
        var direct = WordFigures.Of(sections, format, FilterForm.DirectI);
        WordFigures[] forms = [direct, direct.InForm(FilterForm.TransposedDirectII)];
        return new(word, forms, format is FixedFormat && forms[0].IsStable ? forms[0].SearchLimitCycles() : null);
    }
}

/// <summary>What to do about a word that does harm.</summary>
/// <param name="Word">The word.</param>
/// <param name="Remedy">A sentence.</param>
public sealed record WordRemedy(DigitalWord Word, string Remedy);
