using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace PartMatch.Web.Tests.Seed;

/// <summary>A demo base of its own, because builds are stored in it.</summary>
public sealed class BuildSeedBase : IAsyncLifetime
{
    private readonly SeedServer _server = new();

    public HttpClient CreateClient() => _server.CreateClient();

    public ValueTask InitializeAsync() => _server.InitializeAsync();

    public ValueTask DisposeAsync() => _server.DisposeAsync();
}

/// <summary>What the demo builds are there to show, and what a builder would be hurt by if it were otherwise.</summary>
public sealed class BuildSeedTests(BuildSeedBase demo) : IClassFixture<BuildSeedBase>
{
    private readonly HttpClient _client = demo.CreateClient();

    // Route A against B+ of the demo: the short engine is cheaper and sooner than forged pistons with forged rods.
    [Fact]
    public async Task Forged_pistons_cost_more_and_take_longer()
    {
        var answer = await AskAsync("/api/builds/hill-climb/why-not?position=piston&part=VF-8500-20&on=2026-11-26");

        Assert.True(decimal.Parse(answer["costMore"]!["amount"]!.GetValue<string>(), CultureInfo.InvariantCulture) > 0);
        Assert.True(answer["daysMore"]!.GetValue<int>() > 0);
    }

    // The first thing a newcomer states: an engine, what it is to become, and nothing else. Offers in three other currencies, and sellers whose import charge nobody knows.
    [Fact]
    public async Task Build_that_says_almost_nothing_is_told_what_it_does_not_say()
    {
        await StoreAsync(new JsonObject
        {
            ["code"] = "newcomer",
            ["title"] = "Newcomer",
            ["family"] = "tern-16",
            ["donor"] = new JsonObject { ["variant"] = "tg", ["states"] = new JsonArray() },
            ["target"] = "ts",
            ["currency"] = "EUR",
        });

        var conflict = await AskAsync("/api/builds/newcomer/conflict?on=2026-11-26");

        Assert.Equal("infeasible", conflict["status"]!.GetValue<string>());
        Assert.Equal(
            ["importPercentWhereNotSaid", "rates", "rates", "rates"],
            conflict["notStated"]!.AsArray().Select(one => one!["field"]!.GetValue<string>()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Each_day_sooner_costs_something()
    {
        var points = (await AskAsync("/api/builds/hill-climb/frontier?on=2026-11-26"))["points"]!.AsArray();

        Assert.True(points.Count > 1);
        Assert.Equal(points.Count - 1, points.Count(point => point!["dayCosts"] is not null));
    }

    // Nobody has looked at them: what the maker fitted stays possible, also where the books leave open which of several parts this engine has.
    [Theory]
    [InlineData("tern-16", "tv")]
    [InlineData("tern-16", "tg")]
    [InlineData("tern-16", "ts")]
    [InlineData("tern-16", "tm")]
    [InlineData("hs-2", "hp")]
    [InlineData("hs-2", "hc")]
    [InlineData("hs-2", "hs")]
    public async Task An_engine_that_stays_what_it_is_costs_nothing(string family, string variant)
    {
        await StoreAsync(new JsonObject
        {
            ["code"] = $"as-{variant}",
            ["title"] = "As it is",
            ["family"] = family,
            ["donor"] = new JsonObject { ["variant"] = variant, ["states"] = new JsonArray() },
            ["currency"] = "EUR",
        });
        var plan = await AskAsync($"/api/builds/as-{variant}/plan?on=2026-11-26");

        Assert.Equal(("proven-optimal", "0.00"), (plan["status"]!.GetValue<string>(), plan["cost"]?["total"]?["amount"]?.GetValue<string>()));
    }

    // Asked in the sums of the injectors by themselves: for what is told they are enough whatever their spread, for a kilowatt more they may not be.
    [Fact]
    public async Task How_much_less_power_would_do_is_what_the_sums_of_the_injectors_say()
    {
        var build = await FileAsync("hill-climb", "too-strong");
        build["goal"]!["power"] = "400 kW";
        await StoreAsync(build);
        var members = (await AskAsync("/api/builds/too-strong/conflict?on=2026-11-26"))["members"]!.AsArray();
        var mend = Assert.Single(members, member => member!["wish"]!.GetValue<string>() == "goal:power")!["mend"]!.GetValue<string>();
        var told = System.Text.RegularExpressions.Regex.Match(mend, @"at most (\d+) kW as it is wished, with (\S+)");
        Assert.True(told.Success, mend);
        var kilowatts = int.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture);

        Assert.Equal("yes", await EnoughAsync(told.Groups[2].Value, kilowatts));
        Assert.NotEqual("yes", await EnoughAsync(told.Groups[2].Value, kilowatts + 1));
    }

    // A cent less than the cheapest plan costs: with the power that is told there is a plan within it, with a kilowatt more there is none.
    [Fact]
    public async Task Power_that_a_lower_budget_leaves_has_a_plan_and_a_kilowatt_more_has_none()
    {
        var total = (await AskAsync("/api/builds/hill-climb/plan?on=2026-11-26"))["cost"]!["total"]!["amount"]!.GetValue<string>();
        var budget = (decimal.Parse(total, CultureInfo.InvariantCulture) - 0.01m).ToString(CultureInfo.InvariantCulture);
        await StoreAsync(await WithinAsync("a-cent-short", budget, null));
        var members = (await AskAsync("/api/builds/a-cent-short/conflict?on=2026-11-26"))["members"]!.AsArray();
        var mend = Assert.Single(members, member => member!["wish"]!.GetValue<string>() == "goal:power")!["mend"]!.GetValue<string>();
        var told = System.Text.RegularExpressions.Regex.Match(mend, @"at most (\d+) kW as it is wished");
        Assert.True(told.Success, mend);
        var kilowatts = int.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture);

        Assert.Equal("proven-optimal", await StatusAsync(await WithinAsync("as-told", budget, kilowatts)));
        Assert.Equal("infeasible", await StatusAsync(await WithinAsync("a-kilowatt-more", budget, kilowatts + 1)));
    }

    // With less power alone there is no plan within this budget; with the sum that is told there is, with a cent less there is none.
    [Fact]
    public async Task Less_power_alone_is_told_not_to_be_enough_and_what_would_be()
    {
        await StoreAsync(await WithinAsync("too-poor", "6000.00", null));
        var conflict = await AskAsync("/api/builds/too-poor/conflict?on=2026-11-26");
        var mend = Assert.Single(conflict["members"]!.AsArray(), member => member!["wish"]!.GetValue<string>() == "goal:power")!["mend"]!.GetValue<string>();
        var told = System.Text.RegularExpressions.Regex.Match(mend, @"that alone is not enough: the plan then still costs (\S+) EUR");
        Assert.True(told.Success, mend);
        Assert.DoesNotContain("there is a plan", conflict["headlineText"]!.GetValue<string>(), StringComparison.Ordinal);
        var least = decimal.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture);

        Assert.Equal("infeasible", await StatusAsync(await WithinAsync("poor-and-weak", "6000.00", 20)));
        Assert.Equal("proven-optimal", await StatusAsync(await WithinAsync("weak", least.ToString(CultureInfo.InvariantCulture), 20)));
        Assert.Equal("infeasible", await StatusAsync(await WithinAsync("weak-a-cent-short", (least - 0.01m).ToString(CultureInfo.InvariantCulture), 20)));
    }

    // What is not known of the gasket does not hang on any other part: nothing else is blamed.
    [Fact]
    public async Task Part_of_which_something_is_not_known_is_why_not_by_itself()
    {
        var answer = await AskAsync("/api/builds/hill-climb/why-not?position=head-gasket&part=TG-9511&on=2026-11-26");
        Assert.Equal(["force:head-gasket"], answer["conflict"]!["members"]!.AsArray().Select(member => member!["wish"]!.GetValue<string>()));
        Assert.EndsWith("It is taken only where what is not known there is admitted.", answer["headlineText"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    private async Task<JsonObject> WithinAsync(string code, string budget, int? kilowatts)
    {
        var build = await FileAsync("hill-climb", code);
        build["budget"] = budget;
        build["goal"]!["power"] = kilowatts is { } power ? $"{power} kW" : build["goal"]!["power"]!.GetValue<string>();
        return build;
    }

    private async Task<string> StatusAsync(JsonObject build)
    {
        await StoreAsync(build);
        return (await AskAsync($"/api/builds/{build["code"]}/plan?on=2026-11-26"))["status"]!.GetValue<string>();
    }

    // By the sums of the injectors its duty is between 66.8 and 93.6 % where 85 % are asked for: enough or not, nobody knows.
    [Fact]
    public async Task Injectors_that_may_not_be_enough_are_said_to_be_so()
    {
        var answer = await AskAsync("/api/builds/hill-climb/why-not?position=injector&part=I-6201&on=2026-11-26");

        Assert.Contains("Whether it is enough for 180 kW is not known.", answer["headlineText"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    private async Task<string> EnoughAsync(string injector, int kilowatts)
    {
        var sized = await AskAsync(
            $"/api/injectors?family=tern-16&variant=ts&power={kilowatts}%20kW&speed=6800/min&boost=1.1%20bar&pressure=3.0%20bar&supply=return-manifold&duty=85%20%25&fuel=petrol-e0");
        return Assert.Single(sized["injectors"]!.AsArray(), one => one!["part"]!.GetValue<string>() == injector)!["enough"]!.GetValue<string>();
    }

    // The regulator that every plan has holds 3.00 bar: see values.csv.
    [Theory]
    [InlineData("3.0 bar", false)]
    [InlineData("4.0 bar", true)]
    public async Task A_goal_at_another_pressure_than_the_regulators_is_told(string pressure, bool isNotEnough)
    {
        var build = await FileAsync("hill-climb", $"at-{pressure[0]}-bar");
        build["goal"]!["pressure"] = pressure;
        await StoreAsync(build);
        var flags = (await AskAsync($"/api/builds/at-{pressure[0]}-bar/plan?on=2026-11-26"))["flags"]!.AsArray().Select(flag => flag!.GetValue<string>());

        Assert.Equal(isNotEnough, flags.Any(flag => flag.Contains("regulator pellworth:P-17-0605-A is not enough", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Nothing_is_left_off_on_trust_that_the_engine_has()
    {
        var build = await FileAsync("cart", "cart-on-trust");
        build["admitNotKnown"] = true;
        await StoreAsync(build);
        var plan = await AskAsync("/api/builds/cart-on-trust/plan?on=2026-11-26");

        Assert.Equal((await AskAsync("/api/builds/cart/plan?on=2026-11-26"))["cost"]!["text"]!.GetValue<string>(), plan["cost"]!["text"]!.GetValue<string>());
    }

    private async Task<JsonObject> FileAsync(string build, string code)
    {
        var file = await AskAsync($"/api/builds/{build}/file");
        file["code"] = code;
        return file;
    }

    private async Task<JsonObject> AskAsync(string address) =>
        (await _client.GetFromJsonAsync<JsonObject>(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken))!; // an answer is an object

    private async Task StoreAsync(JsonObject build)
    {
        using var answer = await _client.PostAsJsonAsync(new Uri("/api/builds", UriKind.Relative), build, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
