using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The demo build: its plan, and what is asked about it.</summary>
public sealed class BuildPageTests(Bench bench) : PageTests(
    bench, "build.html", ("plan", Plan), ("why", $"{Plan}&line=piston"), ("why-not", $"{Plan}&line=piston&part={Uri.EscapeDataString(NotForSale)}")), IAsyncLifetime
{
    private const string Plan = "build.html?build=hill-climb&objective=cheapest";

    // A piston of another variant, which no seller of the demo data offers.
    private const string NotForSale = "pellworth:P-11-4001-A";

    public async ValueTask InitializeAsync() => await Bench.ReckonAsync("/api/builds/hill-climb/plan");

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task From_the_list_to_a_plan_that_says_proof_money_and_day_first_by_keyboard()
    {
        await using var sheet = await Bench.OpenAsync("builds.html");
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new() { Name = "Hill-climb single-seater from a range-extender unit" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("build.html?build=hill-climb");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToContainTextAsync("180 kW at 6800/min");
        await sheet.PressAsync("Plan it");
        await sheet.ArriveAtAsync("build.html?build=hill-climb&objective=cheapest");
        var heading = sheet.Page.Locator(".headline h2");
        await Assertions.Expect(heading).ToBeFocusedAsync();
        await Assertions.Expect(heading).ToHaveTextAsync(new Regex(@"No plan is cheaper: \d+\.\d\d EUR, ready on \d{4}-\d\d-\d\d"));
        await Assertions.Expect(sheet.Page.Locator(".cost .total").First).ToContainTextAsync("Together");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task What_is_done_at_a_position_is_said_in_a_word_and_a_shape()
    {
        await using var sheet = await Bench.OpenAsync(Plan);
        var action = sheet.Page.Locator("tr[data-position=piston] .action");
        await Assertions.Expect(action).ToHaveTextAsync(new Regex("^(Keep|Replace|Renew)"));
        await Assertions.Expect(action.Locator("svg")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Why_opens_under_its_line_stands_in_the_address_and_goes_with_a_step_back()
    {
        await using var sheet = await Bench.OpenAsync(Plan);
        await sheet.TabToAsync(sheet.Page.Locator("tr[data-position=piston] a").Filter(new() { HasText = "Why?" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("build.html?build=hill-climb&objective=cheapest&line=piston");
        await sheet.SettleAsync();
        var panel = sheet.Page.Locator("tr[data-position=piston] + .asked-about");
        await Assertions.Expect(panel.Locator("h3")).ToBeFocusedAsync();
        await Assertions.Expect(panel.Locator(".chain li").First).ToBeVisibleAsync();
        await Assertions.Expect(panel.Locator("a[href^='fit.html?']").First).ToBeVisibleAsync();
        await sheet.Page.GoBackAsync();
        await Assertions.Expect(panel).ToHaveCountAsync(0);
        await sheet.Page.GoForwardAsync();
        await Assertions.Expect(panel).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Why_not_another_is_asked_by_its_number_and_answered_in_the_panel()
    {
        await using var sheet = await Bench.OpenAsync($"{Plan}&line=piston&part=another");
        await sheet.TypeAsync("Why not this one?", NotForSale);
        await sheet.PressAsync("Ask");
        await sheet.ArriveAtAsync($"build.html?build=hill-climb&objective=cheapest&line=piston&part={NotForSale}");
        await sheet.SettleAsync();
        var heading = sheet.Page.Locator(".forced h4");
        await Assertions.Expect(heading).ToBeFocusedAsync();
        await Assertions.Expect(heading).ToContainTextAsync("obody sells");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_another_part_costs_more_and_changes_stands_in_a_table()
    {
        await using var sheet = await Bench.OpenAsync("build.html?build=hill-climb");
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/why-not?*", route => route.FulfillAsync(new()
        {
            ContentType = "application/json",
            Body = """
                {"asked":{"build":"hill-climb","version":1,"objective":"cheapest","startOn":"2026-06-01"},"position":"piston","part":"pellworth:P-11-4001-A","status":"proven-optimal",
                "headlineText":"The plan with it costs more.","costMore":{"amount":"82.00","currency":"EUR"},"daysMore":-3,
                "changes":[{"position":"piston","name":"pistons","was":"Keep","becomes":"Replace"}],"permalink":"/api/builds/hill-climb/why-not"}
                """,
        }));
        await sheet.GoAsync($"{Plan}&line=piston&part={NotForSale}");
        var forced = sheet.Page.Locator(".forced");
        await Assertions.Expect(forced).ToContainTextAsync("82.00 EUR more");
        await Assertions.Expect(forced).ToContainTextAsync("3 days sooner");
        await Assertions.Expect(forced.GetByRole(AriaRole.Row, new() { Name = "Pistons" })).ToContainTextAsync("Replace");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_each_day_sooner_costs_stands_in_a_table_beside_its_drawing()
    {
        await using var sheet = await Bench.OpenAsync("build.html?build=hill-climb");
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/frontier?*", route => route.FulfillAsync(new()
        {
            ContentType = "application/json",
            Body = """
                {"asked":{"build":"hill-climb","version":1,"objective":"cheapest","startOn":"2026-06-01"},"status":"proven-optimal","headlineText":"Two plans.",
                "points":[{"days":7,"readyOn":"2026-06-08","cost":{"amount":"1414.00","currency":"EUR"},"dayCosts":{"amount":"70.75","currency":"EUR"},"sureness":"proven",
                "differs":[{"position":"piston","name":"pistons","was":"Keep","becomes":"Replace"}]},
                {"days":11,"readyOn":"2026-06-12","cost":{"amount":"1131.00","currency":"EUR"},"sureness":"documented","differs":[]}],
                "swings":[{"what":"price","subject":"tern-16/of-0003","text":"the pistons may cost 60.00 EUR more","room":{"amount":"60.00","currency":"EUR"}}],
                "plot":"/api/plots/frontier.svg?build=hill-climb","permalink":"/api/builds/hill-climb/frontier"}
                """,
        }));
        await sheet.Page.RouteAsync("**/api/plots/**", _ => throw new InvalidOperationException("For a drawing the same would be worked out again."));
        await sheet.PressAsync("What does each day sooner cost?");
        await sheet.ArriveAtAsync("build.html?build=hill-climb&objective=cheapest&show=trade-off");
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Img, new() { Name = "1414.00 EUR after 7 days; 1131.00 EUR after 11 days" })).ToBeVisibleAsync();
        var soonest = sheet.Page.GetByRole(AriaRole.Row, new() { Name = "7 days" });
        await Assertions.Expect(soonest).ToContainTextAsync("70.75 EUR a day");
        await sheet.AssertUsableAsync("build-trade-off");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_plan_asked_for_before_another_does_not_come_late_over_it()
    {
        await using var sheet = await Bench.OpenAsync("build.html?build=hill-climb");
        var held = new TaskCompletionSource();
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/plan?objective=cheapest", async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Plan it" }).ClickAsync();
        await sheet.PickAsync("the day it is ready");
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Plan it" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToContainTextAsync("No plan is sooner");
        held.SetResult();
        await sheet.Page.EvaluateAsync("() => new Promise(done => setTimeout(done, 300))");
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToContainTextAsync("No plan is sooner");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_long_search_tells_how_far_it_is_and_can_be_stopped()
    {
        await using var sheet = await Bench.OpenAsync("build.html?build=hill-climb");
        var stopped = new TaskCompletionSource();
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/plan?*", async route =>
        {
            await stopped.Task;
            await route.FulfillAsync(new()
            {
                ContentType = "application/jsonl",
                Body = """
                    {"best":113100,"bound":104900}
                    {"asked":{"build":"hill-climb","version":1,"objective":"cheapest","startOn":"2026-06-01"},"status":"stopped-by-you","headlineText":"Stopped by you before any plan was found.","lines":[],"baskets":[],"works":[],"leftOver":[],"onTrust":[],"notWeighed":[],"flags":[],"cautions":[],"permalink":"/api/builds/hill-climb/plan"}
                    """,
            });
        });
        await sheet.Page.RouteAsync("**/api/builds/hill-climb/stop", async route =>
        {
            stopped.SetResult();
            await route.FulfillAsync(new() { ContentType = "application/json", Body = """{"stopped":1}""" });
        });
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Plan it" }).ClickAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Stop, and show the best found" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToHaveTextAsync("Stopped by you before any plan was found.");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_build_that_is_not_there_is_said_so()
    {
        await using var sheet = (await Bench.OpenAsync("build.html")).Expecting(404);
        await sheet.GoAsync("build.html?build=hill-clim");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("did you mean hill-climb?");
        sheet.AssertQuiet();
    }
}
