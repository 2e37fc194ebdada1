using System.Globalization;
using System.Text;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>A question as an item of QTI 2.2: a number within explicit bounds, or one of several choices; known slips as feedback, with the
/// points they earn.</summary>
/// <remarks>The form follows the element names of the standard's public examples; its schemas were not at hand.</remarks>
internal static class QtiItem
{
    public const string Namespace = "http://www.imsglobal.org/xsd/imsqti_v2p2";

    private const string Response = "<variable identifier=\"RESPONSE\"/>";

    /// <param name="image">Place of the circuit's picture, from the item's own; null for none.</param>
    public static string Of(BankItem item, string? image)
    {
        Problem problem = item.Problem;
        bool isChoice = problem.Answer is ChoiceAnswer;
        string right = problem.Answer switch
        {
            QuantityAnswer quantity => AskedUnit.Of(quantity).Number(quantity.Value),
            ChoiceAnswer choice => ChoiceAnswer.Letter(choice.Right),
            _ => throw new ArgumentOutOfRangeException(nameof(item), problem.Answer, "Answer is not handled."),
        };
        StringBuilder xml = new("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.Append($"<assessmentItem xmlns=\"{Namespace}\" identifier=\"{item.Id}\" title=\"{Safe(problem.Title)}\" adaptive=\"false\" timeDependent=\"false\">\n");
        xml.Append($"<responseDeclaration identifier=\"RESPONSE\" cardinality=\"single\" baseType=\"{(isChoice ? "identifier" : "float")}\"><correctResponse><value>{right}</value></correctResponse></responseDeclaration>\n");
        xml.Append(Outcome("SCORE", "0")).Append(Outcome("MAXSCORE", Number(problem.Points)));
        xml.Append("<outcomeDeclaration identifier=\"FEEDBACK\" cardinality=\"single\" baseType=\"identifier\"/>\n");
        AppendBody(xml, problem, image);
        AppendProcessing(xml, problem);
        string[] symbols = [.. problem.Givens.Select(given => given.Symbol)];
        for (int at = 0; at < problem.Slips.Count; at++)
        {
            xml.Append($"<modalFeedback outcomeIdentifier=\"FEEDBACK\" identifier=\"slip-{at + 1}\" showHide=\"show\"><p>{MathMl.OfSentence(problem.Slips[at].Kind.Remark, symbols)}</p></modalFeedback>\n");
        }

        return xml.Append("</assessmentItem>\n").ToString();
    }

    private static string Outcome(string name, string value) =>
        $"<outcomeDeclaration identifier=\"{name}\" cardinality=\"single\" baseType=\"float\"><defaultValue><value>{value}</value></defaultValue></outcomeDeclaration>\n";

    private static string Number(double value) => value.ToString("G10", CultureInfo.InvariantCulture);

    private static void AppendBody(StringBuilder xml, Problem problem, string? image)
    {
        string[] symbols = [.. problem.Givens.Select(given => given.Symbol)];
        xml.Append($"<itemBody>\n<p>{MathMl.OfSentence(problem.Text, symbols)}</p>\n");
        if (image is not null)
        {
            xml.Append($"<p><img src=\"{image}\" alt=\"{Safe(QuestionCircuits.Find(problem.TemplateId)!.Title)}\"/></p>\n");
        }

        if (problem.Givens.Count > 0)
        {
            xml.Append("<table><tbody>\n").Append(string.Concat(problem.Givens.Select(given =>
                $"<tr><td>{MathMl.OfText(given.Symbol)}</td><td>{Safe(given.Text)}</td><td>{Safe(given.Name)}</td></tr>\n"))).Append("</tbody></table>\n");
        }

        if (problem.Answer is ChoiceAnswer choice)
        {
            xml.Append("<choiceInteraction responseIdentifier=\"RESPONSE\" shuffle=\"false\" maxChoices=\"1\">\n").Append(string.Concat(choice.Options.Select((option, at) =>
                $"<simpleChoice identifier=\"{ChoiceAnswer.Letter(at)}\">{MathMl.OfSentence(option)}</simpleChoice>\n"))).Append("</choiceInteraction>\n");
        }
        else
        {
            string unit = AskedUnit.Of((QuantityAnswer)problem.Answer).Name;
            xml.Append($"<p>{(unit.Length == 0 ? "Answer, a plain number:" : $"Answer, as a number of {Safe(unit)}:")} <textEntryInteraction responseIdentifier=\"RESPONSE\" expectedLength=\"12\"/></p>\n");
            xml.Append("<p>Give three digits, with a point and without the unit.</p>\n");
        }

        xml.Append("</itemBody>\n");
    }

    /// <summary>The first that fits decides: no response, the right answer, a slip, anything else.</summary>
    private static void AppendProcessing(StringBuilder xml, Problem problem)
    {
        xml.Append("<responseProcessing>\n<responseCondition>\n");
        xml.Append($"<responseIf><isNull>{Response}</isNull>{Score(0)}</responseIf>\n");
        (string low, string high) = problem.Answer is QuantityAnswer right
            ? (AskedUnit.Of(right).Number(right.Low), AskedUnit.Of(right).Number(right.High))
            : ("", "");
        xml.Append($"<responseElseIf>{(problem.Answer is ChoiceAnswer choice ? Is(choice.Right) : Within(low, high))}{Score(problem.Points)}</responseElseIf>\n");
        for (int at = 0; at < problem.Slips.Count; at++)
        {
            Slip slip = problem.Slips[at];
            string test = problem.Answer is QuantityAnswer quantity && AskedUnit.Of(quantity) is var unit ? Within(unit.Number(slip.Low), unit.Number(slip.High)) : Is((int)slip.Value);
            xml.Append($"<responseElseIf>{test}{Score(slip.Share * problem.Points)}<setOutcomeValue identifier=\"FEEDBACK\"><baseValue baseType=\"identifier\">slip-{at + 1}</baseValue></setOutcomeValue></responseElseIf>\n");
        }

        xml.Append($"<responseElse>{Score(0)}</responseElse>\n</responseCondition>\n</responseProcessing>\n");
    }

    private static string Is(int option) => $"<match>{Response}<baseValue baseType=\"identifier\">{ChoiceAnswer.Letter(option)}</baseValue></match>";

    private static string Within(string low, string high) =>
        $"<and><gte>{Response}<baseValue baseType=\"float\">{low}</baseValue></gte><lte>{Response}<baseValue baseType=\"float\">{high}</baseValue></lte></and>";

    private static string Score(double points) => $"<setOutcomeValue identifier=\"SCORE\"><baseValue baseType=\"float\">{Number(points)}</baseValue></setOutcomeValue>";
}
