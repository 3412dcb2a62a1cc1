using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The demo build half-way through: what was bought and what came, on the bench and with a phone in one hand.</summary>
public sealed partial class BuyingPageTests(Bench bench) : PageTests(
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

    // Order 1 is paid and checked; order 3 has parts that nobody looked at. On a phone only headings stand for what is done, and for each seller.
    [Fact]
    public async Task On_a_phone_what_is_done_and_each_seller_is_folded()
    {
        await using var sheet = await Bench.OpenAsync(Buying, Look.Phone);
        await Assertions.Expect(sheet.Page.Locator(".to-order").First).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".to-order > details[open]")).ToHaveCountAsync(0);
        await Assertions.Expect(sheet.Page.Locator(".to-order summary").First).ToContainTextAsync("EUR");
        var done = sheet.Page.Locator(".bench-part.done").Filter(new() { HasText = "Order 1" });
        await Assertions.Expect(done.GetByRole(AriaRole.List).First).ToBeHiddenAsync();
        await Assertions.Expect(sheet.Page.Locator(".bench-part").Filter(new() { HasText = "Order 3" }).GetByRole(AriaRole.List).First).ToBeVisibleAsync();
        await done.Locator("summary").First.ClickAsync();
        await Assertions.Expect(done.GetByRole(AriaRole.List).First).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task On_a_phone_what_is_on_the_way_is_folded_and_what_came_is_open()
    {
        await using var sheet = await Bench.OpenAsync(GoodsIn, Look.Phone);
        var there = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "P-14-0212-A" });
        await Assertions.Expect(there.GetByRole(AriaRole.Button, new() { Name = "It is right" })).ToBeVisibleAsync();
        var comes = sheet.Page.GetByRole(AriaRole.Button, new() { Name = "It has come" });
        await Assertions.Expect(comes).ToHaveCountAsync(0); // in a fold it is not there to be pressed
        await sheet.Page.Locator("details.fold > summary").Filter(new() { HasText = "on the way" }).First.ClickAsync();
        await Assertions.Expect(comes.First).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    // A list for the shop is carried in a pocket.
    [Theory]
    [InlineData(Buying, 3)]
    [InlineData(GoodsIn, 6)]
    public async Task Sheet_takes_few_pages_of_paper(string address, int most)
    {
        await using var sheet = await Bench.OpenAsync(address);
        await Assertions.Expect(sheet.Page.GetByText("Working out what is still to be ordered")).ToHaveCountAsync(0);
        await sheet.TakeAsync(Look.Print);
        var paper = await sheet.Page.PdfAsync(new PagePdfOptions { Format = "A4", PrintBackground = false });
        Assert.InRange(Leaves().Count(Encoding.Latin1.GetString(paper)), 1, most);
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex Leaves();
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

    // Two weeks from 2026-11-18, on which it came; of 506.80 nothing came back yet.
    [Fact]
    public async Task Wrong_part_is_sent_back_from_the_sheet_by_its_deadline()
    {
        await using var sheet = (await bench.OpenAsync(server.Address, "build.html?build=hill-climb-bench&show=goods-in", Look.Phone)).Expecting(400);
        var pump = sheet.Page.Locator(".bench-part").Filter(new() { HasText = "P-26-1147-E" });
        await Assertions.Expect(pump).ToContainTextAsync("Send it back: It can go back until 2026-12-02, 14 days after it came");
        await pump.Locator("summary").Filter(new() { HasText = "Send it back" }).ClickAsync();
        await pump.GetByLabel("What sending it cost").FillAsync("nine");
        await pump.GetByLabel("On", new() { Exact = true }).FillAsync("2026-11-24");
        await pump.GetByRole(AriaRole.Button, new() { Name = "It is sent back" }).ClickAsync();
        await Assertions.Expect(pump.Locator(".faults")).ToContainTextAsync("as 84.00");
        await Assertions.Expect(pump.GetByLabel("What sending it cost")).ToHaveValueAsync("nine"); // nothing typed is lost
        await pump.GetByLabel("What sending it cost").FillAsync("9.40");
        await pump.GetByRole(AriaRole.Button, new() { Name = "It is sent back" }).ClickAsync();
        await Assertions.Expect(pump).ToHaveCountAsync(0);

        var order = (await server.ReadAsync("/api/builds/hill-climb-bench/orders/2")).GetProperty("order");
        Assert.Equal("returned", order.GetProperty("lines")[0].GetProperty("state").GetString());
        var told = order.GetProperty("events").EnumerateArray().Last().GetProperty("did");
        Assert.Equal(("returned", "2026-11-24", "9.40"), (told.GetProperty("act").GetString(), told.GetProperty("on").GetString(), told.GetProperty("amount").GetString()));
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
