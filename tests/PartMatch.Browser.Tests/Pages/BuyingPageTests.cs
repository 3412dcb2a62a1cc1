using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The demo build half-way through: what was bought and what came, on the bench and with a phone in one hand.</summary>
public sealed class BuyingPageTests(Bench bench) : PageTests(
    bench, "build.html", ("orders", Buying), ("goods-in", GoodsIn)), IAsyncLifetime
{
    private const string Buying = "build.html?build=hill-climb-bench&show=orders";

    private const string GoodsIn = "build.html?build=hill-climb-bench&show=goods-in";

    public async ValueTask InitializeAsync() => await Bench.ReckonAsync("/api/builds/hill-climb-bench/plan?objective=cheapest");

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    // By pencil: 248.68 + 506.80 + 270.10 + 400.00 are paid, 870.00 + 1176.09 are not.
    [Fact]
    public async Task Money_of_the_build_is_said_first()
    {
        await using var sheet = await Bench.OpenAsync(Buying);
        await Assertions.Expect(sheet.Page.Locator(".bench-money")).ToContainTextAsync(new Regex(@"1425\.58.*spent.*2046\.09.*ordered and not paid"));
        await Assertions.Expect(sheet.Page.Locator(".bench-money")).ToContainTextAsync("to go");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Wrong_pump_is_shown_with_its_way_back_and_is_to_be_ordered_again()
    {
        await using var sheet = await Bench.OpenAsync(GoodsIn);
        var pump = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "P-26-1147-E" });
        await Assertions.Expect(pump).ToContainTextAsync("Send it back: It can go back until 2026-12-02");
        await sheet.GoAsync(Buying);
        await Assertions.Expect(sheet.Page.Locator(".bench-part form li").Filter(new() { HasText = "Coolant pump" })).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }
}

/// <summary>Telling what came, on a base of its own.</summary>
public sealed class GoodsInTellingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task What_came_is_looked_at_and_told_on_a_phone()
    {
        await using var sheet = await bench.OpenAsync(server.Address, "build.html?build=hill-climb-bench&show=goods-in", Look.Phone);
        var gasket = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "P-14-0212-A" });
        sheet.Expecting(400);
        var right = gasket.GetByRole(AriaRole.Button, new() { Name = "It is right" });
        await right.ClickAsync();
        await Assertions.Expect(gasket.Locator(".faults")).ToContainTextAsync("at least one check");
        await gasket.GetByLabel("Looked at without a check").CheckAsync();
        await right.ClickAsync();
        await Assertions.Expect(gasket).ToHaveCountAsync(0);

        var order = await server.ReadAsync("/api/builds/hill-climb-bench/orders/3");
        Assert.Equal("checked", order.GetProperty("order").GetProperty("lines")[1].GetProperty("state").GetString());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Payment_of_less_than_is_owed_is_asked_what_it_means()
    {
        await server.CopyOrderedAsync("hill-climb", "hill-climb-paid", "tern-16/of-0345");
        await using var sheet = (await bench.OpenAsync(server.Address, "build.html?build=hill-climb-paid&show=orders", Look.Light)).Expecting(400);
        var order = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "Order 1" });
        var owed = (await MoneyAsync("hill-climb-paid")).GetProperty("committed").GetProperty("amount").GetString();
        await order.Locator("summary").Filter(new() { HasText = "Tell what happened" }).ClickAsync();
        await order.GetByLabel("Amount in EUR").FillAsync("1.00");
        await order.GetByRole(AriaRole.Button, new() { Name = "Tell it" }).ClickAsync();
        await Assertions.Expect(order.Locator(".faults")).ToContainTextAsync($"{owed} EUR, which is owed");
        await order.GetByLabel("That is").SelectOptionAsync("a part of it: more is to be paid");
        await order.GetByRole(AriaRole.Button, new() { Name = "Tell it" }).ClickAsync();
        await Assertions.Expect(order).ToContainTextAsync("Spent 1.00 EUR");
        await Assertions.Expect(order).Not.ToContainTextAsync("null");
        Assert.Equal("1.00", (await MoneyAsync("hill-climb-paid")).GetProperty("spent").GetProperty("amount").GetString());
        Assert.NotEqual("0.00", (await MoneyAsync("hill-climb-paid")).GetProperty("committed").GetProperty("amount").GetString());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Basket_that_was_ordered_from_another_tab_is_not_ordered_again()
    {
        await server.CopyBuildAsync("hill-climb", "hill-climb-tabs");
        await server.ReckonAsync("/api/builds/hill-climb-tabs/plan?objective=cheapest");
        await using var sheet = (await bench.OpenAsync(server.Address, "build.html?build=hill-climb-tabs&show=orders", Look.Light)).Expecting(412);
        var basket = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "Coolant pump" }).First;
        await Assertions.Expect(basket).ToContainTextAsync("tell them apart before paying", new() { IgnoreCase = true });
        await server.OrderAsync("hill-climb-tabs", "tern-16/of-0345"); // the other tab
        await basket.GetByRole(AriaRole.Button, new() { Name = "These are ordered" }).ClickAsync();
        await Assertions.Expect(basket.Locator(".faults")).ToContainTextAsync("Meanwhile order 1 was made");
        Assert.Single((await server.ReadAsync("/api/builds/hill-climb-tabs/orders?plan=no")).GetProperty("orders").EnumerateArray());
        sheet.AssertQuiet();
    }

    private async Task<System.Text.Json.JsonElement> MoneyAsync(string build) => (await server.ReadAsync($"/api/builds/{build}/orders?plan=no")).GetProperty("money");
}
