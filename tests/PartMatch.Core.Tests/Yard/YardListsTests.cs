using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Yard;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Yard;

/// <summary>The swift needs a wheel of 12 mm bore; the lark's, of 10 mm, goes on as well, is one character away, and runs it to damage: ease 1 × harm 5, medium danger.</summary>
public sealed class YardListsTests
{
    private static TestBuild Told(Action<TestKind>? also = null) => new TestBuild(
        WithWheels(wheel =>
        {
            wheel.Length("rim").Length("bore").Rule("rim", Effect.Stops).Rule("bore", Effect.Alters, consequence: Consequence.Damage)
                .Check("bore", Method.Caliper, 2, 0.05m, "inside jaws");
            also?.Invoke(wheel);
        })
            .Wheel("WHEEL-1", Has("rim", Mm(5)), Has("bore", Mm(10))).Wheel("WHEEL-2", Has("rim", Mm(5)), Has("bore", Mm(12)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2", BuiltIn("2016-05", null)).Access("wheel", 15, "cover off"))
        .Seller("mill").Sold("WHEEL-2", 1000, condition: PartMatch.Core.Listings.ItemCondition.Used);

    private static YardList List(TestBuild told) => YardLists.Of(told.Facts(), told.Family.LookAlikes(), told.Build, told.Plan());

    [Fact]
    public void Part_to_look_for_is_told_with_where_it_sits_how_it_is_known_and_what_it_is_taken_for()
    {
        var list = List(Told());

        var part = Assert.Single(list.Parts);
        Assert.Equal(("wheel", "10.00", "mill", 15m, "cover off", null),
            (part.Position, part.Planned?.Amount, part.From, part.AccessMinutes, part.Access, part.BuyNew));
        var find = Assert.Single(part.OneOf);
        Assert.Equal((Id("WHEEL-2"), "swift engine, built from 2016-05"), (find.Part, Assert.Single(find.SitsOn)));
        var check = Assert.Single(find.Recognise);
        Assert.Equal(("bore", Method.Caliper, Id("WHEEL-1")), (check.Check.Feature, check.Check.Method, Assert.Single(check.RulesOut)));
        var mistaken = Assert.Single(find.LookAlikes);
        Assert.Equal((Id("WHEEL-1"), true, "lark engine"), (mistaken.Part, mistaken.ToldApart, Assert.Single(mistaken.SitsOn)));
        Assert.Equal([Method.Caliper], list.Tools.Select(tool => tool.Tool));
    }

    [Fact]
    public void Tool_of_the_bench_is_not_brought_and_what_only_it_separates_is_said_not_to_be_told_apart()
    {
        var told = new TestBuild(
            WithWheels(wheel => wheel.Length("rim").Length("bore").Rule("rim", Effect.Stops).Rule("bore", Effect.Alters, consequence: Consequence.Damage)
                .Check("bore", Method.Bench, 2, 0.05m))
                .Wheel("WHEEL-1", Has("rim", Mm(5)), Has("bore", Mm(10))).Wheel("WHEEL-2", Has("rim", Mm(5)), Has("bore", Mm(12)))
                .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2"))
            .Seller("mill").Sold("WHEEL-2", 1000);
        var list = List(told);

        Assert.Empty(list.Tools);
        Assert.False(Assert.Single(list.Parts[0].OneOf[0].LookAlikes).ToldApart);
    }

    [Fact]
    public void What_is_single_use_or_wished_new_is_not_pulled()
    {
        Assert.Contains("Single use", List(Told(wheel => wheel.Caution("single-use-bolts"))).Parts[0].BuyNew, StringComparison.Ordinal);
        Assert.Contains("new", List(Told().Sold("WHEEL-2", 2000).Wish(new Wish("wheel", null) { OnlyNew = true })).Parts[0].BuyNew, StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_of_any_engine_in_a_yard_are_shown_whatever_is_pulled() =>
        Assert.Superset(
            new HashSet<string> { "donor-in-the-yard", "fuel-pressure", "high-voltage", "lifting", "magnet-rotor" },
            List(Told()).Cautions.Select(caution => caution.Code).ToHashSet());

    [Fact]
    public void Every_line_that_buys_is_on_the_list_and_no_other() => Gen.OneOf(AnyBuild.Of(wishes: true), AnyBuild.Bought).Sample(
        told =>
        {
            var plan = told.Plan(PlanObjective.Cheapest);
            var list = YardLists.Of(told.Facts(), told.Family.LookAlikes(), told.Build, plan);
            Assert.Equal(plan.Lines.Where(line => line.Buy.Count > 0).Select(line => line.Position), list.Parts.Select(part => part.Position));
        },
        iter: 25, threads: 1);
}
