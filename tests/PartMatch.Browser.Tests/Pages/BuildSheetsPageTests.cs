using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The sheets of a build that are read away from the bench, and what is told of it once it is finished.</summary>
public sealed class BuildSheetsPageTests(Bench bench, WritingServer server) : PageTests(
    bench, "build.html", ("yard-list", Yard), ("parts-list", Parts)), IClassFixture<WritingServer>, IAsyncLifetime
{
    private const string Yard = "build.html?build=hill-climb&objective=cheapest&show=yard-list";
    private const string Parts = "build.html?build=hill-climb&objective=cheapest&show=parts-list";

    public async ValueTask InitializeAsync()
    {
        await Bench.ReckonAsync("/api/builds/hill-climb/plan");
        await Bench.ReckonAsync("/api/builds/hill-climb/yard-list");
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task What_to_look_for_in_a_yard_is_asked_by_keyboard_and_says_what_each_part_is_taken_for()
    {
        await using var sheet = await Bench.OpenAsync("build.html?build=hill-climb");
        await sheet.PressAsync("What to look for in a yard");
        await sheet.ArriveAtAsync(Yard);
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToBeFocusedAsync();
        var pump = sheet.Page.Locator("[data-position=coolant-pump]");
        await Assertions.Expect(pump).ToContainTextAsync("P-26-1147-E");
        await Assertions.Expect(pump.Locator(".checks li").First).ToContainTextAsync("anticlockwise");
        await Assertions.Expect(pump.Locator(".mistaken")).ToContainTextAsync("P-26-1147-C");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Listitem).Filter(new() { HasTextRegex = new Regex("^A caliper: for ") })).ToBeVisibleAsync();
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task What_fitted_and_what_ran_is_recorded_in_one_sitting_and_stands_in_the_parts_list()
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("hill-climb", "hill-climb-done");
        await using var sheet = (await Bench.OpenAsync(server.Address, "build.html?build=hill-climb-done&show=parts-list", Look.Light)).Expecting(400);
        await sheet.Page.Locator("#record > summary").ClickAsync();
        await sheet.Page.GetByLabel("Hours under load").FillAsync("many");
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "All of it went on" }).ClickAsync();

        // Nothing was ordered: what the plan buys is left out of all of it, and ticked for the pump alone.
        var pump = sheet.Page.Locator(".telling[data-position=coolant-pump]");
        await Assertions.Expect(pump.Locator("input[name=mounts-coolant-pump]:checked")).ToHaveValueAsync("");
        await sheet.Page.Locator(".left-out > summary").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".left-out li").Filter(new() { HasText = "Coolant pump:" })).ToContainTextAsync("not ordered yet");
        await sheet.Page.Locator("input[name=stands-coolant-pump]").CheckAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "All of it went on" }).ClickAsync();
        await Assertions.Expect(pump.Locator("input[name=mounts-coolant-pump]:checked")).ToHaveValueAsync("yes");
        await RecordAsync(sheet);
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await sheet.AssertUsableAsync("build-sitting-wrong");
        await sheet.Page.GetByLabel("Hours under load").FillAsync("6.5");
        await sheet.Page.Locator("#record summary").Filter(new() { HasText = "Cooling" }).ClickAsync();
        await pump.GetByLabel("the same", new() { Exact = true }).CheckAsync();
        await pump.GetByLabel("What you saw").FillAsync("88 °C at full load");
        await RecordAsync(sheet);
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("positions are as somebody built them");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Row, new() { Name = "88 °C at full load" })).ToContainTextAsync("went on, ran the same");
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("6.5 hours under load");
        sheet.AssertQuiet();
    }

    // Asked once more, with the count, before it counts for every build.
    private static async Task RecordAsync(Sheet sheet)
    {
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Record it all" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".sure")).ToContainTextAsync("count for every build");
        await sheet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Record [0-9]+ finding") }).ClickAsync();
    }
}
