using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The two topologies of an analogue notch in a design file.</summary>
public sealed class NotchStageTests
{
    private const string Plain = """
        { "stages": [ { "kind": "notch", "topology": "state-variable", "name": "trap", "Ra": 33000, "R2": 200000, "opamp": { "dc_gain": 1e6 } } ] }
        """;

    [Theory]
    [InlineData("kind = \"notch\"", typeof(TwinTNotch))]
    [InlineData("kind = \"notch\"\ntopology = \"twin-t\"", typeof(TwinTNotch))]
    [InlineData("kind = \"notch\"\ntopology = \"state-variable\"", typeof(StateVariableNotch))]
    public void Toml_Notch_IsTheTopologyThatItNames(string lines, Type type)
    {
        DesignDocument document = DesignDocument.Parse($"[[stages]]\n{lines}\n", DocumentFormat.Toml, "d.toml");
        Assert.False(document.HasErrors);
        Stage stage = Assert.Single(document.Design.Stages);
        Assert.IsType(type, stage);
        Assert.Equal("analogue notch 1", stage.Name);
    }

    [Fact]
    public void Json_StateVariableNotch_IsReadAndWrittenBack()
    {
        Design design = DesignDocument.Parse(Plain, DocumentFormat.Json, "d.json").Design;
        var notch = Assert.IsType<StateVariableNotch>(Assert.Single(design.Stages));
        Assert.Equal((33e3, 200e3, 1e6), (notch.Ra.Ohms, notch.R2.Ohms, notch.OpAmp.DcGain));
        Design again = DesignDocument.Parse(DesignWriter.ToToml(design), DocumentFormat.Toml, "d.toml").Design;
        Assert.Equal(notch, Assert.Single(again.Stages));
    }

    /// <summary>An inner node of one stage and the name of another would share the id levels.trap-band-pass.headroom.</summary>
    [Fact]
    public void Toml_NameOfAnInnerNode_IsAFindingAtTheName()
    {
        DesignDocument document = DesignDocument.Parse(
            "[[stages]]\nkind = \"notch\"\ntopology = \"state-variable\"\nname = \"trap\"\n[[stages]]\nkind = \"gain\"\nname = \"trap band-pass\"\n", DocumentFormat.Toml, "d.toml");
        Assert.Contains(document.Findings, finding => finding.Code == Text.Messages.NameReserved && finding.Line == 7);
    }
}
