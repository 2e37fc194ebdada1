using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Citations;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Reporting;

/// <summary>Holds the results against the requirements.</summary>
/// <remarks>Marginal: met with less than 10 % of the limit to spare (volts, amperes, seconds, degrees), 3 dB (decibels) or 1 bit.</remarks>
internal static class Judge
{
    private const double SpareShare = 0.1;
    private const double SpareDecibels = 3;
    private const double SpareBits = 1;

    private static readonly SourceRef NoiseLimit = new("digital-eeg-chapter", "citing the IFCN: 1.5 µV p-p, 0.5-100 Hz");
    private static readonly SourceRef MainsLimit = new("metting-van-rijn-1990", "acceptable residue 1-10 µV p-p");
    private static readonly SourceRef OffsetLimit = new("aami-ec11", "±300 mV; also AAMI TIR60");
    private static readonly SourceRef FaultLimit = new("iec-60601-1", "dc, single fault; from memory");
    private static readonly SourceRef DriveLimit = new("iec-60601-1", "dc, normal operation; from memory");

    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        Requirements requirements = design.Requirements;
        JudgeNoise(list, evaluation);
        AtMost(list, ResultIds.Mains.Total, DesignKeys.Requirements.MainsAtElectrodes, requirements.MainsAtElectrodes, MainsLimit,
            () => MainsDominates(evaluation.Mains.AtInput));
        VoltageRms recorded = RecordedLimit(design);
        AtMost(
            list, ResultIds.Mains.Recorded, DesignKeys.Requirements.MainsRecorded, recorded, requirements.MainsRecorded is null
                ? Equations.CommonPractice
                : Given, () => RecordedDominates(evaluation.Mains, evaluation.Design.Mains.LookedAt),
            () => MainsReport.Everywhere(design, evaluation.Mains));
        AtLeast(list, ResultIds.Levels.OffsetSurvived, DesignKeys.Requirements.Offset, requirements.Offset, OffsetLimit,
            () => evaluation.Levels.OffsetLimitedBy?.Node.Text);
        if (evaluation.Levels.FirstToClip is { } first)
        {
            AtLeast(list, ResultIds.Levels.Headroom(first.Node), DesignKeys.Requirements.Headroom, requirements.Headroom,
                Equations.CommonPractice,
                () => $"{first.Dominates} at {first.Node}");
        }

        IQuantity? fold = list[ResultIds.Alias.FoldFrequency].Value;
        AtLeast(list, ResultIds.Alias.FoldAttenuation, DesignKeys.Requirements.Fold, requirements.Fold, Equations.CommonPractice,
            () => $"image of the band's upper edge, {QuantityText.Format(fold)}");
        if (list.Has(ResultIds.Alias.ModulatorFoldAttenuation))
        {
            IQuantity? clock = list[ResultIds.Alias.ModulatorFoldFrequency].Value;
            AtLeast(list, ResultIds.Alias.ModulatorFoldAttenuation, DesignKeys.Requirements.Fold, requirements.Fold,
                Equations.CommonPractice, () => $"image at the modulator's clock, {QuantityText.Format(clock)}");
        }

        if (list.Has(ResultIds.Converter.BitsNeeded))
        {
            AtMost(list, ResultIds.Converter.BitsNeeded, DesignKeys.Converter.Bits, BitCount.FromBits(design.Converter.Bits),
                Equations.Derived,
                () => "quantisation against the rest of the noise");
        }

        JudgeFit(list, design);
        if (evaluation.Drive is not null)
        {
            AtLeast(list, ResultIds.Drive.WorstPhaseMargin, DesignKeys.Requirements.PhaseMargin, requirements.PhaseMargin,
                Equations.CommonPractice, WorstLoop(list[ResultIds.Drive.WorstPhaseMargin]));
            AtMost(list, ResultIds.Safety.DrivenGroundCurrent, DesignKeys.Requirements.DrivenGroundCurrent,
                requirements.DrivenGroundCurrent,
                DriveLimit, () => "the driven ground's series resistor");
        }

        AtMost(list, ResultIds.Safety.FaultCurrent, DesignKeys.Requirements.FaultCurrent, requirements.FaultCurrent, FaultLimit,
            () => "the smallest series resistance fitted in a lead");
        AtMost(list, ResultIds.Safety.SharedFaultCurrent, DesignKeys.Requirements.FaultCurrent, requirements.FaultCurrent, FaultLimit,
            () => SafetyReport.SharedFaultHeldBy(design));
        JudgeChannels(list, evaluation);
        JudgeSeen(list, design);
    }

    private static void JudgeSeen(ResultList list, Design design)
    {
        IReadOnlyList<SeeRequirement> see = design.Requirements.See;
        for (int i = 0; i < see.Count; i++)
        {
            SeeRequirement one = see[i];
            ResultId id = SeeReport.IdOf(design, one);
            string key = $"{DesignList.SeeKey}[{i + 1}].ratio";
            if (!list.Has(id))
            {
                continue;   // a study that works out part of the figures
            }

            if (one.Ratio is { } ratio)
            {
                AtLeast(list, id, key, ratio, Given, () => list[id].Text);
            }
            else
            {
                list.Judge(id, new Verdict(VerdictKind.NotJudged, $"no ratio is required; set {key} to judge it") { Requirement = key });
            }
        }
    }

    /// <summary>Each named channel against the limits of the design: the worst of its verdicts in a word, as the design's own are its worst
    /// channel's.</summary>
    private static void JudgeChannels(ResultList list, Evaluation evaluation)
    {
        (ResultId Plain, ResultId Figure)[] judged =
        [
            .. new[] { ResultIds.Noise.BoardShare, ResultIds.Mains.Total, ResultIds.Mains.Recorded, ResultIds.Levels.OffsetSurvived, ResultIds.Safety.FaultCurrent }
                .Select(id => (id, id)),
            .. evaluation.Levels.FirstToClip is { } first ? [(ResultIds.Levels.Headroom(first.Node), ResultIds.Levels.LeastHeadroom)]
                : Array.Empty<(ResultId, ResultId)>(),
        ];
        for (int i = 0; i < evaluation.Design.ChannelList.Count; i++)
        {
            Channel channel = evaluation.Design.ChannelList[i];
            if (!list.Has(ResultIds.Channel.Of(channel.Name, ResultIds.Noise.Total)))
            {
                return;
            }

            VerdictKind worst = VerdictKind.Pass;
            List<string> because = [];
            foreach ((ResultId plain, ResultId figure) in judged)
            {
                // The limit of noise rests on the channel's own contact, which the worst channel's need not be like.
                (IQuantity? limit, bool isGreatest) = plain == ResultIds.Noise.BoardShare ? (NoiseLimitOf(evaluation.Of(i).Design), true)
                    : (list[plain].Verdict.Limit, list[plain].Verdict.LimitIsGreatest);
                if (limit is not null)
                {
                    Result own = list[ResultIds.Channel.Of(channel.Name, figure)];
                    VerdictKind kind = own.State == ResultState.Number ? Weigh(own.Si, limit, isGreatest).Kind
                        : isGreatest ? VerdictKind.Fail : VerdictKind.Pass;
                    if (kind != VerdictKind.Pass && (worst == VerdictKind.Pass || kind == VerdictKind.Fail) && kind != worst)
                    {
                        worst = kind;
                        because.Clear();
                    }

                    if (kind == worst && kind != VerdictKind.Pass)
                    {
                        because.Add(figure.Text);
                    }
                }
            }

            string word = worst switch { VerdictKind.Fail => "fail", VerdictKind.Marginal => "marginal", _ => "pass" };
            list.Word(ResultIds.Channel.Verdict(channel.Name), $"verdict of channel {channel.Name}{(because.Count == 0 ? "" : $", by {string.Join(", ", because)}")}", word,
                Equations.ChannelVerdict);
        }
    }

    private static Func<string?> WorstLoop(Result result) => () => result.Text;

    private static void JudgeFit(ResultList list, Design design)
    {
        Result result = list[ResultIds.Converter.FitsSupply];
        VoltagePeakToPeak most = ConverterSupply.Largest(design.Converter, design.Supply.Lowest);
        bool fits = ConverterSupply.Fits(design.Converter, design.Supply.Lowest);
        string input = ConverterSupply.IsDifferential(design.Converter) ? "twice " : "", rails = design.Converter.OwnSupply is null
            ? "the lowest supply"
            : "the converter's own supply";
        list.Judge(result.Id, new Verdict(
            fits ? VerdictKind.Pass : VerdictKind.Fail,
            () => $"full scale {QuantityText.Format(design.Converter.FullScale)} is {(fits ? "within" : "above")} {input}{rails}, {QuantityText.Format(most)} ({DesignKeys.Converter.FullScale})")
        {
            Requirement = DesignKeys.Converter.FullScale,
            Wanted = "yes",
            LimitSource = Equations.CommonPractice,
        });
    }

    private static readonly SourceRef Given = new("given-in-design");

    /// <summary>As required, else half the smallest signal.</summary>
    public static VoltageRms RecordedLimit(Design design) =>
        design.Requirements.MainsRecorded ?? VoltageRms.FromVolts(design.SmallestSignal.Volts / 2);

    /// <summary>The default for wet electrodes, 1.5 µV p-p in 99.5 Hz scaled to the design's band.</summary>
    public static VoltagePeakToPeak DefaultNoise(Design design) =>
        VoltagePeakToPeak.FromVolts(1.5e-6 * Math.Sqrt((design.Band.High.Hertz - design.Band.Low.Hertz) / 99.5));

    /// <summary>The limit of a channel's noise without the electrodes' excess; null for dry contact that none is set for.</summary>
    private static VoltagePeakToPeak? NoiseLimitOf(Design channel) =>
        channel.Requirements.Noise ?? (channel.Electrodes.Contact == ContactKind.Wet ? DefaultNoise(channel) : null);

    private static void JudgeNoise(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        const string Key = DesignKeys.Requirements.Noise;
        Func<string> dominates = () =>
        {
            NoiseRow largest = evaluation.Noise.LargestWithoutExcess;
            return largest.Id.IsElectrode ? $"{largest.Name}, thermal" : largest.Name;
        };
        if (design.Requirements.Noise is { } limit)
        {
            AtMost(list, ResultIds.Noise.BoardShare, Key, limit, Given, dominates);
        }
        else if (evaluation.ForNoise.Design.Electrodes.Contact == ContactKind.Wet)
        {
            AtMost(list, ResultIds.Noise.BoardShare, Key, DefaultNoise(design), NoiseLimit, dominates);
        }
        else
        {
            list.Judge(ResultIds.Noise.BoardShare,
                new Verdict(VerdictKind.NotJudged,
                    () => "no limit is set for dry electrodes; set requirements.noise to judge it", dominates) { Requirement = Key });
        }
    }

    private static string MainsDominates(MainsPartsAtInput at)
    {
        (string name, double size) = new (string Name, double Size)[]
        {
            ("unequal electrodes' dividers", at.Divider), ("pick-up of the leads", at.Leads), ("the amplifier's CMRR", at.Amplifier),
            ("the leads' loop", at.Loop),
        }.MaxBy(part => part.Size);

        // Dividers and leads are two phasors: one can be larger than what both leave.
        string other = size == at.Divider ? "the leads' pick-up cancels" : size == at.Leads ? "the dividers cancel" : "";
        string left = 0 < other.Length && at.Imbalance < size ? $"; {other} part of it, {QuantityText.Format(at.Imbalance, "V")} is left" : "";
        return $"{name}, {QuantityText.Format(size, "V")}{left}";
    }

    private static string RecordedDominates(MainsBudget mains, string lookedAt)
    {
        MainsHarmonic? worst = mains.Harmonics.Where(harmonic => harmonic.InBand).MaxBy(harmonic => harmonic.Recorded);
        return worst is null
            ? $"no harmonic lands in the band (checked: {lookedAt})"
            : $"harmonic {worst.Order}, {QuantityText.Format(worst.Recorded, "V")} at {QuantityText.Format(worst.LandsAt, "Hz")}";
    }

    private static void AtMost(ResultList list, ResultId id, string key, IQuantity limit, SourceRef source, Func<string?> dominates,
        Func<string?>? remark = null) =>
        Put(list, id, key, limit, source, dominates, greatest: true, remark);

    private static void AtLeast(ResultList list, ResultId id, string key, IQuantity limit, SourceRef source, Func<string?> dominates) =>
        Put(list, id, key, limit, source, dominates, greatest: false, null);

    private static void Put(ResultList list, ResultId id, string key, IQuantity limit, SourceRef source, Func<string?> dominates, bool greatest,
        Func<string?>? remark)
    {
        Result result = list[id];
        if (result.State == ResultState.Missing)
        {
            list.Judge(id, new Verdict(VerdictKind.NotJudged, $"no figure to judge: see {result.FindingCode}") { Requirement = key });
            return;
        }

        (VerdictKind kind, double? margin) = result.State switch
        {
            ResultState.Number => Weigh(result.Si, limit, greatest),
            ResultState.Unbounded => (greatest ? VerdictKind.Fail : VerdictKind.Pass, null),
            _ => (VerdictKind.NotJudged, null),
        };
        list.Judge(id, new Verdict(kind, () => Because(result, limit, key, greatest, margin, remark?.Invoke()), dominates)
        {
            Requirement = key,
            Limit = limit,
            LimitIsGreatest = greatest,
            Margin = margin,
            LimitSource = source,
        });
    }

    internal static (VerdictKind Kind, double? Margin) Weigh(double value, IQuantity limit, bool greatest)
    {
        double margin = greatest ? limit.SiValue - value : value - limit.SiValue;
        double spare = limit switch
        {
            Decibels => SpareDecibels,
            BitCount => SpareBits,
            _ => SpareShare * Math.Abs(limit.SiValue),
        };
        return (margin < 0 ? VerdictKind.Fail : margin < spare ? VerdictKind.Marginal : VerdictKind.Pass, margin);
    }

    private static string Because(Result result, IQuantity limit, string key, bool greatest, double? margin, string? remark)
    {
        string value = result.State == ResultState.Number ? QuantityText.Format(result.Value) : result.Text ?? UnboundedWords.Of(result);
        string asked = QuantityText.Format(limit);
        string held = margin switch
        {
            < 0 => $" is {(greatest ? "above" : "below")} {asked} ({key})",
            _ => $"; {(greatest ? $"the limit is {asked}" : $"at least {asked} required")} ({key})",
        };
        string by = margin is not { } m ? ""
            : 0 <= m ? $", {QuantityText.Format(m, limit.SiUnit)} to spare"
            : $", {(greatest ? "over" : "short")} by {QuantityText.Format(-m, limit.SiUnit)}";
        return value + held + by + (remark is null ? "" : $"; {remark}");
    }
}
