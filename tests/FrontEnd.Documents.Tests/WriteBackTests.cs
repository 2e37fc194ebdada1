using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>A change to a design file touches the value and nothing else.</summary>
public sealed class WriteBackTests
{
    [Theory]
    [InlineData("gain = 4   # first gain\n", "amplifier.", "gain", "5", "gain = 5   # first gain\n")]
    [InlineData("  cmrr = \"100 dB\"# odd spacing\n", "amplifier.", "cmrr", "90 dB", "  cmrr = \"90 dB\"# odd spacing\n")]
    public void Set_GivenKey_ReplacesTheValueOnly(string line, string table, string key, string value, string expected)
    {
        string head = "# a comment\r\nname = \"x\"\r\n\r\n[amplifier]\n";
        DesignDocument document = DesignDocument.Parse(head + line + "\n# the end", DocumentFormat.Toml);
        EditResult result = document.Set(table + key, value);
        Assert.Null(result.Finding);
        Assert.Equal(head + expected + "\n# the end", result.Document.Text);
    }

    /// <summary>Ranges are a table in one value, line by line or below a header: new ones are written the way the old ones are.</summary>
    [Theory]
    [InlineData("[amplifier]\ngain = 5\nranges = { gain = [4, 6] }  # both\n", "[amplifier]\ngain = 5\nranges = { gain = [\"4.5\", \"5.5\"], cmrr = [\"80 dB\", \"120 dB\"] }  # both\n")]
    [InlineData("[amplifier]\ngain = 5\nranges.gain = [4, 6]  # one\n", "[amplifier]\ngain = 5\nranges.gain = [\"4.5\", \"5.5\"]  # one\nranges.cmrr = [\"80 dB\", \"120 dB\"]\n")]
    [InlineData("[amplifier.ranges]\ngain = [4, 6]\noffset-voltage = [\"0 V\", \"1 mV\"]\n[amplifier]\ngain = 5", "[amplifier.ranges]\ngain = [\"4.5\", \"5.5\"]\ncmrr = [\"80 dB\", \"120 dB\"]\n[amplifier]\ngain = 5")]
    [InlineData("amplifier.ranges.gain = [4, 6]\n", "amplifier.ranges.gain = [\"4.5\", \"5.5\"]\namplifier.ranges.cmrr = [\"80 dB\", \"120 dB\"]\n")]
    public void Set_Ranges_InWhateverFormTheyStand(string text, string expected)
    {
        EditResult result = DesignDocument.Parse(text, DocumentFormat.Toml).Set("amplifier.ranges", "gain 4.5 to 5.5; cmrr 80 dB to 120 dB");
        Assert.Null(result.Finding);
        Assert.Equal(expected.Replace("\"4.5\", \"5.5\"", "4.5, 5.5", StringComparison.Ordinal), result.Document.Text);
        Assert.Equal(["cmrr", "gain"], result.Document.Design.Amplifier.Ranges.All.Select(range => range.Key).Order(StringComparer.Ordinal));
    }

    /// <summary>A table in one value takes a new key inside it, and so does one with dotted keys inside it.</summary>
    [Theory]
    [InlineData("electrodes.active = { card = \"gel-prepared\", contact-resistance = \"6k\" }  # one\n", "electrodes.active = { card = \"gel-prepared\", contact-resistance = \"6k\", contact-capacitance = \"1n\" }  # one\n")]
    [InlineData("electrodes = { active.contact-resistance = \"6k\" }\n", "electrodes = { active.contact-resistance = \"6k\", active.contact-capacitance = \"1n\" }\n")]
    public void Set_InATableInOneValue(string text, string expected)
    {
        EditResult result = DesignDocument.Parse(text, DocumentFormat.Toml).Set("electrodes.active.contact-capacitance", "1n");
        Assert.Null(result.Finding);
        Assert.Equal(expected, result.Document.Text);
    }

    /// <summary>A card's range holds for the card's value alone, in whatever order the file says value and ranges.</summary>
    [Theory]
    [InlineData("contact-resistance = \"50 kΩ\", ranges = {}")]
    [InlineData("ranges = {}, contact-resistance = \"50 kΩ\"")]
    [InlineData("ranges = { excess-density = [\"1e-12 V²/Hz\", \"2e-11 V²/Hz\"] }, contact-resistance = \"50 kΩ\"")]
    public void Read_RangeOfACard_GoesWithItsValue(string keys)
    {
        DesignDocument document = DesignDocument.Parse($"[electrodes]\nactive = {{ card = \"dry-forehead\", {keys} }}\n", DocumentFormat.Toml);
        Assert.False(document.HasErrors);
        Assert.Equal(["excess-density"], document.Design.Electrodes.Active.Ranges.All.Select(range => range.Key));
    }

    /// <summary>A file of the other form that becomes TOML states what it stated, and leaves unknown what it left unknown.</summary>
    [Fact]
    public void ToToml_OfAPlainFile_StatesWhatItStates()
    {
        DesignDocument plain = DesignDocument.Parse("{\"supply\": {\"highest\": 3.3}, \"bands\": [{\"name\": \"alpha\", \"low\": 8, \"high\": 13}], \"input\": {\"series_resistor\": \"unknown\"}}", DocumentFormat.Json);
        DesignDocument toml = DesignDocument.Parse(DesignWriter.ToToml(plain), DocumentFormat.Toml);
        Assert.Superset(plain.Stated.ToHashSet(), toml.Stated.ToHashSet());
        Assert.Equal(plain.PartlyKnown?.Unknowns.Select(one => one.Key), toml.PartlyKnown?.Unknowns.Select(one => one.Key));
    }

    public static TheoryData<string, string, string, string> Additions => new()
    {
        // A table that is there: behind its last key.
        { "[amplifier]\ngain = 4\n\n[input]\n", "amplifier.cmrr", "90 dB", "[amplifier]\ngain = 4\ncmrr = \"90 dB\"\n\n[input]\n" },
        { "[amplifier]   # empty\n", "amplifier.gain", "4", "[amplifier]   # empty\ngain = 4\n" },
        { "[amplifier]\ngain = 4", "amplifier.cmrr", "90 dB", "[amplifier]\ngain = 4\ncmrr = \"90 dB\"\n" },
        { "[amplifier]\r\ngain = 4\r\n", "amplifier.cmrr", "90 dB", "[amplifier]\r\ngain = 4\r\ncmrr = \"90 dB\"\r\n" },

        // The top of the file.
        { "name = \"x\"\n\n[amplifier]\ngain = 4\n", "channels", "2", "name = \"x\"\nchannels = 2\n\n[amplifier]\ngain = 4\n" },
        { "[amplifier]\ngain = 4\n", "channels", "2", "channels = 2\n\n[amplifier]\ngain = 4\n" },
        { "", "channels", "2", "channels = 2\n" },

        // A table that is not there: behind its family, else at the end.
        { "name = \"x\"\n", "amplifier.gain", "4", "name = \"x\"\n\n[amplifier]\ngain = 4\n" },
        { "[electrodes]\nmismatch = \"50 %\"\n\n[input]\n", "electrodes.active.contact-resistance", "5 kΩ", "[electrodes]\nmismatch = \"50 %\"\n\n[electrodes.active]\ncontact-resistance = \"5 kΩ\"\n\n[input]\n" },
        { "[electrodes.active]\ncard = \"gel-prepared\"\n", "electrodes.mismatch", "30 %", "[electrodes.active]\ncard = \"gel-prepared\"\n\n[electrodes]\nmismatch = \"30 %\"\n" },

        // Dotted keys and inline tables keep their form.
        { "amplifier.gain = 4\n[input]\n", "amplifier.cmrr", "90 dB", "amplifier.gain = 4\namplifier.cmrr = \"90 dB\"\n[input]\n" },
        { "amplifier = { gain = 4 }\n", "amplifier.cmrr", "90 dB", "amplifier = { gain = 4, cmrr = \"90 dB\" }\n" },
        { "amplifier = {}\n", "amplifier.cmrr", "90 dB", "amplifier = { cmrr = \"90 dB\" }\n" },

        // A part that is a card only becomes a table that names it.
        { "[electrodes]\nactive = \"gel-prepared\"\n", "electrodes.active.contact-resistance", "6k", "[electrodes]\nactive = { card = \"gel-prepared\", contact-resistance = \"6k\" }\n" },
        { "[electrodes]\nactive = \"gel-prepared\"\n", "electrodes.active.card", "dry-multipin", "[electrodes]\nactive = \"dry-multipin\"\n" },

        { "electrodes.active = \"gel-prepared\"\n", "electrodes.active.contact-resistance", "6k", "electrodes.active = { card = \"gel-prepared\", contact-resistance = \"6k\" }\n" },

        { "[electrodes]\nground = \"none\"\n", "electrodes.ground.contact-resistance", "6k", "[electrodes]\nground = { contact-resistance = \"6k\" }\n" },

        // List elements, counted and named, with sub-tables.
        { "[[stages]]\nkind = \"gain\"\n[[stages]]\nkind = \"gain\"\n", "stages[1].ground-resistor", "1k", "[[stages]]\nkind = \"gain\"\nground-resistor = \"1k\"\n[[stages]]\nkind = \"gain\"\n" },
        { "[[stages]]\nkind = \"gain\"\n[[stages]]\nkind = \"gain\"\n", "stages.gain-3.ground-resistor", "1k", "[[stages]]\nkind = \"gain\"\n[[stages]]\nkind = \"gain\"\nground-resistor = \"1k\"\n" },
        { "[[stages]]\nkind = \"gain\"\n", "stages[1].opamp.gain-bandwidth", "1 MHz", "[[stages]]\nkind = \"gain\"\nopamp.gain-bandwidth = \"1 MHz\"\n" },
        { "[[stages]]\nkind = \"gain\"\n[stages.opamp]\ndc-gain = 1e6\n", "stages[1].opamp.gain-bandwidth", "1 MHz", "[[stages]]\nkind = \"gain\"\n[stages.opamp]\ndc-gain = 1e6\ngain-bandwidth = \"1 MHz\"\n" },
        { "stages = [{ kind = \"gain\" }]\n", "stages[1].ground-resistor", "1k", "stages = [{ kind = \"gain\", ground-resistor = \"1k\" }]\n" },

        // The density takes the place of the rms that said the same.
        { "[electrodes.active]\nexcess-rms = \"5 µV\"   # measured\nexcess-band = [\"1 Hz\", \"2 Hz\"]\ncard = \"gel-prepared\"\n", "electrodes.active.excess-density", "1e-12 V²/Hz", "[electrodes.active]\nexcess-density = \"1e-12 V²/Hz\"   # measured\ncard = \"gel-prepared\"\n" },

        // Words and lists.
        { "[input]\nbias-resistor = \"10 MΩ\"\n", "input.bias-resistor", "none", "[input]\nbias-resistor = \"none\"\n" },
        { "[converter]\nkind = \"sar\"\n", "converter.kind", "delta-sigma", "[converter]\nkind = \"delta-sigma\"\n" },
        { "band = [\"0.5 Hz\",   \"40 Hz\"]\n", "band", "1 Hz, 30 Hz", "band = [\"1 Hz\", \"30 Hz\"]\n" },
        { "name = \"x\"\n", "name", "a \"quoted\" \\ name", "name = \"a \\\"quoted\\\" \\\\ name\"\n" },
        { "[electrodes]\nground-electrode = true\n", "electrodes.ground-electrode", "false", "[electrodes]\nground-electrode = false\n" },
    };

    [Theory]
    [MemberData(nameof(Additions))]
    public void Set_Key_GoesWhereItBelongs(string text, string key, string value, string expected)
    {
        EditResult result = DesignDocument.Parse(text, DocumentFormat.Toml).Set(key, value);
        Assert.Null(result.Finding?.Message);
        Assert.Equal(expected, result.Document.Text);
    }

    [Theory]
    [InlineData("{\"input\": {\"series_R\": 10000.0}}", "input.series-resistor", "68 kΩ", "{\"input\": {\"series_R\": 68000}}")]
    [InlineData("{\"input\": {\"series_R\": 10000.0}}", "input.shunt-capacitor", "22 pF", "{\"input\": {\"series_R\": 10000.0, \"shunt_C\": 2.2e-11}}")]
    [InlineData("{\n \"input\": {\n  \"series_R\": 1\n }\n}", "input.bias-resistor", "none", "{\n \"input\": {\n  \"series_R\": 1,\n  \"bias_R\": null\n }\n}")]
    [InlineData("{\"name\": \"x\"}", "mains.frequency", "60 Hz", "{\"name\": \"x\", \"mains\": {\"frequency\": 60}}")]
    [InlineData("{\"board_temperature\": 300}", "board-temperature", "25 °C", "{\"board_temperature\": 298.15}")]
    public void Set_InPlainForm_WritesBareNumbers(string text, string key, string value, string expected)
    {
        EditResult result = DesignDocument.Parse(text, DocumentFormat.Json).Set(key, value);
        Assert.Null(result.Finding?.Message);
        Assert.Equal(expected, result.Document.Text);
    }

    [Fact]
    public void Set_ElementOfTheDefaultBands_WritesTheListOut()
    {
        EditResult result = DesignDocument.Parse("name = \"x\"\n", DocumentFormat.Toml).Set("bands.alpha.low", "7.5 Hz");
        Assert.Null(result.Finding);
        Assert.Equal(Band.Conventional.Count, result.Document.Design.Bands.Count);
        Assert.Equal(7.5, result.Document.Design.Bands[2].Low.Hertz);
        Assert.Contains("low = \"7.5 Hz\"", result.Document.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Clear_Key_TakesItsLineOut_AndTheDefaultHolds()
    {
        DesignDocument document = DesignDocument.Parse("name = \"x\"\n[amplifier]\ngain = 7   # too much\ncmrr = \"90 dB\"\n", DocumentFormat.Toml);
        EditResult result = document.Clear("amplifier.gain");
        Assert.Null(result.Finding);
        Assert.Equal("name = \"x\"\n[amplifier]\ncmrr = \"90 dB\"\n", result.Document.Text);
        Assert.Equal(5, result.Document.Design.Amplifier.Gain);
        Assert.Same(document, document.Clear("amplifier.bandwidth").Document);
        Assert.Equal("FE0130", DesignDocument.Parse("amplifier = { gain = 7 }\n", DocumentFormat.Toml).Clear("amplifier.gain").Finding?.Code);
        Assert.Equal("FE0131", document.Clear("amplifier.gian").Finding?.Code);
    }

    [Theory]
    [InlineData("amplifier.gian", "4", "FE0131")]
    [InlineData("amplifier.gain", "much", "FE0112")]
    [InlineData("amplifier.gain", "0", "FE0110")]
    [InlineData("input.series-resistor", "68 kHz", "FE0102")]
    public void Set_WhatCannotBe_ChangesNothingAndSaysWhy(string key, string value, string code)
    {
        DesignDocument document = DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml);
        EditResult result = document.Set(key, value);
        Assert.Equal(code, result.Finding?.Code);
        Assert.Same(document, result.Document);
    }

    // Every field of every design that comes with the program can be set, the value arrives, and no comment is lost.
    [Fact]
    public void Set_EveryFieldOfEveryDesign_KeepsCommentsAndAllOtherValues()
    {
        foreach (string path in Directory.GetFiles(Repository.Designs, "*.toml").Where(path => !path.EndsWith("wrong-in-six-ways.toml", StringComparison.Ordinal) && !path.EndsWith("-requirements.toml", StringComparison.Ordinal)))
        {
            DesignDocument document = DesignDocument.Read(path);

            // What is set in a file with values that nobody knows is known from then on, and other middles move.
            if (document.NotAllKnown is not null)
            {
                continue;
            }

            string[] comments = Comments(document.Text);
            // Weights stand in a table of their own form, which is edited in the file: a finding says so.
            foreach (Field<Design> field in DesignFields.Of(document.Design).Where(field => field.Kind is not FieldKind.Card and not FieldKind.SectionRows and not FieldKind.NamedNumbers))
            {
                // Taking the ground electrode out takes its fields along; a notch without a name is named after its centre, a channel without a
                // name is named after its site.
                if (field.Key is "electrodes.ground-electrode" || field.Key.EndsWith("].centre", StringComparison.Ordinal)
                    || (field.Key.StartsWith("channels[", StringComparison.Ordinal) && field.Key.EndsWith("].site", StringComparison.Ordinal)))
                {
                    continue;
                }

                object? value = CatalogueTests.Another(field, field.Get(document.Design));
                EditResult result = document.Set(field.Key, FieldText.Format(field, value));
                Assert.True(result.Finding is null, $"{Path.GetFileName(path)} {field.Key}: {result.Finding?.Message}");
                Assert.Equal(comments, Comments(result.Document.Text), StringComparer.Ordinal);
                CatalogueTests.AssertSame(Expected(document, field, value), result.Document.Design, $"{Path.GetFileName(path)} {field.Key}");
            }
        }
    }

    /// <summary>The design with the value; a card's range of it goes, and ranges are put beside the card's others.</summary>
    private static Design Expected(DesignDocument document, Field<Design> field, object? value)
    {
        Design design = field.Set(document.Design, value is PartRanges given ? ((PartRanges)field.Get(document.Design)!).With(given) : value);
        int dot = field.Key.LastIndexOf('.');
        string ranges = field.Key[..(dot + 1)] + "ranges";
        return document.OriginOf(ranges) is { Kind: OriginKind.Card } && field.Kind != FieldKind.Ranges && DesignFields.Find(design, ranges) is { } ranged
            ? ranged.Set(design, ((PartRanges)ranged.Get(design)!).Without(field.Key[(dot + 1)..]))
            : design;
    }

    private static string[] Comments(string text) => [.. text.Split('\n').Where(line => line.Contains('#', StringComparison.Ordinal)).Select(line => line[line.IndexOf('#', StringComparison.Ordinal)..])];
}
