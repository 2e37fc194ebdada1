using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend coefficients</c>: the header compiles without a warning and answers bit for bit like the program's own runners.</summary>
public sealed partial class CoefficientsCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    public static TheoryData<string, string, int> Forms()
    {
        TheoryData<string, string, int> all = [];
        foreach (string form in (string[])["direct-1", "transposed-2"])
        {
            all.Add("double", form, 0);
            all.Add("single", form, 0);
            all.Add("q31", form, 0);
            all.Add("q31", form, 6);
            all.Add("q15", form, 0);
            all.Add("q15", form, 6);
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void Header_Compiled_AnswersAsTheRunnerDoesToTheBit(string word, string form, int fraction)
    {
        CCompiler compiler = CCompiler.For(_folder.FullName);
        string design = Design(word, form, fraction);
        Assert.Equal(0, Shell.Run("coefficients", design, "-o", Path("filters.h")).Code);
        Assert.Equal(0, Shell.Run("coefficients", design, "-o", Path("filters.json")).Code);
        HeaderCheck.AnswersToTheBit(compiler, _folder.FullName, word);
    }

    /// <summary>The self-test can fail: with the last digit but three of one coefficient changed it does.</summary>
    [Theory]
    [InlineData("double")]
    [InlineData("single")]
    [InlineData("q31")]
    [InlineData("q15")]
    public void SelfTest_CoefficientChanged_Fails(string word)
    {
        CCompiler compiler = CCompiler.For(_folder.FullName);
        Assert.Equal(0, Shell.Run("coefficients", Design(word, "direct-1", 0), "-o", Path("filters.h")).Code);
        string header = File.ReadAllText(Path("filters.h"));
        Match row = FirstRow().Match(header);
        Assert.True(row.Success);
        string first = row.Groups["first"].Value, changed = word[0] == 'q' ? $"{long.Parse(first, CultureInfo.InvariantCulture) * 0.999:0}" : first.Replace("0.9", "0.8", StringComparison.Ordinal);
        Assert.NotEqual(first, changed);
        File.WriteAllText(Path("filters.h"), header.Remove(row.Groups["first"].Index, first.Length).Insert(row.Groups["first"].Index, changed));
        (string output, int code) = compiler.CompileAndRun("-DFILTERS_SELF_TEST", "-x", "c", "filters.h");
        Assert.Contains("is wrong", output, StringComparison.Ordinal);
        Assert.Equal(1, code);
    }

    [Fact]
    public void Header_States_FormWordScalingRateAndChecksum()
    {
        Assert.Equal(0, Shell.Run("coefficients", Design("q15", "direct-1", 3), "-o", Path("2 head-set.h")).Code);
        string header = File.ReadAllText(Path("2 head-set.h"));
        foreach (string words in (string[])["direct form I", "Q15", "2^fraction", "3 bits below", "250 Hz", "CRC-32", "#ifndef FILTERS_2_HEAD_SET_H", "static int filters_2_head_set_self_test(void);", "static void filters_2_head_set_run("])
        {
            Assert.Contains(words, header, StringComparison.Ordinal);
        }
    }

    /// <summary>CRC-32 of the words in the CSV, worked out bit by bit here; its check value for "123456789" is CBF43926 (the polynomial's well-known one, from memory).</summary>
    [Fact]
    public void Checksum_OfTheWords_IsTheOneStated()
    {
        Assert.Equal(0xCBF43926u, Crc("123456789"u8.ToArray()));
        string design = Design("q31", "direct-1", 0);
        Assert.Equal(0, Shell.Run("coefficients", design, "-o", Path("f.csv")).Code);
        Assert.Equal(0, Shell.Run("coefficients", design, "-o", Path("f.h")).Code);
        byte[] bytes = [.. File.ReadAllLines(Path("f.csv")).Skip(1).SelectMany(line => line.Split(',')[^5..]).SelectMany(word => BitConverter.GetBytes(int.Parse(word, CultureInfo.InvariantCulture)))];
        Assert.Contains($"_CHECKSUM UINT32_C(0x{Crc(bytes):X8})", File.ReadAllText(Path("f.h")), StringComparison.Ordinal);
    }

    [Fact]
    public void Design_WithoutFilters_IsFinding()
    {
        File.WriteAllText(Path("none.toml"), "name = \"none\"\n");
        Outcome outcome = Shell.Run("coefficients", Path("none.toml"), "-o", Path("f.h"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE0009 error", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(Path("f.h")));
    }

    [Fact]
    public void File_OfUnknownKind_IsFinding()
    {
        Outcome outcome = Shell.Run("coefficients", Design("double", "direct-1", 0), "-o", Path("f.hpp"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE0004 error", outcome.Messages, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"_coefficients\[\w+\]\[5\] = \{\s*\{(?<first>[^,]+),", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex FirstRow();

    private static uint Crc(byte[] bytes)
    {
        uint crc = ~0u;
        foreach (byte one in bytes)
        {
            for (int bit = 0; bit < 8; bit++)
            {
                bool odd = (((crc ^ (uint)(one >> bit)) & 1) != 0);
                crc = odd ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
            }
        }

        return ~crc;
    }

    private string Path(string name) => System.IO.Path.Combine(_folder.FullName, name);

    /// <summary>A high-pass, a notch, a low-pass of odd order with zeros: first-order and second-order sections.</summary>
    private string Design(string word, string form, int fraction)
    {
        string path = Path($"{word}-{form}.toml");
        File.WriteAllText(
            path,
            $"""
            name = "one */ of \ the ?? filters"
            digital-word = "{word}"
            digital-form = "{form}"
            digital-state-fraction = {fraction}
            converter = {"{"} rate = "250 Hz", bits = 16 {"}"}
            [[digital]]
            kind = "high-pass"
            corner = "0.5 Hz"
            [[digital]]
            kind = "notch"
            centre = "50 Hz"
            q = 10
            [[digital]]
            kind = "low-pass"
            family = "elliptic"
            order = 5
            corner = "40 Hz"

            """.Replace("\\", "\\\\", StringComparison.Ordinal));
        return path;
    }
}
