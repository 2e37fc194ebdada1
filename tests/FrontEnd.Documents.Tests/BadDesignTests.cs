using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Mistakes in design files: each with its code, its line, its key, and words that its note and its help must have.</summary>
public sealed class BadDesignTests
{
    // Said about every file that leaves out electrodes, highest voltage and protection; not what is tested here.
    private static readonly string[] Assumed = ["FE0210", "FE0211", "FE0212"];

    private const string Stage = "[[stages]]\nkind = \"low-pass\"\ntopology = \"sallen-key\"\n";

    /// <summary>Text, code, line, key, words of message and note, words of help.</summary>
    public static TheoryData<string, string, int, string, string, string> Toml => new()
    {
        // Syntax.
        { "gain = = 4\n", "FE0120", 1, "gain", "valid TOML", "key = value" },
        { "[amplifier\ngain = 4\n", "FE0120", 1, "", "valid TOML", "[name]" },
        { "name = \"open\n", "FE0120", 1, "name", "valid TOML", "double quotes" },
        { "[amplifier]\ngain 4\n", "FE0120", 2, "amplifier.gain", "valid TOML", "key = value" },
        { "a = " + new string('[', 100) + "\n", "FE0129", 1, "", "64 deep", "brackets" },

        // One slip, one error: the parser alone says three to five things about each of these, none of them the slip.
        { "[amplifier]\ngain = 3,5\n", "FE0103", 2, "amplifier.gain", "comma", "write 3.5" },
        { "[amplifier]\ngain = 1,000,000\n", "FE0103", 2, "amplifier.gain", "comma", "1000000" },
        { "[amplifier]\ngain = 3,500 # x\n", "FE0103", 2, "amplifier.gain", "comma", "3.500 or 3500" },
        { "[input]\nseries-resistor = 5 kΩ\nshunt-capacitor = \"22 pF\"\n", "FE0120", 2, "input.series-resistor", "not in quotes", "\"5 kΩ\"" },
        { "[input]\nseries-resistor = 4,7 kΩ\n", "FE0103", 2, "input.series-resistor", "comma", "\"4.7 kΩ\"" },
        { "[input]\nseries-resistor = \"5 kΩ\nshunt-capacitor = \"22 pF\"\n[mains]\nfrequency = \"50 Hz\"\n", "FE0120", 2, "input.series-resistor", "no closing quote", "at its end" },
        { "[input]\nseries-resist\u043Er = \"5 kΩ\"\n", "FE0121", 2, "input.series-resistor", "Cyrillic letter", "`series-resistor`" },
        { "[input]\nseries-resistor = \"100000\"\n", "FE0125", 2, "input.series-resistor", "`100000` has no unit", "\"100 kΩ\"" },
        { "[input]\nseries-resistor = \"1m\"\n", "FE0104", 2, "input.series-resistor", "2 ways", "the intended one" },
        { "[input]\nseries-resistor = \"10 \u043AΩ\"\n", "FE0102", 2, "input.series-resistor", "Cyrillic letter", "`10 kΩ`" },
        { "[amplifier]\ngain = \"14 dB\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write 5.012" },
        { "[amplifier]\ngain = \"3,5\"\n", "FE0124", 2, "amplifier.gain", "is a text", "3.5" },

        { "[amplifier]\ngain = .5\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 0.5" },
        { "[amplifier]\ngain = 5.\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 5" },
        { "[amplifier]\ngain = +.5e2 # x\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write +0.5e2" },
        { "[amplifier]\ngain = 007\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 7" },
        { "[signal]\nlevel = −3\n", "FE0120", 2, "signal.level", "not how a number is written", "write -3" },
        { "[amplifier]\ngain = 3 500\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 3500" },
        { "[amplifier]\ngain = 3'500 # 'x\ncmrr = \"90 dB\" # y'\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 3500" },
        { "[amplifier]\ngain = 3·5\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 3.5" },
        { "[amplifier]\ngain = ３.５\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 3.5" },
        { "[amplifier]\ngain = ٣٫٥\n", "FE0120", 2, "amplifier.gain", "not how a number is written", "write 3.5" },
        { "[amplifier]\ngain = \"3·5\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write 3.5, a bare number" },
        { "[amplifier]\ngain = 3.5;\n", "FE0120", 2, "amplifier.gain", "`;` follows the value", "write 3.5:" },
        { "[amplifier]\ngain = 3.5; ;;\n", "FE0120", 2, "amplifier.gain", "`;` follows the value", "write 3.5:" },
        { "[mains]\nfrequency = \"50 Hz\", ;\n", "FE0120", 2, "mains.frequency", "`,` follows the value", "write \"50 Hz\":" },
        { "[amplifier]\ngain = 3.5,\n", "FE0120", 2, "amplifier.gain", "`,` follows the value", "write 3.5:" },
        { "[amplifier]\ngain =\n", "FE0120", 2, "amplifier.gain", "nothing stands behind", "give a value" },
        { "[amplifier]\ngain = # 4\n", "FE0120", 2, "amplifier.gain", "nothing stands behind", "give a value" },
        { "[amplifier]\ngain: 4\n", "FE0120", 2, "amplifier.gain", "`:` stands where `=` belongs", "write gain = 4" },
        { "[amplifier]\ngain = 1/2\n", "FE0120", 2, "amplifier.gain", "is not a ", "write 0.5" },
        { "[amplifier]\ngain = 3.5\"\n[mains]\nfrequency = \"50 Hz\"\n", "FE0120", 2, "amplifier.gain", "no opening quote", "write 3.5;" },
        { "[mains]\nfrequency = 50 Hz\"\n[amplifier]\ngain = 4\n", "FE0120", 2, "mains.frequency", "no opening quote", "write \"50 Hz\"" },
        { "[mains]\nfrequency = '50 Hz\n[amplifier]\ngain = 4 # it's\n", "FE0120", 2, "mains.frequency", "no closing quote", "put a `'`" },
        { "[mains]\nfrequency = “50 Hz”\n", "FE0120", 2, "mains.frequency", "`“` is not a quote", "write \"50 Hz\"; text is in straight" },
        { "[amplifier]\ngain = „3.5“\n", "FE0120", 2, "amplifier.gain", "`„` is not a quote", "write 3.5;" },
        { "[montage]\nreference-buffered = Yes\n", "FE0120", 2, "montage.reference-buffered", "`Yes` is not a value", "write true" },
        { "[montage]\nreference-buffered = FALSE\n", "FE0120", 2, "montage.reference-buffered", "`FALSE` is not a value", "write false" },
        { "[ground-drive]\nkind = passive\n", "FE0120", 2, "ground-drive.kind", "not in quotes", "write \"passive\"" },
        { "band = [0.5 Hz, \"40 Hz\"]\n", "FE0120", 1, "band", "`0.5 Hz` is not in quotes", "write [\"0.5 Hz\", \"40 Hz\"]" },
        { "[amplifier\ngain = 4\ncolour = 3\n[mains]\n", "FE0120", 1, "", "is not how a table starts", "write [amplifier]; the keys below" },
        { "[[stages]]\nkind = \"gain\"\n[[stages]]\nkind = \"gain\nname = \"b\"\n", "FE0120", 4, "stages[2].kind", "no closing quote", "at its end" },
        { "[[stages]\nkind = \"gain\"\n", "FE0120", 1, "", "is not how a table starts", "write [[stages]]" },
        { "[amplifier] gain = 4\n", "FE0120", 1, "", "is not how a table starts", "alone in its line" },

        // What stands in a line besides its value, and between the values of a list.
        { "[mains]\nfrequency = \"50 Hz\",\n", "FE0120", 2, "mains.frequency", "`,` follows the value", "write \"50 Hz\":" },
        { "[mains]\nfrequency = \"50 Hz\" // mains\n", "FE0120", 2, "mains.frequency", "stands behind the value", "write \"50 Hz\"  # mains" },
        { "[mains]\nfrequency = \"50 Hz\"; mains\n", "FE0120", 2, "mains.frequency", "stands behind the value", "write \"50 Hz\"  # mains" },
        { "[amplifier]\ngain = 4 // low\n", "FE0120", 2, "amplifier.gain", "stands behind the value", "write 4  # low" },
        { "[mains]\nfrequency = \"50 Hz\", voltage = \"230 V\"\n", "FE0120", 2, "mains.frequency", "in the same line", "line of its own" },
        { "band = [\"1 Hz\" \"30 Hz\"] # 'b\n", "FE0120", 1, "band", "no comma stands between", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [\"1 Hz\"; \"30 Hz\"]\n", "FE0120", 1, "band", "no comma stands between", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = (\"1 Hz\", \"30 Hz\")\n", "FE0120", 1, "band", "round brackets", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = \"1 Hz\", \"30 Hz\"\n", "FE0120", 1, "band", "without brackets", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [\"1 Hz\", \"30 Hz\"\n\n[amplifier]\ngain = 4\n", "FE0120", 1, "band", "no `]` at its end", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [\"1 Hz\", \"30 Hz]\nname = \"x\"\n", "FE0120", 1, "band", "no closing quote", "write [\"1 Hz\", \"30 Hz\"]" },
        { "[montage]\nsites = O1, O2\n", "FE0120", 2, "montage.sites", "without brackets", "write [\"O1\", \"O2\"]" },
        { "name = \"the \"best\" one\"\n", "FE0120", 1, "name", "inside the text ends it", "write 'the \"best\" one'" },
        { "name = 'Tom's'  # his\n", "FE0120", 1, "name", "inside the text ends it", "write \"Tom's\"" },
        { "name = \"C:\\Users\"\n", "FE0120", 1, "name", "backslash", "write 'C:\\Users'" },
        { "[mains]\nfrequency =\n\"50 Hz\"\n", "FE0120", 2, "mains.frequency", "in the line below", "frequency = \"50 Hz\"" },
        { "channels = 99999999999999999999\n", "FE0120", 1, "channels", "more digits than", "check the number" },
        { "[amplifier]\ngain = 3.5.1\n", "FE0120", 2, "amplifier.gain", "more than one point", "one point" },

        { "band = [\n  \"1 Hz\",\n  \"30 Hz\"\n[amplifier]\ngain = 4\n", "FE0120", 1, "band", "no `]` at its end", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [  # in hertz\n  1 Hz,\n  30 Hz\n]\nname = \"x\"\n", "FE0120", 1, "band", "not in quotes", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [\n  \"1 Hz\"\n  \"30 Hz\"\n]\nname = \"x\"\n", "FE0120", 1, "band", "no comma stands between", "write [\"1 Hz\", \"30 Hz\"]" },
        { "[mains]\nharmonics = [1,5, 0,025]\n", "FE0120", 2, "mains.harmonics", "not how a number is written", "write [1.5, 0.025]" },
        { "band = [0,5 Hz; 40 Hz]\n", "FE0120", 1, "band", "not in quotes", "write [\"0.5 Hz\", \"40 Hz\"]" },
        { "name = \"x”\n", "FE0120", 1, "name", "no closing quote", "at its end: \"x\"" },
        { "name = 2026-11-26\n", "FE0124", 1, "name", "a date or time", "write \"2026-11-26\"" },
        { "channels' = 2\n[montage]\nsites = [\"O1\", \"O2\"]\n", "FE0120", 1, "channels", "not how a key is written", "write channels = 2" },
        { "channels ＝ 2\n[montage]\nsites = [\"O1\", \"O2\"]\n", "FE0120", 1, "channels", "stands where `=` belongs", "write channels = 2" },
        { "2 = channels\n[montage]\nsites = [\"O1\", \"O2\"]\n", "FE0120", 1, "2", "not in quotes", "\"channels\"" },

        // The remedy is one that the field takes.
        { "[amplifier]\ngain = 14dB\n", "FE0120", 2, "amplifier.gain", "is not a ", "write 5.012" },
        { "channels = two\n", "FE0120", 1, "channels", "is not a ", "a value like 8" },
        { "[input]\nseries-resistor = None\n", "FE0120", 2, "input.series-resistor", "not in quotes", "write a number and a resistance unit" },
        { "[input]\nbias-resistor = none\n", "FE0120", 2, "input.bias-resistor", "not in quotes", "write \"none\"" },
        { "[input]\nseries-resistor = 10kOhm or so\n", "FE0120", 2, "input.series-resistor", "`or so` beside it", "write `10kOhm`" },

        // Keys, signs and what stands before a key.
        { "[input]\nseries resistor = \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "not how a key is written", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nseries\u2013resistor = \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "not how a key is written", "write series-resistor = \"5 kΩ\"" },
        { "[input]\n\"series-resistor\": \"5 kΩ\",\n", "FE0120", 2, "input.series-resistor", "`:` stands where", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nseries-resistor: 5 kΩ # lead\n", "FE0120", 2, "input.series-resistor", "`:` stands where", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nseries-resistor := \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "`:=` stands where", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nseries-resistor -> \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "`->` stands where", "write series-resistor = \"5 kΩ\"" },
        { "[input]\n- series-resistor = \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "stands before the key", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nlet series-resistor = \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "stands before the key", "write series-resistor = \"5 kΩ\"" },
        { "[input]\n\u00A0series-resistor =\u00A0\"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "U+00A0", "series-resistor = \"5 kΩ\"" },
        { "[input]\n\u200Bseries-resistor = \"5 kΩ\"\n", "FE0120", 2, "input.series-resistor", "U+200B", "series-resistor = \"5 kΩ\"" },
        { "[input]\n// series-resistor = \"5 kΩ\"\n", "FE0120", 2, "", "begins no comment", "write # series-resistor" },
        { "[input]\n; the leads\n", "FE0120", 2, "", "begins no comment", "write # the leads" },
        { "[input]\nrésistance = \"5 kΩ\"\n", "FE0121", 2, "input.résistance", "letters a to z", "series-resistor" },
        { "[amplifier]\ngain_db = 14\n", "FE0121", 2, "amplifier.gain_db", "no key", "write gain = 5.012: a unit stands with its value" },
        { "[amplifier]\ngain (dB) = 14\n", "FE0120", 2, "amplifier.gain-dB", "not how a key is written", "write gain = 5.012" },
        { "[supply]\ncapacity_mAh = 800\n", "FE0121", 2, "supply.capacity_mAh", "no key", "write battery-capacity = \"800 mAh\"" },
        { "[supply]\nother_current_mA = 4\n", "FE0121", 2, "supply.other_current_mA", "no key", "write other-current = \"4 mA\"" },
        { "# [signal]\nsmallest = \"1 µV\"\nlargest = \"2 mV\"\n", "FE0121", 2, "smallest", "no key", "write [signal] before them" },
        { "[[digital]]\nkind = \"bandstop\"\ncentre = \"50 Hz\"\nq = 10\n", "FE0122", 3, "digital[1].centre", "no key `centre` or `q`", "element's kind" },
        { "[[stages]]\nkind = \"low-pass\"\ntopology = \"rc-passive\"\nR = \"1 kΩ\"\n", "FE0121", 4, "stages[1].R", "nearest is `stages[1].r`", "write `r`" },
        { "bands = [\"1 Hz\", \"30 Hz\"]\n", "FE0128", 1, "bands", "a list of tables", "[[bands]]" },
        { "[converter]\nrate_hz = 500\n", "FE0121", 2, "converter.rate_hz", "no key", "write rate = \"500 hz\"" },
        { "[converter]\nrateHz = 500\n", "FE0121", 2, "converter.rateHz", "no key", "write rate = \"500 Hz\"" },
        { "[converter]\nsample-rate = \"500 Hz\"\n", "FE0121", 2, "converter.sample-rate", "nearest is `converter.rate`", "write `rate`" },
        { "[input]\ninput.series-resistor = \"5 kΩ\"\n", "FE0121", 2, "input.input", "no table", "write series-resistor = \"5 kΩ\"" },
        { "[input]\nseries.resistor = \"5 kΩ\"\n", "FE0121", 2, "input.series", "no table", "write series-resistor = \"5 kΩ\"" },

        // Tables' names.
        { "input\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "{input}\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "input]\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "== input ==\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "input = {\n  series-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "［input］\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "[[input]\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "is not how a table starts", "write [input]" },
        { "[ground drive]\nkind = \"passive\"\n", "FE0120", 1, "", "is not how a table starts", "write [ground-drive]" },
        { "[electrodes/active]\ncard = \"gel-prepared\"\n", "FE0120", 1, "", "is not how a table starts", "write [electrodes.active]" },
        { "[\u0456nput]\nseries-resistor = \"5 kΩ\"\n", "FE0120", 1, "", "Cyrillic letter", "write [input]" },
        { "[stages] // one\nkind = \"gain\"\n", "FE0120", 1, "", "is not how a table starts", "write [[stages]]  # one" },
        { "[Verstärker]\ngain = 4\n", "FE0121", 1, "", "no table `Verstärker`", "`amplifier`" },
        { "[amp]\ngain = 4\n", "FE0121", 1, "amp", "nearest is `amplifier`", "write `amplifier`" },
        { "[input-stage]\nseries-resistor = \"5 kΩ\"\n", "FE0121", 1, "input-stage", "nearest is `input`", "write `input`" },
        { "[active]\ncard = \"gel-prepared\"\n", "FE0121", 1, "active", "no table `active`", "write [electrodes.active]" },
        { "[power]\nlowest = \"3 V\"\n", "FE0121", 1, "power", "no table `power`", "`supply`" },

        // Texts of other languages, as a whole.
        { "{\n  \"channels\": 2\n}\n", "FE0120", 1, "", "it is JSON", "end in .json" },
        { "name: x\nband: [1 Hz, 30 Hz]\ninput:\n  series-resistor: 5k\n", "FE0120", 1, "", "it is YAML", "key = value" },
        { "time,O1\n0,1.5\n1,2.5\n", "FE0120", 1, "", "a table of values", "name a design file" },
        { "Dear all,\nI want two channels.\nRegards\n", "FE0120", 1, "", "hardly a key", "name a design file" },
        { "name = \"x\"\rchannels = 2\r", "FE0120", 1, "", "carriage return", "LF or CRLF" },

        // Found by mutating files: the parser threw for half of a surrogate pair behind a backslash.
        { "\"a\\\uD800", "FE0120", 1, "", "valid TOML", "key = value" },

        // Keys and tables that do not exist.
        { "[amplifier]\ngian = 4\n", "FE0121", 2, "amplifier.gian", "nearest is `amplifier.gain`", "write `gain`" },
        { "[amplifer]\ngain = 4\n", "FE0121", 1, "amplifer", "no table `amplifer`", "write `amplifier`" },
        { "chanels = 2\n", "FE0121", 1, "chanels", "`channels`", "write `channels`" },
        { "[input]\nSeries_Resistor = \"68k\"\n", "FE0121", 2, "input.Series_Resistor", "`input.series-resistor`", "write `series-resistor`" },
        { "[input]\nbody-to-earth = \"300 pF\"\n", "FE0121", 2, "input.body-to-earth", "`mains.body-to-earth`", "move it to its table" },
        { "[electrodes.activ]\ncontact-resistance = \"5 kΩ\"\n", "FE0121", 1, "electrodes.activ", "`electrodes.active`", "write `active`" },
        { "zzzzzzzz = 1\n", "FE0121", 1, "zzzzzzzz", "no key", "remove it" },
        { "[[stage]]\nkind = \"gain\"\n", "FE0121", 1, "stage", "no table `stage`", "write `stages`" },
        { "[electrodes.active]\nexcess-band = [\"1 Hz\", \"2 Hz\"]\n", "FE0121", 2, "electrodes.active.excess-band", "without electrodes.active.excess-rms", "add electrodes.active.excess-rms" },
        { "[amplifier.gain]\nvalue = 4\n", "FE0124", 1, "amplifier.gain", "is a table", "2.5" },

        // Keys of another kind of element.
        { "[[digital]]\nkind = \"notch\"\ncorner = \"50 Hz\"\n", "FE0122", 3, "digital[1].corner", "its keys are `name`, `centre` or `q`", "change the element's kind" },
        { Stage + "feedback-resistor = \"1 kΩ\"\n", "FE0122", 4, "stages[1].feedback-resistor", "a Sallen-Key section has no key", "remove the key" },
        { "[[stages]]\nkind = \"low-pass\"\ntopology = \"rc-passive\"\nopamp = \"micropower-cmos\"\n", "FE0122", 4, "stages[1].opamp", "a passive first-order section", "change the element's kind" },
        { "[[stages]]\nkind = \"gain\"\ntopology = \"rc\"\n", "FE0121", 3, "stages[1].topology", "no key", "remove it" },
        { Stage + "r9 = \"1 kΩ\"\n", "FE0121", 4, "stages[1].r9", "nearest is `stages[1].r", "if that is intended" },

        // Set twice.
        { "[amplifier]\ngain = 4\ngain = 5\n", "FE0123", 3, "amplifier.gain", "already set in line 2", "remove one" },
        { "[amplifier]\ngain = 4\n[amplifier]\ncmrr = \"90 dB\"\n", "FE0123", 3, "amplifier", "already defined in line 1; the keys below its second header are ignored", "remove `[amplifier]` here" },
        { "amplifier = { gain = 4 }\n[amplifier]\ncmrr = \"90 dB\"\n", "FE0123", 2, "amplifier", "already defined in line 1", "remove `[amplifier]` here" },
        { "amplifier.gain = 4\n[amplifier]\ncmrr = \"90 dB\"\n", "FE0123", 2, "amplifier", "already defined in line 1", "move them to the first definition" },
        { "[[digital]]\nkind = \"high-pass\"\n[digital]\nkind = \"notch\"\n", "FE0123", 3, "digital", "`digital` is a list of tables", "write `[[digital]]`" },
        { "[electrodes]\nactive = \"gel-prepared\"\n[electrodes.active]\nseries-resistance = \"1 kΩ\"\n", "FE0123", 3, "electrodes.active", "is already a text, but a table here", "remove one" },
        { "supply = { lowest = \"3 V\", lowest = \"4 V\" }\n", "FE0123", 1, "supply.lowest", "already set earlier in this line", "remove one" },
        { "amplifier.gain = 4\namplifier.gain = 5\n", "FE0123", 2, "amplifier.gain", "line 1", "remove one" },
        { "[stages]\nkind = \"gain\"\n", "FE0128", 1, "stages", "a list of tables is expected", "[[stages]]" },

        // Wrong types.
        { "[amplifier]\ngain = \"4\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write 4, a bare number" },
        { "[amplifier]\ngain = true\n", "FE0124", 2, "amplifier.gain", "is true or false", "2.5" },
        { "[electrodes]\nground-electrode = \"none\"\n", "FE0124", 2, "electrodes.ground-electrode", "is a text", "write true or false" },
        { "name = 4\n", "FE0124", 1, "name", "is a number, but a text", "write \"4\"" },
        { "amplifier = 4\n", "FE0128", 1, "amplifier", "a table is expected", "[amplifier]" },
        { "channels = 2.5\n", "FE0113", 1, "channels", "not a whole number", "from 1 to 1024" },
        { "channels = 1979-05-27\n", "FE0124", 1, "channels", "a date or time", "8" },
        { "[amplifier]\ngain = inf\n", "FE0124", 2, "amplifier.gain", "infinite", "2.5" },
        { "[mains]\nharmonics = 1\n", "FE0124", 2, "mains.harmonics", "a list of numbers is expected", "write [1]" },
        { "[mains]\nharmonics = [1, \"2 %\"]\n", "FE0124", 2, "mains.harmonics[2]", "is a text", "bare number" },
        { "[montage]\nsites = [\"O1\", 2]\n", "FE0124", 2, "montage.sites[2]", "is a number", "\"text\"" },
        { "band = \"40 Hz\"\n", "FE0124", 1, "band", "a pair of frequencies", "[\"0.5 Hz\", \"40 Hz\"]" },
        { "[amplifier]\ngain = [3.5]\n", "FE0124", 2, "amplifier.gain", "is a list", "write 3.5" },
        { "[input]\nseries-resistor = [\"5 kΩ\"]\n", "FE0124", 2, "input.series-resistor", "is a list", "write \"5 kΩ\"" },
        { "name = 5\n", "FE0124", 1, "name", "is a number", "write \"5\"" },
        { "[mains]\nharmonics = 3\n", "FE0124", 2, "mains.harmonics", "is a number", "write [3]" },
        { "[montage]\nsites = \"O1, O2\"\n", "FE0124", 2, "montage.sites", "is a text", "write [\"O1\", \"O2\"]" },
        { "[montage]\nreference-buffered = \"Yes\"\n", "FE0124", 2, "montage.reference-buffered", "is a text", "write true" },
        { "band = \"1 - 30 Hz\"\n", "FE0124", 1, "band", "is a text", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [\"1 Hz, 30 Hz\"]\n", "FE0115", 1, "band", "it has 1", "write [\"1 Hz\", \"30 Hz\"]" },
        { "band = [0,5, 40]\n", "FE0115", 1, "band", "the decimal sign is a point", "[\"0.5 Hz\"" },
        { "[amplifier]\ngain = nan\n", "FE0124", 2, "amplifier.gain", "every value is a finite number", "write a value like 2.5" },
        { "[amplifier]\ngain = \"5 times\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write 5 if that is intended" },
        { "[amplifier]\ngain = \"350 %\"\n", "FE0124", 2, "amplifier.gain", "is a text", "350 % are a factor of 3.5: write 3.5" },
        { "[amplifier]\ngain = \"10:4\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write 2.5" },
        { "[amplifier]\ngain = \"14 dBV\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write a value like" },
        { "band = [\"1 Hz\"]\n", "FE0115", 1, "band", "it has 1", "[\"0.5 Hz\", \"40 Hz\"]" },
        { "stages = [1]\n", "FE0128", 1, "stages", "a number in it", "[[stages]]" },
        { "[montage]\nreference-buffered = \"yes\"\n", "FE0124", 2, "montage.reference-buffered", "is a text", "true" },
        { "[electrodes.active]\ncard = 4\n", "FE0124", 2, "electrodes.active.card", "a part card", "write a value like \"" },

        { "channels = [2]\n[montage]\nsites = [\"O1\", \"O2\"]\n", "FE0124", 1, "channels", "is a list", "write 2" },
        { "[ground-drive]\nkind = true\n", "FE0124", 2, "ground-drive.kind", "is true or false", "write one of `\"passive\"`" },
        { "[amplifier]\ncard = [\"low-noise-cmos\"]\n", "FE0124", 2, "amplifier.card", "is a list", "write \"low-noise-cmos\"" },
        { "[input]\nseries-resistor = \"5 kΩ\"\nseries_resistor = \"5 kΩ\"\n", "FE0121", 3, "input.series_resistor", "no key", "remove one of the two" },

        // Units.
        { "[signal]\nlargest = 0.002\n", "FE0125", 2, "signal.largest", "`0.002` has no unit", "\"0.002 V\" if that is the unit" },
        { "[electrodes]\noffset = \"0.3\"\n", "FE0107", 2, "electrodes.offset", "`0.3` has no unit", "`0.3 V`" },
        { "[converter]\nrate = 500\n", "FE0125", 2, "converter.rate", "`500` has no unit", "\"500 Hz\" if that is the unit" },
        { "[input]\nshunt-capacitor = 22e-12\n", "FE0125", 2, "input.shunt-capacitor", "`22e-12` has no unit", "\"22e-12 F\" if that is the unit" },
        { "band = [1, \"30 Hz\"]\n", "FE0125", 1, "band", "`1` has no unit", "write [\"1 Hz\", \"30 Hz\"]" },
        { "[input]\nseries-resistor = \"1,000,000\"\n", "FE0103", 2, "input.series-resistor", "comma", "write `1000000 Ω` if ohms are meant" },
        { "[signal]\nsmallest = \"0.5 u\"\n", "FE0102", 2, "signal.smallest", "a prefix stands before a unit", "write `0.5 uV`" },
        { "[input]\nseries-resistor = 68000\n", "FE0125", 2, "input.series-resistor", "`68000` has no unit", "\"4.7 kΩ\"" },
        { "band = [0.5, 40]\n", "FE0125", 1, "band", "`0.5` has no unit", "0.5 Hz" },
        { "[input]\nseries-resistor = \"68 kHz\"\n", "FE0102", 2, "input.series-resistor", "belongs to a frequency", "4.7 kΩ" },
        { "[signal]\nlargest = \"40 uW\"\n", "FE0102", 2, "signal.largest", "is not a voltage", "40 µV" },
        { "[signal]\nlargest = \"big\"\n", "FE0101", 2, "signal.largest", "does not begin with a number", "40 µV" },
        { "[signal]\nlargest = \"\"\n", "FE0106", 2, "signal.largest", "the text is empty", "40 µV" },
        { "[input]\nshunt-capacitor = \"4,7 nF\"\n", "FE0103", 2, "input.shunt-capacitor", "the decimal sign is a point", "4.7 nF" },
        { "[amplifier]\ninput-noise = \"50 nV\"\n", "FE0102", 2, "amplifier.input-noise", "belongs to", "nV/√Hz" },
        { "[input]\nbias-resistor = \"nothing\"\n", "FE0101", 2, "input.bias-resistor", "does not begin with a number", "or `none`" },
        { "[ground-drive]\naveraging-bandwidth = \"infinite\"\n", "FE0101", 2, "ground-drive.averaging-bandwidth", "does not begin", "`unlimited` or `auto`" },

        // What a number, a list or a text is to be written like.
        { "[mains]\nharmonics = [1 0.5]\n", "FE0120", 2, "mains.harmonics", "no comma stands between", "write [1, 0.5]" },
        { "[mains]\nharmonics = 1 0.5\n", "FE0120", 2, "mains.harmonics", "without brackets", "write [1, 0.5]" },
        { "[requirements]\nheadroom = 1 2\n", "FE0120", 2, "requirements.headroom", "without brackets", "write a value like" },
        { "name = Alpha's headset\n", "FE0120", 1, "name", "is not in quotes", "write \"Alpha's headset\"" },
        { "name = My \"best\" headset\n", "FE0120", 1, "name", "is not in quotes", "write 'My \"best\" headset'" },
        { "name = yes\n", "FE0120", 1, "name", "`yes` is not a value", "any other word is text" },
        { "gain = 4\n", "FE0121", 1, "gain", "no key `gain`", "move it to its table if `amplifier.gain`" },

        // Commas.
        { "[amplifier]\ngain = \"1,2,3\"\n", "FE0124", 2, "amplifier.gain", "is a text", "write a value like" },
        { "[amplifier]\ngain = 1.000,5\n", "FE0103", 2, "amplifier.gain", "a comma in its number", "write 1000.5" },
        { "[input]\nseries-resistor = 1,000 kΩ\n", "FE0103", 2, "input.series-resistor", "a comma in its number", "write \"1.000 kΩ\" or \"1000 kΩ\", whichever" },

        // Two values where one is wanted; only what may be unknown has ends.
        { "[converter]\nrate = \"250-500 Hz\"\n", "FE0102", 2, "converter.rate", "is not a frequency", "counts; what lies somewhere between the two is [\"250 Hz\", \"500 Hz\"]" },
        { "[requirements]\nnoise = \"1-2 µV\"\n", "FE0102", 2, "requirements.noise", "peak-to-peak", "write the one that counts" },

        // Ranges.
        { "[amplifier]\ngain = 0\n", "FE0110", 2, "amplifier.gain", "above 0 to 100000", "write a number above 0 to 100000" },
        { "[input]\nshunt-capacitor = \"-22 pF\"\n", "FE0110", 2, "input.shunt-capacitor", "from 0 F", "prefix" },
        { "[electrodes]\nmismatch = \"200 %\"\n", "FE0110", 2, "electrodes.mismatch", "to below 200 %", "check the number" },
        { "channels = 0\n", "FE0110", 1, "channels", "from 1 to 1024", "write a whole number from 1 to 1024" },
        { "[[digital]]\nkind = \"low-pass\"\norder = 40\n", "FE0110", 3, "digital[1].order", "digital[1].order: order of the filter", "write a whole number from 1 to 20" },
        { "[electrodes]\nmismatch = 50\n", "FE0110", 2, "electrodes.mismatch", "mismatch 50 is outside", "write \"50 %\" if per cent" },
        { "[input]\nseries-resistor = \"-10k\"\n", "FE0110", 2, "input.series-resistor", "from 0 Ω", "`10k` is inside the range" },
        { "skin-temperature = \"33 K\"\n", "FE0110", 1, "skin-temperature", "33 K", "check the number" },
        { "[mains]\nharmonics = [1, -0.02]\n", "FE0110", 2, "mains.harmonics", "from 0 to 10", "check the number" },
        { "[electrodes.active]\nexcess-rms = \"5 µV\"\nexcess-band = [\"500 Hz\", \"0.5 Hz\"]\n", "FE0301", 3, "electrodes.active.excess-band", "starts at 500 Hz", "lower frequency first" },
        { "[electrodes.active]\nexcess-rms = \"5 µV\"\nexcess-density = \"1e-12 V²/Hz\"\n", "FE0127", 2, "electrodes.active.excess-rms", "state the same thing", "remove one" },

        // Words and kinds.
        { "[ground-drive]\nkind = \"pasive\"\n", "FE0111", 2, "ground-drive.kind", "`pasive`", "did you mean `passive`? write `passive` or `driven`" },
        { "[[stages]]\nkind = \"filter\"\n", "FE0111", 2, "stages[1].kind", "`filter`", "`gain`, `low-pass` or `notch`" },
        { "[[stages]]\nkind = \"low-pass\"\ntopology = \"salen-key\"\n", "FE0111", 3, "stages[1].topology", "`salen-key`", "did you mean `sallen-key`?" },
        { "[[stages]]\nname = \"gain 2\"\n", "FE0201", 1, "stages[1]", "no `kind`", "`gain`, `low-pass` or `notch`" },
        { "[[stages]]\nkind = \"low-pass\"\n", "FE0202", 1, "stages[1]", "how it is built", "`rc`, `rc-passive`, `sallen-key`, `sallen-key-equal` or `multiple-feedback`" },
        { "[[bands]]\nname = \"mu\"\nlow = \"8 Hz\"\n", "FE0203", 1, "bands[1]", "no `high`", "add `high`" },

        // Cards.
        { "[electrodes.active]\ncard = \"dry-multipins\"\n", "FE0126", 2, "electrodes.active.card", "`gel-prepared`", "did you mean `dry-multipin`?" },
        { "[converter]\ncard = \"gel-prepared\"\n", "FE0126", 2, "converter.card", "the cards are", "path of a card of your own" },
        { "[amplifier]\ncard = \"mine.toml\"\n", "FE0145", 2, "amplifier.card", "not in a file", "correct the card" },
        { Stage + "opamp = \"micropower\"\n", "FE0126", 4, "stages[1].opamp.card", "no part card `micropower` for an op-amp", "ends in .toml" },

        // Fields against each other.
        { "channels = 2\n[montage]\nsites = [\"O1\", \"O1\"]\n", "FE0303", 3, "montage.sites[2].name", "both named `O1`", "rename" },
        { "band = [\"1 Hz\", \"40 Hz\"]\n[converter]\nrate = \"250 mHz\"\n[[digital]]\nkind = \"notch\"\ncentre = \"50 Hz\"\n", "FE1170", 3, "converter.rate", "band, digital[1].centre", "the prefix of its unit" },
        { "band = [\"40 Hz\", \"0.5 Hz\"]\n", "FE0301", 1, "band", "starts at 40.0 Hz", "lower frequency first" },
        { "band = [\"0.5 Hz\", \"125 Hz\"]\n", "FE0302", 1, "band", "half the sampling rate, 125 Hz", "raise converter.rate" },
        { Stage + "name = \"a\"\n" + Stage + "name = \"A\"\n", "FE0303", 8, "stages[2].name", "both named", "rename" },
        { "[[stages]]\nkind = \"low-pass\"\ntopology = \"rc-passive\"\n[[stages]]\nkind = \"gain\"\n", "FE0304", 1, "stages[1]", "not the last stage", "topology = \"rc\"" },
        { "[electrodes]\nground-electrode = false\n", "FE0305", 0, "input.bias-resistor", "no dc path", "set input.bias-resistor" },
        { "[electrodes]\nground-electrode = false\n[electrodes.ground]\ncontact-resistance = \"5 kΩ\"\n[input]\nbias-resistor = \"100 MΩ\"\n", "FE0127", 2, "electrodes.ground-electrode", "state the same thing", "remove one" },
        { "[[digital]]\nkind = \"notch\"\ncentre = \"200 Hz\"\n", "FE0306", 3, "digital[1].centre", "not below half the sampling rate, 125 Hz", "raise converter.rate" },
        { "[[digital]]\nkind = \"notch\"\ncentre = \"100 Hz\"\nq = 0.5\n", "FE0306", 4, "digital[1].q", "200 Hz wide", "raise Q" },
        { "[supply]\nlowest = \"4 V\"\nhighest = \"3.3 V\"\n", "FE0307", 3, "supply.highest", "below supply.lowest 4.00 V", "set supply.highest" },
        { "[[stages]]\nkind = \"gain\"\nfeedback-resistor = \"10 kΩ\"\n", "FE0308", 1, "stages[1]", "its gain is 1", "ground-resistor" },
        { "[electrodes.active]\nsecond-resistance = \"5 kΩ\"\n", "FE0309", 1, "electrodes.active.second-capacitance", "has no second-capacitance", "both or neither" },
        { "[converter]\nlsb = \"1 mV\"\nbits = 12\n", "FE0310", 2, "converter.lsb", "bits", "leave one" },
        { "[[digital]]\nkind = \"sections\"\nrows = [[1, 0, 0, 1, 0]]\n", "FE0311", 3, "digital[1].rows", "has 5 numbers", "six numbers" },
        { "[[digital]]\nkind = \"sections\"\nrows = [[1, 0, 0, 1, -2.1, 1.2]]\n", "FE0312", 3, "digital[1].rows", "is unstable", "signs" },
        { "channels = 3\n[montage]\nsites = [\"O1\", \"O2\"]\n", "FE0313", 3, "montage.sites", "names 2 sites, but channels is 3", "as many sites" },
        { "[montage]\nkind = \"bipolar\"\n", "FE0314", 2, "montage.kind", "at least two channels", "referential" },
        { "[signal]\nsmallest = \"5 mV\"\n", "FE0315", 1, "signal.largest", "not above signal.smallest", "prefixes" },
        { "[supply]\nmid-rail = \"3 V\"\n", "FE0316", 2, "supply.mid-rail", "not below supply.lowest", "between the rails" },
        { "[mains]\nharmonics = []\n", "FE0317", 2, "mains.harmonics", "no fundamental", "begin the list with 1" },
        { "[requirements]\nfault-current = \"100 µA\"\n", "FE0318", 2, "requirements.fault-current", "above the limit commonly quoted, 50.0 µA", "50.0 µA or less" },
        { "[mains]\namplifier-to-earth = \"1 µF\"\n", "FE0319", 2, "mains.amplifier-to-earth", "wired to earth", "set caution" },
        { "[contact-check]\nfrequency = \"125 Hz\"\n", "FE0320", 2, "contact-check.frequency", "half the sampling rate", "lower the frequency" },
        { "[input]\nreference-inputs = 4\n", "FE0321", 2, "input.reference-inputs", "channels is 1", "count one input" },
        { "[input]\ndriven-shield = \"90 %\"\nlead-to-common = \"0 F\"\n", "FE0322", 2, "input.driven-shield", "0 F", "set input.lead-to-common" },
        { "[[stages]]\nkind = \"gain\"\nname = \"--\"\n", "FE0323", 3, "stages[1].name", "has no name", "letter or digit" },
        { "[amplifier]\noutput-margin = \"2 V\"\n", "FE0324", 2, "amplifier.output-margin", "uses up", "lower the margin" },
        { "[[interferers]]\nname = \"x\"\nlow = \"30 Hz\"\nhigh = \"20 Hz\"\namplitude = \"1 µV\"\n", "FE0301", 1, "interferers[1]", "starts at 30.0 Hz", "lower frequency first" },
    };

    public static TheoryData<string, string, int, string, string, string> Json => new()
    {
        { "{\"amplifier\": {\"gain\": 4,}", "FE0120", 1, "", "valid JSON", "commas" },
        { "", "FE0120", 1, "", "valid JSON", "commas" },
        { "[]", "FE0128", 1, "the file", "a table is expected", "keys below" },
        { "{\n\"amplifier\": {\n\"gian\": 4}}", "FE0121", 3, "amplifier.gian", "`amplifier.gain`", "write `gain`" },
        { "{\"design\": {}, \"expcted\": {}}", "FE0121", 1, "expcted", "`expected`", "write `expected`" },
        { "{\"input\": {\"series_R\": 68000,\n\"series_resistor\": 10}}", "FE0127", 2, "input.series-resistor", "both input.series_R and input.series_resistor", "remove one" },
        { "{\"amplifier\": {\"gain\": 4,\n\"gain\": 5}}", "FE0123", 2, "amplifier.gain", "already set in line 1", "remove one" },
        { "{\"input\": {\"series_R\": \"68 kΩ\"}}", "FE0124", 1, "input.series-resistor", "is a text", "write 68000, a bare number in Ω" },
        { "{\"input\": {\"series_R\": \"big\"}}", "FE0124", 1, "input.series-resistor", "is a text", "write a bare number in Ω" },
        { "{\"input\": {\"series_R\": 1e400}}", "FE0124", 1, "input.series-resistor", "too large", "a bare number in Ω" },
        { "{\"input\": {\"series_R\": -1}}", "FE0110", 1, "input.series-resistor", "from 0 Ω", "prefix" },
        { "{\"ground_drive\": {\"kind\": \"drivn\"}}", "FE0111", 1, "ground-drive.kind", "`drivn`", "`driven`" },
        { "{\"stages\": [{\"Rf\": 1000}]}", "FE0201", 1, "stages[1]", "no `kind`", "`gain`" },
        { "{\"stages\": [{\"kind\": \"lowpass\", \"topology\": \"sallen-key\", \"R\": 1000}]}", "FE0122", 1, "stages[1].R", "a Sallen-Key section", "change the element's kind" },
        { "{\"digital_sos\": [[1, 0, 0, 1, -2.1, 1.2]]}", "FE0312", 1, "digital[1].rows", "unstable", "signs" },
        { "{\"band\": [0.5]}", "FE0115", 1, "band", "it has 1", "[\"0.5 Hz\"" },
        { "{\"digital\": [{\"kind\": \"notch\"}], \"digital_sos\": [[1, 0, 0, 1, 0, 0]]}", "FE0127", 1, "digital", "state the same thing", "remove one" },
        { "{\"name\": \"\\ud800\"}", "FE0120", 1, "", "valid JSON", "double quotes" },
    };

    [Theory]
    [MemberData(nameof(Toml))]
    public void Toml_Mistake_IsFoundWithPlaceAndRemedy(string text, string code, int line, string field, string message, string help) =>
        Check(DesignDocument.Parse(text, DocumentFormat.Toml, "bad.toml"), code, line, field, message, help);

    [Theory]
    [MemberData(nameof(Json))]
    public void Json_Mistake_IsFoundWithPlaceAndRemedy(string text, string code, int line, string field, string message, string help) =>
        Check(DesignDocument.Parse(text, DocumentFormat.Json, "bad.json"), code, line, field, message, help);

    [Theory]
    [InlineData("[electrodes]\nground-electrode = false\n")]
    [InlineData("[electrodes]\nground = \"none\"\n")]
    [InlineData("electrodes.ground = false\n")]
    public void Toml_NoGroundElectrode_WithBiasResistors_IsNoMistake(string text)
    {
        DesignDocument document = DesignDocument.Parse(text + "[input]\nbias-resistor = \"100 MΩ\"\n", DocumentFormat.Toml);
        Assert.Null(document.Design.Electrodes.Ground);
        Assert.False(document.HasErrors);
        CatalogueTests.AssertSame(document.Design, DesignDocument.Parse(DesignWriter.ToToml(document.Design), DocumentFormat.Toml).Design, text);
    }

    /// <summary>A site that is one letter away from one of the head's, such as a letter of another script, is told: what it sees cannot be computed.</summary>
    [Theory]
    [InlineData("sites = [\"\u043E1\", \"O2\"]\n", "montage.sites", "`O1`", "Cyrillic")]
    [InlineData("sites = [\"O1\", \"02\"]\n", "montage.sites", "`O2`", "any words")]
    [InlineData("reference = \"\u04101\"\n", "montage.reference", "`A1`", "Cyrillic")]
    [InlineData("reference = \"A3\"\n", "montage.reference", "`A1`", "any words")]
    public void Toml_SiteThatIsNearlyOne_IsWarned(string line, string field, string near, string note)
    {
        DesignDocument document = DesignDocument.Parse("channels = 2\n[montage]\n" + line, DocumentFormat.Toml);
        Finding finding = Assert.Single(document.Findings, finding => finding.Field == field);
        Assert.Equal((Severity.Warning, 3), (finding.Severity, finding.Line!.Value));
        Assert.Contains(near, finding.Help, StringComparison.Ordinal);
        Assert.Contains(note, finding.Note, StringComparison.Ordinal);
    }

    /// <summary>A limit is one value: no ends are proposed for it.</summary>
    [Fact]
    public void Toml_TwoValuesForALimit_AreNoRange() =>
        Assert.EndsWith("counts", DesignDocument.Parse("[requirements]\nnoise = \"1-2 µV\"\n", DocumentFormat.Toml).Findings[0].Help, StringComparison.Ordinal);

    /// <summary>[digital] twice: each is told, and none is said to be set twice.</summary>
    [Fact]
    public void Toml_ListOfTablesInSingleBrackets_IsToldAtEach()
    {
        DesignDocument document = DesignDocument.Parse("[digital]\nkind = \"notch\"\ncentre = \"50 Hz\"\n[digital]\nkind = \"high-pass\"\ncorner = \"1 Hz\"\n[[digital]]\nkind = \"low-pass\"\ncorner = \"40 Hz\"\n", DocumentFormat.Toml);
        Assert.Equal([("FE0128", 1), ("FE0128", 4)], document.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => (finding.Code, finding.Line!.Value)));
        Assert.Equal(3, document.Design.Digital.Count);
    }

    /// <summary>A key that nobody knows may be meant for one that the file does not give: what rests on that is not judged too.</summary>
    [Theory]
    [InlineData("chanels = 2\n")]
    [InlineData("canaux = 2\n")]
    [InlineData("kanäle = 2\n")]
    [InlineData("channels = two\n")]
    public void Toml_ChannelsThatCannotBeRead_DoNotBlameTheSitesAsWell(string line)
    {
        DesignDocument document = DesignDocument.Parse(line + "[montage]\nsites = [\"O1\", \"O2\"]\n", DocumentFormat.Toml);
        Assert.Equal(1, Assert.Single(document.Findings, finding => finding.Severity == Severity.Error).Line);
    }

    [Fact]
    public void Toml_SeveralMistakes_AreAllFoundInOnePass()
    {
        DesignDocument document = DesignDocument.Parse("a = = 1\nb = = 2\n[amplifier]\ngian = 4\ncmrr = \"100 V\"\n", DocumentFormat.Toml);
        Assert.Equal([1, 2], document.Findings.Where(finding => finding.Code is "FE0120").Select(finding => finding.Line!.Value).Distinct());
        Assert.Contains(document.Findings, finding => finding.Code is "FE0121" && finding.Line == 4);
        Assert.Contains(document.Findings, finding => finding.Code is "FE0102" && finding.Line == 5);
    }

    [Fact]
    public void Toml_ValueThatDoesNotParse_ShowsACaret()
    {
        DesignDocument document = DesignDocument.Parse("[signal]\nlargest = \"40 uW\"\n", DocumentFormat.Toml, "designs/headset.toml");
        Finding finding = Assert.Single(document.Findings, finding => finding.Code is "FE0102");
        Assert.Equal("\"40 ^uW\"", finding.Excerpt);
        Assert.Equal("designs/headset.toml", finding.File);
    }

    [Fact]
    public void Toml_NothingSaidAboutProtectionAndElectrodes_IsWarned()
    {
        DesignDocument document = DesignDocument.Parse("name = \"x\"\n", DocumentFormat.Toml);
        Assert.False(document.HasErrors);
        Assert.Equal(["electrodes.active", "electrodes.reference", "electrodes.ground", "supply.highest", "input.series-resistor"], document.Findings.Select(finding => finding.Field), StringComparer.Ordinal);
    }

    /// <summary>A card that cannot be used is one mistake, however often it is named; the places stand in the one finding. Cards of another class or
    /// another name are other mistakes.</summary>
    [Theory]
    [InlineData("FE0126", "dry-combs")]
    [InlineData("FE0145", "mine.toml")]
    public void Toml_UnusableCardNamedSeveralTimes_IsOneMistakeWithItsPlaces(string code, string card)
    {
        DesignDocument document = DesignDocument.Parse(
            $"[electrodes]\nactive = \"{card}\"\nreference = \"{card}\"\n[electrodes.ground]\ncard = \"{card}\"\n[amplifier]\ncard = \"{card}\"\n", DocumentFormat.Toml, "bad.toml");
        Finding[] findings = [.. document.Findings.Where(finding => finding.Code == code)];
        Assert.Equal(["electrodes.active.card", "amplifier.card"], findings.Select(finding => finding.Field), StringComparer.Ordinal);
        Assert.StartsWith("electrodes.reference.card (line 3) and electrodes.ground.card (line 5) name it too", findings[0].Note, StringComparison.Ordinal);
        Assert.DoesNotContain("name it too", findings[1].Note ?? "", StringComparison.Ordinal);
        Assert.Equal(2, findings[0].Line);
    }

    /// <summary>What is wrong in a card is wrong once, however many parts take their values from it.</summary>
    [Fact]
    public void Toml_CardWithMistakesUsedSeveralTimes_HasEachOnce()
    {
        CardTexts cards = CardTexts.In("").With("mine.toml", new CardText(
            "class = \"buffer\"\n[values]\ninput-resistance = \"1 kOhmm\"\nmispelt = 1\nopamp = \"no-such\"\n", null));
        DesignDocument document = DesignDocument.Parse(
            "[electrodes]\nactive-buffer = \"mine.toml\"\nreference-buffer = \"mine.toml\"\n", DocumentFormat.Toml, "bad.toml", cards);
        Assert.Equal(["FE0102", "FE0121", "FE0126"], document.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Code).Order(StringComparer.Ordinal));
    }

    // A mistake has one message: what rests on a value that could not be read is not complained about too.
    [Fact]
    public void Toml_RateThatDoesNotParse_DoesNotBlameTheBandAsWell()
    {
        DesignDocument document = DesignDocument.Parse("band = [\"1 Hz\", \"200 Hz\"]\n[converter]\nrate = \"500 Hx\"\n", DocumentFormat.Toml);
        Assert.Equal(["FE0102"], document.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Code), StringComparer.Ordinal);
    }

    private static void Check(DesignDocument document, string code, int line, string field, string message, string help)
    {
        IEnumerable<Finding> others = document.Findings.Where(finding => !Assumed.Contains(finding.Code, StringComparer.Ordinal));
        Finding? finding = others.FirstOrDefault(finding => string.Equals(finding.Code, code, StringComparison.Ordinal));
        Assert.True(finding is not null, $"{code} is not among: {string.Join("; ", others.Select(other => $"{other.Code} {other.Line} {other.Field}: {other.Message}"))}");
        Assert.Equal(field, finding.Field);
        Assert.Equal(line == 0 ? null : line, finding.Line);
        Assert.StartsWith("bad.", finding.File, StringComparison.Ordinal);
        Assert.Contains(message, finding.Message + " " + finding.Note, StringComparison.Ordinal);
        Assert.Contains(help, finding.Help ?? "", StringComparison.Ordinal);
        Assert.True(char.IsAsciiLetterLower(finding.Message[0]) || !char.IsLetter(finding.Message[0]), finding.Message);
        Assert.False(finding.Message.EndsWith('.'), finding.Message);

        // One cause, one message; half a character may break more than one thing.
        Assert.True(others.Count() == 1 || document.Text.Any(char.IsSurrogate), string.Join("; ", others.Select(other => $"{other.Code} {other.Line} {other.Field}: {other.Message}")));
    }
}
