using FrontEnd.Rates;

namespace FrontEnd.Documents.Sheets;

/// <summary>Sampling rates side by side as plain text: the recommendation first, then one line a rate, then where
/// everything lands.</summary>
internal static class RatesText
{
    public static string Of(RateComparison comparison, int width = TextPage.Width)
    {
        TextPage page = new(width);
        Design design = comparison.Design;
        page.Paragraph($"sampling rate for {design.Name}");
        page.OwnCautions(design);
        page.Paragraph(
            $"band {QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}, mains {QuantityText.FormatPart(design.Mains.Frequency)} ±{QuantityText.FormatPercent(design.Mains.Deviation, 2)}, "
            + $"at least {QuantityText.Format(design.Requirements.Fold)} at the fold");
        page.Blank();
        page.Paragraph(comparison.Pick is { } pick ? $"{Number(pick.Rate, 6)} S/s" : "none", "recommended:  ");
        page.Paragraph(comparison.RunnerUp is { } next ? $"{Number(next.Rate, 6)} S/s" : "none", "runner-up:    ");
        page.Paragraph(comparison.Because, "because:      ");
        page.Blank();
        Overview(page, comparison);
        page.Blank();
        page.Line("why");
        foreach (RateOption option in comparison.Options)
        {
            page.Paragraph(option.Because, Lead(option));
        }

        Orders(page, comparison);
        for (int at = 0; at < (comparison.Options.FirstOrDefault(option => option.IsWorkedOut)?.Mains.Count ?? 0); at++)
        {
            Landings(page, comparison, at);
        }

        Interferers(page, comparison);
        Skew(page, comparison);
        foreach (Finding finding in comparison.Findings)
        {
            page.Blank();
            FindingText.Write(page, finding);
        }

        page.Cautions();
        return page.ToString();
    }

    private static void Overview(TextPage page, RateComparison comparison)
    {
        bool battery = comparison.Design.Supply.BatteryCapacity is not null;
        string[] mains = [.. Worked(comparison).FirstOrDefault()?.Mains.Select(one => QuantityText.FormatPart(one.Frequency)) ?? []];
        List<Column> columns = [new(""), new("S/s"), new("fold"), new("order"), .. mains.Select(one => new Column($"at {one}")),
            new("droop"), new("delay"), new("bit/s"), .. battery ? [new Column("battery")] : (Column[])[]];
        List<Row> rows = [];
        foreach (RateOption option in Worked(comparison))
        {
            string mark = option == comparison.Pick ? ">" : option == comparison.RunnerUp ? "-" : "";
            rows.Add(new Row(
            [
                $"{mark}{Wording.Sign(option.Verdict)}", Number(option.Rate, 6), option.FoldAttenuation is { } fold
                    ? QuantityText.Format(fold, 2)
                    : "no limit",
                Order(option.Orders[0]), .. option.Mains.Select(one => QuantityText.Format(one.Recorded.Volts, "V", 2)),
                QuantityText.Format(Math.Round(option.DroopHigh.Value, 2) + 0.0, "dB", 2),
                QuantityText.Format(option.Delay, 2),
                QuantityText.Format(option.DataRate.BitsPerSecond, "bit/s", 2).Replace("bit/s", "", StringComparison.Ordinal).TrimEnd(),
                .. option.BatteryLife is { } life ? [QuantityText.Format(life, 2)] : (string[])[],
            ]));
        }

        page.Table(columns, rows);
        page.Paragraph($"+ pass, ~ marginal, x fail; > recommended, - runner-up. Fold: attenuation of the present path. Order: Butterworth with half power at {QuantityText.Format(comparison.Corner)} ({comparison.CornerIs}). At: mains recorded in the band, rms, worst case. Droop: at the band's upper edge.", "  ");
    }

    private static void Orders(TextPage page, RateComparison comparison)
    {
        page.Blank();
        page.Ends("order of the anti-alias filter", "0: the converter alone is enough");
        List<Column> columns = [new("S/s"),
            .. AntiAliasOrder.Families.Select(family =>
                new Column(family.Replace("critically", "crit.", StringComparison.Ordinal).Replace("inverse", "inv.",
                    StringComparison.Ordinal)))];
        page.Table(columns, [.. Worked(comparison).Select(option => new Row([Number(option.Rate, 6), .. option.Orders.Select(Order)]))]);
    }

    private static void Landings(TextPage page, RateComparison comparison, int at)
    {
        MainsAtRate first = Worked(comparison).First().Mains[at];
        page.Blank();
        page.Ends($"mains {QuantityText.FormatPart(first.Frequency)}, {QuantityText.FormatPart(first.Voltage)}: what lands in the band",
            $"h = 1 to {first.HighestHarmonic}, where, rms left");
        foreach (RateOption option in Worked(comparison))
        {
            MainsAtRate mains = option.Mains[at];
            string[] inBand = [.. mains.Landings.Where(landing => landing.InBand).Select(Landing)];
            string comb = mains.Comb is { } samples ? $"; comb of {samples} samples possible" : "; no comb";
            page.Paragraph((inBand.Length == 0 ? "nothing" : string.Join(", ", inBand)) + comb, Lead(option));
        }
    }

    private static string Landing(MainsLanding landing) =>
        $"{landing.Harmonic}: {QuantityText.FormatPart(landing.Frequency)} -> {QuantityText.FormatTrimmed(landing.LandsAt, 4)} ({Number(landing.Low)}..{Number(landing.High)}) {QuantityText.Format(landing.Residue.Volts, "V", 2)}";

    private static string Number(Frequency frequency, int digits = 3) =>
        QuantityText.FormatTrimmed(Math.Round(frequency.Hertz, 6), "1", digits);

    private static string Lead(RateOption option) => $"  {Number(option.Rate, 6)} S/s: ".PadRight(14);

    private static void Interferers(TextPage page, RateComparison comparison)
    {
        foreach ((string name, int at) in (Worked(comparison).FirstOrDefault()?.Interferers ?? []).Select((one, at) => (one.Name, at)))
        {
            page.Blank();
            page.Line($"{name}: residue in the band, rms");
            foreach (RateOption option in Worked(comparison))
            {
                InterfererAtRate left = option.Interferers[at];
                string direct = left.Direct is { } there ? $", {QuantityText.Format(there.Volts, "V", 2)} lies in the band itself" : "";
                page.Paragraph($"lands at {left.LandsAt}; {QuantityText.Format(left.Folded.Volts, "V", 2)} {(left.Direct is null ? "left" : "folded")}{direct}", Lead(option));
            }
        }
    }

    private static void Skew(TextPage page, RateComparison comparison)
    {
        int channels = comparison.Design.Channels;
        page.Blank();
        page.Line("multiplexed against simultaneous sampling, common mode at the mains");
        SamplingSkew set = comparison.SkewAsDesigned;
        page.Paragraph(
            set.Apart.Seconds == 0
                ? "simultaneous: nothing leaks"
                : $"{QuantityText.Format(set.Apart)} between neighbours: {Leak(set)}", "  as designed:  ");
        if (channels < 2)
        {
            page.Paragraph("one channel: nothing to subtract", "  spread:       ");
            return;
        }

        foreach (RateOption option in Worked(comparison))
        {
            SamplingSkew spread = comparison.SkewSpreadEvenly(option)!;
            page.Paragraph(
                $"{channels} channels spread evenly, {QuantityText.Format(spread.Apart.Seconds, "s")} apart: {Leak(spread)}; simultaneous: none", Lead(option));
        }
    }

    private static string Leak(SamplingSkew skew) => skew.Rejection is { } rejection
        ? $"leak {QuantityText.FormatPercent(skew.Leak, 2)}, a rejection of {QuantityText.Format(rejection)}"
        : "nothing leaks";

    private static string Order(OrderNeeded needed) =>
        needed.Order is { } order ? QuantityText.FormatTrimmed(order, "1", 3) : $">{AntiAliasOrder.Most}";

    private static IEnumerable<RateOption> Worked(RateComparison comparison) => comparison.Options.Where(option => option.IsWorkedOut);
}
