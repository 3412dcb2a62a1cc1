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
    public async Task What_is_right_is_told_with_one_press_on_a_phone()
    {
        await using var sheet = await bench.OpenAsync(server.Address, "build.html?build=hill-climb-bench&show=goods-in", Look.Phone);
        var gasket = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "P-14-0212-A" });
        await gasket.GetByRole(AriaRole.Button, new() { Name = "It is right" }).ClickAsync();
        await Assertions.Expect(gasket).ToHaveCountAsync(0);

        var order = await server.ReadAsync("/api/builds/hill-climb-bench/orders/3");
        Assert.Equal("checked", order.GetProperty("order").GetProperty("lines")[1].GetProperty("state").GetString());
        sheet.AssertQuiet();
    }
}
