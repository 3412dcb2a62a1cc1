using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The plan at the bench: under the plan, asked for when it is opened, and alone on paper.</summary>
public sealed class WorkOrderTests(Bench bench)
{
    [Fact]
    public async Task Order_of_work_opens_under_the_plan_with_renewals_torques_and_cautions()
    {
        Chromium.MustBeThere();
        await bench.ReckonAsync("/api/builds/cart/plan?on=2026-11-26");
        await using var sheet = await bench.OpenAsync("build.html?build=cart&objective=cheapest&on=2026-11-26");
        await sheet.Page.Locator(".work-order > summary").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".work-order")).ToContainTextAsync("20 steps to take it apart, 21 to put it together again.");
        await Assertions.Expect(sheet.Page.Locator(".work-order")).ToContainTextAsync("12 N·m, then 24 N·m ± 2");
        await Assertions.Expect(sheet.Page.Locator(".work-order")).ToContainTextAsync("1 mL; a film round the spigot; cures 12 hours.");
        await sheet.AssertUsableAsync("build-work-order");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Weak_points_open_under_the_plan_with_what_they_cost_now()
    {
        Chromium.MustBeThere();
        await bench.ReckonAsync("/api/builds/cart/plan?on=2026-11-26");
        await using var sheet = await bench.OpenAsync("build.html?build=cart&objective=cheapest&on=2026-11-26");
        await sheet.Page.Locator(".weak-points > summary").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".weak-points")).ToContainTextAsync("The barrel studs draw out of the case");
        await Assertions.Expect(sheet.Page.Locator(".weak-points")).ToContainTextAsync("190.00 EUR");
        await sheet.AssertUsableAsync("build-weak-points");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Order_of_work_alone_goes_to_paper()
    {
        Chromium.MustBeThere();
        await bench.ReckonAsync("/api/builds/cart/plan?on=2026-11-26");
        await using var sheet = await bench.OpenAsync("build.html?build=cart&objective=cheapest&on=2026-11-26");
        await sheet.Page.Locator(".work-order > summary").ClickAsync();
        await sheet.Page.EvaluateAsync("() => { window.print = () => {}; }");
        await sheet.PressAsync("Print the order of work");
        await sheet.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(sheet.Page.Locator(".work-steps").First).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToBeHiddenAsync();
        sheet.AssertQuiet();
    }
}
