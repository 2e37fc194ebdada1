using System.Globalization;
using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests.Teaching;

/// <summary>Homework for other programs. The published schemas were not at hand: the structure is checked by rules written down here from the
/// standard's element names.</summary>
public class ExchangeTests
{
    private static readonly XNamespace Qti = "http://www.imsglobal.org/xsd/imsqti_v2p2", Content = "http://www.imsglobal.org/xsd/imscp_v1p1", Math = "http://www.w3.org/1998/Math/MathML";

    private static readonly Homework Everything = Homework.Make([], null, TemplateSet.All.Count, 5, [new Student("s1", "Ada"), new Student("s/2", "Ben & <Co>")]);

    private static readonly Lazy<Dictionary<string, byte[]>> Package = new(() => Open(QtiPackage.Of(Everything)));

    private static Dictionary<string, byte[]> Open(byte[] bytes)
    {
        using ZipArchive zip = new(new MemoryStream(bytes));
        return zip.Entries.ToDictionary(entry => entry.FullName, entry =>
        {
            using MemoryStream copy = new();
            using Stream stream = entry.Open();
            stream.CopyTo(copy);
            return copy.ToArray();
        }, StringComparer.Ordinal);
    }

    private static XElement Read(string name) => XDocument.Load(new MemoryStream(Package.Value[name])).Root!;

    [Fact]
    public void Package_AllOfIt_IsNamedInTheManifestAndNothingElse()
    {
        XElement manifest = Read("imsmanifest.xml");
        Assert.Equal(Content + "manifest", manifest.Name);
        Assert.Equal(["metadata", "organizations", "resources"], manifest.Elements().Select(one => one.Name.LocalName));
        Assert.Equal(("QTIv2.2 Package", "1.0.0"), (manifest.Element(Content + "metadata")!.Element(Content + "schema")!.Value, manifest.Element(Content + "metadata")!.Element(Content + "schemaversion")!.Value));
        XElement[] resources = [.. manifest.Element(Content + "resources")!.Elements()];
        string[] files = [.. resources.SelectMany(one => one.Elements(Content + "file")).Select(file => file.Attribute("href")!.Value).Distinct()];
        Assert.Equal(Package.Value.Keys.Where(name => name != "imsmanifest.xml").Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
        Assert.All(resources, one => Assert.Contains(one.Elements(Content + "file"), file => file.Attribute("href")!.Value == one.Attribute("href")!.Value));
        string[] names = [.. manifest.DescendantsAndSelf().Attributes("identifier").Select(one => one.Value)];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.All(names, name => XmlConvert.VerifyNCName(name));
        XElement test = Assert.Single(resources, one => one.Attribute("type")!.Value == "imsqti_test_xmlv2p2");
        Assert.Equal(resources.Where(one => one.Attribute("type")!.Value == "imsqti_item_xmlv2p2").Select(one => one.Attribute("identifier")!.Value), test.Elements(Content + "dependency").Select(one => one.Attribute("identifierref")!.Value));
    }

    [Fact]
    public void Test_OfAClass_AsksOneItemOfEachQuestion()
    {
        XElement test = Read("test.xml");
        Assert.Equal(Qti + "assessmentTest", test.Name);
        XElement[] sections = [.. test.Descendants(Qti + "assessmentSection")];
        Assert.Equal(TemplateSet.All.Count, sections.Length);
        foreach (XElement section in sections)
        {
            Assert.Equal(["selection", "assessmentItemRef", "assessmentItemRef"], section.Elements().Select(one => one.Name.LocalName));
            Assert.Equal("1", section.Element(Qti + "selection")!.Attribute("select")!.Value);
            Assert.All(section.Elements(Qti + "assessmentItemRef"), one =>
                Assert.Equal(one.Attribute("identifier")!.Value, Read(one.Attribute("href")!.Value).Attribute("identifier")!.Value));
        }

        Assert.DoesNotContain("Ada", string.Concat(Package.Value.Values.Select(System.Text.Encoding.UTF8.GetString)), StringComparison.Ordinal);
    }

    /// <summary>Elements in their order, declared variables, the attributes that must be there, and nothing that the standard's body does not have.</summary>
    [Fact]
    public void Items_EveryOne_HaveTheStructureOfTheStandard()
    {
        string[] order = ["responseDeclaration", "outcomeDeclaration", "itemBody", "responseProcessing", "modalFeedback"];
        string[] body = ["p", "table", "tbody", "tr", "td", "img", "choiceInteraction", "simpleChoice", "textEntryInteraction"];
        foreach (string name in Package.Value.Keys.Where(name => name.StartsWith("items/", StringComparison.Ordinal)))
        {
            XElement item = Read(name);
            Assert.Equal(Qti + "assessmentItem", item.Name);
            Assert.Equal(["identifier", "title", "adaptive", "timeDependent"], item.Attributes().Where(one => !one.IsNamespaceDeclaration).Select(one => one.Name.LocalName));
            XmlConvert.VerifyNCName(item.Attribute("identifier")!.Value);
            int[] places = [.. item.Elements().Select(one => Array.IndexOf(order, one.Name.LocalName))];
            Assert.Equal(places.Order(), places);
            Assert.DoesNotContain(-1, places);
            string[] declared = [.. item.Elements().Where(one => one.Name.LocalName.EndsWith("Declaration", StringComparison.Ordinal)).Select(one => one.Attribute("identifier")!.Value)];
            Assert.Equal(declared.Length, declared.Distinct().Count());
            Assert.All(item.Descendants(Qti + "variable").Concat(item.Descendants(Qti + "setOutcomeValue")), one => Assert.Contains(one.Attribute("identifier")!.Value, declared));
            XElement interaction = Assert.Single(item.Descendants(), one => one.Name.LocalName.EndsWith("Interaction", StringComparison.Ordinal));
            Assert.Equal("RESPONSE", interaction.Attribute("responseIdentifier")!.Value);
            Assert.All(item.Element(Qti + "itemBody")!.Elements(), block => Assert.Contains(block.Name.LocalName, (string[])["p", "table", "choiceInteraction"]));
            Assert.All(item.Element(Qti + "itemBody")!.Descendants().Where(one => one.Name.Namespace == Qti), one => Assert.Contains(one.Name.LocalName, body));
            Assert.All(item.Descendants(Qti + "modalFeedback"), one => Assert.Contains(item.Descendants(Qti + "baseValue"), value => value.Value == one.Attribute("identifier")!.Value));
            Assert.All(item.Descendants(Qti + "img"), one => Assert.True(Package.Value.ContainsKey(one.Attribute("src")!.Value["../".Length..])));
            Assert.NotEmpty(item.Descendants(Math + "math"));
        }
    }

    /// <summary>Each item marks the right answer with its points and each slip with what it earns, by the rules that it carries.</summary>
    [Fact]
    public void Items_ByTheirOwnRules_MarkRightAnswersAndSlips()
    {
        foreach (Question question in Everything.Sheets[0].Questions)
        {
            XElement item = Read($"items/{question.Id}-{Everything.Sheets[0].Code}.xml");
            string right = item.Element(Qti + "responseDeclaration")!.Value;
            Assert.Equal((question.Problem.Points, null), Mark(item, right));
            Assert.Equal((0, null), Mark(item, ""));
            int number = 1;
            foreach (Slip slip in question.Problem.Slips)
            {
                string given = question.Problem.Answer is QuantityAnswer quantity ? AskedUnit.Of(quantity).Number(slip.Value) : ChoiceAnswer.Letter((int)slip.Value);
                Assert.Equal((slip.Share * question.Problem.Points, $"slip-{number++}"), Mark(item, given));
            }

            if (question.Problem.Answer is QuantityAnswer)
            {
                Assert.Equal((0, null), Mark(item, (1000 * double.Parse(right, CultureInfo.InvariantCulture)).ToString("R", CultureInfo.InvariantCulture)));
            }
        }
    }

    private static (double, string?) Mark(XElement item, string response)
    {
        foreach (XElement branch in item.Element(Qti + "responseProcessing")!.Element(Qti + "responseCondition")!.Elements())
        {
            if (branch.Name.LocalName == "responseElse" || Holds(branch.Elements().First()))
            {
                XElement[] sets = [.. branch.Elements(Qti + "setOutcomeValue")];
                return (double.Parse(sets.Single(one => one.Attribute("identifier")!.Value == "SCORE").Value, CultureInfo.InvariantCulture),
                    sets.SingleOrDefault(one => one.Attribute("identifier")!.Value == "FEEDBACK")?.Value);
            }
        }

        throw new InvalidOperationException("No branch was taken.");

        bool Holds(XElement test) => test.Name.LocalName switch
        {
            "isNull" => response.Length == 0,
            "and" => test.Elements().All(Holds),
            "gte" => Value(test) <= double.Parse(response, CultureInfo.InvariantCulture),
            "lte" => double.Parse(response, CultureInfo.InvariantCulture) <= Value(test),
            "match" => test.Element(Qti + "baseValue")!.Value == response,
            var other => throw new InvalidOperationException(other),
        };

        static double Value(XElement test) => double.Parse(test.Element(Qti + "baseValue")!.Value, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Package_Twice_HasTheSameBytes() => Assert.Equal(QtiPackage.Of(Everything), QtiPackage.Of(Everything));

    [Fact]
    public void Bank_OfEveryTemplate_IsATableWithAnswersInTheirUnits()
    {
        string text = QuestionBank.Of(Everything);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.Equal(text.Split('\n').Length, text.Split("\r\n").Length);
        CsvRow[] rows = [.. CsvText.Rows(text)];
        Assert.Equal(["id", "text", "givens", "unit", "answer", "low", "high", "solution"], rows[0].Cells);
        Assert.Equal(1 + (2 * TemplateSet.All.Count), rows.Length);
        Assert.Equal(rows.Length, rows.Select(row => row.Cells[0]).Distinct().Count());
        foreach ((Question question, CsvRow row) in Everything.Sheets[0].Questions.Zip(rows.Skip(1)))
        {
            Assert.Equal(8, row.Cells.Count);
            if (question.Problem.Answer is ChoiceAnswer choice)
            {
                Assert.Equal(("choice", ChoiceAnswer.Letter(choice.Right)), (row.Cells[3], row.Cells[4]));
                continue;
            }

            QuantityAnswer answer = (QuantityAnswer)question.Problem.Answer;
            double[] numbers = [.. row.Cells.Skip(4).Take(3).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
            Assert.True(numbers[1] < numbers[0] && numbers[0] < numbers[2]);
            Assert.Equal(answer.Text, answer.Write(numbers[0] * AskedUnit.Of(answer).Scale));
            Assert.InRange(numbers[0], 0.1, 1e6);
        }
    }
}
