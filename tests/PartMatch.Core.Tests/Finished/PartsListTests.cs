using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Finished;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Finished;

/// <summary>What can be told of a line of a plan at once, and what stands against it.</summary>
public sealed class PartsListTests
{
    private static readonly BuildLine _wheel = new(
        "wheel", "Wheel", "chassis", LineAction.Replace, "Replace", Id("WHEEL-2"), "Wheel", [], 1, "", Headline.Fits, Sureness.Documented, Unproven: false);

    [Theory]
    [InlineData(Headline.Fits, FindingOutcome.Yes, FindingOutcome.Same)]
    [InlineData(Headline.NotKnownYet, FindingOutcome.Yes, FindingOutcome.Same)]
    [InlineData(Headline.FitsWithWork, FindingOutcome.WithWork, FindingOutcome.Same)]
    [InlineData(Headline.MountsButRunsDifferently, FindingOutcome.Yes, FindingOutcome.Differently)]
    public void Line_is_expected_to_come_out_as_it_is_planned(Headline headline, FindingOutcome mounts, FindingOutcome runs)
    {
        var listed = Listed(_wheel with { Headline = headline });

        Assert.Equal((mounts, runs), (listed.Mounts, listed.Runs));
        Assert.Empty(listed.NotYet);
    }

    [Fact]
    public void What_is_not_here_not_looked_at_or_not_worked_says_so()
    {
        LineBought Bought(int order, LineState state) => new(order, 1, 1, state, null);
        LinePurchase bought = new("alder/o1", "mill", null, 1, 1, new Money("10.00", "EUR"), new DateOnly(2026, 11, 2));

        Assert.Equal(["not ordered yet"], Listed(_wheel with { Buy = [bought] }).NotYet);
        Assert.Equal(
            ["on the way (order 2, line 1)", "there, and not looked at (order 3, line 1)"],
            Listed(_wheel with { Bought = [Bought(2, LineState.Ordered), Bought(3, LineState.Arrived), Bought(4, LineState.Checked)] }).NotYet);
        Assert.Equal(["work to be done: ream the hub"], Listed(_wheel with { Works = ["ream the hub"] }).NotYet);
    }

    private static ListedPart Listed(BuildLine line)
    {
        var told = new TestBuild(WithWheelsAndShafts(wheel => wheel.CannotAlterRunning(), shaft => shaft.CannotAlterRunning()).Wheel("WHEEL-2"));
        var plan = new BuildPlan
        {
            Asked = new PlanAsked("try", 1, PlanObjective.Cheapest, TestBuild.Today),
            Status = PlanStatus.ProvenOptimal,
            HeadlineText = "",
            Lines = [line],
        };
        return Assert.Single(PartsLists.Of(told.Facts(), told.Build, plan).Parts);
    }
}
