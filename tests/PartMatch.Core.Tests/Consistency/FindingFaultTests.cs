using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Findings that cannot all hold.</summary>
public sealed class FindingFaultTests
{
    [Fact]
    public void Equally_good_findings_that_exclude_each_other_are_one_fault_on_their_axis()
    {
        var fault = Wheels()
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted, "a")).Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted, "b"))
            .Only(FaultSort.FindingsDisagree);

        Assert.Equal(["findings f-1", "findings f-2"], fault.Keys());
        Assert.Equal((Severity.Doubtful, "wheel"), (fault.Severity, fault.Position));
        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=wheel&part=alder:W-2", fault.Fit);
        Assert.Contains("whether it mounts", fault.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Worse_finding_that_says_another_thing_is_a_fault() =>
        Assert.Contains("what decides is contradicted", Wheels()
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted, "a")).Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "b"))
            .Only(FaultSort.FindingsDisagree).Text, StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Findings_that_agree_and_one_that_was_retracted_are_no_fault()
    {
        Assert.Empty(Wheels()
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted, "a")).Found("f-2", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "b"))
            .Faults(FaultSort.FindingsDisagree));
        Assert.Empty(Wheels()
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted, "a"))
            .Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted, "b") with { RetractedOn = "2026-01-02" })
            .Faults(FaultSort.FindingsDisagree));
    }

    private static TestFamily Wheels() => WithWheels(_ => { }).Wheel("W-1").Wheel("W-2").Fitted("lark", "wheel", "W-1");
}
