using System.Globalization;
using System.Text;
using FrontEnd.Circuits;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Electrodes;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Cards;

/// <summary>A part card to be filled from a data sheet: every key that a card of its class may have, with what is known about it, as remarks; and the values
/// that were fitted to measured points, with the fit.</summary>
internal sealed record NewCard(CardClass Class)
{
    /// <summary>Digits of a fitted value in the card: more than a plot or a meter has, fewer than say nothing.</summary>
    private const int Digits = 5;

    private const string Contact = "contact-resistance";

    /// <summary>White noise and corner fitted to points of the voltage noise; null for none.</summary>
    public FittedNoise? Voltage { get; init; }

    /// <summary>The same of the current noise.</summary>
    public FittedNoise? Current { get; init; }

    /// <summary>Resistances and capacitances fitted to a spectrum; null for none.</summary>
    public FittedImpedance? Impedance { get; init; }

    /// <summary>The fitted values, rounded as the card has them.</summary>
    public IReadOnlyList<FittedValue> Values => [.. OfNoise(Voltage, "voltage"), .. OfNoise(Current, "current"), .. OfImpedance()];

    /// <summary>True for a class that has a white level and a corner of this noise.</summary>
    public static bool HasNoise(CardClass cardClass) => cardClass is CardClass.Amplifier or CardClass.OpAmp or CardClass.Buffer;

    /// <summary>Errors for values that no card may have, warnings for values that the points do not show.</summary>
    public IReadOnlyList<Finding> Findings =>
    [
        .. from value in Values
           let described = Field(value.Key)
           where described.Range is { } range && !range.Contains(value.Value.SiValue)
           select CardMessages.Outside(described, value.Key, QuantityText.FormatExact(value.Value)),
        .. OfFit(Voltage, "voltage"), .. OfFit(Current, "current"), .. OfFit(),
    ];

    /// <summary>Writes it, unless there is a file of that name.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public Finding? Write(string path) => TextFiles.WriteAtomically(path, Text);

    /// <summary>The card as text.</summary>
    public string Text
    {
        get
        {
            string word = CardPlace.Word(Class);
            StringBuilder text = new();
            text.Append(CultureInfo.InvariantCulture, $"""
                # A part card: {word}. Take the # off a key and put the part's figure behind it, number and unit in quotes.
                # Typical figures for noise, worst-case ones for offset, bias current and rejection; gain, bandwidth and rejection at the gain
                # and the supply that are used. What is left out stands at its default and is shown as such.
                class = "{word}"
                name = "{word}, not named yet"
                source = "not named yet: data sheet, revision and page"

                """);
            if (Class is CardClass.Amplifier or CardClass.Converter)
            {
                text.Append("# chip = \"name\"   # only where amplifier and converter are one chip: the same word on both cards\n");
            }

            text.Append("\n[values]\n");
            foreach (string line in FitLines())
            {
                text.Append("# ").Append(line).Append('\n');
            }

            Dictionary<string, FittedValue> fitted = Values.ToDictionary(value => value.Key, StringComparer.Ordinal);
            Design empty = CardPlace.Empty(Class);
            foreach (Field<Design> one in CardPlace.Fields(Class))
            {
                Entry(text, one, empty, fitted);
            }

            text.Append("\n[sources]\n# A key without a line here has the card's source. For one from elsewhere:\n");
            text.Append(CultureInfo.InvariantCulture, $"# {CardPlace.KeyOn(Class, CardPlace.Fields(Class)[0])} = \"where the figure comes from\"\n");
            foreach (FittedValue value in fitted.Values)
            {
                text.Append(CultureInfo.InvariantCulture, $"{value.Key} = {Literals.Quoted(value.Source)}\n");
            }

            return text.ToString();
        }
    }

    private void Entry(StringBuilder text, Field<Design> field, Design empty, Dictionary<string, FittedValue> fitted)
    {
        string key = CardPlace.KeyOn(Class, field);
        if (field.Kind == FieldKind.Ranges)
        {
            text.Append("\n# ").Append(field.Meaning).Append('\n');
            foreach (FieldDescription ranged in field.Ranged)
            {
                string of = key[..^"ranges".Length] + ranged.Key;
                FittedValue? known = fitted.GetValueOrDefault(of);
                string end = known is null ? Example(ranged, Field(of).Get(empty)) : Quoted(known.Value);
                text.Append(CultureInfo.InvariantCulture, $"# {key}.{ranged.Key} = [{end}, {end}]\n");
            }

            return;
        }

        Remarks(text, field);
        if (fitted.TryGetValue(key, out FittedValue? value))
        {
            text.Append(CultureInfo.InvariantCulture, $"{key} = {Quoted(value.Value)}   # {value.Source}\n");
        }
        else
        {
            text.Append(CultureInfo.InvariantCulture, $"# {key} = {Example(field, field.DefaultIsValue ? field.Get(empty) : null)}\n");
        }

        if (field.Holds<ExcessNoise>())
        {
            foreach (FieldDescription form in new[] { ExcessForms.Rms, ExcessForms.Band })
            {
                Remarks(text, form);
                text.Append(CultureInfo.InvariantCulture, $"# {form.Key} = {FieldKinds.Example(form)}\n");
            }
        }
    }

    /// <summary>What is known about a key: meaning, kind, range, default.</summary>
    private static void Remarks(StringBuilder text, FieldDescription field)
    {
        string range = field.Kind switch
        {
            FieldKind.Choice or FieldKind.Flag => Messages.Listed(FieldText.Words(field)),
            FieldKind.Card => $"{Messages.Listed(CardShelf.Names(field.CardClass!.Value))}, or a path",
            _ when FieldText.Words(field) is { Count: > 0 } words => $"{FieldMessages.RangeWords(field)}, or {Messages.Listed(words)}",
            _ => FieldMessages.RangeWords(field),
        };
        string standard = field.DefaultText.Length == 0 ? "none" : field.DefaultText;
        text.Append(CultureInfo.InvariantCulture, $"\n# {field.Meaning}\n#   {FieldKinds.Noun(field)}{Such(field)}{(range.Length == 0 ? "" : ", " + range)}\n#   if left out: {standard} ({field.DefaultSource})\n");
    }

    private static string Such(FieldDescription field) => field.Kind is FieldKind.Quantity ? $" such as {FieldKinds.Example(field)}" : "";

    /// <summary>A value as it may stand there: the default where it is a value, else an example of the kind.</summary>
    private static string Example(FieldDescription field, object? value) => (field.Kind, value) switch
    {
        (FieldKind.Card, _) => Literals.Quoted(CardShelf.Names(field.CardClass!.Value)[0]),
        (_, not null and not "") => Literals.Of(field, value, DocumentFormat.Toml),
        _ when field.NullWord is { } none => Literals.Quoted(none),
        (FieldKind.Choice, _) => Literals.Quoted(FieldText.Words(field)[0]),
        _ => FieldKinds.Example(field),
    };

    private static string Quoted(IQuantity value) => Literals.Quoted(QuantityText.FormatExact(value));

    private Field<Design> Field(string key) => CardPlace.Fields(Class).First(field => string.Equals(CardPlace.KeyOn(Class, field), key, StringComparison.Ordinal));

    /// <summary>The fits as lines of text.</summary>
    private IEnumerable<string> FitLines()
    {
        foreach ((FittedNoise? noise, string what) in new[] { (Voltage, "voltage"), (Current, "current") })
        {
            if (noise is not null)
            {
                yield return $"Fitted to {noise.Fit.Points.Count} points of {noise.Name}, {what} noise: {FitWords.Of(noise.Fit)}";
                foreach (NoiseDeviation point in FitWords.Shown(noise.Fit.Points))
                {
                    yield return $"  {FitWords.Of(point)}";
                }
            }
        }

        if (Impedance is { } impedance)
        {
            yield return $"Fitted to {impedance.Fit.Points.Count} points of {impedance.Name}: {FitWords.Of(impedance.Fit)}";
            foreach (ImpedanceDeviation point in FitWords.Shown(impedance.Fit.Points))
            {
                yield return $"  {FitWords.Of(point)}";
            }
        }
    }

    private IEnumerable<FittedValue> OfNoise(FittedNoise? noise, string what)
    {
        if (noise is not null)
        {
            (string white, string corner) = NoiseKeys(what);
            yield return new(white, Rounded(noise.Fit.White), $"fitted to points of {noise.Name}");
            yield return new(corner, Rounded(noise.Fit.Corner), noise.Fit.Corner.Hertz == 0 ? $"no flicker in the points of {noise.Name}" : $"fitted to points of {noise.Name}");
        }
    }

    private (string White, string Corner) NoiseKeys(string what)
    {
        string part = Class == CardClass.Buffer ? "opamp." : "";
        return what == "voltage" ? (part + (Class == CardClass.Amplifier ? "input-noise" : "voltage-noise"), part + "noise-corner")
            : (part + "current-noise", part + "current-noise-corner");
    }

    private IEnumerable<FittedValue> OfImpedance()
    {
        if (Impedance is not { } fitted)
        {
            yield break;
        }

        Electrode electrode = fitted.Fit.Electrode;
        foreach ((string key, IQuantity? value) in new (string, IQuantity?)[] { ("series-resistance", electrode.SeriesResistance), (Contact, electrode.ContactResistance),
            ("contact-capacitance", electrode.ContactCapacitance), ("second-resistance", electrode.SecondResistance), ("second-capacitance", electrode.SecondCapacitance) })
        {
            if (value is not null)
            {
                yield return key == Contact && LargestContact is { } largest ? new(key, largest, $"the largest that a card may have: the points of {fitted.Name} show none")
                    : new(key, Rounded(value), $"fitted to points of {fitted.Name}");
            }
        }
    }

    /// <summary>What stands for the contact's resistance where the points are those of a capacitor: the fit puts it above its range and its corner below the
    /// points. Else null.</summary>
    private Resistance? LargestContact => Impedance?.Fit is { } fit && Field(Contact).Range is { } range && range.Greatest < fit.Electrode.ContactResistance.Ohms && fit.Corners[0].Hertz < fit.Points[0].Frequency.Hertz
        ? Resistance.FromOhms(range.Greatest) : null;

    private static IQuantity Rounded(IQuantity value) =>
        QuantityKind.Of(value).FromSi(double.Parse(value.SiValue.ToString($"E{Digits - 1}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));

    private IEnumerable<Finding> OfFit(FittedNoise? noise, string what)
    {
        if (noise is not { Fit: var fit })
        {
            yield break;
        }

        (string white, string corner) = NoiseKeys(what);
        if (!fit.IsWhiteSeen)
        {
            yield return CardMessages.Beyond(white, $"the white noise lies beyond the points: flicker is still the larger at {QuantityText.Format(fit.Points[^1].Frequency)}");
        }

        if (!fit.IsCornerSeen)
        {
            yield return CardMessages.Beyond(corner, $"the corner, {QuantityText.Format(fit.Corner)}, lies below the lowest point, {QuantityText.Format(fit.Points[0].Frequency)}");
        }

        if (FitWords.MostDecibels < fit.Rms.Value)
        {
            yield return CardMessages.Poor(white, $"the points deviate from the fit by {QuantityText.Format(fit.Rms)} rms", "white noise and 1/f do not describe them");
        }
    }

    private IEnumerable<Finding> OfFit()
    {
        if (Impedance is not { Fit: var fit })
        {
            yield break;
        }

        if (LargestContact is { } largest)
        {
            Electrode capacitor = fit.Electrode with { ContactResistance = largest };
            Ratio left = Ratio.FromFraction(fit.Points.Max(point => new ImpedanceDeviation(point.Frequency, point.Measured, capacitor.Impedance(point.Frequency)).Left.Fraction));
            yield return CardMessages.NoLeak(Contact, QuantityText.Format(largest), QuantityText.FormatPercent(left, 2));
        }
        else if (!fit.IsContactSeen)
        {
            yield return CardMessages.NoContact(Contact, QuantityText.Format(fit.Alone), QuantityText.FormatPercent(fit.RmsOfAlone, 2));
        }
        else if (!fit.IsSeen)
        {
            yield return CardMessages.Beyond("contact-capacitance", $"a corner, {string.Join(" or ", fit.Corners.Select(corner => QuantityText.Format(corner)))}, lies outside the points, {QuantityText.Format(fit.Points[0].Frequency)} to {QuantityText.Format(fit.Points[^1].Frequency)}");
        }

        if (FitWords.MostShare < fit.Rms.Fraction)
        {
            yield return CardMessages.Poor(Contact, $"the points deviate from the fit by {QuantityText.FormatPercent(fit.Rms)} rms", "resistances and capacitances do not describe them; skin often changes more slowly with frequency than one pair does");
        }
    }
}

/// <summary>A fit of noise and the file of its points.</summary>
internal sealed record FittedNoise(NoiseFit Fit, string File)
{
    /// <summary>The file's name without its folder, which means nothing to whoever gets the card.</summary>
    public string Name => Path.GetFileName(File);

    /// <summary>The unit that densities without one were read in; null where each has one.</summary>
    public string? UnitRead { get; init; }
}

/// <summary>A fit of an impedance and the file of its points.</summary>
internal sealed record FittedImpedance(ImpedanceFit Fit, string File)
{
    /// <summary>The file's name without its folder.</summary>
    public string Name => Path.GetFileName(File);
}

/// <summary>A value that was fitted.</summary>
/// <param name="Key">The card's key.</param>
internal sealed record FittedValue(string Key, IQuantity Value, string Source);
