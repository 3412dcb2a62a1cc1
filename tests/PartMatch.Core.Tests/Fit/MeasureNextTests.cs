using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>For each not-known relation that keeps an axis open: the cheapest check whose uncertainty can decide it.</summary>
public sealed class MeasureNextTests
{
    [Fact]
    public void The_cheapest_check_of_the_missing_value_is_advised()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Choice("hand").Rule("hand", Effect.Stops).Check("hand", Method.Eye, 5).Check("hand", Method.Photo, 1))
            .Wheel("W-1", Has("hand", Word("left"))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        var next = Assert.Single(family.Ask("W-2").MeasureNext);

        Assert.Equal(("hand", "part", Method.Photo, 1m, Axis.Mounts), (next.Feature, next.On, next.Check, next.Minutes, next.Settles));
    }

    // Demand 10 ± 0.1 known to ± 0.02, allowance 0: 9.92 … 10.08 is surely accepted, 0.16 wide. A reading ± u needs 2u of it.
    [Theory]
    [InlineData(0.08, Method.SteelRule)]
    [InlineData(0.081, Method.Caliper)]
    public void A_check_too_coarse_to_decide_is_passed_over(double uncertaintyOfTheRule, Method expected)
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops)
                .Check("bore", Method.SteelRule, 1, (decimal)uncertaintyOfTheRule).Check("bore", Method.Caliper, 4, 0.02m))
            .Wheel("W-1", Has("bore", Mm(10, 0.1m, knownTo: 0.02m))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Equal(expected, Assert.Single(family.Ask("W-2").MeasureNext).Check);
    }

    [Fact]
    public void The_allowance_gives_a_check_more_room()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 0.5m).Check("bore", Method.SteelRule, 1, 0.5m).Check("bore", Method.Caliper, 4, 0.02m))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Equal(Method.SteelRule, Assert.Single(family.Ask("W-2").MeasureNext).Check);
    }

    [Fact]
    public void A_one_sided_demand_can_be_decided_by_any_check()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, Relation.AtLeast).Check("bore", Method.SteelRule, 1, 0.5m))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Equal(Method.SteelRule, Assert.Single(family.Ask("W-2").MeasureNext).Check);
    }

    [Fact]
    public void No_check_that_can_decide_gives_no_advice()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops).Check("bore", Method.SteelRule, 1, 0.5m))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Empty(family.Ask("W-2").MeasureNext);
    }

    [Fact]
    public void What_is_missing_of_the_fitted_part_is_measured_on_the_engine()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops).Check("bore", Method.Caliper, 4, 0.02m))
            .Wheel("W-1").Wheel("W-2", Has("bore", Mm(10))).Fitted("lark", "wheel", "W-1");

        Assert.Equal([("bore", "engine")], family.Ask("W-2").MeasureNext.Select(next => (next.Feature, next.On)));
    }

    [Fact]
    public void What_is_missing_of_a_neighbour_is_measured_there()
    {
        var family = Shafts().Shaft("S-1").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var next = Assert.Single(family.Ask("W-2").MeasureNext);

        Assert.Equal(("diameter", "engine", "shaft", Method.Caliper), (next.Feature, next.On, next.Position, next.Check));
    }

    // Band 0 … 0.2; the shaft itself spreads 0.1 wide, so 0.1 is left for a reading of the bore: ± 0.05 can decide, ± 0.06 cannot.
    [Theory]
    [InlineData(0.05, Method.SteelRule)]
    [InlineData(0.06, Method.Caliper)]
    public void The_spread_of_the_neighbour_takes_room_from_the_check(double uncertaintyOfTheRule, Method expected)
    {
        var family = WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Length("bore").Check("bore", Method.SteelRule, 1, (decimal)uncertaintyOfTheRule).Check("bore", Method.Caliper, 4, 0.02m), shaft => shaft.Length("diameter"))
            .Wheel("W-2").Shaft("S-1", Has("diameter", Mm(10, 0.05m))).Fitted("lark", "shaft", "S-1").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 0.2m);

        Assert.Equal(expected, Assert.Single(family.Ask("W-2").MeasureNext).Check);
    }

    [Fact]
    public void The_missing_term_of_a_stack_is_measured_where_it_is_missing()
    {
        var family = Shafts().Shaft("S-1").Stack("room", "+34.0|-shaft.diameter|-wheel.bore", min: 1);

        Assert.Equal([("diameter", "engine", "shaft")], family.Ask("W-2").MeasureNext.Select(next => (next.Feature, next.On, next.Position)));
    }

    [Fact]
    public void A_relation_that_no_longer_matters_is_not_measured()
    {
        // Mounting is settled by the hand: no. The bore is not asked for; the colour, which alters running, still is.
        var family = WithWheels(wheel => wheel
                .Choice("hand").Rule("hand", Effect.Stops).Choice("bore").Rule("bore", Effect.Stops).Check("bore", Method.Eye, 1).Choice("colour").Rule("colour", Effect.Alters).Check("colour", Method.Eye, 1))
            .Wheel("W-1", Has("hand", Word("left")), Has("bore", Word("a")), Has("colour", Word("red"))).Wheel("W-2", Has("hand", Word("right"))).Fitted("lark", "wheel", "W-1");

        Assert.Equal(["colour"], family.Ask("W-2").MeasureNext.Select(next => next.Feature));
    }

    [Fact]
    public void A_work_not_known_beside_a_work_that_is_needed_anyway_keeps_nothing_open()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning()
                .Choice("stops").Rule("stops", Effect.Stops).Check("stops", Method.Eye, 9)
                .Choice("one").Rule("one", Effect.Work, work: "ream").Choice("other").Rule("other", Effect.Work, work: "bush").Check("other", Method.Eye, 1))
            .Wheel("W-1", Has("stops", Word("a")), Has("one", Word("a")), Has("other", Word("a"))).Wheel("W-2", Has("one", Word("b"))).Fitted("lark", "wheel", "W-1");

        var answer = family.Ask("W-2");

        Assert.Equal([Mounts.WithWork, Mounts.No], answer.Mounts.CouldBe);
        Assert.Equal(["stops"], answer.MeasureNext.Select(next => next.Feature));
    }

    [Fact]
    public void An_axis_that_identity_has_settled_needs_no_measuring()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops).Check("bore", Method.Caliper, 4, 0.02m))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2").Fitted("lark", "wheel", "W-1").Replaced("W-1", "W-2");

        Assert.Empty(family.Ask("W-2").MeasureNext);
    }

    [Fact]
    public void Advice_is_ordered_by_minutes_then_by_what_stops_alters_and_needs_work()
    {
        var family = WithWheels(wheel => wheel
                .Choice("a").Rule("a", Effect.Work, work: "ream").Check("a", Method.Eye, 2)
                .Choice("b").Rule("b", Effect.Alters).Check("b", Method.Eye, 2)
                .Choice("c").Rule("c", Effect.Stops).Check("c", Method.Eye, 2)
                .Choice("d").Rule("d", Effect.Work, work: "ream").Check("d", Method.Eye, 1))
            .Wheel("W-1", Has("a", Word("x")), Has("b", Word("x")), Has("c", Word("x")), Has("d", Word("x"))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Equal(["d", "c", "b", "a"], family.Ask("W-2").MeasureNext.Select(next => next.Feature));
    }

    private static TestFamily Shafts() => WithWheelsAndShafts(
            wheel => wheel.CannotAlterRunning().Length("bore").Check("bore", Method.Caliper, 4, 0.02m), shaft => shaft.Length("diameter").Check("diameter", Method.Caliper, 6, 0.02m))
        .Wheel("W-2", Has("bore", Mm(10))).Fitted("lark", "shaft", "S-1");
}
