using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Openings;

/// <summary>What stands beside a step: a damaged shaft in a block, held by a bolt that both engines have. Told by hand.</summary>
public sealed class WorkStepTests
{
    private static readonly string[] _places = ["block", "bolt", "shaft"];

    /// <summary>The lark has its own shaft and block, the swift others; the bolt is one number.</summary>
    private static TestFamily Engine()
    {
        var family = new TestFamily().Variant("lark").Variant("swift");
        foreach (var place in _places)
        {
            family.Place(place, kind => kind.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 0.1m));
            foreach (var number in place == "bolt" ? ["BOLT-1"] : new[] { $"{place}-1".ToUpperInvariant(), $"{place}-2".ToUpperInvariant() })
            {
                family.Part(number, place, Has("bore", Mm(10)));
            }

            family.Fitted("lark", place, $"{place}-1".ToUpperInvariant()).Fitted("swift", place, place == "bolt" ? "BOLT-1" : $"{place}-2".ToUpperInvariant());
        }

        return family.OffFirst("shaft", "bolt").Renewed("bolt", "bolt")
            .Tightened("lark", "bolt", Lubrication.Dry, SingleUse.Yes, ["95 N·m"]).Tightened("swift", "bolt", Lubrication.Oiled, SingleUse.Yes, ["70 N·m"]);
    }

    private static BuildWorkOrder Order(TestFamily family, string shaft)
    {
        var told = new TestBuild(family).Seller("mill").Sold(shaft, 5000).Sold("BOLT-1", 200).Donor("shaft", PartState.Damaged)
            .Wish(new Wish("shaft", null) { Parts = [Id(shaft)] });
        return WorkOrders.Order(told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary, told.Memory, TestContext.Current.CancellationToken);
    }

    private static WorkStep On(BuildWorkOrder order, string position) => order.PutTogether.Single(step => step.Position == position);

    // One bolt, two engines: into the lark's shaft it goes dry with 95, into the swift's oiled with 70.
    [Theory]
    [InlineData("SHAFT-1", "lark", "95 N·m")]
    [InlineData("SHAFT-2", "swift", "70 N·m")]
    public void Bolt_is_tightened_as_the_engine_whose_shaft_it_goes_into(string shaft, string variant, string pass)
    {
        var told = Assert.Single(On(Order(Engine().GoesInFirst("shaft", "bolt", BenchJoin.Into), shaft), "bolt").Tightening);

        Assert.Equal((variant, pass), (told.Variant, told.Passes.Single()));
    }

    [Fact]
    public void Where_nothing_tells_the_engines_apart_the_records_of_both_are_shown() =>
        Assert.Equal(2, On(Order(Engine(), "SHAFT-1"), "bolt").Tightening.Count);

    [Fact]
    public void Step_without_a_recorded_tightening_says_so_and_one_with_it_does_not()
    {
        var order = Order(Engine().Reminds("bolt", "fasteners", ReminderAt.Tightened, "this bolt").Reminds("shaft", "fasteners", ReminderAt.Tightened, "the bolts of the caps"), "SHAFT-1");

        Assert.Equal(["No tightening value is recorded for the bolts of the caps: take it from the maker's document."], On(order, "shaft").NotRecorded);
        Assert.Empty(On(order, "bolt").NotRecorded);
    }

    [Fact]
    public void Reminders_stand_where_they_are_minded_and_once_before_the_start()
    {
        var order = Order(
            Engine().Reminds("shaft", "marks", ReminderAt.TakenOff, "Marked?").Reminds("shaft", "clearance", ReminderAt.PutOn, "Measured?")
                .Reminds("shaft", "by-hand", ReminderAt.Start, "Turned?").Reminds("shaft", "wash", ReminderAt.Worked, "Washed?")
                .Reminds("bolt", "withdrawn", ReminderAt.PutOn, "Oiled?", Retracted()).Reminds("block", "untouched", ReminderAt.Start, "Sound?"),
            "SHAFT-1");

        Assert.Equal(["Marked?"], order.TakeApart.Single(step => step.Position == "shaft").Reminders.Select(reminder => reminder.Text));
        Assert.Equal(["Measured?"], On(order, "shaft").Reminders.Select(reminder => reminder.Text));
        Assert.Equal(["Turned?"], order.BeforeStart.Select(reminder => reminder.Text));
        Assert.Empty(On(order, "bolt").Reminders);
    }

    [Fact]
    public void What_is_joined_on_the_bench_says_with_what()
    {
        // The bolt is driven in before the shaft is: so no opening stands against it.
        var family = new TestFamily().Variant("lark").Variant("swift");
        foreach (var place in _places)
        {
            family.Place(place, kind => kind.CannotAlterRunning().Length("bore")).Part($"{place}-1".ToUpperInvariant(), place, Has("bore", Mm(10)));
            family.Fitted("lark", place, $"{place}-1".ToUpperInvariant()).Fitted("swift", place, $"{place}-1".ToUpperInvariant());
        }

        var order = Order(family.OffFirst("bolt", "shaft").Renewed("shaft", "bolt").GoesInFirst("bolt", "shaft", BenchJoin.OnBench), "SHAFT-1");

        Assert.Equal("On the bench, with Shaft. Fit: Bolt, BOLT-1", On(order, "bolt").Text);
        Assert.Equal(["On the bench, from Shaft. Take off: Bolt"], order.TakeApart.Where(step => step.Position == "bolt").Select(step => step.Text));
        Assert.Equal("Fit: Shaft, SHAFT-1", On(order, "shaft").Text);
    }

    // The donor's shaft is damaged and comes off; the one that is bought is honed.
    [Fact]
    public void Work_on_a_part_that_comes_stands_where_that_goes_on()
    {
        var told = new TestBuild(Engine().WorkAfter("hone", 1, ["shaft"], "shaft.bore")).Seller("mill").Sold("SHAFT-1", 5000).Sold("BOLT-1", 200).Donor("shaft", PartState.Damaged)
            .With(build => build with { Works = [new AskedWork("hone", null, null)] });

        var order = WorkOrders.Order(
            told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary, told.Memory, TestContext.Current.CancellationToken);

        Assert.Empty(order.TakeApart.Single(step => step.Position == "shaft").Works);
        Assert.Equal(["hone"], On(order, "shaft").Works);
    }

    // Ream waits for nothing but the shaft, hone for ream where that is done: two days, then one.
    [Fact]
    public void Work_waits_for_the_works_that_come_first_where_they_are_done()
    {
        var family = Engine().WorkAfter("hone", 1, ["ream", "shaft"], "shaft.bore").WorkAfter("ream", 2, ["shaft"], "shaft.bore");
        BuildPlan Plan(params string[] works) => new TestBuild(family).Seller("mill").Sold("SHAFT-1", 5000).Sold("BOLT-1", 200).Donor("shaft", PartState.Damaged)
            .With(build => build with { Works = [.. works.Select(work => new AskedWork(work, null, null))] }).Plan(PlanObjective.Soonest);
        var both = Plan("hone", "ream").Works;

        Assert.Equal(["ream", "hone"], both.Select(work => work.Work));
        Assert.Equal((TestBuild.Today.AddDays(2), TestBuild.Today.AddDays(3)), (both[1].StartsOn, both[1].EndsOn));
        Assert.Equal(["ream", "Shaft"], both[1].WaitsFor);
        Assert.Equal(["Shaft"], Assert.Single(Plan("hone").Works).WaitsFor);
    }

    [Fact]
    public void What_is_opened_without_a_word_on_renewals_is_named_though_openings_name_it()
    {
        var told = new TestBuild(Engine()).Seller("mill").Sold("SHAFT-1", 5000).Sold("BOLT-1", 200).Donor("shaft", PartState.Damaged);

        Assert.Contains(told.Plan().Flags, flag => flag.StartsWith("Not recorded, and not in the sum: ", StringComparison.Ordinal) && flag.EndsWith(": Shaft.", StringComparison.Ordinal));
    }
}
