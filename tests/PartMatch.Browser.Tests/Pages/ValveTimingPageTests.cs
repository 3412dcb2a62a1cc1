using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The generator set's intake camshaft in the sport engine: 128° after top, 80.52 of 94 mm, 1 + 8.30 × 0.8566 = 8.11 by hand.</summary>
public sealed class ValveTimingPageTests(Bench bench) : PageTests(bench, "valve-timing.html", ("cam", Camshaft),
    ("gears", "valve-timing.html?family=hs-2&variant=hc&intake-teeth=1"))
{
    private const string Camshaft = "valve-timing.html?family=tern-16&variant=ts&intake-cam=pellworth%3AP-12-3307-A&at-lift=1+mm&wanted-trapped=8.45";

    [Fact]
    public async Task Asked_by_keyboard_it_shows_events_changes_and_the_working()
    {
        await using var sheet = await Bench.OpenAsync("valve-timing.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("The engine they go into", "TS");
        await sheet.ChooseAsync("Intake camshaft, or the only one", "P-12-3307-A");
        await sheet.PressAsync("Reckon");

        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("intake closes 96° earlier");
        await Assertions.Expect(sheet.Page.Locator(".working")).ToContainTextAsync("80.52 mm");
        await Assertions.Expect(sheet.Page.Locator("svg.plot")).ToHaveCountAsync(2);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Exhaust_side_is_not_asked_of_an_engine_with_one_camshaft()
    {
        await using var sheet = await Bench.OpenAsync("valve-timing.html?family=hs-2&variant=hc");
        await Assertions.Expect(sheet.Page.Locator("#exhaust-cam")).ToBeHiddenAsync();
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("turns against the crankshaft");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Event_without_its_unit_is_asked_about_at_its_field()
    {
        await using var sheet = await Bench.OpenAsync("valve-timing.html");
        await sheet.Expecting(400).GoAsync(Camshaft + "&intake-closes=44");
        await sheet.AssertRefusedAsync("intake-closes", "44", "deg");
        sheet.AssertQuiet();
    }
}
