namespace FrontEnd.Identity;

/// <summary>Which of the wearer's leads, and so which electrode.</summary>
public enum Lead
{
    Active,
    Reference,
    Ground,
}

/// <summary>Words and ids of the leads.</summary>
internal static class Leads
{
    /// <summary>"active", "reference", "ground": in sentences and in ids.</summary>
    public static string Word(this Lead lead) => lead switch
    {
        Lead.Active => "active",
        Lead.Reference => "reference",
        Lead.Ground => "ground",
        _ => throw new ArgumentOutOfRangeException(nameof(lead), lead, "Lead is not handled."),
    };

    /// <summary>The noise of the lead's electrode.</summary>
    public static SourceId Source(this Lead lead) => lead switch
    {
        Lead.Active => SourceId.ActiveElectrode,
        Lead.Reference => SourceId.ReferenceElectrode,
        Lead.Ground => SourceId.GroundElectrode,
        _ => throw new ArgumentOutOfRangeException(nameof(lead), lead, "Lead is not handled."),
    };
}
