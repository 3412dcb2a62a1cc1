using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;
using ItemCondition = PartMatch.Core.Listings.ItemCondition;

namespace PartMatch.Core.Tests.Openings;

/// <summary>A damaged shaft under a cover with a seal; all parts are the same on both engines. Told by hand.</summary>
public sealed class RenewalPlanTests
{
    private static TestFamily Engine(decimal? cureHours = null)
    {
        var family = new TestFamily().Variant("lark").Variant("swift");
        foreach (var place in new[] { "belt", "cover", "seal", "shaft" })
        {
            family.Place(place, kind => kind.CannotAlterRunning().Length("bore")).Part($"{place}-1".ToUpperInvariant(), place, Has("bore", Mm(10)));
            family.Fitted("lark", place, $"{place}-1".ToUpperInvariant()).Fitted("swift", place, $"{place}-1".ToUpperInvariant());
        }

        return family.OffFirst("shaft", "cover").Renewed("cover", "seal", cureHours, amount: 9);
    }

    private static TestBuild Told(TestFamily family) => new TestBuild(family).Seller("mill").Sold("SHAFT-1", 5000, days: 3).Sold("SEAL-1", 700).Donor("shaft", PartState.Damaged);

    private static BuildLine Line(BuildPlan plan, string position) => plan.Lines.Single(line => line.Position == position);

    // 50.00 for the shaft and 7.00 for the seal; cover and belt stay.
    [Fact]
    public void What_the_way_to_a_damaged_part_opens_is_renewed_and_the_rest_is_kept()
    {
        var plan = Told(Engine()).Plan();

        Assert.Equal(TestBuild.Euros(5700), plan.Cost?.Total);
        Assert.Equal((LineAction.Renew, LineAction.Keep, LineAction.Keep), (Line(plan, "seal").Action, Line(plan, "cover").Action, Line(plan, "belt").Action));
        Assert.Equal("Renewed because this is opened: Cover (off for Shaft).", Line(plan, "seal").Because);
    }

    // A seal that has run elsewhere renews nothing, however cheap: 50.00 for the shaft and 7.00 for a new one.
    [Fact]
    public void What_is_renewed_is_bought_new() => Assert.Equal(
        TestBuild.Euros(5700), Told(Engine()).Sold("SEAL-1", 100, condition: ItemCondition.Used).Plan().Cost?.Total);

    [Theory]
    [InlineData(ItemCondition.Used)]
    [InlineData(ItemCondition.Refurbished)]
    [InlineData(ItemCondition.NotStated)]
    public void What_is_not_sold_as_new_renews_nothing(ItemCondition condition) => Assert.Equal(
        PlanStatus.Infeasible,
        new TestBuild(Engine()).Seller("mill").Sold("SHAFT-1", 5000).Sold("SEAL-1", 700, condition: condition).Donor("shaft", PartState.Damaged).Plan().Status);

    [Fact]
    public void Seal_of_a_used_set_renews_nothing() => Assert.Equal(
        PlanStatus.Infeasible,
        new TestBuild(Engine()).Seller("mill").Sold("SHAFT-1", 5000, condition: ItemCondition.Used).Holds("SHAFT-1", "SEAL-1").Donor("shaft", PartState.Damaged)
            .Plan().Status);

    // Nobody keeps a used seal in a drawer: what is in hand counts, as it does anywhere.
    [Fact]
    public void Seal_in_hand_is_one() => Assert.Equal(
        TestBuild.Euros(5000), Told(Engine()).With(build => build with { InHand = [new HeldPart(Id("SEAL-1"), 1, null)] }).Plan().Cost?.Total);

    [Fact]
    public void Nothing_is_renewed_where_nothing_is_opened() =>
        Assert.Equal(TestBuild.Euros(0), new TestBuild(Engine()).Seller("mill").Sold("SEAL-1", 700).Plan().Cost?.Total);

    [Fact]
    public void Cover_that_the_donor_came_without_opens_nothing_on_the_way()
    {
        var plan = Told(Engine()).Sold("COVER-1", 2000).Donor("cover", PartState.Missing).Plan();

        // The cover itself is put there, so that its joint is a new one: shaft 50.00, cover 20.00, seal 7.00.
        Assert.Equal(TestBuild.Euros(7700), plan.Cost?.Total);
        Assert.Equal("Renewed because this is opened: Cover.", Line(plan, "seal").Because);
    }

    [Fact]
    public void Seal_that_nobody_sells_keeps_every_plan_away_and_is_named()
    {
        var told = new TestBuild(Engine()).Seller("mill").Sold("SHAFT-1", 5000).Donor("shaft", PartState.Damaged);

        Assert.Equal(PlanStatus.Infeasible, told.Plan().Status);
        Assert.Contains(told.Conflict().Members, member => member.Wish == "obtainable:seal");
    }

    // The shaft is there on day 3: no sooner is the cover closed over it.
    [Theory]
    [InlineData(null, 3)]
    [InlineData(23.5, 4)]
    [InlineData(24.0, 4)]
    [InlineData(24.5, 5)]
    public void Sealant_cures_in_whole_days_once_what_lies_beneath_is_there(double? hours, int days)
    {
        var plan = Told(Engine((decimal?)hours)).Plan(PlanObjective.Soonest);

        Assert.Equal(days, plan.Days);
        Assert.Equal(hours is null ? 0 : 1, plan.Works.Count);
    }

    [Fact]
    public void Why_a_seal_is_renewed_goes_back_to_what_is_damaged()
    {
        var steps = Told(Engine()).Why("seal")?.Steps ?? [];

        Assert.Equal((WhyGround.Renewal, WhyGround.Donor), (steps[0].Ground, steps[^1].Ground));
        Assert.Equal(["shaft", "cover"], steps[0].On);
    }

    // Set to the other engine's value, the donor's own stays: 12.00 for the setting, and what is under the cover is reached for it.
    [Fact]
    public void Setting_is_a_work_by_which_the_donors_own_stays()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("lash").Rule("lash", Effect.Work, allowance: 0.1m, work: "set-lash"))
            .Wheel("WHEEL-1", Has("lash", Mm(10))).Wheel("WHEEL-2", Has("lash", Mm(12))).WorkOn("set-lash", 0, TestBuild.Euros(1200), "wheel.lash")
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2");
        var plan = new TestBuild(family).Seller("mill").Sold("WHEEL-2", 9000).Plan();

        Assert.Equal((LineAction.KeepWithWork, TestBuild.Euros(1200)), (Assert.Single(plan.Lines).Action, plan.Cost?.Total));
    }

    [Fact]
    public void Order_of_work_opens_the_cover_before_the_shaft_and_closes_it_after_with_its_sealant()
    {
        var told = Told(Engine(12).Tightened("swift", "cover", Lubrication.Dry, SingleUse.No, ["10 N·m"]));
        var order = WorkOrders.Order(told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary, told.Memory, TestContext.Current.CancellationToken);

        Assert.True(Index(order.TakeApart, "cover") < Index(order.TakeApart, "shaft"));
        Assert.True(Index(order.PutTogether, "shaft") < Index(order.PutTogether, "cover"));
        var cover = order.PutTogether.Single(step => step.Position == "cover");
        Assert.Equal(("seal", "9 mL", 12m), (cover.Renewals.Single().Position, cover.Renewals.Single().Amount, cover.Renewals.Single().CureHours));
        Assert.Equal(["10 N·m"], Assert.Single(cover.Tightening).Passes);
        Assert.DoesNotContain(order.TakeApart, step => step.Position == "belt");
    }

    [Fact]
    public void Weak_point_under_the_cover_is_offered_with_its_price_and_one_beside_it_is_not()
    {
        var told = Told(Engine().Weak("cover-cracks", "cover", "COVER-1").Weak("belt-frays", "belt", "BELT-1").Weak("of-the-swift", "cover", "COVER-1", on: "swift")
            .Weak("said-and-withdrawn", "cover", "COVER-1", evidence: Retracted())).Sold("COVER-1", 2000).Sold("COVER-1", 1800);
        var open = WorkOrders.WhileOpen(told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary, told.Memory, TestContext.Current.CancellationToken).WeakPoints;

        var remedy = Assert.Single(Assert.Single(open).Remedies);
        Assert.Equal(("cover-cracks", false, TestBuild.Euros(1800)), (open[0].WeakPoint, remedy.InPlan, remedy.Price));
        Assert.Equal(TestBuild.Euros(5700), told.Plan().Cost?.Total); // never forced
    }

    private static int Index(IReadOnlyList<WorkStep> steps, string position) => steps.Index().Single(step => step.Item.Position == position).Index;
}
