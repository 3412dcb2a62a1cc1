using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class GoalAssumptionsTests
{
    private static readonly InjectorQuestion WithoutBoost = HillClimb with { Boost = Read("0 bar", Dimension.Pressure), IsBoostLeftOut = true };

    // The variant is recorded with 0.80 bar; a rail held at 3.0 bar over ambient then has 2.2 across.
    [Fact]
    public void Boost_that_is_left_out_is_the_recorded_one()
    {
        var sized = Size(WithoutBoost with { Supply = FuelSupply.ReturnAmbient });
        Assert.Equal((80_000m, 220_000m), (sized.Asked.Boost.Value, sized.PressureAcross.Value));
        Assert.Equal("as recorded of this variant: what it was built for", Of(sized, "boost").Source);
        Assert.DoesNotContain(sized.Warnings, warning => warning.Code == "goal-without-boost");
    }

    [Fact]
    public void Boost_that_is_typed_as_none_is_none()
    {
        var sized = Size(WithoutBoost with { IsBoostLeftOut = false });
        Assert.Equal(0m, sized.Asked.Boost.Value);
        Assert.DoesNotContain(sized.Assumed, one => one.Name == "boost");
        Assert.Contains(sized.Warnings, warning => warning.Code == "goal-without-boost");
    }

    [Fact]
    public void Boost_that_nobody_gave_or_recorded_is_taken_as_none_and_said()
    {
        var sized = Assert.IsType<InjectorsSized>(InjectorSizing.Size(WithoutBoost, [], [.. BoostedTriple.Where(fact => fact.Property != "boost")]));
        Assert.Equal(0m, sized.Asked.Boost.Value);
        Assert.Equal("none: none was given and none is recorded of this variant", Of(sized, "boost").Source);
    }

    [Fact]
    public void Duty_limit_stands_among_what_was_assumed_with_its_source()
    {
        Assert.EndsWith("(common practice, no source)", Of(Size(HillClimb), "duty").Source, StringComparison.Ordinal);
        Assert.Equal("given in the question", Of(Size(HillClimb with { Duty = Read("80 %", Dimension.Ratio) }), "duty").Source);
    }

    [Theory]
    [InlineData("petrol-e0", WettedFor.OtherFuels)]
    [InlineData("e85", WettedFor.Recorded)]
    public void Injector_says_for_which_fuels_its_wetted_parts_are_recorded(string fuel, WettedFor expected)
    {
        var injector = Injector("I-1", "860 cm3/min", more: new RecordedValue("wetted-for", new ChoicesReading(["e85"]), Document));
        Assert.Equal(expected, Judge(HillClimb with { Fuel = fuel }, injector).WettedFor);
        Assert.Equal(WettedFor.NotKnown, Judge(HillClimb with { Fuel = fuel }, Injector("I-2", "860 cm3/min")).WettedFor);
    }

    // 0.7 × 100 = 70 %: a bare 70 is 7000 %.
    [Fact]
    public void Ratio_typed_without_its_per_cent_is_asked_back()
    {
        Assert.StartsWith("did you mean 85 %?", Refused(HillClimb with { Duty = Read("85", Dimension.Ratio) }).Mend, StringComparison.Ordinal);
        Assert.StartsWith("did you mean 70 %?", Refused(HillClimb with { Ethanol = ReadRange("70", Dimension.Ratio) }).Mend, StringComparison.Ordinal);
        Assert.StartsWith("for example ", Refused(HillClimb with { Duty = Read("120 %", Dimension.Ratio) }).Mend, StringComparison.Ordinal);
        Assert.StartsWith("for example ", Refused(HillClimb with { Duty = Read("850", Dimension.Ratio) }).Mend, StringComparison.Ordinal);

        static SumRefused Refused(InjectorQuestion question) => Assert.IsType<SumRefused>(InjectorSizing.Size(question, [], BoostedTriple));
    }

    private static Assumption Of(InjectorsSized sized, string name) => Assert.Single(sized.Assumed, one => one.Name == name);
}
