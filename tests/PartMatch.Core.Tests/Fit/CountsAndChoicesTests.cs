using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

public sealed class CountsAndChoicesTests
{
    [Theory]
    [InlineData(Relation.Same, 41, Met.No)]
    [InlineData(Relation.Same, 42, Met.Yes)]
    [InlineData(Relation.Same, 43, Met.No)]
    [InlineData(Relation.AtLeast, 41, Met.No)]
    [InlineData(Relation.AtLeast, 42, Met.Yes)]
    [InlineData(Relation.AtLeast, 43, Met.Yes)]
    [InlineData(Relation.AtMost, 41, Met.Yes)]
    [InlineData(Relation.AtMost, 42, Met.Yes)]
    [InlineData(Relation.AtMost, 43, Met.No)]
    public void Teeth_are_compared_with_the_42_of_the_fitted_part(Relation relation, int teeth, Met expected) =>
        Assert.Equal(expected, Decide(kind => kind.Counted("teeth").Rule("teeth", Effect.Stops, relation), "teeth", Count(42), Count(teeth)));

    [Theory]
    [InlineData("left", Met.Yes)]
    [InlineData("right", Met.No)]
    public void A_choice_is_the_same_or_not(string hand, Met expected) =>
        Assert.Equal(expected, Decide(kind => kind.Choice("hand").Rule("hand", Effect.Stops), "hand", Word("left"), Word(hand)));

    [Theory]
    [InlineData("k2", Met.Yes)]
    [InlineData("k2-long", Met.Yes)]
    [InlineData("k3", Met.No)]
    public void One_of_takes_each_choice_of_the_demanded_set(string plug, Met expected)
    {
        var family = Wheels(kind => kind.Choice("plug").Rule("plug", Effect.Stops), "plug", Word("k2"), Word(plug))
            .Need("lark", "wheel", "plug", Effect.Stops, Relation.OneOf, Words("k2", "k2-long"));

        Assert.Equal(expected, family.Ask("W-2").Of("plug").Met);
    }

    [Theory]
    [InlineData(8, Met.Yes)]
    [InlineData(10, Met.Yes)]
    [InlineData(9, Met.No)]
    public void One_of_takes_each_count_of_the_demanded_set(int teeth, Met expected)
    {
        var family = Wheels(kind => kind.Counted("teeth").Rule("teeth", Effect.Stops), "teeth", Count(8), Count(teeth))
            .Need("lark", "wheel", "teeth", Effect.Stops, Relation.OneOf, Words("8", "10"));

        Assert.Equal(expected, family.Ask("W-2").Of("teeth").Met);
    }

    [Theory]
    [InlineData(new[] { "e10", "e5" }, Met.Yes)]
    [InlineData(new[] { "e10", "e5", "e85" }, Met.Yes)]
    [InlineData(new[] { "e10" }, Met.No)]
    [InlineData(new[] { "e10", "e85" }, Met.No)]
    public void Covers_wants_the_parts_set_to_hold_all_of_the_demanded_one(string[] fuels, Met expected) =>
        Assert.Equal(expected, Decide(kind => kind.Choices("fuels").Rule("fuels", Effect.Stops, Relation.Covers), "fuels", Words("e10", "e5"), Words(fuels)));

    [Theory]
    [InlineData(new[] { "e5", "e10" }, Met.Yes)]
    [InlineData(new[] { "e10", "e5", "e85" }, Met.No)]
    public void Sets_are_the_same_whatever_their_order(string[] fuels, Met expected) =>
        Assert.Equal(expected, Decide(kind => kind.Choices("fuels").Rule("fuels", Effect.Stops), "fuels", Words("e10", "e5"), Words(fuels)));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_choice_not_recorded_on_either_side_is_not_known(bool onThePart)
    {
        var family = WithWheels(kind => kind.CannotAlterRunning().Choice("hand").Rule("hand", Effect.Stops))
            .Wheel("W-1", onThePart ? [Has("hand", Word("left"))] : []).Wheel("W-2", onThePart ? [] : [Has("hand", Word("left"))])
            .Fitted("lark", "wheel", "W-1");

        Assert.Equal(Met.NotKnown, family.Ask("W-2").Of("hand").Met);
    }

    [Fact]
    public void Values_of_different_types_cannot_be_compared() =>
        Assert.Equal(Met.NotKnown, Decide(kind => kind.Choice("hand").Rule("hand", Effect.Stops), "hand", Word("left"), Count(1)));

    [Fact]
    public void A_part_that_is_there_is_present()
    {
        var family = Wheels(kind => kind.Choice("hand").Rule("hand", Effect.Stops), "hand", Word("left"), Word("left"))
            .Need("lark", "wheel", "present", Effect.Stops, Relation.Same, Word("yes"));

        Assert.Equal(Met.Yes, family.Ask("W-2").Of("present").Met);
    }

    private static Met Decide(Action<TestKind> describe, string feature, Reading fitted, Reading asked) => Wheels(describe, feature, fitted, asked).Ask("W-2").Of(feature).Met;

    private static TestFamily Wheels(Action<TestKind> describe, string feature, Reading fitted, Reading asked) =>
        WithWheels(kind => describe(kind.CannotAlterRunning()))
            .Wheel("W-1", Has(feature, fitted)).Wheel("W-2", Has(feature, asked)).Fitted("lark", "wheel", "W-1");
}
