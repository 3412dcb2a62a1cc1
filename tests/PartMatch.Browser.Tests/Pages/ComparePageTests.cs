using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class ComparePageTests(Bench bench) : PageTests(
    bench, "compare.html", ("two", Tern + "variants=tg,ts"), ("stoppers", Tern + "variants=tg,tm,ts,tv&show=stoppers"), ("group", Tern + "variants=tv,ts&group=cooling"))
{
    private const string Tern = "compare.html?family=tern-16&";

    [Fact]
    public async Task Asked_by_keyboard_the_coolant_pumps_differ_and_the_verdict_leads_to_its_reasons()
    {
        await using var sheet = await Bench.OpenAsync("compare.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        foreach (var variant in new[] { "TS turbocharged sport", "TV delivery van" })
        {
            await sheet.TickAsync(variant);
        }

        await sheet.PressAsync("Compare");
        var row = sheet.Page.GetByRole(AriaRole.Row).Filter(new LocatorFilterOptions { HasText = "P-26-1147-E" }).First;
        await Assertions.Expect(row).ToContainTextAsync("differs");
        await Assertions.Expect(row).ToContainTextAsync("P-26-1147-C");
        await AssertSameWhenReopenedAsync(sheet);
        var across = row.GetByRole(AriaRole.Link).Filter(new LocatorFilterOptions { HasText = "tv → ts" });
        await sheet.TabToAsync(across);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("fit.html?");
        Assert.Contains("Mounts but runs differently", await sheet.TextAsync("#answer h2"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Counts_stay_the_same_whatever_is_shown()
    {
        await using var sheet = await Bench.OpenAsync(Tern + "variants=tg,ts");
        var counts = await sheet.TextAsync("#answer .headline");
        var rows = await sheet.Page.Locator("#answer tbody tr").CountAsync();
        await sheet.GoAsync(Tern + "variants=tg,ts&show=stoppers");
        Assert.Equal(counts, await sheet.TextAsync("#answer .headline"));
        Assert.InRange(await sheet.Page.Locator("#answer tbody tr").CountAsync(), 1, rows - 1);
    }

    [Fact]
    public async Task One_variant_alone_is_refused_at_the_variants()
    {
        await using var sheet = (await Bench.OpenAsync("compare.html")).Expecting(400);
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.TickAsync("TG range-extender generator set");
        await sheet.PressAsync("Compare");
        await sheet.AssertRefusedAsync("variant-tg", "tg", "2 to 6 different variants");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Where_a_camshaft_differs_its_timing_in_the_other_engine_is_one_step_away()
    {
        await using var sheet = await Bench.OpenAsync("compare.html?family=tern-16&variants=tg,ts");
        await sheet.Page.Locator("a[href*='intake-cam=pellworth:P-12-3307-A']").PressAsync("Enter");
        await sheet.ArriveAtAsync("valve-timing.html?family=tern-16&variant=ts&intake-cam=pellworth:P-12-3307-A");

        // 1 + (9.30 − 1) × 0.8566, by hand in the README.
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("8.11");
        sheet.AssertQuiet();
    }
}
