using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Topologies;
using static FrontEnd.Quantities.Frequency;

namespace FrontEnd.Catalogue;

/// <summary>What can be said against a design without evaluating it: values out of range and values that contradict each other.</summary>
public static partial class DesignCheck
{
    /// <param name="unread">Keys whose values could not be read: what rests on one of them is not said, since its cause has been.</param>
    /// <returns>Findings in the order of the catalogue; empty for a design that fits together.</returns>
    public static IReadOnlyList<Finding> Run(Design design, IReadOnlySet<string>? unread = null) => Run(design, unread, true);

    /// <param name="design">The design.</param>
    /// <param name="unread">Keys whose values could not be read.</param>
    /// <param name="withSources">False where head and sources are those of a design that was checked.</param>
    internal static IReadOnlyList<Finding> Run(Design design, IReadOnlySet<string>? unread, bool withSources)
    {
        Checker checker = new(design, unread ?? new HashSet<string>(StringComparer.Ordinal));
        IReadOnlyList<Field<Design>> fields = DesignFields.Of(design);
        checker.Ranges(fields);
        if (checker.Findings.Exists(finding => finding.Field == DesignList.ChannelsKey || finding.Code == Messages.UnknownWord))
        {
            // What looks at the channels one by one needs a number of them, and every choice is worked out as one of those there are; a design made in
            // code may say -3 or two thousand million, and a number cast to a choice.
            return checker.Findings;
        }

        checker.StaleRanges(fields);
        checker.Bands();
        checker.Electrodes();
        checker.NamedChannels();
        checker.Stages();
        checker.Converter();
        checker.Filters();
        checker.Supply();
        checker.Parts();
        if (withSources)
        {
            checker.Sources();
        }

        checker.Rest();
        checker.OneRate();
        return checker.Findings;
    }

    private sealed partial class Checker(Design design, IReadOnlySet<string> unread)
    {
        public List<Finding> Findings { get; } = [];

        public void Ranges(IReadOnlyList<Field<Design>> fields)
        {
            foreach (Field<Design> field in fields)
            {
                object? value = field.Get(design);
                if ((FieldText.CheckChoice(field, value) ?? FieldText.CheckRange(field, value)) is { } finding)
                {
                    Findings.Add(finding);
                }
            }
        }

        /// <summary>Where the band and more is above half the sampling rate, it is the rate that is wrong.</summary>
        public void OneRate()
        {
            List<Finding> above = Findings.FindAll(finding => finding.Code is Messages.BandAboveHalfRate or Messages.CheckAboveHalfRate
                || (finding.Code is Messages.CornerAboveHalfRate && !finding.Field.EndsWith(".q", StringComparison.Ordinal)));
            if (above.Count < 2 || !above.Exists(finding => finding.Code is Messages.BandAboveHalfRate))
            {
                return;
            }

            Findings.RemoveAll(above.Contains);
            Error(Messages.RateTooLow, "converter.rate",
                $"half the sampling rate, {Text(FromHertz(design.Converter.Rate.Hertz / 2))}, is not above {string.Join(", ", above.Select(finding => finding.Field))}",
                $"converter.rate is {Text(design.Converter.Rate)}, and the band's upper edge {Text(design.Band.High)}", "check the rate and the prefix of its unit: raise it, or lower the others");
        }

        public void StaleRanges(IReadOnlyList<Field<Design>> fields)
        {
            foreach ((Field<Design> field, PartRange range, Field<Design> value) in DesignFields.StaleRanges(design, fields))
            {
                Warning(Messages.RangeWithoutValue, field.Key,
                    $"the range of {value.Key} does not contain its value, {FieldText.Format(value, value.Get(design))}",
                    "a spread run ignores such a range",
                    $"change the value, or remove `{range.Key}` from the ranges", value.Key);
            }
        }

        public void Bands()
        {
            Frequency half = FromHertz(design.Converter.Rate.Hertz / 2);
            if (design.Band.High.Hertz <= design.Band.Low.Hertz)
            {
                Error(Messages.BandOrder, "band", $"the band starts at {Text(design.Band.Low)}, but ends at {Text(design.Band.High)}", null,
                    "write the lower frequency first");
            }

            if (half.Hertz <= design.Band.High.Hertz)
            {
                Error(Messages.BandAboveHalfRate, "band",
                    $"the band's upper edge {Text(design.Band.High)} is not below half the sampling rate, {Text(half)}",
                    $"converter.rate is {Text(design.Converter.Rate)}", "lower the edge, or raise converter.rate", "converter.rate");
            }

            for (int i = 0; i < design.Bands.Count; i++)
            {
                Band band = design.Bands[i];
                if (band.High.Hertz <= band.Low.Hertz)
                {
                    Error(Messages.BandOrder, $"bands[{i + 1}]",
                        $"band `{band.Name}` starts at {Text(band.Low)}, but ends at {Text(band.High)}", null,
                        "write the lower frequency first", $"bands[{i + 1}].low", $"bands[{i + 1}].high");
                }
            }

            Names("bands", [.. design.Bands.Select(band => band.Name)]);
            for (int i = 0; i < design.Interferers.Count; i++)
            {
                if (design.Interferers[i].High.Hertz < design.Interferers[i].Low.Hertz)
                {
                    Error(Messages.BandOrder, $"interferers[{i + 1}]",
                        $"interferer `{design.Interferers[i].Name}` starts at {Text(design.Interferers[i].Low)}, but ends at {Text(design.Interferers[i].High)}",
                        null,
                        "write the lower frequency first", $"interferers[{i + 1}].low", $"interferers[{i + 1}].high");
                }
            }

            Names("interferers", [.. design.Interferers.Select(one => one.Name)], ReservedNames.OfInterferer);
        }

        public void Electrodes()
        {
            if (design.Electrodes.Ground is null && design.Input.BiasResistor is null)
            {
                Error(Messages.NoDcPath, "input.bias-resistor",
                    "the amplifier's inputs have no dc path to its common: there is neither a ground electrode nor a bias resistor",
                    "without a path the inputs' bias currents drive them to a rail", "set input.bias-resistor, or add a ground electrode",
                        "electrodes.ground", "electrodes.ground-electrode");
            }

            HalfBlock("the active", "electrodes.active", design.Electrodes.Active);
            HalfBlock("the reference", "electrodes.reference", design.Electrodes.Reference);
            HalfBlock("the ground", "electrodes.ground", design.Electrodes.Ground);
            if (0 < design.Input.DrivenShield.Fraction && design.Input.LeadToCommon.Farads == 0)
            {
                Warning(Messages.ShieldWithoutLead, "input.driven-shield",
                    $"input.driven-shield is {QuantityText.Format(design.Input.DrivenShield)}, but input.lead-to-common is 0 F",
                    "the shield drives a share of lead-to-common", "set input.lead-to-common to the cable's capacitance",
                        "input.lead-to-common");
            }
        }

        public void Stages()
        {
            NodeId[] inner = [.. design.Stages.SelectMany(stage =>
                stage.Circuit().InnerClipping.Select(node => NodeId.Of($"{stage.Name} {node}")))];
            Names("stages", [.. design.Stages.Select(stage => stage.Name)],
                name => ReservedNames.OfStage(name) ?? (inner.Contains(NodeId.Of(name)) ? ResultIds.Levels.At(NodeId.Of(name)) : null));
            for (int i = 0; i < design.Stages.Count; i++)
            {
                string key = $"stages[{i + 1}]";
                foreach (StageFault fault in design.Stages[i].Faults(isLast: i + 1 == design.Stages.Count))
                {
                    Add(fault.Code, fault.Severity, key, fault.Message, fault.Note, fault.Help(key),
                        [.. fault.RestsOn.Select(field => $"{key}.{field}")]);
                }
            }
        }

        public void Converter()
        {
            Fit();
            if (design.Converter.Lsb is not { } lsb || lsb.Volts <= 0 || design.Converter.FullScale.Volts <= 0)
            {
                return;
            }

            double bits = Math.Log2(design.Converter.FullScale.Volts / lsb.Volts);
            if (0.01 < Math.Abs(bits - design.Converter.Bits))
            {
                Warning(Messages.StepDisagrees, "converter.lsb",
                    $"a step of {QuantityText.Format(lsb)} in {QuantityText.Format(design.Converter.FullScale)} makes {bits:0.##} bits, but converter.bits is {design.Converter.Bits:0.##}",
                    "the step is used", "leave one of the two out", "converter.bits", "converter.full-scale");
            }
        }

        /// <summary>A range beyond the rails is a range that the pins never reach.</summary>
        private void Fit()
        {
            AnalogDigitalConverter converter = design.Converter;
            Voltage lowest = design.Supply.Lowest;
            if (!ConverterSupply.Fits(converter, lowest))
            {
                Voltage most = Voltage.FromVolts(ConverterSupply.Largest(converter, lowest).Volts);
                string twice = ConverterSupply.IsDifferential(converter) ? "twice " : "";
                Warning(Messages.ConverterAboveSupply, DesignKeys.Converter.FullScale,
                    $"converter.full-scale {QuantityText.FormatPart(converter.FullScale)} is above {twice}{(converter.OwnSupply is null ? "supply.lowest" : DesignKeys.Converter.OwnSupply)}, {QuantityText.FormatPart(most)}",
                    ConverterSupply.IsDifferential(converter)
                        ? "each pin of a differential input spans at most rail to rail, and their difference twice that"
                        : "a single-ended input spans at most rail to rail",
                    "use a smaller reference or a higher supply, or give converter.own-supply if the converter has its own supply",
                    DesignKeys.Supply.Lowest, DesignKeys.Converter.OwnSupply, "converter.differential", "converter.kind");
            }

            if (converter.OwnSupply is { } own && design.Supply.Highest.Volts < own.Volts)
            {
                Warning(Messages.OwnSupplyAboveHighest, DesignKeys.Supply.Highest,
                    $"supply.highest {QuantityText.FormatPart(design.Supply.Highest)} is below converter.own-supply {QuantityText.FormatPart(own)}",
                    "supply.highest is the highest voltage anywhere in the box, and the currents after a fault are computed from it",
                    $"set supply.highest to at least {QuantityText.FormatPart(own)}", DesignKeys.Converter.OwnSupply);
            }
        }

        public void Supply()
        {
            Supply supply = design.Supply;
            if (supply.Highest.Volts < supply.Lowest.Volts)
            {
                Error(Messages.SupplyOrder, "supply.highest",
                    $"supply.highest {QuantityText.Format(supply.Highest)} is below supply.lowest {QuantityText.Format(supply.Lowest)}",
                    "safety is judged at the highest voltage anywhere in the box",
                        "set supply.highest to the full battery, the charger's input or a converter's output, whichever is highest",
                        "supply.lowest");
            }

            if (supply.RailsHighest is { } rails && (rails.Volts < supply.Lowest.Volts || supply.Highest.Volts < rails.Volts))
            {
                bool isLow = rails.Volts < supply.Lowest.Volts;
                Error(Messages.SupplyOrder, DesignKeys.Supply.RailsHighest,
                    $"supply.rails-highest {QuantityText.Format(rails)} is {(isLow ? $"below supply.lowest {QuantityText.Format(supply.Lowest)}" : $"above supply.highest {QuantityText.Format(supply.Highest)}")}",
                    "the rails lie between supply.lowest and supply.rails-highest, and nothing in the box is above supply.highest",
                    "set it between the two, or leave it out", DesignKeys.Supply.Lowest, DesignKeys.Supply.Highest);
            }

            if (supply.MidRail is { } mid && supply.Lowest.Volts <= mid.Volts)
            {
                Error(Messages.MidRailOutside, "supply.mid-rail",
                    $"supply.mid-rail {QuantityText.Format(mid)} is not below supply.lowest {QuantityText.Format(supply.Lowest)}", null,
                    "set a mid-rail between the rails", "supply.lowest");
            }

            if (supply.Lowest.Volts <= 2 * design.Amplifier.OutputMargin.Volts)
            {
                Error(Messages.MarginsExceedSupply, "amplifier.output-margin",
                    $"twice amplifier.output-margin {QuantityText.Format(design.Amplifier.OutputMargin)} uses up supply.lowest, {QuantityText.Format(supply.Lowest)}",
                    null, "lower the margin, or raise the supply", "supply.lowest");
            }

            if (EarthedFrom <= design.Mains.AmplifierToEarth.Farads && design.Caution.Length == 0)
            {
                Warning(Messages.EarthedWithoutCaution, "mains.amplifier-to-earth",
                    $"mains.amplifier-to-earth {QuantityText.Format(design.Mains.AmplifierToEarth)} represents a recorder wired to earth or to the mains, but caution is empty",
                    "such a recorder is a case for calculation, not a way to use the device",
                        "set caution to say so on the sheet, or set the capacitance of a floating battery device, 5 to 50 pF",
                        "caution");
            }

            Limit("requirements.fault-current", design.Requirements.FaultCurrent, Current.FromAmperes(TradeConstants.FaultAmperes));
            Limit("requirements.driven-ground-current", design.Requirements.DrivenGroundCurrent,
                Current.FromAmperes(TradeConstants.NormalAmperes));
        }

        public void Rest()
        {
            if (design.LargestSignal.Volts <= design.SmallestSignal.Volts)
            {
                Error(Messages.SignalOrder, "signal.largest",
                    $"signal.largest {QuantityText.Format(design.LargestSignal)} is not above signal.smallest {QuantityText.Format(design.SmallestSignal)}",
                    null, "check the prefixes of both", "signal.smallest");
            }

            if (design.Mains.Harmonics.Count == 0 || design.Mains.Harmonics[0] <= 0)
            {
                Error(Messages.NoFundamental, "mains.harmonics", "mains.harmonics has no fundamental",
                    "its first number is the share at the mains frequency itself", "begin the list with 1");
            }

            if (design.Montage.Sites.Count > 0 && design.Montage.Sites.Count != design.Channels)
            {
                Error(Messages.SitesCount, "montage.sites",
                    $"montage.sites names {design.Montage.Sites.Count} site{(design.Montage.Sites.Count == 1 ? "" : "s")}, but channels is {design.Channels}",
                    "each channel records one site", $"set channels to {design.Montage.Sites.Count}, or name as many sites as there are channels", "channels");
            }

            foreach (string site in design.Montage.Sites)
            {
                NearMiss("montage.sites", site);
            }

            NearMiss("montage.reference", design.Montage.Reference);
            int before = Findings.Count;
            Names("montage.sites", design.Montage.Sites);
            if (Findings.Count == before)
            {
                Channels();
            }

            if (design.Montage.Kind != MontageKind.Referential && design.Channels < 2)
            {
                Error(Messages.TooFewChannels, "montage.kind",
                    $"this montage needs at least two channels, but channels is {design.Channels}", null,
                    "write \"referential\", or set channels", "channels");
            }

            if (design.Input.ReferenceInputs is { } inputs && design.Channels < inputs)
            {
                Warning(Messages.ReferenceInputsAboveChannels, "input.reference-inputs",
                    $"input.reference-inputs is {inputs}, but channels is {design.Channels}", null,
                    "count one input for each channel that is not buffered", "channels");
            }

            if (design.ContactCheck is { } check && design.Converter.Rate.Hertz / 2 <= check.Frequency.Hertz)
            {
                Error(Messages.CheckAboveHalfRate, "contact-check.frequency",
                    $"contact-check.frequency {Text(check.Frequency)} is not below half the sampling rate, {Text(FromHertz(design.Converter.Rate.Hertz / 2))}",
                    $"converter.rate is {Text(design.Converter.Rate)}", "lower the frequency, or raise converter.rate", "converter.rate");
            }
        }

        // A floating battery device has 5 to 50 pF, one on a cable to a computer that runs on its battery up to 300 pF (common practice, no
        // source).
        private const double EarthedFrom = 1e-9;

        private static string Text(Frequency frequency) => QuantityText.Format(frequency);

        private void HalfBlock(string whose, string table, Electrodes.Electrode? electrode)
        {
            if (electrode is not null && electrode.SecondResistance is null != electrode.SecondCapacitance is null)
            {
                string missing = electrode.SecondResistance is null ? "second-resistance" : "second-capacitance";
                Error(Messages.HalfABlock, $"{table}.{missing}", $"{whose} electrode's second block has no {missing}",
                    "the block is a resistance and a capacitance in parallel",
                    "give both or neither", $"{table}.second-resistance", $"{table}.second-capacitance");
            }
        }

        private void Limit(string key, Current set, Current quoted)
        {
            if (quoted.Amperes < set.Amperes)
            {
                Warning(Messages.LimitRaised, key,
                    $"{key} {QuantityText.Format(set)} is above the limit commonly quoted, {QuantityText.Format(quoted)}",
                    "the quoted limit is from memory", $"set {QuantityText.Format(quoted)} or less");
            }
        }

        /// <summary>Results carry the names, so each must be the only one of its list and must not give an id that is built in.</summary>
        /// <param name="list">The list's key.</param>
        /// <param name="names">The names in it.</param>
        /// <param name="reserved">The built-in results that a name would share ids with; null for a list without such.</param>
        private void Names(string list, IReadOnlyList<string> names, Func<string, ResultFamily?>? reserved = null)
        {
            HashSet<string> all = [.. names.Select(Slug.Of)];
            Dictionary<string, int> seen = new(StringComparer.Ordinal);
            for (int i = 0; i < names.Count; i++)
            {
                (string slug, string key) = (Slug.Of(names[i]), $"{list}[{i + 1}].name");
                if (slug.Length == 0)
                {
                    Error(Messages.NameMissing, key, $"{list}[{i + 1}] has no name", "results are named after it",
                        "give a name that contains a letter or digit", list);
                }
                else if (reserved?.Invoke(names[i]) is { } taken)
                {
                    Error(Messages.NameReserved, key, $"`{names[i]}` would give results the ids of built-in ones, {taken}*",
                        "results are named after it, so each id must be unique",
                        $"use another name, such as `{Free(names[i])}`", list);
                }
                else if (!seen.TryAdd(slug, i + 1))
                {
                    string other = names[seen[slug] - 1];
                    string same = other == names[i] ? $"{list}[{seen[slug]}] and {list}[{i + 1}] are both named `{other}`"
                        : $"{list}[{seen[slug]}], `{other}`, and {list}[{i + 1}], `{names[i]}`, are both named {slug} in ids";
                    Error(Messages.NameTwice, key, same, "results are named after it, so it must be unique",
                        $"rename one of them, such as to `{Free(names[i])}`", list);
                }
            }

            string Free(string name) => ReservedNames.Proposal(name, one => !all.Contains(Slug.Of(one)) && reserved?.Invoke(one) is null);
        }

        /// <summary>Sites that differ can still make derived channels of one name: <c>a-b</c> before <c>c</c>, and <c>a</c> before
        /// <c>b-c</c>.</summary>
        private void Channels()
        {
            Montage montage = design.Montage;
            string[] slugs = [.. montage.ChannelNames(design.Channels).Select(Slug.Of)];
            int first = Array.FindIndex(slugs, slug => Array.IndexOf(slugs, slug) != Array.LastIndexOf(slugs, slug));
            if (first < 0 || montage.Sites.Count != design.Channels || montage.Kind != MontageKind.Bipolar)
            {
                return;
            }

            // Of the later channel's two sites the second.
            int site = Array.LastIndexOf(slugs, slugs[first]) + 1;
            string free = ReservedNames.Proposal(montage.Sites[site], one =>
                Distinct(montage with { Sites = [.. montage.Sites.Select((old, at) => at == site ? one : old)] }) > Distinct(montage));
            Error(Messages.NameTwice, $"montage.sites[{site + 1}].name",
                $"channels {first + 1} and {site} of the montage would both be {slugs[first]} in ids",
                "results are named after the channel, so its name must be unique",
                $"rename the site `{montage.Sites[site]}`, such as to `{free}`", "montage.sites", "montage.kind");

            int Distinct(Montage other) => other.ChannelNames(design.Channels).Concat(other.Sites).Select(Slug.Of).Distinct().Count();
        }

        private void Error(string code, string field, string message, string? note, string help, params ReadOnlySpan<string> restsOn) =>
            Add(code, Severity.Error, field, message, note, help, restsOn);

        private void Warning(string code, string field, string message, string? note, string help, params ReadOnlySpan<string> restsOn) =>
            Add(code, Severity.Warning, field, message, note, help, restsOn);

        private void Add(string code, Severity severity, string field, string message, string? note, string help,
            ReadOnlySpan<string> restsOn)
        {
            bool silent = unread.Contains(field);
            foreach (string key in restsOn)
            {
                silent |= unread.Contains(key);
            }

            if (!silent)
            {
                Findings.Add(new Finding(code, severity, field, message, note, help));
            }
        }
    }
}
