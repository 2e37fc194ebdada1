using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Calls that a shell gives no output, or one that takes nothing, as a process of its own.</summary>
public class StandardStreamsTests
{
    [Theory]
    [InlineData("check designs/starter.toml >&-", 2, "FE0006 error: the output cannot be written\n  at       the standard output\n  because  it is closed\n")]
    [InlineData("check designs/starter.toml >/dev/full", 2, "FE0006 error: the output cannot be written\n  at       the standard output\n  because  there is no space left where it would stand\n")]
    [InlineData("check designs/starter.toml --quiet >&-", 0, "")]
    [InlineData("check designs/starter.toml 2>&-", 0, "")]
    [InlineData("check designs/none.toml 2>/dev/full", 2, "")]
    [InlineData("check designs/none.toml >&- 2>&-", 2, "")]
    [InlineData("check - </dev/null", 2, "FE")]
    [InlineData("check - <.", 2, "FE0141 error: `-` cannot be read\n")]
    [InlineData("check - <$(ls designs/pictures/*.png | head -1)", 2, "FE0143 error: `-` is not a text file in UTF-8")]
    public void Call_WithoutAStream_EndsWithItsCode(string call, int code, string messages)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a shell and its devices");
        (int ended, _, string said) = Shell.Process("/bin/sh", "-c", $"exec dotnet '{Shell.Program}' {call}");
        Assert.Equal(code, ended);
        Assert.StartsWith(messages, said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Input_WithoutAnEnd_IsTooLarge()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a shell");
        (int ended, _, string said) = Shell.Process("/bin/sh", "-c", $"yes 'a = 1' | dotnet '{Shell.Program}' check -");
        Assert.Equal(2, ended);
        Assert.StartsWith("FE0142 error: `-` has ", said, StringComparison.Ordinal);
    }
}
