using System.Net;
using System.Text.Json;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Builds;

/// <summary>The plan at the bench, on the demo base.</summary>
public sealed class WorkOrderEndpointsTests(SeedServer server)
{
    private readonly HttpClient _client = server.CreateClient();

    // By pencil, from renewals.csv: 82 mL of sealant are one tube; the hours are 12 and 24, each one day; the tappets are there last, on 2026-12-11.
    [Fact]
    public async Task Sealant_is_laid_beside_its_joint_and_cures_one_day_before_the_engine_is_ready()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26");
        var sump = order.List("putTogether").Single(step => step.Text("position") == "sump");
        var sealant = sump.List("renewals").Single(renewal => renewal.Text("position") == "sealant");
        var cure = order.List("works").Single(work => work.Text("work") == "cure:1");

        Assert.Equal(("9 mL", 24), (sealant.Text("amount"), sealant.GetProperty("cureHours").GetInt32()));
        Assert.Equal(("2026-12-11", "2026-12-12"), (cure.Text("startsOn"), cure.Text("endsOn")));
        Assert.Equal(["coolant", "engine-oil"], order.List("fill").Select(step => step.Text("position")));
    }

    // torques.csv: 40, 70 N·m, then twice 90 deg for the sport engine's head bolts.
    [Fact]
    public async Task Fastener_shows_its_recorded_passes_with_their_source()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26");
        var bolts = order.List("putTogether").Single(step => step.Text("position") == "head-bolt");
        var told = Assert.Single(bolts.List("tightening"));

        Assert.Equal(["40 N·m", "70 N·m", "90 deg", "90 deg"], told.List("passes").Select(pass => pass.GetString()));
        Assert.Equal(("ts", "ev-0094"), (told.Text("variant"), told.GetProperty("evidence").Text("evidence")));
    }

    // Not the same: the van's torque from memory stands beside the maker's, and neither is averaged.
    [Fact]
    public async Task Sources_that_disagree_on_a_torque_stand_side_by_side()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26");

        Assert.Equal(2, order.List("putTogether").Single(step => step.Text("position") == "flywheel-bolt").List("tightening").Count);
    }

    // What a builder would not do otherwise, by hand: a big end is closed and turned before there are valves over it; what hangs on the head comes when the head
    // is tight; what is undone with force is undone while the rods hold the crankshaft; caps are let up with no chain on the camshafts.
    [Theory]
    [InlineData("hill-climb", "")]
    [InlineData("hill-climb", "&donor=valley-van")]
    [InlineData("hill-climb", "&objective=most-kept")]
    [InlineData("hill-climb-bench", "")]
    public async Task Order_is_one_that_a_builder_would_keep(string build, string more)
    {
        var order = await _client.AskAsync($"/api/builds/{build}/work-order?on=2026-11-26{more}");
        var (off, on) = (Positions(order, "takeApart"), Positions(order, "putTogether"));

        AssertInOrder(on, "piston", "pin-circlip", "piston-ring-set", "connecting-rod", "big-end-shell", "rod-bolt", "head-gasket", "cylinder-head", "head-bolt", "intake-manifold", "throttle-body");
        AssertInOrder(on, "head-bolt", "injector", "fuel-rail");
        AssertInOrder(on, "head-bolt", "spark-plug");
        AssertInOrder(on, "head-bolt", "thermostat");
        AssertInOrder(on, "head-bolt", "exhaust-manifold", "turbocharger");
        AssertInOrder(on, "intake-camshaft", "cam-cap-set", "intake-cam-drive", "timing-chain", "chain-tensioner", "front-cover");
        AssertInOrder(on, "intake-camshaft", "cam-wheel");
        AssertInOrder(on, "cylinder-block", "oil-cooler");
        AssertInOrder(on, "fuel-regulator", "fuel-rail");
        AssertInOrder(off, "chain-tensioner", "timing-chain", "cam-cap-set", "intake-camshaft", "head-bolt", "cylinder-head", "rod-bolt", "connecting-rod");
        AssertInOrder(off, "crank-bolt", "rod-bolt");
        AssertInOrder(off, "flywheel-bolt", "rod-bolt");
        Assert.StartsWith("On the bench, with Connecting rods. ", Step(order, "piston").Text("text"), StringComparison.Ordinal);
    }

    // Pistons and rings onto rods that stayed in the case; the stud nuts when the heads are on, then what hangs on the heads.
    [Fact]
    public async Task Order_of_the_twin_tightens_its_heads_before_anything_hangs_on_them()
    {
        var on = Positions(await _client.AskAsync("/api/builds/cart/work-order?on=2026-11-26"), "putTogether");

        AssertInOrder(on, "piston", "pin-circlip", "piston-ring-set", "left-barrel", "left-head", "barrel-stud", "intake-pipe", "throttle-body");
        AssertInOrder(on, "barrel-stud", "injector", "fuel-rail");
        AssertInOrder(on, "barrel-stud", "exhaust-pipe");
        AssertInOrder(on, "barrel-stud", "fan-cowl");
        AssertInOrder(on, "barrel-stud", "pushrod", "rocker");
    }

    // Crankshaft and flywheel of the van, six holes: torques.csv has 30, then 95 ± 5 N·m dry for it. The front bolt goes through the sport's damper into the van's nose: both are shown.
    [Fact]
    public async Task Torques_are_of_the_engine_whose_parts_are_there()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26&donor=valley-van");
        var flywheel = Assert.Single(Step(order, "flywheel-bolt").List("tightening"));

        Assert.Equal(("tv", "crosswise", "dry"), (flywheel.Text("variant"), flywheel.Text("sequence"), flywheel.Text("lubrication")));
        Assert.Equal(["30 N·m", "95 N·m ± 5"], flywheel.List("passes").Select(pass => pass.GetString()));
        Assert.Equal(["ts", "tv"], Step(order, "crank-bolt").List("tightening").Select(told => told.Text("variant")));
    }

    // works.csv: four days for the threads, then five for the bores, which are honed when nothing is drilled any more.
    [Fact]
    public async Task Bores_are_honed_when_the_head_threads_are_tapped()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26&donor=boat-house");
        var (tap, hone) = (order.List("works").Single(work => work.Text("work") == "tap-head-threads-m11"), order.List("works").Single(work => work.Text("work") == "hone-bores"));

        Assert.Equal(("2026-12-06", "2026-12-10"), (tap.Text("startsOn"), tap.Text("endsOn")));
        Assert.Equal(("2026-12-10", "2026-12-15"), (hone.Text("startsOn"), hone.Text("endsOn")));
        Assert.Contains(Step(order, "cylinder-block").List("reminders"), reminder => reminder.Text("text").Contains("torque plate", StringComparison.Ordinal));
        Assert.Contains(Step(order, "cylinder-block").List("reminders"), reminder => reminder.Text("text").StartsWith("Washed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_ruins_an_engine_is_asked_at_its_step_and_before_the_start()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26");

        Assert.Contains("top dead centre", order.List("takeApart").Single(step => step.Text("position") == "chain-tensioner").List("reminders").Single().Text("text"), StringComparison.Ordinal);
        Assert.Contains("two full turns", Step(order, "timing-chain").List("reminders").Single().Text("text"), StringComparison.Ordinal);
        Assert.Equal(
            ["No tightening value is recorded for the bolts of the main bearing caps, which are no position of their own: take it from the maker's document."],
            Step(order, "crankshaft").List("notRecorded").Select(told => told.GetString()));
        Assert.Empty(Step(order, "head-bolt").List("notRecorded"));
        Assert.Equal(
            ["coolant", "engine-oil", "fuel-rail", "oil-filter", "oil-pump", "timing-chain", "turbocharger"],
            order.List("beforeStart").Select(told => told.Text("name") switch
            {
                "Coolant" => "coolant",
                "Engine oil" => "engine-oil",
                "Fuel rail" => "fuel-rail",
                "Oil filter" => "oil-filter",
                "Oil pump" => "oil-pump",
                "Timing chain" => "timing-chain",
                "Turbocharger" => "turbocharger",
                var other => other,
            }).Order(StringComparer.Ordinal));
    }

    // The donor is a generator set, the target a sport engine; neither is in a boat. Of the twin nobody recorded a use, so nothing is left out there.
    [Theory]
    [InlineData("hill-climb", "", "high-voltage,magnet-rotor", "ignition-protection")]
    [InlineData("hill-climb", "&donor=valley-van", "", "high-voltage,ignition-protection,magnet-rotor")]
    [InlineData("hill-climb", "&donor=boat-house", "ignition-protection", "high-voltage,magnet-rotor")]
    [InlineData("cart", "", "magnet-rotor", "high-voltage,ignition-protection")]
    public async Task Cautions_of_one_use_are_shown_where_an_engine_has_that_use(string build, string more, string shown, string left)
    {
        var cautions = (await _client.AskAsync($"/api/builds/{build}/work-order?on=2026-11-26{more}")).List("cautions").Select(caution => caution.Text("code")).ToList();

        Assert.Empty(Codes(shown).Except(cautions));
        Assert.Empty(Codes(left).Intersect(cautions));
    }

    [Fact]
    public async Task Weak_point_that_lies_open_is_offered_and_not_in_the_plan()
    {
        var open = await _client.AskAsync("/api/builds/hill-climb/weak-points?on=2026-11-26");
        var chain = open.List("weakPoints").Single(weak => weak.Text("weakPoint") == "chain-stretch");

        Assert.False(Assert.Single(chain.List("remedies")).GetProperty("inPlan").GetBoolean());

        // The plan buys a used front cover of the van's number: it has run, perhaps on plain water.
        var cover = open.List("weakPoints").Single(weak => weak.Text("weakPoint") == "cover-volute-pitting");
        Assert.Equal(("tv", "pellworth:P-13-2001-A", false), (cover.Text("variant"), cover.Text("part"), Assert.Single(cover.List("remedies")).GetProperty("inPlan").GetBoolean()));
    }

    [Fact]
    public async Task Order_of_a_build_without_a_plan_is_empty_and_says_so()
    {
        var order = await _client.AskAsync("/api/builds/sidecar/work-order?on=2026-11-26");

        Assert.Equal(("infeasible", 0), (order.Text("status"), order.List("takeApart").Count));
    }

    private static HashSet<string?> Codes(string listed) => [.. listed.Split(',', StringSplitOptions.RemoveEmptyEntries)];

    private static List<string?> Positions(JsonElement order, string list) => [.. order.List(list).Select(step => step.Text("position"))];

    private static JsonElement Step(JsonElement order, string position) => order.List("putTogether").Single(step => step.Text("position") == position);

    /// <summary>Those of them that are steps stand in this order; at least two have to be.</summary>
    private static void AssertInOrder(List<string?> steps, params string[] positions)
    {
        var there = positions.Where(steps.Contains).ToList();
        Assert.True(there.Count > 1, string.Join(", ", positions));
        Assert.Equal(there, steps.Where(step => there.Contains(step ?? "")));
    }

    [Fact]
    public async Task Order_of_a_build_that_is_not_there_is_not_found()
    {
        await _client.RefuseAsync("/api/builds/solo/work-order", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/solo/weak-points", HttpStatusCode.NotFound, "not-found");
    }
}
