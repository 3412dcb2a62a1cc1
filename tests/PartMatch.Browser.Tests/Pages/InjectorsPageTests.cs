using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The goal of the hill-climb build: 180 kW at 6800/min, 1.1 bar of boost, three injectors.</summary>
public sealed class InjectorsPageTests(Bench bench) : PageTests(
    bench, "injectors.html", ("goal", Goal), ("alcohol", Goal.Replace("petrol-e0", "e85", StringComparison.Ordinal)))
{
    private const string Goal = "injectors.html?family=tern-16&variant=ts&fuel=petrol-e0&power=180+kW&speed=6800%2Fmin&boost=1.1+bar&supply=return-manifold&pressure=3.0+bar&duty=85+%25";

    [Fact]
    public async Task Asked_by_keyboard_it_shows_the_need_the_ranked_injectors_and_the_working()
    {
        await using var sheet = await Bench.OpenAsync("injectors.html");
        await FillGoalAsync(sheet, "180 kW");
        await sheet.ChooseAsync("Fuel", "Petrol without");
        await sheet.TabToAsync(sheet.Page.GetByText("What the variant or a published range fills in"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.TypeAsync("Specific consumption", "300..330..380 g/(kW·h)");
        await sheet.PressAsync("Reckon");

        // 180 kW × 330 g/(kW·h) = 59.40 kg/h for the whole engine, by hand.
        await Assertions.Expect(sheet.Page.Locator(".working").Last).ToContainTextAsync("59.40 kg/h");
        await Assertions.Expect(sheet.Page.Locator(".ranked tbody tr")).ToHaveCountAsync(18);
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToContainTextAsync(new Regex("^Look for [0-9]+ cm³/min each, [0-9]+ to be sure$"));
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_bare_hp_is_asked_about_at_its_field()
    {
        await using var sheet = (await Bench.OpenAsync("injectors.html")).Expecting(400);
        await FillGoalAsync(sheet, "240 hp");
        await sheet.PressAsync("Reckon");
        await sheet.AssertRefusedAsync("power", "240 hp", "hp(I)");
        Assert.Contains("Which horsepower?", await sheet.TextAsync(".faults"), StringComparison.Ordinal);
        await sheet.TypeAsync("Power at the crank", "240 hp(I)");
        await sheet.PressAsync("Reckon");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToHaveCountAsync(0);
        await Assertions.Expect(sheet.Page.Locator(".ranked table").First).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_carburetted_variant_is_refused_with_the_reason()
    {
        await using var sheet = await Bench.OpenAsync("injectors.html");
        await sheet.Expecting(400).GoAsync("injectors.html?family=hs-2&variant=hp&power=9+kW&speed=3600%2Fmin&pressure=3.0+bar&supply=return-ambient");
        Assert.Contains("carburettor", await sheet.TextAsync(".faults"), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(await sheet.TextAsync("#answer"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_voltage_in_the_address_stands_in_the_form_and_is_asked_again()
    {
        await using var sheet = await Bench.OpenAsync($"{Goal}&voltage=11+V");
        await Assertions.Expect(sheet.Page.Locator("#voltage")).ToHaveValueAsync("11 V");
        await AssertSameWhenReopenedAsync(sheet);
    }

    private static async Task FillGoalAsync(Sheet sheet, string power)
    {
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("Variant", "TS");
        await sheet.TypeAsync("Power at the crank", power);
        await sheet.TypeAsync("At engine speed", "6800/min");
        await sheet.TypeAsync("Boost, over ambient", "1.1 bar");
    }

    [Fact]
    public async Task An_unknown_family_in_the_address_loses_nothing_else_that_was_asked()
    {
        await using var sheet = await Bench.OpenAsync("index.html");
        await sheet.Expecting(404).GoAsync("injectors.html?family=nope&variant=ts&power=180+kW&speed=6800/min");
        await Assertions.Expect(sheet.Page.GetByLabel("Power at the crank")).ToHaveValueAsync("180 kW");
        await Assertions.Expect(sheet.Page.GetByLabel("At engine speed")).ToHaveValueAsync("6800/min");
        await Assertions.Expect(sheet.Page.GetByLabel("Variant")).ToHaveValueAsync("ts");
    }
}
