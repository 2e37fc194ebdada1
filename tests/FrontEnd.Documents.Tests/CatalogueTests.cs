using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Laws of the catalogue of fields.</summary>
public sealed class CatalogueTests
{
    /// <summary>A design in which every list element and every optional part is there.</summary>
    internal static Design Full
    {
        get
        {
            Design design = new();
            foreach (OptionalPart part in DesignFields.OptionalParts)
            {
                design = part.With(design, true);
            }

            foreach (DesignList list in DesignFields.Lists)
            {
                design = list.With(design, [.. list.Variants.Select((variant, index) => list.Renamed(variant.Create(), $"element {index + 1}"))]);
            }

            return design;
        }
    }

    [Fact]
    public void Keys_OfAFullDesign_AreUniqueInBothSpellings()
    {
        IReadOnlyList<Field<Design>> fields = DesignFields.Of(Full);
        Assert.True(fields.Count > 250, $"{fields.Count} fields");
        Assert.Equal(fields.Count, fields.Select(field => field.Key).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(fields.Count, fields.Select(field => field.JsonKey).Distinct(StringComparer.Ordinal).Count());
        Assert.All(fields, field => Assert.Matches("^[a-z0-9.\\-\\[\\]]+$", field.Key));
        Assert.All(fields, field => Assert.False(string.IsNullOrWhiteSpace(field.Meaning) || string.IsNullOrWhiteSpace(field.DefaultSource), field.Key));
    }

    // The table's defaults are words; they must say what the records do.
    [Fact]
    public void Defaults_AsWritten_AreTheRecordsOwn()
    {
        Design design = Full;
        foreach (Field<Design> field in DesignFields.Of(design).Where(field => field.DefaultIsValue && field.Kind is not (FieldKind.Text or FieldKind.Card)))
        {
            object? actual = field.Get(design);
            string written = field.DefaultText.StartsWith('[') ? field.DefaultText.Trim('[', ']').Replace("\"", "", StringComparison.Ordinal) : field.DefaultText;
            Assert.True(FieldText.TryParse(field, written, out object? stated, out Finding? finding), $"{field.Key}: `{field.DefaultText}` {finding?.Message}");
            if (FieldKinds.SiValue(actual) is { } expected && FieldKinds.SiValue(stated) is { } si)
            {
                Assert.True(Math.Abs(si - expected) <= 1e-12 * Math.Abs(expected), $"{field.Key}: the table says {field.DefaultText}, the record {FieldText.Format(field, actual)}");
            }
            else
            {
                Assert.Equal(FieldText.Format(field, actual), FieldText.Format(field, stated));
            }
        }
    }

    [Fact]
    public void Find_EveryKey_GivesItsField_AndReadsWhatWasSet()
    {
        Design design = Full;
        foreach (Field<Design> field in DesignFields.Of(design))
        {
            Field<Design>? found = DesignFields.Find(design, field.Key);
            Assert.NotNull(found);
            object? value = Another(field, field.Get(design));
            Design changed = found.Set(design, value);
            Assert.Equal(FieldText.Format(field, value), FieldText.Format(field, field.Get(changed)));

            // Nothing else moved, but for a part that is taken out as a whole.
            if (field.Key is not "electrodes.ground-electrode")
            {
                string[] moved = [.. DesignFields.Of(changed).Where(other => !string.Equals(other.Key, field.Key, StringComparison.Ordinal)
                    && !string.Equals(FieldText.Format(other, other.Get(changed)), FieldText.Format(other, other.Get(design)), StringComparison.Ordinal)).Select(other => other.Key)];
                Assert.Empty(moved);
            }
        }
    }

    [Fact]
    public void Find_ByName_IsTheSameElement()
    {
        Design design = Full;
        Assert.Equal("stages[4].r1", DesignFields.Find(design, "stages.element-4.r1")!.Key);
        Assert.Equal("stages[4].opamp.gain-bandwidth", DesignFields.Find(design, "stages.element-4.opamp.gain-bandwidth")!.Key);
        Assert.Null(DesignFields.Find(design, "stages.element-9.r1"));
        Assert.Null(DesignFields.Find(design, "stages[0].r1"));
        Assert.Null(DesignFields.Find(design, "stages[99].r1"));
        Assert.Null(DesignFields.Find(design, "nonsense"));
    }

    [Fact]
    public void Numeric_RaisedByTenPercent_ReadsTenPercentMore()
    {
        Design design = Full;
        int count = 0;
        foreach (Field<Design> field in DesignFields.Numeric(design))
        {
            double si = field.SiValue(design)!.Value;
            if (si != 0 && field.Kind != FieldKind.Count)
            {
                count++;
                Assert.Equal(si * 1.1, field.SiValue(field.WithSiValue(design, si * 1.1))!.Value, Math.Abs(si) * 1e-14);
            }
        }

        Assert.True(count > 140, $"{count} numeric fields");
    }

    [Fact]
    public void Safety_MarksWhatProtectsTheWearer()
    {
        Assert.Equal(
            [
                "electrodes.active-buffer.skin-resistor", "electrodes.reference-buffer.skin-resistor", "ground-drive.resistor-tolerance", "ground-drive.series-resistor",
                "input.resistor-tolerance", "input.series-resistor", "requirements.driven-ground-current", "requirements.fault-current", "supply.highest",
            ],
            DesignFields.Of(Full).Where(field => field.Safety).Select(field => field.Key).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
    }

    [Fact]
    public void Text_ParseOfFormat_GivesSameValue()
    {
        Random random = new(20260101);
        Design design = Full;
        foreach (Field<Design> field in DesignFields.Of(design).Where(field => field.IsNumeric && field.Range is not null))
        {
            for (int i = 0; i < 20; i++)
            {
                object value = RandomValue(field, random);
                string text = FieldText.Format(field, value);
                Assert.True(FieldText.TryParse(field, text, out object? back, out Finding? finding), $"{field.Key}: {text} {finding?.Message}");
                Assert.Equal(value, back);
            }
        }
    }

    [Fact]
    public void Write_AnyDesign_ReadsBackTheSame()
    {
        Random random = new(20260102);
        for (int run = 0; run < 200; run++)
        {
            Design design = RandomDesign(random);
            string text = DesignWriter.ToToml(design);
            DesignDocument document = DesignDocument.Parse(text, DocumentFormat.Toml);
            Finding? unread = document.Findings.FirstOrDefault(finding => finding.Code.StartsWith("FE01", StringComparison.Ordinal));
            Assert.True(unread is null, $"run {run}: {unread?.Line} {unread?.Code} {unread?.Message}\n{text}");
            AssertSame(design, document.Design, $"run {run}\n{text}");
        }
    }

    internal static void AssertSame(Design expected, Design actual, string context)
    {
        IReadOnlyList<Field<Design>> fields = DesignFields.Of(expected);
        Assert.Equal(fields.Select(field => field.Key), DesignFields.Of(actual).Select(field => field.Key), StringComparer.Ordinal);
        foreach (Field<Design> field in fields)
        {
            string was = FieldText.Format(field, field.Get(expected));
            string now = FieldText.Format(field, field.Get(actual));
            Assert.True(string.Equals(was, now, StringComparison.Ordinal), $"{field.Key}: {was} became {now} in {context}");
        }
    }

    internal static Design RandomDesign(Random random)
    {
        Design design = new();
        foreach (OptionalPart part in DesignFields.OptionalParts)
        {
            design = part.With(design, random.Next(2) == 0);
        }

        foreach (DesignList list in DesignFields.Lists)
        {
            if (random.Next(3) > 0)
            {
                int count = random.Next(4);
                design = list.With(design, [.. Enumerable.Range(0, count).Select(index => list.Renamed(list.Variants[random.Next(list.Variants.Count)].Create(), $"element {index}"))]);
            }
        }

        foreach (Field<Design> field in DesignFields.Of(design))
        {
            if (random.Next(4) == 0 && field.Key is not "electrodes.ground-electrode")
            {
                object? value = field.IsNumeric && field.Range is not null ? RandomValue(field, random) : Another(field, field.Get(design));
                if (field.Kind == FieldKind.Card)
                {
                    IReadOnlyList<string> names = DesignDocument.CardNames(field.CardClass!.Value);
                    value = names[random.Next(names.Count)];
                }

                design = field.Set(design, value);
            }
        }

        return design;
    }

    private static object RandomValue(FieldDescription field, Random random)
    {
        FieldRange range = field.Range!.Value;
        double low = Math.Max(Math.Abs(range.Least), 1e-15);
        double si = random.Next(10) == 0 && !range.LeastOpen ? range.Least : low * Math.Pow(range.Greatest / low, random.NextDouble());
        si = Math.Clamp(si, range.Least, range.Greatest);
        si = range.Contains(si) ? si : range.Least + ((range.Greatest - range.Least) / 3);
        return field.FromSi(si);
    }

    /// <summary>A value of the field's kind that is not the one given.</summary>
    internal static object? Another(FieldDescription field, object? value) => field.Kind switch
    {
        FieldKind.Flag => value is not true,
        FieldKind.Text => "another \"text\" \\ with\tsigns µ",
        FieldKind.Card => "another-card",
        FieldKind.Choice => field.Choices.First(choice => !choice.Value.Equals(value)).Value,
        FieldKind.FrequencyRange => new FrequencyRange(Quantities.Frequency.FromHertz(2), Quantities.Frequency.FromHertz(30)),
        FieldKind.NumberList => (IReadOnlyList<double>)[1, 0.25, field.Range!.Value.Contains(0) ? 0 : 3],
        FieldKind.TextList => (IReadOnlyList<string>)["Fp1", "O2"],
        FieldKind.SectionRows => (IReadOnlyList<IReadOnlyList<double>>)[[1, -1, 0, 1, -0.5, 0.25], [0.5, 0, 0, 1, 0, 0]],
        FieldKind.Ranges => new PartRanges(field.Ranged.Take(2).Select(one => new PartRange(one.Key, Between(one.Range!.Value, 0), Between(one.Range.Value, 0)))),
        FieldKind.NamedNumbers => new NamedNumbers([new("O1", 0.5), new("left eyebrow", -1.25)]),
        FieldKind.ContactOverTime => new ContactOverTime([new(Quantities.Duration.FromSeconds(90), new(2.5, 1.25)), new(Quantities.Duration.FromSeconds(7200), new(1, 0.5))]),
        FieldKind.Count => value is int count && count == 3 ? 4 : 3,
        _ => field.FromSi(Between(field.Range!.Value, FieldKinds.SiValue(value) ?? 0)),
    };

    private static double Between(FieldRange range, double now)
    {
        double other = now == 0 ? range.Greatest / 2 : now * 1.25;
        return range.Contains(other) ? other : (now + range.Least) / 2;
    }
}
