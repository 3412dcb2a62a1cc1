using System.Net;

namespace PartMatch.Web.Tests.Injectors;

public sealed class InjectorEndpointsTests(SmallBase server)
{
    private const string Goal = "/api/injectors?family=duo-2&variant=a&power=20%20kW&speed=5000/min&pressure=3.0%20bar&supply=return-manifold";

    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task A_goal_is_sized_with_the_working_and_every_injector_judged()
    {
        var answer = await _client.AskAsync(Goal + "&bsfc=300%20g/(kW·h)");

        var asked = answer.GetProperty("asked");
        Assert.Equal(20_000m, asked.GetProperty("power").GetProperty("value").GetDecimal());
        Assert.Equal("20 kW", asked.GetProperty("power").Text("text"));
        Assert.Equal(0.85m, asked.GetProperty("duty").GetDecimal());
        Assert.Equal("petrol-e0", asked.Text("fuel"));
        Assert.Equal(0m, asked.GetProperty("boost").GetProperty("value").GetDecimal());
        Assert.Equal(2, asked.GetProperty("cylinders").GetInt32());

        // 20 kW × 300 g/(kW·h) = 6.0 kg/h for the engine (B03 of the arithmetic: flow = power × BSFC).
        Assert.Contains(answer.List("working"), step => step.Text("result").StartsWith("6.00 kg/h", StringComparison.Ordinal));
        var injector = Assert.Single(answer.List("injectors"));
        Assert.Equal("ardlow:I-1", injector.Text("part"));
        Assert.Equal(1, injector.GetProperty("rank").GetInt32());
        Assert.Equal("yes", injector.Text("enough"));
        Assert.Equal("fits", injector.GetProperty("fit").Text("headline"));
        Assert.Equal("fits", (await _client.AskAsync(injector.GetProperty("fit").Text("link"))).Text("headline"));
    }

    [Fact]
    public async Task The_permalink_has_the_defaults_filled_in_and_gives_the_same_answer()
    {
        var answer = await _client.AskAsync(Goal);

        Assert.DoesNotContain("boost=", answer.Text("permalink")); // left out: what is recorded of the variant
        Assert.Contains("&duty=85%20%25&fuel=petrol-e0", answer.Text("permalink"));
        Assert.Equal(answer.GetRawText(), (await _client.AskAsync(answer.Text("permalink"))).GetRawText());
    }

    [Theory]
    [InlineData("power=20%20kW", "power=240%20hp", "power", "quantity-needs-unit")]
    [InlineData("power=20%20kW", "power=20", "power", "quantity-needs-unit")]
    [InlineData("power=20%20kW", "power=20,5%20kW", "power", "quantity-decimal-comma")]
    [InlineData("power=20%20kW", "power=20%20bar", "power", "quantity-wrong-unit")]
    [InlineData("power=20%20kW", "power=much", "power", "quantity-unreadable")]
    [InlineData("speed=5000/min", "speed=5000", "speed", "quantity-needs-unit")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&bsfc=380..300%20g/(kW·h)", "bsfc", "quantity-unreadable")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&bsfc=50%20g/(kW·h)", "bsfc", "bsfc-impossible")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&duty=120%20%25", "duty", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&fuel=paraffin", "fuel", "unknown-fuel")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&shots=1.5", "shots", "bad-question")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&shots=0", "shots", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "", "pressure", "not-recorded")]
    [InlineData("&supply=return-manifold", "", "supply", "not-recorded")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&voltage=2%20V", "voltage", "out-of-range")]
    [InlineData("speed=5000/min", "speed=50/min", "speed", "out-of-range")]
    [InlineData("speed=5000/min", "speed=5000..26000/min", "speed", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "pressure=300%20bar", "pressure", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&lambda=3", "lambda", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&altitude=12000%20m", "altitude", "out-of-range")]
    [InlineData("pressure=3.0%20bar", "pressure=3.0%20bar&idle-manifold=0.4%20bar", "idle-manifold", "out-of-range")]
    [InlineData("supply=return-manifold", "supply=carrier-pigeon", "supply", "bad-question")]
    [InlineData("pressure=3.0%20bar&supply=return-manifold", "pressure=3.0%20bar&supply=return-ambient&boost=3.0%20bar", "pressure", "no-pressure-across")]
    public async Task A_bad_value_is_refused_with_its_own_problem(string good, string bad, string field, string type)
    {
        var problem = await _client.RefuseAsync(Goal.Replace(good, bad, StringComparison.Ordinal), HttpStatusCode.BadRequest, type);

        Assert.Equal(field, problem.List("errors")[0].Text("field"));
        Assert.NotEmpty(problem.List("errors")[0].Text("expected"));
        Assert.NotEmpty(problem.List("errors")[0].Text("mend"));
    }

    [Fact]
    public async Task Which_horsepower_is_asked_with_both_in_kilowatts()
    {
        var problem = await _client.RefuseAsync(Goal.Replace("20%20kW", "240%20hp", StringComparison.Ordinal), HttpStatusCode.BadRequest, "quantity-needs-unit");

        // NIST SP 811: 1 hp(I) = 745.699 871 6 W, 1 metric hp = 735.498 75 W; × 240.
        Assert.Equal("Which horsepower?", problem.Text("title"));
        Assert.Equal("240 hp", problem.OnlyError().Text("found"));
        Assert.Equal("write the one that is meant: 240 hp(I) is 178.97 kW; 240 PS is 176.52 kW", problem.OnlyError().Text("mend"));
    }

    [Fact]
    public async Task A_carburetted_variant_is_refused_with_the_reason()
    {
        var problem = await _client.RefuseAsync(Goal.Replace("variant=a", "variant=b", StringComparison.Ordinal), HttpStatusCode.BadRequest, "carburetted");

        Assert.Equal("variant", problem.OnlyError().Text("field"));
        Assert.Contains("carburettor", problem.Text("detail"));
    }

    [Theory]
    [InlineData("family=duo-2", "family=duo-9", "family")]
    [InlineData("variant=a", "variant=z", "variant")]
    public async Task An_unknown_family_or_variant_is_404(string good, string bad, string field)
    {
        var problem = await _client.RefuseAsync(Goal.Replace(good, bad, StringComparison.Ordinal), HttpStatusCode.NotFound, "not-found");

        Assert.Equal(field, problem.OnlyError().Text("field"));
    }
}
