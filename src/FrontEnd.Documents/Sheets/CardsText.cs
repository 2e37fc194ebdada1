using FrontEnd.Documents.Cards;
using FrontEnd.Documents.Reading;
using FrontEnd.Electrodes;

namespace FrontEnd.Documents.Sheets;

/// <summary>Part cards as plain text, 80 columns wide.</summary>
internal static class CardsText
{
    /// <summary>The cards by kind, a line of figures for each.</summary>
    public static string List(IReadOnlyList<ShownCard> cards)
    {
        TextPage page = new();
        foreach (IGrouping<Fields.CardClass, ShownCard> kind in cards.GroupBy(card => card.Class))
        {
            page.Line($"{CardPlace.Word(kind.Key)}s");
            int width = kind.Max(card => card.Name.Length);
            foreach (ShownCard card in kind)
            {
                page.Paragraph($"{card.Title}: {card.Figures}", $"  {card.Name.PadRight(width)}  ");
            }

            page.Blank();
        }

        page.Paragraph("`frontend cards NAME` shows all values of a card with their sources; `frontend cards new KIND FILE` writes one for a part of yours.");
        return page.ToString();
    }

    /// <summary>Cards with all their values.</summary>
    public static string Shown(IReadOnlyList<ShownCard> cards)
    {
        TextPage page = new();
        foreach (ShownCard card in cards)
        {
            if (card != cards[0])
            {
                page.Blank();
            }

            page.Ends(card.Name, CardPlace.Word(card.Class));
            page.Paragraph(card.Title, "  ");
            page.Paragraph(card.Source, "  source: ");
            if (card.Chip.Length != 0)
            {
                page.Paragraph(card.Chip, "  on the chip: ");
            }

            Table(page, "values", card.Values, card.Source);
            Table(page, "not on the card: the default holds", card.Defaults);
        }

        return page.ToString();
    }

    /// <summary>A value that is longer, such as a list of times, stands in a paragraph of its own below the others.</summary>
    private const int Long = 26;

    private static void Table(TextPage page, string heading, IReadOnlyList<CardValue> values, string source = "")
    {
        if (values.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Line(heading);
        page.Table([new Column("", IsText: true), new Column("", IsText: true), new Column("", IsText: true)],
            [.. values.Where(value => value.Text.Length <= Long).Select(value => new Row([value.Key, value.Text.Length == 0 ? "none" : value.Text, Source(value)]))], heads: false);
        foreach (CardValue value in values.Where(value => Long < value.Text.Length))
        {
            page.Paragraph($"{value.Text} ({Source(value)})", $"  {value.Key}: ");
        }

        string Source(CardValue value) => source.Length != 0 && value.Source.StartsWith(source, StringComparison.Ordinal) ? "as above" + value.Source[source.Length..] : value.Source;
    }

    /// <summary>What was fitted for a new card: the values, and every point beside the fit; "" where nothing was.</summary>
    public static string Fitted(NewCard card)
    {
        TextPage page = new();
        if (card.Voltage is { } voltage)
        {
            Noise(page, voltage, "voltage noise");
        }

        if (card.Current is { } current)
        {
            Noise(page, current, "current noise");
        }

        if (card.Impedance is { } impedance)
        {
            Impedance(page, impedance);
        }

        if (card.Values.Count != 0)
        {
            page.Line("in the card");
            page.Table([new Column("", IsText: true), new Column("")], [.. card.Values.Select(value => new Row([value.Key, QuantityText.FormatExact(value.Value)]))], heads: false);
        }

        return page.ToString();
    }

    private static void Noise(TextPage page, FittedNoise noise, string what)
    {
        page.Paragraph($"{what} fitted to {noise.Fit.Points.Count} points of {noise.Name}, e² = e0²·(1 + fc/f): {FitWords.Of(noise.Fit)}");
        if (noise.UnitRead is { } unit)
        {
            page.Paragraph($"the densities have no unit and are of a size that only {unit} can be");
        }

        page.Table([new Column("frequency"), new Column("measured"), new Column("fitted"), new Column("deviation")],
            [.. noise.Fit.Points.Select(point => new Row([QuantityText.Format(point.Frequency, 4), QuantityText.Format(point.Measured, 4), QuantityText.Format(point.Fitted, 4), FitWords.Signed(point.Deviation)]))]);
        page.Blank();
    }

    private static void Impedance(TextPage page, FittedImpedance impedance)
    {
        ImpedanceFit fit = impedance.Fit;
        page.Paragraph($"impedance fitted to {fit.Points.Count} points of {impedance.Name}: {FitWords.Of(fit)}");
        page.Table([new Column("frequency"), new Column("measured"), new Column("phase"), new Column("fitted"), new Column("phase"), new Column("deviation"), new Column("")],
            [.. fit.Points.Select(point => new Row([QuantityText.Format(point.Frequency, 4), Size(point.Measured), Phase(point.Measured), Size(point.Fitted), Phase(point.Fitted),
                FitWords.Signed(point.Magnitude), FitWords.Signed(point.Phase)]))]);
        page.Blank();
    }

    private static string Size(System.Numerics.Complex z) => QuantityText.Format(Resistance.FromOhms(System.Numerics.Complex.Abs(z)), 4);

    private static string Phase(System.Numerics.Complex z) => QuantityText.Format(FitWords.PhaseOf(z), 3);
}
