using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Which donor to drive to: the demo build's four.</summary>
public sealed class DonorsPageTests(Bench bench, WritingServer server) : PageTests(bench, "donors.html", ("ranked", Ranked)), IClassFixture<WritingServer>,
    IAsyncLifetime
{
    private const string Ranked = "donors.html?build=hill-climb&objective=cheapest";

    public async ValueTask InitializeAsync()
    {
        foreach (var donor in new[] { "donor", "track-short", "valley-van", "boat-house" })
        {
            await Bench.ReckonAsync($"/api/builds/hill-climb/plan?donor={donor}");
        }

        await Bench.ReckonAsync("/api/donors?build=hill-climb");
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task The_best_stands_first_and_what_to_look_at_before_paying_opens_under_its_name_by_keyboard()
    {
        await using var sheet = await Bench.OpenAsync("donors.html");
        await sheet.ChooseAsync("For which build", "Hill-climb single-seater");
        await sheet.PressAsync("Rank them");
        await sheet.ArriveAtAsync(Ranked);
        var heading = sheet.Page.Locator(".headline h2");
        await Assertions.Expect(heading).ToHaveTextAsync(new Regex(@"is cheapest to finish: \d+\.\d\d EUR with everything, ready on \d{4}-\d\d-\d\d"));
        await Assertions.Expect(heading).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".donors tbody tr")).ToHaveCountAsync(4);
        await Assertions.Expect(sheet.Page.Locator("tr[data-donor=boat-house]")).ToContainTextAsync("not known");
        await sheet.TabToAsync(sheet.Page.Locator("#donor-valley-van > summary"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#donor-valley-van .checks li").First).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator("#donor-valley-van .looks tbody tr").First).ToContainTextAsync("no plan without it");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_ranking_opened_again_at_its_address_is_the_same()
    {
        await using var sheet = await Bench.OpenAsync(Ranked);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_donor_that_is_taken_is_the_donor_of_the_build()
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("hill-climb", "hill-climb-taken");
        await using var sheet = await Bench.OpenAsync(server.Address, "donors.html?build=hill-climb-taken", Look.Light);
        await sheet.Page.Locator("#donor-track-short > summary").ClickAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Take this one" }).And(sheet.Page.Locator("#donor-track-short button")).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("tr[data-donor=track-short]")).ToContainTextAsync("the donor of the build");
        await Assertions.Expect(sheet.Page.Locator(".donors tbody tr")).ToHaveCountAsync(3);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_donor_is_put_on_the_list_and_what_the_server_refuses_is_told_at_its_field()
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("sidecar", "sidecar-donors");
        await using var sheet = (await Bench.OpenAsync(server.Address, "donors.html?build=sidecar-donors", Look.Light)).Expecting(400);
        await sheet.Page.Locator("#statement > summary").ClickAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Put another donor on the list" }).ClickAsync();
        await sheet.TypeAsync("What you call it", "Cart in the orchard");
        await sheet.Page.Locator("#offers summary").Filter(new() { HasText = "The engine you have" }).ClickAsync();
        await sheet.Page.GetByLabel("Price", new() { Exact = true }).FillAsync("ninety");
        await sheet.PressAsync("Save the list");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await sheet.Page.GetByLabel("Price", new() { Exact = true }).FillAsync("90.00");
        await sheet.PressAsync("Save the list");
        await Assertions.Expect(sheet.Page.Locator("tr[data-donor=cart-in-the-orchard]")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }
}
