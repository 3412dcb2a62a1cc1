using System.Net;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Tightening;

public sealed class TighteningEndpointsTests(SeedServer server)
{
    private const string Typed = "/api/tightening?thread=M10×1.5&class=8.8&lubrication=dry&torque=75.83%20N·m";
    private const string Flywheel = "/api/tightening?family=tern-16&variant=ts&position=flywheel-bolt";

    private readonly HttpClient _client = server.CreateClient();

    // 75.83 ÷ (0.30 × 0.010) = 25 277 N, 75 % of the printed 33 700 N; oiled ÷ 0.18: 42 128 N, 125 %.
    [Fact]
    public async Task A_typed_torque_is_judged_dry_and_oiled()
    {
        var answer = await _client.AskAsync(Typed);

        Assert.Equal("M10×1.5", answer.GetProperty("bolt").Text("thread"));
        Assert.Equal(33_700, answer.GetProperty("bolt").GetProperty("proofLoad").GetProperty("expected").GetDouble());
        var conditions = answer.GetProperty("torque").List("conditions");
        Assert.Equal(["dry", "oiled"], conditions.Select(one => one.Text("threads")));
        Assert.Equal([0.75, 1.25], conditions.Select(one => Math.Round(one.GetProperty("shareOfProof").GetProperty("expected").GetDouble(), 2)));
        Assert.Equal("above-proof-if", Assert.Single(answer.GetProperty("torque").List("warnings")).Text("code"));
        Assert.Contains(answer.Texts("saysNothing"), text => text.Contains("aluminium", StringComparison.Ordinal));
        Assert.Empty(answer.List("records"));
        Assert.False(answer.TryGetProperty("fastener", out _));
    }

    // The van's bolt on the sport engine: 70 N·m oiled by the maker, 95 N·m by a message that does not say how the threads were.
    // M10×1: 64.494 mm² × 830 MPa = 53 530 N. 70 ÷ 0.0018 = 38 889 N, 73 %.
    [Fact]
    public async Task A_fastener_shows_its_records_with_what_they_do()
    {
        var answer = await _client.AskAsync(Flywheel);

        Assert.Equal(8, answer.GetProperty("fastener").GetProperty("pieces").GetInt32());
        var (maker, message) = (answer.List("records")[0], answer.List("records")[1]);
        Assert.Equal(("makers-document", "oiled", "yes"), (maker.GetProperty("evidence").Text("grade"), maker.Text("lubrication"), maker.Text("singleUse")));
        Assert.Equal(["30 N·m", "70 N·m ± 5"], maker.List("passes").Select(pass => pass.Text("text")));
        var share = maker.GetProperty("judged").List("conditions")[0].GetProperty("shareOfProof");
        Assert.Equal(0.726, share.GetProperty("expected").GetDouble(), 1e-3);
        Assert.Equal("not-recorded", message.GetProperty("judged").List("conditions")[0].Text("threads"));
        Assert.Contains(answer.List("cautions"), caution => caution.Text("code") == "oiled-threads");
    }

    // 95 ÷ (0.18 × 0.010) = 52 778 N ÷ 53 530 = 98.6 %; × 1.3 = 128 %.
    [Fact]
    public async Task The_vans_torque_on_the_sport_engines_oiled_bolts_may_pass_the_proof_load()
    {
        var answer = await _client.AskAsync(Flywheel + "&torque=95%20N·m&lubrication=oiled");

        var torque = answer.GetProperty("torque");
        Assert.Equal(0.986, torque.List("conditions")[0].GetProperty("shareOfProof").GetProperty("expected").GetDouble(), 1e-3);
        Assert.Equal("may-pass-proof", Assert.Single(torque.List("warnings")).Text("code"));
        Assert.Equal("nut factor", answer.List("influences")[0].Text("input"));
    }

    // Two look-alike bolts, M10×142: black and oiled 55 N·m, then 90° and 90°; zinc flake 45 N·m, then 90° and 75°.
    [Theory]
    [InlineData("tv", "30 N·m", "55 N·m", "90 deg", "90 deg")]
    [InlineData("tm", "25 N·m", "45 N·m", "90 deg", "75 deg")]
    public async Task Head_bolts_that_look_alike_are_tightened_differently_and_not_judged_by_torque(string variant, params string[] passes)
    {
        var record = Assert.Single((await _client.AskAsync($"/api/tightening?family=tern-16&variant={variant}&position=head-bolt")).List("records"));

        Assert.Equal(passes, record.List("passes").Select(pass => pass.Text("text")));
        Assert.Equal("stretch", record.Text("singleUse"));
        Assert.Equal("angle-tightened", record.GetProperty("notJudged").Text("code"));
        Assert.False(record.TryGetProperty("judged", out _));
    }

    [Fact]
    public async Task A_retracted_record_is_shown_and_not_judged()
    {
        var records = (await _client.AskAsync("/api/tightening?family=hs-2&variant=hp&position=rod-bolt")).List("records");

        Assert.Equal("2026-04-02", records[^1].GetProperty("evidence").Text("retractedOn"));
        Assert.Equal("retracted", records[^1].GetProperty("notJudged").Text("code"));
    }

    [Fact]
    public async Task A_thread_in_inches_is_shown_with_its_record_and_not_judged()
    {
        var answer = await _client.AskAsync("/api/tightening?family=tern-16&variant=tm&position=oil-filter-stud");

        Assert.Equal("thread-not-metric", answer.GetProperty("notJudged").Text("code"));
        Assert.Equal("thread-not-metric", Assert.Single(answer.List("records")).GetProperty("notJudged").Text("code"));
    }

    [Fact]
    public async Task A_part_named_stands_in_for_the_fitted_one()
    {
        var answer = await _client.AskAsync("/api/tightening?family=hs-2&variant=hc&position=barrel-stud&part=VS-10162");

        Assert.Equal("M10×1.25", answer.GetProperty("bolt").Text("thread"));
        Assert.Equal("vardmoor:VS-10162", answer.GetProperty("asked").Text("part"));
    }

    [Theory]
    [InlineData(Typed)]
    [InlineData(Flywheel)]
    [InlineData(Flywheel + "&torque=50..60..70%20lbf·ft&nut-factor=0.14..0.16..0.2&scatter=25%20%25&class=12.9&thread=M10x1-25")]
    public async Task The_permalink_gives_the_same_answer(string address)
    {
        var answer = await _client.AskAsync(address);

        Assert.Contains("scatter=", answer.Text("permalink"), StringComparison.Ordinal);
        Assert.Equal(answer.GetRawText(), (await _client.AskAsync(answer.Text("permalink"))).GetRawText());
    }

    [Theory]
    [InlineData("torque=75.83%20N·m", "torque=75.83", "torque", "quantity-needs-unit")]
    [InlineData("torque=75.83%20N·m", "torque=75,8%20N·m", "torque", "quantity-decimal-comma")]
    [InlineData("torque=75.83%20N·m", "torque=75%20kN", "torque", "quantity-wrong-unit")]
    [InlineData("torque=75.83%20N·m", "torque=0%20N·m", "torque", "out-of-range")]
    [InlineData("torque=75.83%20N·m", "", "torque", "bad-question")]
    [InlineData("torque=75.83%20N·m", "torque=75.83%20N·m&angle=90%20deg", "angle", "angle-tightened")]
    [InlineData("torque=75.83%20N·m", "torque=75.83%20N·m&nut-factor=0.02", "nut-factor", "out-of-range")]
    [InlineData("torque=75.83%20N·m", "torque=75.83%20N·m&scatter=100%20%25", "scatter", "out-of-range")]
    [InlineData("torque=75.83%20N·m", "torque=75.83%20N·m&torqe=1", "torqe", "bad-question")]
    [InlineData("thread=M10×1.5", "thread=3/4-16", "thread", "thread-not-metric")]
    [InlineData("thread=M10×1.5", "", "thread", "bad-question")]
    [InlineData("class=8.8", "class=5.6", "class", "bad-question")]
    [InlineData("class=8.8", "class=8.8&part=nonsense", "part", "bad-question")]
    [InlineData("torque=75.83%20N·m", "angle=90%20deg", "angle", "angle-tightened")]
    [InlineData("lubrication=dry", "lubrication=wet", "lubrication", "bad-question")]
    public async Task A_bad_value_is_refused_with_its_own_problem(string good, string bad, string field, string type)
    {
        var problem = await _client.RefuseAsync(Typed.Replace(good, bad, StringComparison.Ordinal), HttpStatusCode.BadRequest, type);

        Assert.Equal(field, problem.List("errors")[0].Text("field"));
        Assert.NotEmpty(problem.List("errors")[0].Text("expected"));
        Assert.NotEmpty(problem.List("errors")[0].Text("mend"));
    }

    [Theory]
    [InlineData("family=tern-16&variant=tv&position=head-bolt&torque=90%20N·m", "torque", "angle-tightened")]
    [InlineData("family=tern-16&variant=tv&position=spark-plug&torque=25%20N·m", "position", "not-a-fastener")]
    [InlineData("family=tern-16&variant=tm&position=oil-filter-stud&torque=45%20N·m", "thread", "thread-not-metric")]
    [InlineData("family=tern-16&variant=tv&torque=25%20N·m", "position", "bad-question")]
    [InlineData("family=tern-16&variant=tv&position=flywheel-bolt&part=nobody-knows-it", "part", "bad-question")]
    public async Task A_torque_that_the_place_cannot_be_asked_about_is_refused(string question, string field, string type) =>
        Assert.Equal(field, (await _client.RefuseAsync($"/api/tightening?{question}", HttpStatusCode.BadRequest, type)).List("errors")[0].Text("field"));

    [Theory]
    [InlineData("family=tern-61&variant=tv&position=head-bolt", "family")]
    [InlineData("family=tern-16&variant=tz&position=head-bolt", "variant")]
    [InlineData("family=tern-16&variant=tv&position=hed-bolt", "position")]
    public async Task An_unknown_family_variant_or_position_is_404(string question, string field)
    {
        var problem = await _client.RefuseAsync($"/api/tightening?{question}", HttpStatusCode.NotFound, "not-found");

        Assert.Equal(field, problem.OnlyError().Text("field"));
    }

    [Fact]
    public async Task A_place_without_a_record_says_nothing_of_a_torque()
    {
        var answer = await _client.AskAsync("/api/tightening?family=tern-16&variant=tv&position=flywheel");

        Assert.Empty(answer.List("records"));
        Assert.Equal("not-a-fastener", answer.GetProperty("notJudged").Text("code"));
    }
}
