using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Spread;

/// <summary>What another tolerance of some pieces would do to the share of devices that meet every requirement.</summary>
/// <param name="Key">The field of the tolerance.</param>
/// <param name="Stated">As the design has it, ±.</param>
/// <param name="Other">The one tried, ±.</param>
/// <param name="Before">Share of the devices that meet all with the stated one, 0…1.</param>
/// <param name="After">The same with the other, the same devices drawn.</param>
internal sealed record ToleranceMark(string Key, Ratio Stated, Ratio Other, double Before, double After)
{
    /// <summary>True where the tighter tolerance is worth its money, false where the looser one is enough.</summary>
    public bool IsTighter => Other.Fraction < Stated.Fraction;
}

/// <summary>Where tighter tolerances pay and where looser ones do: each class of pieces tried at the next tolerance that is sold, with the same
/// devices drawn.</summary>
internal static class ToleranceStudy
{
    /// <summary>A tighter tolerance is marked where it lifts the yield by this share of all devices (our choice).</summary>
    public const double Worth = 0.01;

    /// <summary>A looser one does where the yield falls by less than this (our choice).</summary>
    public const double NoLoss = 0.005;

    /// <summary>Devices drawn for each try.</summary>
    public const int Builds = 2000;

    private static readonly double[] Resistors = [0.001, 0.01, 0.05], Capacitors = [0.01, 0.02, 0.05, 0.1, 0.2];

    /// <summary>The marks, in the order of the board; empty where nothing is judged that a spread draws. Resistors that protect the wearer are never
    /// marked for a looser tolerance.</summary>
    public static IReadOnlyList<ToleranceMark> Of(Board board, SpreadOptions options)
    {
        Design design = board.Design;
        SpreadOptions few = options with { Builds = Math.Min(options.Builds, Builds) };
        if (SpreadRun.Run(design, few)?.Yield is not { } before)
        {
            return [];
        }

        List<ToleranceMark> marks = [];
        int fails = Failing(design);
        foreach (IGrouping<string, BoardPart> group in board.Parts.GroupBy(OrderList.ToleranceKey, StringComparer.Ordinal).Where(group => group.Key.Length != 0))
        {
            if (DesignFields.Find(design, group.Key) is not { } field || field.SiValue(design) is not { } stated)
            {
                continue;
            }

            double[] sold = group.First().Class == PieceClass.Resistor ? Resistors : Capacitors;
            if (Array.FindLast(sold, one => one < stated * 0.99) is > 0 and var tight && Yield(With(design, field, tight), few) is { } better && before + Worth <= better)
            {
                marks.Add(new ToleranceMark(group.Key, Ratio.FromFraction(stated), Ratio.FromFraction(tight), before, better));
            }
            else if (!group.Any(part => part.ProtectsWearer) && Array.Find(sold, one => stated * 1.01 < one) is > 0 and var loose
                && With(design, field, loose) is var cheaper && Failing(cheaper) <= fails && Yield(cheaper, few) is { } same && before - NoLoss < same)
            {
                marks.Add(new ToleranceMark(group.Key, Ratio.FromFraction(stated), Ratio.FromFraction(loose), before, same));
            }
        }

        return marks;
    }

    private static Design With(Design design, Field<Design> field, double fraction) => field.WithSiValue(design, fraction);

    private static double? Yield(Design design, SpreadOptions options) => SpreadRun.Run(design, options)?.Yield;

    private static int Failing(Design design) => Evaluator.Evaluate(design).Judged.Count(result => result.Verdict.Kind == VerdictKind.Fail);
}
