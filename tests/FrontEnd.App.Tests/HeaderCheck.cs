using System.Globalization;
using System.Text.Json;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Compiles filters.h of a folder, runs it over the test vector in two blocks, and compares every bit with the program's own runner, filters.json.</summary>
internal static class HeaderCheck
{
    private const string Main =
        """
        #include <stdio.h>
        #include <string.h>
        #include "filters.h"

        int main(void)
        {
            SAMPLE in[COUNT] = {INPUT};
            SAMPLE out[COUNT];
            filters_state state;
            int n, wrong = filters_self_test();
            printf("%d\n", wrong);
            filters_reset(&state);
            filters_run(&state, in, out, 7);
            filters_run(&state, in + 7, out + 7, COUNT - 7);
            for (n = 0; n < COUNT; n++) {
                unsigned char bytes[sizeof(SAMPLE)];
                int i;
                memcpy(bytes, &out[n], sizeof bytes);
                for (i = 0; i < (int)sizeof bytes; i++)
                    printf("%02x", bytes[i]);
                printf("\n");
            }

            return 0;
        }

        """;

    public static void AnswersToTheBit(CCompiler compiler, string folder, string word)
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "filters.json")));
        JsonElement test = json.RootElement.GetProperty("self_test");
        double[] input = [.. test.GetProperty("input").EnumerateArray().Select(x => x.GetDouble())];
        double[] output = [.. test.GetProperty("output").EnumerateArray().Select(x => x.GetDouble())];
        Assert.True(output.Max(Math.Abs) > input.Max(Math.Abs) / 10, "the test vector dies in the filters");

        string sample = word switch { "double" => "double", "single" => "float", _ => "int32_t" };
        string main = Main.Replace("SAMPLE", sample, StringComparison.Ordinal).Replace("COUNT", $"{input.Length}", StringComparison.Ordinal)
            .Replace("INPUT", string.Join(", ", input.Select(x => x.ToString("R", CultureInfo.InvariantCulture))), StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(folder, "main.c"), main);
        (string printed, int code) = compiler.CompileAndRun("main.c");
        Assert.Equal(0, code);
        string[] lines = printed.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("0", lines[0]);
        for (int n = 0; n < output.Length; n++)
        {
            byte[] expected = word switch
            {
                "double" => BitConverter.GetBytes(output[n]),
                "single" => BitConverter.GetBytes((float)output[n]),
                _ => BitConverter.GetBytes((int)output[n]),
            };

            // JSON writes −0 as 0.
            string got = lines[n + 1], zero = Convert.ToHexStringLower(expected.Select(_ => (byte)0).ToArray());
            Assert.True(got == Convert.ToHexStringLower(expected) || (output[n] == 0 && got[..^2] == zero[..^2]), $"sample {n}: {got} and not {output[n]:R}");
        }
    }
}
