using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Text;
using Json.Schema;
using Tomlyn;
using Tomlyn.Model;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The schema for editors, held against every design and, by a general-purpose library, against the drafts' own rules.</summary>
public sealed class DesignSchemaTests
{
    private static readonly JsonSchema Design = JsonSchema.FromText(DesignSchema.OfDesign()), Sizing = JsonSchema.FromText(DesignSchema.OfSizing());

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Repository.Designs, "*.toml", SearchOption.AllDirectories)
            .Where(path => !path.Contains("classroom", StringComparison.Ordinal)).Select(path => Path.GetRelativePath(Repository.Designs, path).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Fact]
    public void Schemas_AreSchemas()
    {
        foreach (string text in (string[])[DesignSchema.OfDesign(), DesignSchema.OfSizing(), DesignSchema.OfHomework()])
        {
            JsonElement schema = JsonDocument.Parse(text).RootElement;
            EvaluationResults answer = MetaSchemas.Draft7.Evaluate(schema, new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(answer.IsValid, string.Join("\n", answer.Details?.Where(one => one.Errors is not null && !one.EvaluationPath.ToString().Contains("anyOf", StringComparison.Ordinal)).Select(one => one.InstanceLocation + string.Join(",", one.Errors!.Values)) ?? []));
        }
    }

    /// <summary>The files beside the designs are what the command prints, and the designs that one starts from name theirs.</summary>
    [Fact]
    public void Schemas_BesideTheDesigns_AreTheCatalogues()
    {
        foreach ((string file, string text) in new[] { ("design.schema.json", DesignSchema.OfDesign()), ("sizing.schema.json", DesignSchema.OfSizing()) })
        {
            string path = Path.Combine(Repository.Designs, file);
            if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") is "1")
            {
                File.WriteAllText(path, text);
            }

            Assert.True(string.Equals(text, File.ReadAllText(path), StringComparison.Ordinal), $"{file} differs from the catalogue; FRONTEND_ACCEPT=1 writes it anew");
        }

        Assert.StartsWith("#:schema ./design.schema.json\n", DesignDocument.StarterText, StringComparison.Ordinal);
        Assert.StartsWith("#:schema ./design.schema.json\n", DesignDocument.Bought(Reading.DocumentFormat.Toml), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Schema_OfEveryDesign_LetsItThrough_AndSeesTheWrongOnes(string file)
    {
        JsonSchema schema = file.Contains("requirements", StringComparison.Ordinal) ? Sizing : Design;
        EvaluationResults answer = Evaluate(schema, File.ReadAllText(Path.Combine(Repository.Designs, file)));
        Assert.Equal(!file.Contains("wrong", StringComparison.Ordinal), answer.IsValid);
    }

    /// <summary>What a schema can see: a misspelt key, a word that is none, another unit, a number without one, a text for a number, a table where a
    /// value belongs, an element of no kind.</summary>
    [Theory]
    [InlineData("[amplifier]\ngian = 4\n")]
    [InlineData("[amplifer]\ngain = 4\n")]
    [InlineData("[input]\nseries-resistor = \"68 kHz\"\n")]
    [InlineData("[input]\nseries-resistor = 68000\n")]
    [InlineData("[input]\nseries-resistor = \"100000\"\n")]
    [InlineData("[input]\nseries-resistor = \"68,5 kΩ\"\n")]
    [InlineData("[amplifier]\ngain = \"4\"\n")]
    [InlineData("[amplifier.gain]\nvalue = 4\n")]
    [InlineData("[electrodes.active]\ncard = \"dry-multipins\"\n")]
    [InlineData("[[stages]]\nkind = \"low-pass\"\ntopology = \"sallen-keys\"\n")]
    [InlineData("[[stages]]\nname = \"x\"\n")]
    [InlineData("[[digital]]\nkind = \"notch\"\ncentre = \"50 V\"\n")]
    [InlineData("[input]\nseries-resistor = \"1m\"\n")]
    [InlineData("[input]\nseries-resistor = \"\"\n")]
    [InlineData("[input]\nseries-resistor = \"-\"\n")]
    [InlineData("[input]\nseries-resistor = \"-10k\"\n")]
    [InlineData("[input]\nseries-resistor = \"±10k\"\n")]
    [InlineData("[input]\nresistor-tolerance = 50\n")]
    [InlineData("[electrodes]\nmismatch = \"-5 %\"\n")]
    [InlineData("[amplifier]\ngain = -5\n")]
    [InlineData("[amplifier]\ngain = 0\n")]
    [InlineData("[mains]\nharmonics = [1, -0.02]\n")]
    [InlineData("channels = 0\n")]
    [InlineData("channels = 2.5\n")]
    [InlineData("[[digital]]\nkind = \"low-pass\"\norder = 40\n")]
    [InlineData("[ground-drive]\nkind = \"passiv\"\n")]
    [InlineData("[[stages]]\nkind = \"low-pass\"\n")]
    [InlineData("[[stages]]\nkind = \"low-pass\"\ntopolgy = \"rc-passive\"\n")]
    [InlineData("[[digital]]\nkind = \"highpas\"\ncorner = \"1 Hz\"\n")]
    [InlineData("[[digital]]\nkind = \"HIGH-PASS\"\ncorners = \"1 Hz\"\n")]
    public void Schema_OfAMistake_SeesIt(string text)
    {
        Assert.True(DesignDocument.Parse(text, Reading.DocumentFormat.Toml).HasErrors);
        Assert.False(Evaluate(Design, text).IsValid);
    }

    /// <summary>Unknown values, ranges, other units, parts left out, cards in a part's place: all legal, and let through.</summary>
    [Theory]
    [InlineData("[input]\nseries-resistor = \"unknown\"\nshunt-capacitor = [\"10 pF\", \"33 pF\"]\n")]
    [InlineData("[input]\nseries-resistor = \"4k7\"\n[mains]\nfrequency = \"50 hz\"\n")]
    [InlineData("[input]\nseries-resistor = \"1 Meg\"\n")]
    [InlineData("[input]\nseries-resistor = \"10 kilohms\"\nshunt-capacitor = \"22 picofarads\"\n[signal]\nsmallest = \"0.5 Micro Volts\"\n")]
    [InlineData("[input]\nshunt-capacitor = \"0\"\nresistor-tolerance = \"±1 %\"\n")]
    [InlineData("[input]\nseries-resistor = \"Unknown\"\nbias-resistor = \"NONE\"\n[ground-drive]\nkind = \"Passive\"\n[electrodes]\nmismatch = \"Auto\"\n")]
    [InlineData("[[stages]]\nkind = \"Low_Pass\"\ntopology = \"Sallen Key\"\n[[digital]]\nkind = \"highpass\"\ncorner = \"1 Hz\"\n")]
    [InlineData("channels = 2.0\n[amplifier]\ngain = 4\n[mains]\nharmonics = [1, 0.02]\n")]
    [InlineData("skin-temperature = \"33 °C\"\n[amplifier]\noffset-voltage = \"0 V\"\n")]
    [InlineData("[electrodes]\nground = \"none\"\nactive = \"gel-prepared\"\nmismatch = 0.2\n[input]\nbias-resistor = \"100 MΩ\"\n")]
    public void Schema_OfWhatIsLegal_LetsItThrough(string text)
    {
        Assert.False(DesignDocument.Parse(text, Reading.DocumentFormat.Toml).HasErrors, text);
        Assert.True(Evaluate(Design, text).IsValid, text);
    }

    [Theory]
    [InlineData("", true)]
    [InlineData("count = 12.5\n", false)]
    [InlineData("papers = \"a4\"\n", false)]
    [InlineData("space = \"page\"\n", false)]
    [InlineData("[rubric.q1]\nslips = 0\n", false)]
    [InlineData("[points]\nnoise-thermal = \"four\"\n", false)]
    public void Schema_OfAHomework_SeesWhatIsWrong(string text, bool isRight)
    {
        string toml = text.Length > 0 ? text : File.ReadAllText(Path.Combine(Repository.Designs, "classroom", "homework.toml"));
        Assert.Equal(isRight, Evaluate(JsonSchema.FromText(DesignSchema.OfHomework()), toml).IsValid);
    }

    [Fact]
    public void Schema_EveryKeyOfTheCatalogue_StandsInIt()
    {
        string schema = DesignSchema.OfDesign();
        foreach (Field<Design> field in DesignFields.Fixed)
        {
            Assert.Contains($"\"{field.Key[(field.Key.LastIndexOf('.') + 1)..]}\":", schema, StringComparison.Ordinal);
        }
    }

    /// <summary>Whatever the program writes and reads, the pattern lets through: of every kind, sizes from 1e-12 to 1e12 in the SI unit.</summary>
    [Fact]
    public void Pattern_OfEveryKind_FitsWhatIsReadAndWritten()
    {
        foreach (QuantityKind kind in QuantityKind.All)
        {
            Regex pattern = new(QuantityPattern.Of(kind), RegexOptions.ECMAScript, TimeSpan.FromSeconds(1));
            IEnumerable<string> texts = kind.Examples.Concat(Enumerable.Range(-12, 25).Select(power => kind.FromSi(Math.Pow(10, power))).Select(QuantityText.FormatExact));
            foreach (string text in texts.Where(text => QuantityText.TryParse(kind, text, out _, out _)))
            {
                Assert.True(pattern.IsMatch(text), $"{kind.Name}: {text} in {pattern}");
            }

            Assert.DoesNotMatch(pattern, "4 parsecs");
            Assert.DoesNotMatch(pattern, "V");
        }
    }

    /// <summary>The pattern and the program agree on prefixes in full, before every spelling of a unit, in capitals and in small letters.</summary>
    [Fact]
    public void Pattern_OfEveryKind_FitsEverySpellingOfItsUnits()
    {
        foreach (QuantityKind kind in QuantityKind.All)
        {
            Regex pattern = new(QuantityPattern.Of(kind), RegexOptions.ECMAScript, TimeSpan.FromSeconds(1));
            foreach (string unit in kind.Units.SelectMany(unit => unit.Spellings.SelectMany(spelling => (string[])[spelling,
                .. unit.Prefixes.SelectMany(prefix => (string[])[prefix + spelling, Prefixes.Word(prefix) + spelling, Prefixes.Word(prefix).ToUpperInvariant() + " " + spelling, "K" + spelling, "Meg" + spelling, "meg " + spelling])])))
            {
                foreach (string text in (string[])[$"2.5 {unit}", $"-2.5{unit}", $"±2.5 {unit}", $"2,5 {unit}", $"2.5 {unit}/x"])
                {
                    // What may be meant for bits or bytes is asked about, which a pattern cannot.
                    bool isRead = QuantityText.TryParse(kind, text, out _, out ParseProblem? problem);
                    Assert.True(isRead == pattern.IsMatch(text) || problem?.Code is "FE0104", $"{kind.Name}: `{text}` is {(isRead ? "read" : "not read")}, and the pattern says otherwise");
                }
            }
        }
    }

    private static EvaluationResults Evaluate(JsonSchema schema, string toml)
    {
        JsonNode node = Node(TomlSerializer.Deserialize<TomlTable>(toml)!);
        return schema.Evaluate(JsonDocument.Parse(node.ToJsonString()).RootElement);
    }

    private static JsonNode Node(object value) => value switch
    {
        TomlTable table => new JsonObject(table.Select(one => KeyValuePair.Create<string, JsonNode?>(one.Key, Node(one.Value)))),
        TomlTableArray tables => new JsonArray([.. tables.Select(Node)]),
        TomlArray list => new JsonArray([.. list.Select(one => Node(one!))]),
        string text => JsonValue.Create(text),
        bool flag => JsonValue.Create(flag),
        long whole => JsonValue.Create(whole),
        double number => JsonValue.Create(number),
        _ => throw new NotSupportedException(value.GetType().Name),
    };
}
