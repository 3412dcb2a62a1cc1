using System.Net;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Builds;

/// <summary>The plan at the bench, on the demo base.</summary>
public sealed class WorkOrderEndpointsTests(SeedServer server)
{
    private readonly HttpClient _client = server.CreateClient();

    // By pencil, from renewals.csv: 82 mL of sealant are one tube; the hours are 12 and 24, each one day; the tappets are there last, on 2026-12-08.
    [Fact]
    public async Task Sealant_is_laid_beside_its_joint_and_cures_one_day_before_the_engine_is_ready()
    {
        var order = await _client.AskAsync("/api/builds/hill-climb/work-order?on=2026-11-26");
        var sump = order.List("putTogether").Single(step => step.Text("position") == "sump");
        var sealant = sump.List("renewals").Single(renewal => renewal.Text("position") == "sealant");
        var cure = order.List("works").Single(work => work.Text("work") == "cure:1");

        Assert.Equal(("9 mL", 24), (sealant.Text("amount"), sealant.GetProperty("cureHours").GetInt32()));
        Assert.Equal(("2026-12-08", "2026-12-09"), (cure.Text("startsOn"), cure.Text("endsOn")));
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

    [Fact]
    public async Task Weak_point_that_lies_open_is_offered_and_not_in_the_plan()
    {
        var open = await _client.AskAsync("/api/builds/hill-climb/weak-points?on=2026-11-26");
        var chain = open.List("weakPoints").Single(weak => weak.Text("weakPoint") == "chain-stretch");

        Assert.False(Assert.Single(chain.List("remedies")).GetProperty("inPlan").GetBoolean());
        Assert.DoesNotContain(open.List("weakPoints"), weak => weak.Text("weakPoint") == "cover-volute-pitting"); // of the van, and the plan has no part of the van there
    }

    [Fact]
    public async Task Order_of_a_build_without_a_plan_is_empty_and_says_so()
    {
        var order = await _client.AskAsync("/api/builds/sidecar/work-order?on=2026-11-26");

        Assert.Equal(("infeasible", 0), (order.Text("status"), order.List("takeApart").Count));
    }

    [Fact]
    public async Task Order_of_a_build_that_is_not_there_is_not_found()
    {
        await _client.RefuseAsync("/api/builds/solo/work-order", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/solo/weak-points", HttpStatusCode.NotFound, "not-found");
    }
}
