using System.Net;

namespace PartMatch.Web.Tests.Seed;

/// <summary>Valve timing and compression of the demo families, over HTTP. Expected figures: the scenario's table, and pencil sums beside each test.</summary>
public sealed class TimingSeedTests(SeedServer server)
{
    private const string TgCamInTs = "/api/valve-timing?family=tern-16&variant=ts&intake-cam=P-12-3307-A";

    private readonly HttpClient _client = server.CreateClient();

    // The table of trapped ratios, recomputed: 1 + (ratio − 1) × x(180° + closing) ÷ stroke; Tern 94 × 152, twin 68 × 132.
    [Theory]
    [InlineData("tern-16", "tv", 10.00)]
    [InlineData("tern-16", "tg", 11.29)]
    [InlineData("tern-16", "ts", 8.45)]
    [InlineData("tern-16", "tm", 9.67)]
    [InlineData("hs-2", "hp", 7.69)]
    [InlineData("hs-2", "hc", 8.04)]
    [InlineData("hs-2", "hs", 8.13)]
    public async Task Every_variant_traps_what_its_table_says_by_events_and_by_volumes(string family, string variant, double trapped)
    {
        var timing = await _client.AskAsync($"/api/valve-timing?family={family}&variant={variant}");
        var compression = await _client.AskAsync($"/api/compression?family={family}&variant={variant}");

        Assert.Equal(trapped, Expected(timing.GetProperty("atRest"), "trapped"), 0.0051);
        Assert.Equal(trapped, Expected(compression, "trapped"), 0.016); // volumes are recorded to 0.1 cm3
        Assert.Equal(Expected(compression, "recordedRatio"), Expected(compression, "ratio"), 0.005);
        Assert.Empty(timing.Texts("changes"));
        Assert.Empty(compression.Texts("changes"));
    }

    [Fact]
    public async Task Camshaft_of_another_variant_is_answered_with_its_fit_working_and_yardsticks()
    {
        var answer = await _client.AskAsync(TgCamInTs);

        // 180 − 52 = 128°; 80.52 mm of 94 mm; 1 + 8.30 × 0.8566 = 8.11.
        Assert.Equal(8.11, Expected(answer.GetProperty("atRest"), "trapped"), 0.005);
        Assert.Contains("intake closes 96° earlier", answer.Texts("changes"));
        Assert.Contains(answer.List("working"), step => step.Text("result") == "80.52 mm");
        Assert.Equal("does-not-fit", answer.List("parts")[0].Text("headline"));
        Assert.Equal(["tg", "tm", "ts", "tv"], answer.List("variants").Select(one => one.Text("variant")));
        Assert.Contains("interference-engine", answer.List("cautions").Select(caution => caution.Text("code")));
        Assert.Equal(["compression ratio", "intake closing"], answer.List("influences").Take(2).Select(one => one.Text("input")));
        Assert.Equal(answer.GetRawText(), (await _client.AskAsync(answer.Text("permalink"))).GetRawText());
    }

    [Fact]
    public async Task Fit_answer_says_what_the_camshaft_does_both_ways()
    {
        var falls = (await _client.AskAsync("/api/fit?family=tern-16&variant=ts&position=intake-camshaft&from=tg")).GetProperty("engineChange");
        var rises = (await _client.AskAsync("/api/fit?family=tern-16&variant=tg&position=intake-camshaft&from=ts")).GetProperty("engineChange");

        Assert.Contains("intake closes 96° earlier, intake lift 5.8 instead of 9.6 mm", falls.Text("text"), StringComparison.Ordinal);
        Assert.Contains("trapped compression falls: 8.11 instead of 8.45", falls.Texts("changes"));
        Assert.Contains("trapped compression rises: 11.78 instead of 11.29", rises.Texts("changes"));
        Assert.Contains("trapped compression falls: 8.11 instead of 8.45", (await _client.AskAsync(falls.Text("link"))).Texts("changes"));
    }

    // TG gasket 0.60 on TS: squish 0.60 + 0.20 instead of 0.95 + 0.20. TM gasket on TV: both 0.75. TV pistons in TS: 9.6 instead of 14.6 cm3, 59.25 cm3: 10.00.
    [Theory]
    [InlineData("ts", "head-gasket", "P-14-0203-A", "Runs differently: compression ratio rises: 9.57 instead of 9.30, trapped compression rises: 8.69 instead of 8.45, squish 0.80 instead of 1.15 mm.")]
    [InlineData("tv", "head-gasket", "P-14-0204-A", "Reckoned: squish stays 0.95 mm.")]
    [InlineData("ts", "piston", "P-11-4001-A", "If it were made to fit: compression ratio rises: 10.00 instead of 9.30, trapped compression rises: 9.08 instead of 8.45, squish stays 1.15 mm.")]
    [InlineData("ts", "intake-cam-drive", "P-12-1301-A", "Runs differently: intake camshaft can be advanced by up to 40° instead of 50°.")]
    [InlineData("tv", "head-gasket", "TG-7514", "Not reckoned: tessick:TG-7514: the gasket thickness is not known, found sources that disagree")]
    public async Task Fit_answer_says_what_a_part_does_to_compression_and_squish(string variant, string position, string part, string expected)
    {
        var answer = await _client.AskAsync($"/api/fit?family=tern-16&variant={variant}&position={position}&part={part}");

        Assert.StartsWith(expected, answer.GetProperty("engineChange").Text("text"), StringComparison.Ordinal);
        Assert.DoesNotContain("safe", answer.GetProperty("engineChange").Text("text"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Fit_answer_of_a_position_without_a_say_in_the_sums_has_no_such_member() =>
        Assert.False((await _client.AskAsync("/api/fit?family=tern-16&variant=ts&position=coolant-pump&part=P-26-1147-C")).Has("engineChange"));

    // What the question puts elsewhere counts: the TG gasket under a TV head and TV pistons on the TS block.
    [Fact]
    public async Task Neighbours_given_in_a_fit_question_count_for_the_compression()
    {
        var answer = await _client.AskAsync("/api/fit?family=tern-16&variant=ts&position=head-gasket&part=P-14-0203-A&with=piston=pellworth:P-11-4001-A");

        // 3.4853 + 1.1349 + 43 + 9.6 = 57.2202 cm3; 590.6234 ÷ 57.2202 = 10.32.
        Assert.Contains("compression ratio rises: 10.32 instead of 9.30", answer.GetProperty("engineChange").Texts("changes"));
    }

    [Fact]
    public async Task Gear_driven_camshaft_has_one_wheel_and_tells_which_way_it_turns()
    {
        var answer = await _client.AskAsync("/api/valve-timing?family=hs-2&variant=hc&intake-teeth=1");
        var wheel = Assert.Single(answer.List("wheels"));

        Assert.Equal(12, Expected(wheel, "perTooth"));
        Assert.Contains("turns against the crankshaft: seen from one and the same end", wheel.Text("direction"), StringComparison.Ordinal);
        Assert.Equal(Expected(answer.GetProperty("asBuilt"), "overlap"), Expected(answer.GetProperty("atRest"), "overlap"));
        Assert.Equal(12, Expected(answer.GetProperty("atRest"), "exhaustAdvance"));
    }

    [Theory]
    [InlineData("/api/valve-timing?family=hs-2&variant=hc&intake-cam=VF-2260", "turns-other-way", "intake-cam")]
    [InlineData("/api/valve-timing?family=hs-2&variant=hc&exhaust-teeth=1", "one-camshaft", "exhaust-advance")]
    [InlineData(TgCamInTs + "&at-lift=0.5%20mm", "different-lifts", "at-lift")]
    [InlineData(TgCamInTs + "&intake-closes=44", "quantity-needs-unit", "intake-closes")]
    [InlineData(TgCamInTs + "&intake-closes=44%20mm", "quantity-wrong-unit", "intake-closes")]
    [InlineData(TgCamInTs + "&intake-teeth=half", "bad-question", "intake-teeth")]
    [InlineData(TgCamInTs + "&intake-phaser-rest=middle", "bad-question", "intake-phaser-rest")]
    [InlineData(TgCamInTs + "&exhaust-cam=P-99-0000-Z", "bad-question", "exhaust-cam")]
    [InlineData(TgCamInTs + "&intake-advance=5..2%20deg", "quantity-unreadable", "intake-advance")]
    [InlineData("/api/valve-timing?family=tern-16&variant=ts&intake-cam=P-26-1147-C", "wrong-kind", "intake-cam")]
    [InlineData("/api/compression?family=tern-16&variant=ts&piston=P-14-0203-A", "wrong-kind", "piston")]
    [InlineData("/api/valve-timing?family=tern-16&variant=ts&intake-teeth=10", "out-of-range", "intake-teeth")]
    [InlineData("/api/valve-timing?family=tern-16", "bad-question", "variant")]
    [InlineData("/api/compression?family=tern-16&variant=tv&head-gasket=TG-7514", "not-recorded", "gasket-thickness")]
    [InlineData("/api/compression?family=tern-16&variant=tv&head-skim=6%20mm", "out-of-range", "head-skim")]
    [InlineData("/api/compression?family=tern-16&variant=tv&chamber-volume=41%20mm", "quantity-wrong-unit", "chamber-volume")]
    [InlineData("/api/plots/valve-events.svg?family=hs-2&variant=hc&intake-cam=VF-2260", "turns-other-way", "intake-cam")]
    public async Task What_has_no_honest_answer_is_refused_at_its_field(string address, string type, string field)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.BadRequest, type);

        Assert.Equal(field, problem.List("errors")[0].Text("field"));
        Assert.NotEmpty(problem.List("errors")[0].Text("mend"));
    }

    [Fact]
    public async Task Number_that_is_cut_short_is_answered_with_those_that_begin_so()
    {
        var problem = await _client.RefuseAsync("/api/valve-timing?family=tern-16&variant=ts&intake-cam=P-12-3307", HttpStatusCode.BadRequest, "bad-question");

        Assert.StartsWith("did you mean pellworth:P-12-3307-A", problem.OnlyError().Text("mend"), StringComparison.Ordinal);
    }

    // The generator's camshaft has a fixed nose, the sport engine's phaser a bolted one.
    [Fact]
    public async Task Camshaft_that_does_not_go_on_the_phaser_is_not_moved_by_it()
    {
        var answer = await _client.AskAsync(TgCamInTs);

        Assert.Empty(answer.List("swept"));
        Assert.Contains(answer.List("warnings"), warning => warning.Text("code") == "cannot-be-assembled");
    }

    // A pair of gears, one camshaft, nothing that moves.
    [Fact]
    public async Task Engine_without_a_phaser_is_told_nothing_of_one()
    {
        var texts = string.Join(' ', (await _client.AskAsync("/api/valve-timing?family=hs-2&variant=hc&intake-teeth=1")).List("warnings").Select(one => one.Text("text")));

        Assert.DoesNotContain("phaser", texts, StringComparison.Ordinal);
        Assert.DoesNotContain("intake camshaft", texts, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/valve-timing?family=tern-99&variant=ts", "family")]
    [InlineData("/api/compression?family=tern-16&variant=tz", "variant")]
    public async Task An_unknown_family_or_variant_is_404(string address, string field) =>
        Assert.Equal(field, (await _client.RefuseAsync(address, HttpStatusCode.NotFound, "not-found")).OnlyError().Text("field"));

    [Theory]
    [InlineData(TgCamInTs, "valve-events", "trapped-compression")]
    [InlineData("/api/compression?family=tern-16&variant=ts&head-gasket=P-14-0203-A", "trapped-compression")]
    [InlineData("/api/tightening?family=tern-16&variant=ts&position=flywheel-bolt&torque=95%20Nm", "preload")]
    [InlineData("/api/tightening?family=tern-16&variant=tv&position=head-bolt")] // turned on by an angle: nothing is judged
    public async Task Every_drawing_of_an_answer_is_there_with_the_numbers_behind_it(string address, params string[] names)
    {
        var plots = (await _client.AskAsync(address)).List("plots");

        Assert.Equal(names, plots.Select(plot => plot.Text("name")));
        foreach (var plot in plots)
        {
            Assert.StartsWith("<?xml-stylesheet", await _client.GetStringAsyncWhateverStatus(plot.Text("link")), StringComparison.Ordinal);
            var numbers = await _client.AskAsync(plot.Text("link").Replace(".svg?", ".json?", StringComparison.Ordinal));
            Assert.NotEmpty(numbers.GetProperty("table").List("rows"));
        }
    }

    private static double Expected(System.Text.Json.JsonElement element, string member) => element.GetProperty(member).GetProperty("expected").GetDouble();
}
