using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The goal of the hill-climb build: 180 kW at 6800/min, 1.1 bar of boost.</summary>
public sealed class FuelSupplyPageTests(Bench bench) : PageTests(
    bench, "fuel-supply.html", ("goal", Goal), ("alcohol", Goal.Replace("petrol-e0", "e85", StringComparison.Ordinal)))
{
    private const string Goal = "fuel-supply.html?family=tern-16&variant=ts&fuel=petrol-e0&power=180+kW&speed=6800%2Fmin&boost=1.1+bar&supply=return-manifold&pressure=3.0+bar&duty=85+%25";

    // 180 kW × 330 g/(kW·h) ÷ 0.745 kg/L × 1.2 = 95.7 L/h; rail 4.1 bar and 0.2 × 0.957² of loss, by hand.
    [Fact]
    public async Task Asked_by_keyboard_it_shows_the_need_the_chain_and_the_ranked_pumps()
    {
        await using var sheet = await Bench.OpenAsync("fuel-supply.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("Variant", "TS");
        await Assertions.Expect(sheet.Page.Locator("#power")).ToHaveValueAsync("120 kW"); // as recorded, to be written over
        await Assertions.Expect(sheet.Page.Locator("#supply")).ToHaveValueAsync("return-manifold");
        await sheet.TypeAsync("Power at the crank", "180 kW");
        await sheet.TypeAsync("At engine speed", "6800/min");
        await sheet.TypeAsync("Boost, over ambient", "1.1 bar");
        await sheet.PressAsync("Reckon");

        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToContainTextAsync("95.7 L/h, 123.5 to be sure, at 4.28 bar");
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("give out first");
        await Assertions.Expect(sheet.Page.Locator(".pumps tbody tr").First).ToContainTextAsync("P-17-0703-A");
        await Assertions.Expect(sheet.Page.Locator("svg.plot")).ToHaveCountAsync(1);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task The_two_sheets_keep_the_question()
    {
        await using var sheet = await Bench.OpenAsync(Goal);
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "The injectors for this goal" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#power")).ToHaveValueAsync("180 kW");
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToContainTextAsync("Look for");
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "Does the fuel reach them?" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#boost")).ToHaveValueAsync("1.1 bar");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_pump_that_is_none_is_refused_at_its_field()
    {
        await using var sheet = await Bench.OpenAsync("fuel-supply.html");
        await sheet.Expecting(400).GoAsync($"{Goal}&pump=P-26-1147-C");
        Assert.Contains("coolant-pump", await sheet.TextAsync(".faults"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_pump_in_the_address_is_told_on_the_line_of_its_folded_fields_beside_what_is_recorded_of_the_engine()
    {
        await using var sheet = await Bench.OpenAsync("fuel-supply.html?family=tern-16&variant=ts&pump=P-17-0701-A");
        await Assertions.Expect(sheet.Page.GetByLabel("Power at the crank")).ToHaveValueAsync("120 kW");
        await Assertions.Expect(sheet.Page.GetByLabel("Pump", new() { Exact = true })).ToBeHiddenAsync();
        await Assertions.Expect(LineOf("The parts of the supply")).ToContainTextAsync("Pump: P-17-0701-A");
        await Assertions.Expect(LineOf("Supply, pressure")).ToContainTextAsync("Fuel pressure, gauge: 3.00 bar");
        await sheet.PressAsync("Reckon");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("P-17-0701-A");

        ILocator LineOf(string group) => sheet.Page.Locator("summary").Filter(new LocatorFilterOptions { HasText = group });
    }

    [Fact]
    public async Task What_is_recorded_of_a_variant_left_again_does_not_come_late_into_the_form()
    {
        await using var sheet = await Bench.OpenAsync("fuel-supply.html?family=tern-16");
        await sheet.Page.RouteAsync("**/variants/tg", async route =>
        {
            await Task.Delay(TimeSpan.FromSeconds(1.5), TestContext.Current.CancellationToken);
            await route.ContinueAsync();
        });
        await sheet.Page.Locator("#variant").SelectOptionAsync("tg");
        var late = sheet.Page.WaitForResponseAsync("**/variants/tg");
        await sheet.Page.Locator("#variant").SelectOptionAsync("ts");
        await Assertions.Expect(sheet.Page.Locator("#power")).ToHaveValueAsync("120 kW");
        await late;
        await sheet.Page.EvaluateAsync("() => new Promise(done => setTimeout(done, 100))");
        await Assertions.Expect(sheet.Page.Locator("#power")).ToHaveValueAsync("120 kW");
    }
}
