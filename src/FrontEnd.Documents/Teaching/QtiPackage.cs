using System.IO.Compression;
using System.Text;
using FrontEnd.Documents.Drawing;
using FrontEnd.Teaching.Problems;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>A homework as a package of QTI 2.2, a zip file: an item for each question of each sheet, and a test with a section for each question,
/// which asks each student one of its items.</summary>
/// <remarks>Names in it tell nothing of the students. The same homework gives the same bytes.</remarks>
internal static class QtiPackage
{
    // A zip file wants a day; every package has the same.
    private static readonly DateTimeOffset Day = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Of(Homework homework)
    {
        using MemoryStream file = new();
        using (ZipArchive zip = new(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            List<(BankItem Item, string? Image)> items = [];
            HashSet<string> images = new(StringComparer.Ordinal);
            foreach (BankItem item in BankItem.Of(homework))
            {
                string? image = QuestionPicture.Of(item.Problem.TemplateId) is { } picture ? Image(zip, images, item.Problem.TemplateId, picture) : null;
                Add(zip, Place(item.Id), QtiItem.Of(item, image is null ? null : $"../{image}"));
                items.Add((item, image));
            }

            Add(zip, "test.xml", Test(homework, items.Select(one => one.Item)));
            Add(zip, "imsmanifest.xml", Manifest(homework, items));
        }

        return file.ToArray();
    }

    private static string Place(string item) => $"items/{item}.xml";

    private static string Image(ZipArchive zip, HashSet<string> images, string template, Picture picture)
    {
        string place = $"images/{template}.svg";
        if (images.Add(place))
        {
            Add(zip, place, Svg.File(picture, [picture.Label]));
        }

        return place;
    }

    private static void Add(ZipArchive zip, string place, string text)
    {
        ZipArchiveEntry entry = zip.CreateEntry(place);
        entry.LastWriteTime = Day;
        using Stream stream = entry.Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private static string Test(Homework homework, IEnumerable<BankItem> items)
    {
        StringBuilder xml = new("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.Append($"<assessmentTest xmlns=\"{QtiItem.Namespace}\" identifier=\"homework-{homework.Code}\" title=\"Problems: {Subject}\">\n");
        xml.Append("<outcomeDeclaration identifier=\"SCORE\" cardinality=\"single\" baseType=\"float\"><defaultValue><value>0</value></defaultValue></outcomeDeclaration>\n");
        xml.Append("<testPart identifier=\"part-1\" navigationMode=\"nonlinear\" submissionMode=\"individual\">\n");
        foreach (IGrouping<string, BankItem> question in items.GroupBy(item => item.Question, StringComparer.Ordinal))
        {
            xml.Append($"<assessmentSection identifier=\"section-{question.Key}\" title=\"{question.Key}\" visible=\"true\">\n<selection select=\"1\"/>\n");
            xml.Append(string.Concat(question.Select(item => $"<assessmentItemRef identifier=\"{item.Id}\" href=\"{Place(item.Id)}\"/>\n"))).Append("</assessmentSection>\n");
        }

        return xml.Append("</testPart>\n<outcomeProcessing><setOutcomeValue identifier=\"SCORE\"><sum><testVariables variableIdentifier=\"SCORE\"/></sum></setOutcomeValue></outcomeProcessing>\n</assessmentTest>\n").ToString();
    }

    private static string Manifest(Homework homework, IReadOnlyList<(BankItem Item, string? Image)> items)
    {
        StringBuilder xml = new("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.Append($"<manifest xmlns=\"http://www.imsglobal.org/xsd/imscp_v1p1\" identifier=\"manifest-{homework.Code}\">\n");
        xml.Append("<metadata><schema>QTIv2.2 Package</schema><schemaversion>1.0.0</schemaversion></metadata>\n<organizations/>\n<resources>\n");
        xml.Append($"<resource identifier=\"test-{homework.Code}\" type=\"imsqti_test_xmlv2p2\" href=\"test.xml\">\n<file href=\"test.xml\"/>\n");
        xml.Append(string.Concat(items.Select(one => $"<dependency identifierref=\"item-{one.Item.Id}\"/>\n"))).Append("</resource>\n");
        foreach ((BankItem item, string? image) in items)
        {
            xml.Append($"<resource identifier=\"item-{item.Id}\" type=\"imsqti_item_xmlv2p2\" href=\"{Place(item.Id)}\"><file href=\"{Place(item.Id)}\"/>{(image is null ? "" : $"<file href=\"{image}\"/>")}</resource>\n");
        }

        return xml.Append("</resources>\n</manifest>\n").ToString();
    }
}
