using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Sources that tighten one fastener differently.</summary>
public sealed class TorqueFaultTests
{
    [Fact]
    public void Torques_that_exclude_each_other_are_one_fault_that_names_every_row()
    {
        var fault = Wheels().Tightened("lark", "wheel", Lubrication.Oiled, null, ["30 N·m", "70 N·m"], plusMinus: 5)
            .Tightened("lark", "wheel", null, null, ["95 N·m"], By(EvidenceGrade.Reported, "b")).Only(FaultSort.TorquesDisagree);

        Assert.Equal((Severity.Doubtful, "wheel"), (fault.Severity, fault.Position));
        Assert.Equal(3, fault.Rows.Count);
        Assert.Contains("70 N·m ± 5, threads oiled", fault.Text, StringComparison.Ordinal);
        Assert.Contains("95 N·m, threads not told", fault.Text, StringComparison.Ordinal);
    }

    // 70 + 5 = 75 meets 75 and not 76; the angle after a torque is added up: 90 + 90 = 180, and 30 N·m before it is not 40 N·m.
    [Theory]
    [InlineData("70 N·m", "75 N·m", false)]
    [InlineData("70 N·m", "76 N·m", true)]
    [InlineData("30 N·m|90 deg|90 deg", "30 N·m|180 deg", false)]
    [InlineData("30 N·m|90 deg|90 deg", "30 N·m|90 deg", true)]
    [InlineData("30 N·m|90 deg", "40 N·m|90 deg", true)]
    [InlineData("30 N·m|90 deg", "30 N·m", true)]
    public void Last_torque_and_the_angle_after_it_are_what_counts(string one, string other, bool expected) => Assert.Equal(
        expected, Wheels().Tightened("lark", "wheel", null, null, one.Split('|'), plusMinus: 5)
            .Tightened("lark", "wheel", null, null, other.Split('|'), By(EvidenceGrade.Reported, "b")).Faults(FaultSort.TorquesDisagree).Any());

    [Theory]
    [InlineData(101, false)]
    [InlineData(100, true)]
    public void Torques_of_engines_that_no_span_shares_agree(long from, bool expected) => Assert.Equal(
        expected, Wheels().Tightened("lark", "wheel", null, null, ["70 N·m"], span: Serials(null, 100))
            .Tightened("lark", "wheel", null, null, ["90 N·m"], By(EvidenceGrade.Reported, "b"), span: Serials(from, null))
            .Faults(FaultSort.TorquesDisagree).Any());

    [Fact]
    public void Torque_that_was_retracted_counts_for_nothing() => Assert.Empty(
        Wheels().Tightened("lark", "wheel", null, null, ["70 N·m"])
            .Tightened("lark", "wheel", null, null, ["90 N·m"], By(EvidenceGrade.Reported, "b") with { RetractedOn = "2026-01-02" })
            .Faults(FaultSort.TorquesDisagree));

    private static TestFamily Wheels() => WithWheels(_ => { }).Wheel("W-1").Fitted("lark", "wheel", "W-1");
}
