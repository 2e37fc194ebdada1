using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>A short name for each figure, for rows that have no room for the whole one: at most <see cref="Most"/> letters, and no two of an assessment
/// alike.</summary>
internal static class ShortNames
{
    /// <summary>Letters that a name has at most.</summary>
    public const int Most = 28;

    /// <summary>Figures that stand once.</summary>
    private static readonly Dictionary<ResultId, string> Once = new()
    {
        [ResultIds.Gain.Mid] = "gain, mid-band",
        [ResultIds.Gain.MidFrequency] = "centre of the band",
        [ResultIds.Gain.TotalAnalog] = "analogue gain, mid-band",
        [ResultIds.Noise.Total] = "noise, rms",
        [ResultIds.Noise.PeakToPeak] = "noise, peak-to-peak",
        [ResultIds.Noise.BoardShare] = "noise, board's share",
        [ResultIds.Noise.Shorted] = "noise, inputs shorted",
        [ResultIds.Noise.ThermalFloor] = "thermal noise, electrodes",
        [ResultIds.Noise.OverThermalFloor] = "noise over thermal floor",
        [ResultIds.Noise.Electrodes] = "noise of all electrodes",
        [ResultIds.Noise.Figure] = "noise figure",
        [ResultIds.Converter.Lsb] = "one step",
        [ResultIds.Converter.FullScale] = "full scale",
        [ResultIds.Converter.DynamicRange] = "dynamic range",
        [ResultIds.Converter.Enob] = "bits with electrodes",
        [ResultIds.Converter.EnobShorted] = "bits, inputs shorted",
        [ResultIds.Converter.NoiseFreeBits] = "noise-free bits",
        [ResultIds.Converter.BitsNeeded] = "resolution needed",
        [ResultIds.Converter.FitsSupply] = "full scale fits the supply",
        [ResultIds.Mains.BodyCommonMode] = "body to common",
        [ResultIds.Mains.Divider] = "mains from the dividers",
        [ResultIds.Mains.Leads] = "mains from the leads",
        [ResultIds.Mains.Imbalance] = "mains, dividers and leads",
        [ResultIds.Mains.Amplifier] = "mains from the amplifier",
        [ResultIds.Mains.Loop] = "mains from the leads' loop",
        [ResultIds.Mains.Total] = "mains at the electrodes",
        [ResultIds.Mains.Rss] = "mains, root sum of squares",
        [ResultIds.Mains.SystemCmrr] = "rejection, whole system",
        [ResultIds.Mains.CmrrNeeded] = "rejection needed",
        [ResultIds.Mains.Signs] = "signs in the worst case",
        [ResultIds.Mains.Recorded] = "mains recorded in band",
        [ResultIds.Mains.RecordedEverywhere] = "mains recorded anywhere",
        [ResultIds.Drive.UnityGainFrequency] = "drive: unity gain at",
        [ResultIds.Drive.PhaseMargin] = "drive: phase margin",
        [ResultIds.Drive.WorstPhaseMargin] = "drive: lowest phase margin",
        [ResultIds.Drive.GainAtMains] = "drive: loop gain at mains",
        [ResultIds.Drive.SwingNeeded] = "drive: swing needed",
        [ResultIds.Levels.FirstToClip] = "what clips first",
        [ResultIds.Levels.OffsetSurvived] = "largest offset, ±",
        [ResultIds.Levels.LargestSignal] = "largest signal, peak",
        [ResultIds.Levels.FirstGainLimit] = "largest first-stage gain",
        [ResultIds.Levels.Recovery] = "recovery after an offset",
        [ResultIds.Levels.LeastHeadroom] = "lowest headroom",
        [ResultIds.Input.BiasOffset] = "dc from bias currents",
        [ResultIds.Input.ImpedanceAtMains] = "input impedance at mains",
        [ResultIds.Alias.FoldFrequency] = "fold frequency",
        [ResultIds.Alias.FoldAttenuation] = "fold attenuation",
        [ResultIds.Alias.ModulatorFoldFrequency] = "clock fold frequency",
        [ResultIds.Alias.ModulatorFoldAttenuation] = "clock fold attenuation",
        [ResultIds.Latency.Total] = "delay of the whole chain",
        [ResultIds.Skew.Leak] = "leak from sampling skew",
        [ResultIds.Safety.FaultCurrent] = "dc after a single fault",
        [ResultIds.Safety.DrivenGroundCurrent] = "dc from the driven ground",
        [ResultIds.Safety.SeriesResistanceNeeded] = "series resistor needed",
        [ResultIds.Safety.SharedFaultCurrent] = "dc after a shared fault",
        [ResultIds.Safety.ContactCheckCurrent] = "contact check current",
        [ResultIds.Montage.Correlation] = "noise correlation",
        [ResultIds.Head.Radius] = "radius of the sphere",
        [ResultIds.Head.RingFront] = "vertex to the front ring",
        [ResultIds.Head.RingSide] = "vertex to the side ring",
        [ResultIds.Contact.Beat] = "contact check beat",
        [ResultIds.Contact.AddsInBand] = "contact check in the band",
        [ResultIds.Supply.ReferenceNoise] = "converter reference noise",
        [ResultIds.Supply.RippleResidue] = "supply ripple residue",
        [ResultIds.Supply.MidRailNoise] = "mid-rail noise",
        [ResultIds.Power.SupplyCurrent] = "supply current",
        [ResultIds.Power.BatteryLife] = "battery life",
        [ResultIds.Limit.Contact] = "limit of use: contact",
        [ResultIds.Limit.Mismatch] = "limit of use: mismatch",
        [ResultIds.Limit.Offset] = "limit of use: offset",
        [ResultIds.Limit.Leads] = "limit of use: leads",
        [ResultIds.Limit.Field] = "limit of use: field",
        [ResultIds.Limit.Battery] = "limit of use: battery",
        [ResultIds.Data.BitRate] = "data rate",
    };

    /// <summary>Figures of each of several things, by the last word of their id.</summary>
    private static readonly Dictionary<string, string> Figures = new(StringComparer.Ordinal)
    {
        [ResultIds.Filter.Any.MinusThree.Figure] = "upper -3 dB",
        [ResultIds.Filter.Any.MinusThreeLow.Figure] = "lower -3 dB",
        [ResultIds.Filter.Any.StopBandTurn.Figure] = "rises again at",
        [ResultIds.Filter.Any.StopBandFloor.Figure] = "lowest loss",
        [ResultIds.Filter.Any.NotchDepth.Figure] = "depth",
        [ResultIds.Filter.Any.NotchDepthWorst.Figure] = "worst depth",
        [ResultIds.Digital.Any.RingTime.Figure] = "rings for",
        [ResultIds.Digital.Any.DcGain.Figure] = "gain at dc",
        [ResultIds.Digital.Any.PoleMovement.Figure] = "poles move",
        [ResultIds.Digital.Any.RoundOff.Figure] = "round-off",
        [ResultIds.Contact.After("1").BoardShare.Figure] = "board's share",
        [ResultIds.Contact.After("1").MainsRecorded.Figure] = "mains",
        [ResultIds.Contact.After("1").Excess.Figure] = "excess noise",
    };

    private const string NoiseWord = "noise";

    /// <summary>How much of a word that the user chose is kept at least where it must be cut.</summary>
    private const int LeastKept = 3;

    /// <summary>The names of results, no two alike.</summary>
    public static IReadOnlyDictionary<ResultId, string> Of(IEnumerable<Result> results)
    {
        Dictionary<ResultId, string> names = [];
        HashSet<string> taken = new(StringComparer.Ordinal);
        foreach (Result result in results)
        {
            string name = Of(result.Id), tried = name;
            for (int number = 2; !taken.Add(tried); number++)
            {
                string end = $" {number}";
                tried = Cut(name, Most - 1 - end.Length) + end;
            }

            names.Add(result.Id, tried);
        }

        return names;
    }

    private static string Of(ResultId id)
    {
        if (Once.TryGetValue(id, out string? once))
        {
            return once;
        }

        (string thing, string figure) = Parts(id);
        return figure.Length == 0 ? Cut(thing, Most)
            : Most < thing.Length + 2 + figure.Length ? $"{Cut(thing, Math.Max(LeastKept, Most - 2 - figure.Length))}: {Cut(figure, Most - 2 - LeastKept)}"
            : $"{thing}: {figure}";
    }

    /// <summary>What the figure is of, and which of its figures it is; "" where it has one alone.</summary>
    private static (string Thing, string Figure) Parts(ResultId id)
    {
        string figure = Figures.GetValueOrDefault(id.Figure) ?? Words(id.Figure);
        if (ResultIds.Mains.Harmonics.Has(id))
        {
            return ($"mains h{ResultIds.Mains.Harmonics.Rest(id.Stem)}", figure);
        }

        if (ResultIds.Alias.All.Has(id))
        {
            string what = ResultIds.Alias.All.Rest(id.Stem);
            string thing = id.Stem == ResultIds.Alias.LowEdge.Stem ? "low edge image" : id.Stem == ResultIds.Alias.HighEdge.Stem ? "high edge image"
                : what is ['h', >= '1' and <= '9', ..] ? $"harmonic {what[1..]}" : Words(what);

            // Its attenuation stands in one row with where it lands.
            return (thing, id == new AliasIds(id.Stem).Attenuation ? "" : figure);
        }

        if (ResultIds.Levels.IsHeadroom(id))
        {
            return ("room", Node(ResultIds.Levels.All.Rest(id.Stem)));
        }

        if (ResultIds.Noise.Sources.Has(id))
        {
            string source = Words(ResultIds.Noise.Sources.Rest(id));
            return source.Length + 2 + NoiseWord.Length <= Most ? (source, NoiseWord) : (source, "");
        }

        if (ResultIds.Noise.Bands.Has(id))
        {
            return id.Stem == ResultIds.Noise.Band("").Noise.Stem ? ($"noise in {Words(id.Figure)}", "")
                : BandIds.IsRatio(id) ? ($"signal/noise in {Words(ResultIds.Noise.Bands.Rest(id.Stem))}", "")
                : (Words(ResultIds.Noise.Bands.Rest(id.Stem)), figure);
        }

        if (ResultIds.Latency.Bands.Has(id))
        {
            return ($"delay in {Words(id.Figure)}", "");
        }

        if (ResultIds.Safety.All.Has(id))
        {
            return ("fault dc", Words(id.Figure.Replace("-electrode", "", StringComparison.Ordinal)));
        }

        if (ResultIds.Open.All.Has(id))
        {
            string[] words = ResultIds.Open.All.Rest(id).Split('.');
            return ($"{Words(words[0])} off", words.Length > 1 ? Node(words[^1]) : "");
        }

        if (ResultIds.Contact.Times.Has(id))
        {
            return ($"after {Words(ResultIds.Contact.Times.Rest(id.Stem))}", figure);
        }

        if (ResultIds.Contact.All.Has(id))
        {
            return ($"check, {Words(ResultIds.Contact.All.Rest(id.Stem))}", figure);
        }

        if (ResultIds.Channel.All.Has(id))
        {
            string behind = ResultIds.Channel.All.Rest(id);
            int dot = behind.IndexOf('.', StringComparison.Ordinal);
            ResultId inner = new(behind[(dot + 1)..]);
            return (dot < 0 ? Words(behind) : Words(behind[..dot]), Once.GetValueOrDefault(inner) ?? Words(inner.Figure));
        }

        // "filter.gain-2.settling", "see.alpha.o1-a1.kept": the family's own word says nothing more.
        string text = id.Text, own = text[(text.IndexOf('.', StringComparison.Ordinal) + 1)..];
        int last = own.LastIndexOf('.');
        return last < 0 ? (Words(own), "") : (Words(own[..last].Replace('.', ' ')), figure);
    }

    /// <summary>A node in few words.</summary>
    private static string Node(string node) =>
        node == NodeId.AmplifierInnerPlus.Text ? "inner plus"
        : node == NodeId.AmplifierInnerMinus.Text ? "inner minus"
        : node == NodeId.ActiveBuffer.Text ? "active buffer"
        : node == NodeId.ReferenceBuffer.Text ? "ref buffer"
        : Words(node);

    private static string Words(string part) => part.Replace('-', ' ').Replace('_', ' ');

    /// <summary>The text cut to a number of letters, with a mark where something is missing, which takes two where it is written in ASCII.</summary>
    private static string Cut(string text, int letters) => text.Length <= letters ? text : text[..Math.Max(0, letters - 2)].TrimEnd() + "…";
}
