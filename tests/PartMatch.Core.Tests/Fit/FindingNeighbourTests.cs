using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>A finding holds beside the neighbours it was made with. W-1 on S-1 is what the maker fitted.</summary>
public sealed class FindingNeighbourTests
{
    [Theory]
    [InlineData("shaft=S-2", FindingStanding.Counts)]
    [InlineData("shaft=S-3", FindingStanding.OtherNeighbours)]
    [InlineData("shaft=none", FindingStanding.OtherNeighbours)]
    [InlineData("shaft=S-1", FindingStanding.OtherNeighbours)]
    [InlineData(null, FindingStanding.OtherNeighbours)]
    public void A_finding_made_with_another_neighbour_counts_only_where_that_neighbour_will_be(string? asked, FindingStanding expected)
    {
        var family = WithShafts().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), with: "shaft=S-2");

        var answer = family.Ask("W-2", with: asked is null ? [] : [asked]);

        Assert.Equal((expected, expected == FindingStanding.Counts ? 1 : null), (answer.Findings[0].Standing, answer.Findings[0].Rank));
    }

    [Theory]
    [InlineData("shaft=none", "shaft=none", FindingStanding.Counts)]
    [InlineData("shaft=none", null, FindingStanding.OtherNeighbours)]
    [InlineData("shaft=S-1", null, FindingStanding.Counts)]
    public void A_finding_made_with_nothing_there_or_with_the_makers_own_is_held_against_what_is_there(string with, string? asked, FindingStanding expected) =>
        Assert.Equal(expected, WithShafts().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), with: with)
            .Ask("W-2", with: asked is null ? [] : [asked]).Findings[0].Standing);

    [Fact]
    public void A_finding_with_a_neighbour_does_not_count_where_nobody_recorded_what_is_there() =>
        Assert.Equal(FindingStanding.OtherNeighbours, WithWheelsAndShafts(_ => { }, _ => { }).Wheel("W-1").Wheel("W-2").Shaft("S-1")
            .Fitted("lark", "wheel", "W-1")
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), with: "shaft=S-1").Ask("W-2").Findings[0].Standing);

    // The joint is about mounting, so another shaft leaves a finding about running alone.
    [Theory]
    [InlineData(FindingOutcome.Yes, null, FindingStanding.OtherNeighbours)]
    [InlineData(FindingOutcome.Yes, "shaft=S-2", FindingStanding.Counts)]
    [InlineData(FindingOutcome.Same, null, FindingStanding.Counts)]
    public void With_another_neighbour_at_a_joint_only_findings_that_name_it_count_on_the_axis_of_the_joint(FindingOutcome outcome, string? with,
        FindingStanding expected)
    {
        FindingStanding With(TestFamily family) =>
            family.Found("f-1", "W-2", outcome, By(EvidenceGrade.RanUnderLoad), with: with is null ? [] : [with])
                .Ask("W-2", with: "shaft=S-2").Findings[0].Standing;

        Assert.Equal(expected, With(WithShafts().Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1)));
        Assert.Equal(expected, With(WithShafts().Stack("room", "+wheel.bore|-shaft.diameter", min: 0, max: 1)));
        Assert.Equal(FindingStanding.Counts, With(WithShafts())); // no joint
    }

    private static TestFamily WithShafts() => WithWheelsAndShafts(wheel => wheel.Length("bore"), shaft => shaft.Length("diameter"))
        .Wheel("W-1").Wheel("W-2").Shaft("S-1").Shaft("S-2").Shaft("S-3").Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1");
}
