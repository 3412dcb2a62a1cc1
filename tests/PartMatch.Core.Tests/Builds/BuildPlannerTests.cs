using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Builds;

/// <summary>What holds for every build, tried on builds drawn at random. A failure prints the seed to draw it again.</summary>
public sealed class BuildPlannerTests
{
    private const int Draws = 100;

    [Fact]
    public void The_cheapest_plan_is_the_cheapest_of_every_way_to_build() => Gen.OneOf(AnyBuild.Of(wishes: true), AnyBuild.Bought).Sample(
        told => Assert.Equal(Best(new EveryBuild(told).All(), one => (one.Cost, one.Days)), Found(told.Plan(), plan => (Cents(plan.Cost?.Total), plan.Days ?? 0))),
        iter: Draws, threads: 1);

    [Fact]
    public void The_soonest_plan_is_the_soonest_of_every_way_to_build() => Gen.OneOf(AnyBuild.Of(wishes: true), AnyBuild.Bought).Sample(
        told => Assert.Equal(
            Best(new EveryBuild(told).All(), one => (one.Days, one.Cost)), Found(told.Plan(PlanObjective.Soonest), plan => ((long)(plan.Days ?? 0), Cents(plan.Cost?.Total)))),
        iter: Draws, threads: 1);

    [Fact]
    public void The_plan_that_keeps_most_keeps_the_most_of_every_way_to_build() => AnyBuild.Of().Sample(
        told => Assert.Equal(
            Best(new EveryBuild(told).All(), one => (-one.Kept, one.Cost)),
            Found(told.Plan(PlanObjective.MostKept), plan => (-(long)plan.Lines.Count(line => line.Action is LineAction.Keep or LineAction.KeepWithWork), Cents(plan.Cost?.Total)))),
        iter: Draws, threads: 1);

    [Fact]
    public void One_more_offer_never_makes_it_dearer() => Gen.Select(Gen.OneOf(AnyBuild.Of(), AnyBuild.Bought), Gen.Int[0, 2], Gen.Int[0, 3], Gen.Int[1, 9]).Sample(
        (told, position, part, price) =>
        {
            var (before, after) = (told.Plan(), told.Sold(AnyBuild.Number(position, part), price * 1000, "s0", stock: 1).Plan());
            Assert.True(before.Cost is null || Cents(after.Cost?.Total) <= Cents(before.Cost.Total));
        },
        iter: Draws / 2, threads: 1);

    [Fact]
    public void The_order_of_the_rows_changes_nothing() => Gen.Select(AnyBuild.Of(wishes: true), Gen.Int).Sample(
        (told, seed) =>
        {
            Assert.Equal(AsJson.Of(told.Plan()), AsJson.Of(told.Fresh().Plan(order: new Shuffled(seed))));
            Assert.Equal(AsJson.Of(told.Frontier()), AsJson.Of(told.Fresh().Frontier(new Shuffled(seed))));
            Assert.Equal(AsJson.Of(told.Why("a")), AsJson.Of(told.Fresh().Why("a", new Shuffled(seed))));
        },
        iter: Draws / 4, threads: 1);

    private static (long First, long Second)? Best(List<OneBuild> all, Func<OneBuild, (long First, long Second)> measures) => all.Count == 0 ? null : all.Min(measures);

    private static (long First, long Second)? Found(BuildPlan plan, Func<BuildPlan, (long First, long Second)> measures)
    {
        Assert.Equal(plan.Lines.Count == 0 ? PlanStatus.Infeasible : PlanStatus.ProvenOptimal, plan.Status);
        return plan.Lines.Count == 0 ? null : measures(plan);
    }

    internal static long Cents(Money? money) => money is null ? 0 : (long)Amount.Of(money).Minor;
}
