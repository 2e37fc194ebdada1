using System.Globalization;
using System.Text;
using System.Text.Json;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>A list of right answers in many spellings, saved as spreadsheets save lists, earns all points in each of them.</summary>
public sealed class MarkSpellingTests : IDisposable
{
    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-spelling-");

    static MarkSpellingTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Answers_InFourEncodingsAndManySpellings_EarnAllPoints()
    {
        string folder = Path.Combine(_folder.FullName, "h"), key = Path.Combine(folder, "key", "key.json");
        Assert.Equal(0, Shell.Run("problems", "--count", "30", "--seed", "8", "-o", folder).Code);
        KeySheet sheet = KeyFile.Read(File.ReadAllText(key), key, out _)!.Sheets[0];
        StringBuilder list = new("student;name;sheet;question;asked;answer\r\n");
        int spellings = 0;
        for (int student = 0; student < 12; student++)
        {
            foreach (KeyQuestion question in sheet.Questions)
            {
                string[] all = [.. Spellings(question)];
                spellings = Math.Max(spellings, all.Length);
                list.Append(CultureInfo.InvariantCulture, $"u{student};Zoë;;{question.Id};“{question.Title}”;{all[student % all.Length]}\r\n");
            }
        }

        Assert.InRange(spellings, 12, 100);
        (string Name, Encoding Encoding, string Head)[] forms =
        [
            ("utf8", new UTF8Encoding(true), "sep=;\r\n"), ("utf16", Encoding.Unicode, ""), ("utf16be", Encoding.BigEndianUnicode, "sep=;\r\n"),
            ("1252", Encoding.GetEncoding(1252, new EncoderReplacementFallback("?"), DecoderFallback.ReplacementFallback), ""),
            ("1252fit", Encoding.GetEncoding(1252), "sep=;\r\n"),
        ];
        foreach ((string name, Encoding encoding, string head) in forms)
        {
            // Raised digits, thin blanks and ≈ have no place in Windows-1252 and become question marks there, which nobody can read back.
            string text = name.StartsWith("1252", StringComparison.Ordinal)
                ? string.Concat(list.ToString().Select(letter => Raised.IndexOf(letter) is var digit and >= 0 ? (char)('0' + digit) : letter)).Replace("⁻", "^-", StringComparison.Ordinal).Replace("\u2009", " ", StringComparison.Ordinal).Replace("\u202F", " ", StringComparison.Ordinal).Replace("≈", "=", StringComparison.Ordinal)
                : list.ToString();
            string answers = Path.Combine(_folder.FullName, name + ".csv");
            File.WriteAllBytes(answers, [.. encoding.GetPreamble(), .. encoding.GetBytes(head + text)]);
            Outcome outcome = Shell.Run("mark", key, answers, "-o", Path.Combine(_folder.FullName, "marks.csv"), "--json");
            Assert.True(outcome.Code == 0, outcome.Messages);
            using JsonDocument json = JsonDocument.Parse(outcome.Output);
            string[] lost = [.. json.RootElement.GetProperty("marks").EnumerateArray().Where(mark => mark.GetProperty("points").GetDouble() != mark.GetProperty("possible").GetDouble()).Select(mark => $"{name} {mark.GetProperty("question")}: {mark.GetProperty("answer")} {mark.GetProperty("remark")}")];
            Assert.Equal([], lost);
            Assert.Equal(12, json.RootElement.GetProperty("students").GetInt32());
        }
    }

    private static IEnumerable<string> Spellings(KeyQuestion question)
    {
        string answer = question.Answer;
        if (question.Options.Count > 0)
        {
            string letter = answer[..1], option = answer[3..];
            return [letter, letter.ToLowerInvariant(), $"({letter})", $"{letter}.", $"{letter}: {option}", $"{letter}) {option}", option, $"answer {letter}", $"“{option}”", $"{letter} - {option}.", $"Option {letter}", $" {letter} "];
        }

        string unit = question.Kind!.Is<Quantities.Ratio>() ? "" : question.Kind.SiUnit, plain = question.Value.ToString("E3", CultureInfo.InvariantCulture);
        string mantissa = plain[..plain.IndexOf('E', StringComparison.Ordinal)];
        int power = int.Parse(plain[(plain.IndexOf('E', StringComparison.Ordinal) + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        string ten = power.ToString(CultureInfo.InvariantCulture), raised = power < 0 ? "⁻" + Raised[-power % 10] : "^" + ten;
        raised = power < -9 ? "^" + ten : raised;
        return
        [
            answer, answer + ".", $"x = {answer}", $"≈ {answer}", $"({answer})", $"answer: {answer}", answer.Replace(' ', '\u2009'), answer.Replace(' ', '\u202F'),
            answer.Replace(" ", "", StringComparison.Ordinal), $"{mantissa}e{ten} {unit}", $"{mantissa}×10^{ten} {unit}", $"{mantissa.Replace('.', ',')}·10{raised} {unit}", $"{answer} in total",
        ];
    }
}
