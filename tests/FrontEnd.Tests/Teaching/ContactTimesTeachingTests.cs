using FrontEnd.Identity;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Tests.Teaching;

public class ContactTimesTeachingTests
{
    /// <summary>A figure at a time is no reading of the contact check's current, and has neither its reason nor its picture.</summary>
    [Fact]
    public void FiguresAtATime_HaveTheirOwnReasonAndNoPictureOfTheCheck()
    {
        ResultId noise = ResultIds.Contact.After("10 min").Noise;
        Assert.Contains("changes after it is put on", Explanations.Of(noise)!.Reason, StringComparison.Ordinal);
        Assert.DoesNotContain(Diagrams.All, diagram => diagram.For.Any(pattern => pattern.Fits(noise)));
        Assert.Contains(Diagrams.All, diagram => diagram.For.Any(pattern => pattern.Fits(ResultIds.Contact.Of(Lead.Active).Good)));
    }
}
