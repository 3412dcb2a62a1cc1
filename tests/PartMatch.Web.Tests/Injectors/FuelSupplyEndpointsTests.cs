using System.Net;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Injectors;

/// <summary>The goal of the hill-climb build over the demo books: 180 kW at 6800/min, 1.1 bar of boost.</summary>
public sealed class FuelSupplyEndpointsTests(SeedServer server)
{
    private const string Goal = "family=tern-16&variant=ts&power=180%20kW&speed=6800/min&boost=1.1%20bar";

    private readonly HttpClient _client = server.CreateClient();

    // 180 kW × 280, 330, 380 g/(kW·h) ÷ 0.775, 0.745, 0.720 kg/L = 65.0, 79.7, 95.0 L/h, with 20 % of return 95.7 L/h; rail 3.0 + 1.1, line 0.2 × 0.957²:
    // 4.28 bar at the pump, where 157.6 L/h are recorded.
    [Fact]
    public async Task Supply_of_a_goal_is_followed_from_the_injectors_to_the_tank()
    {
        var answer = await _client.AskAsync($"/api/fuel-supply?{Goal}");

        Assert.Equal("pellworth:P-17-0703-A", answer.GetProperty("asked").Text("pump"));
        Assert.Equal("return-manifold", answer.GetProperty("asked").Text("supply"));
        Assert.Equal("65.0 … 79.7 … 95.0 L/h", answer.GetProperty("need").GetProperty("burnt").Text("text"));
        Assert.Equal(["injectors", "regulator", "return", "line", "pump"], answer.List("links").Select(link => link.Text("link")));
        Assert.Contains("injectors give out first", answer.Text("firstToGiveOut"));
        var pump = answer.List("pumps")[0];
        Assert.Equal(("pellworth:P-17-0703-A", "yes", "recorded", "fits"),
            (pump.Text("part"), pump.Text("enough"), pump.Text("wettedFor"), pump.GetProperty("fit").Text("headline")));
        Assert.Equal(answer.GetRawText(), (await _client.AskAsync(answer.Text("permalink"))).GetRawText());
    }

    [Fact]
    public async Task Pressure_and_supply_of_the_variant_stand_in_for_what_is_left_out()
    {
        var answer = await _client.AskAsync($"/api/injectors?{Goal}");

        Assert.Equal("return-manifold", answer.GetProperty("asked").Text("supply"));
        Assert.Equal("2.95 … 3.00 … 3.05 bar", answer.GetProperty("pressureAcross").Text("text"));
        Assert.Equal("ambitious", answer.GetProperty("airSide").Text("standing"));
    }

    [Fact]
    public async Task Every_input_may_be_a_range()
    {
        var answer = await _client.AskAsync(
            $"/api/injectors?{Goal.Replace("180%20kW", "170..180..190%20kW", StringComparison.Ordinal)}&pressure=2.9..3.0..3.1%20bar&voltage=13..14%20V&duty=80..85%20%25&altitude=0..800%20m&fuel-temperature=10..20..40%20degC");

        Assert.Equal(170_000m, answer.GetProperty("asked").GetProperty("power").GetProperty("low").GetDecimal());
        Assert.Equal("power", answer.List("influences")[1].Text("input"));
        Assert.Equal("specific consumption", answer.List("influences")[0].Text("input"));
    }

    [Theory]
    [InlineData("injector-flow")]
    [InlineData("injector-duty")]
    [InlineData("pressure-across")]
    [InlineData("pump")]
    public async Task An_answer_says_where_it_is_drawn(string plot)
    {
        var route = plot == "pump" ? "fuel-supply" : "injectors";
        var link = (await _client.AskAsync($"/api/{route}?{Goal}")).List("plots").Single(one => one.Text("name") == plot).Text("link");

        var drawing = await _client.GetStringAsync(new Uri(link, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("<svg", drawing, StringComparison.Ordinal);
        var numbers = await _client.AskAsync(link.Replace(".svg", ".json", StringComparison.Ordinal));
        Assert.NotEmpty(numbers.GetProperty("table").List("rows"));
    }

    [Theory]
    [InlineData("pump=P-26-1147-C", "pump", "bad-question")]
    [InlineData("pump=P-99-9999-Z", "pump", "bad-question")]
    [InlineData("injector=P-17-0703-A", "injector", "bad-question")]
    [InlineData("line-loss=0.2", "line-loss", "quantity-needs-unit")]
    [InlineData("line-loss=-1%20bar&line-loss-flow=100%20L/h", "line-loss", "out-of-range")]
    [InlineData("line-loss=0.2%20bar", "line-loss-flow", "not-recorded")]
    [InlineData("line-loss-flow=100%20L/h", "line-loss", "not-recorded")]
    [InlineData("return=20", "return", "out-of-range")]
    [InlineData("ethanol=70", "ethanol", "out-of-range")]
    [InlineData("colour=red", "colour", "bad-question")]
    [InlineData("return=20%20L/h", "return", "quantity-wrong-unit")]
    [InlineData("return-capacity=0%20L/h", "return-capacity", "out-of-range")]
    [InlineData("return-capacity=40%20lb/h", "return-capacity", "quantity-wrong-unit")]
    [InlineData("pump-voltage=0%20V", "pump-voltage", "out-of-range")]
    [InlineData("rail-table=0:3.5,1.1:5.0", "rail-table", "quantity-unreadable")]
    [InlineData("rail-table=1.1:5.0,0:3.5%20bar", "rail-table", "quantity-unreadable")]
    [InlineData("rail-table=0:3.5,1.1:5.0%20bar", "rail-table", "out-of-range")]
    [InlineData("staged-with=P-17-0703-A", "staged-with", "bad-question")]
    [InlineData("fuel=methanol&ethanol=50%20%25", "ethanol", "out-of-range")]
    public async Task A_bad_value_is_refused_at_its_field(string bad, string field, string type)
    {
        var problem = await _client.RefuseAsync($"/api/fuel-supply?{Goal}&{bad}", HttpStatusCode.BadRequest, type);

        Assert.Equal(field, problem.List("errors")[0].Text("field"));
        Assert.NotEmpty(problem.List("errors")[0].Text("mend"));
    }

    [Fact]
    public async Task A_controlled_rail_is_read_from_its_table()
    {
        var answer = await _client.AskAsync($"/api/injectors?{Goal}&supply=returnless-controlled&rail-table=0:3.5,1.0:4.5,1.5:5.5%20bar");

        // At 1.1 bar of boost 4.5 + 0.2 × 1.0 = 4.7 bar on the rail, 3.6 across.
        Assert.Equal("3.60 bar", answer.GetProperty("pressureAcross").Text("text"));
    }

    [Fact]
    public async Task A_staged_set_is_judged_together()
    {
        var answer = await _client.AskAsync($"/api/injectors?{Goal}&staged-with=harl:I-4401");

        Assert.Equal("harl:I-4401", answer.GetProperty("asked").Text("stagedWith"));
        Assert.Contains("beside I-4401 (Harl Fuel Systems)", answer.List("injectors").First(injector => injector.Text("part") == "harl:I-2501").Text("because"));
    }

    // The variant is recorded with 120 kW at 5500/min on the injectors that the maker fitted (ev-0001, a document of the maker).
    [Fact]
    public async Task What_the_maker_rates_its_own_injectors_for_is_a_reason_and_no_verdict()
    {
        const string Rated = "family=tern-16&variant=ts&power=120%20kW&speed=5500/min&boost=0.8%20bar";
        const string Said = "The maker fitted it and rates the engine with it at 120 kW at 5500/min (makers document, ev-0001)";

        var own = (await _client.AskAsync($"/api/injectors?{Rated}")).List("injectors").Single(one => one.Text("part") == "harl:I-4401");
        Assert.Equal("not-known", own.Text("enough"));
        Assert.Contains(Said, own.Text("because"));
        Assert.Contains(Said, (await _client.AskAsync($"/api/fuel-supply?{Rated}")).List("links")[0].Text("because"));

        var asksMore = await _client.AskAsync($"/api/injectors?{Goal}");
        Assert.All(asksMore.List("injectors"), injector => Assert.DoesNotContain("rates the engine", injector.Text("because")));
        var otherFuel = await _client.AskAsync($"/api/injectors?{Rated}&fuel=petrol-e10");
        Assert.All(otherFuel.List("injectors"), injector => Assert.DoesNotContain("rates the engine", injector.Text("because")));
    }

    [Fact]
    public async Task Variants_and_makers_are_called_by_their_names()
    {
        var answer = await _client.AskAsync($"/api/injectors?{Goal}&staged-with=I-4401");

        Assert.Contains("TS turbocharged sport", answer.List("warnings").Single(warning => warning.Text("code") == "bmep-above-usual").Text("text"));
        Assert.Contains("TS turbocharged sport", answer.GetProperty("airSide").List("yardsticks").Select(one => one.TryGetProperty("name", out var name) ? name.GetString() : null));
        Assert.Contains("beside I-4401 (Harl Fuel Systems)", answer.List("injectors")[0].Text("because"));
        Assert.Contains("I-4401 (Harl Fuel Systems)", answer.GetProperty("needPerCylinder").Text("shared"));
        Assert.Contains("K-860 (Kestlow)", await _client.GetStringAsync(new Uri($"/api/plots/injector-flow.svg?{Goal}", UriKind.Relative), TestContext.Current.CancellationToken));
        Assert.Contains("P-17-0703-A (Pellworth)", await _client.GetStringAsync(new Uri($"/api/plots/pump.svg?{Goal}", UriKind.Relative), TestContext.Current.CancellationToken));
    }

    // The table of the pump begins at 3.0 bar, with 184 L/h at 13.5 V; idling sees less pressure, so at least that less some 0.9 L/h has to flow back.
    [Theory]
    [InlineData("", "not-known")]
    [InlineData("&return-capacity=120%20L/h", "no")]
    [InlineData("&return-capacity=60%20gal(US)/h", "not-known")]
    public async Task Return_is_a_link_of_the_chain(string asked, string expected)
    {
        var back = (await _client.AskAsync($"/api/fuel-supply?{Goal}{asked}")).List("links").Single(link => link.Text("link") == "return");
        Assert.Equal(expected, back.Text("enough"));
        Assert.Contains("183 L/h must flow back at idle", back.Text("because"));
    }

    // One pipe, one pump: what they carry hangs on no goal.
    [Fact]
    public async Task Limits_of_a_measured_line_are_the_same_for_every_goal()
    {
        async Task<(string Line, string Pump)> AskAsync(string power)
        {
            var links = (await _client.AskAsync(
                $"/api/fuel-supply?{Goal.Replace("180%20kW", power, StringComparison.Ordinal)}&line-loss=0.2%20bar&line-loss-flow=100%20L/h")).List("links");
            return (links.Single(link => link.Text("link") == "line").GetProperty("power").Text("text"),
                links.Single(link => link.Text("link") == "pump").GetProperty("power").Text("text"));
        }

        Assert.Equal(await AskAsync("60%20kW"), await AskAsync("300%20kW"));
    }

    // Nobody recorded a loss of the line, nor what the regulator passes.
    [Fact]
    public async Task What_nobody_recorded_of_the_chain_stands_in_its_headline()
    {
        var answer = await _client.AskAsync($"/api/fuel-supply?{Goal}");
        Assert.EndsWith("Not known: regulator, return, line.", answer.Text("firstToGiveOut"), StringComparison.Ordinal);
        Assert.Equal(["no", "not-known", "not-known", "not-known", "yes"], answer.List("links").Select(link => link.Text("enough")));
    }

    [Fact]
    public async Task Fit_of_more_injectors_than_a_cylinder_has_places_is_that_of_the_recorded_place_only()
    {
        var answer = await _client.AskAsync($"/api/injectors?{Goal}&injectors-per-cylinder=2");
        Assert.Equal("more-injectors-than-places", answer.List("warnings")[0].Text("code"));
        var first = answer.List("injectors")[0];
        Assert.Equal("1 of the 2 injectors of a cylinder", first.GetProperty("fit").Text("onlyFor"));
        Assert.Contains(" for 1 of the 2 injectors of a cylinder only", first.Text("because"));
        Assert.DoesNotContain("onlyFor", (await _client.AskAsync($"/api/injectors?{Goal}")).GetRawText(), StringComparison.Ordinal);
        Assert.Contains("2 injectors of a cylinder", (await _client.AskAsync($"/api/injectors?{Goal}&staged-with=I-4401")).List("injectors")[0].Text("because"));
    }

    [Fact]
    public async Task Boost_that_is_left_out_is_the_recorded_one()
    {
        var answer = await _client.AskAsync($"/api/fuel-supply?{Goal.Replace("&boost=1.1%20bar", "", StringComparison.Ordinal)}");
        Assert.Equal("0.80 bar over ambient", answer.GetProperty("asked").GetProperty("boost").Text("text"));
        Assert.Contains(answer.List("assumed"), one => one.Text("name") == "boost");
    }

    [Fact]
    public async Task Consumption_for_a_bare_horsepower_is_asked_about()
    {
        var problem = await _client.RefuseAsync($"/api/injectors?{Goal}&bsfc=0.5%20lb/(hp·h)", HttpStatusCode.BadRequest, "quantity-needs-unit");
        Assert.Equal("Which horsepower?", problem.Text("title"));
    }
}
