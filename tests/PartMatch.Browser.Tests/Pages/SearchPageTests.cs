using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class SearchPageTests(Bench bench) : PageTests(
    bench, "search.html", ("words", "search.html?q=coolant+pump"), ("many", "search.html?q=P-1"), ("nothing", "search.html?q=zeppelin"))
{
    [Fact]
    public async Task Asked_by_keyboard_it_lists_parts_and_each_number_leads_to_its_part()
    {
        await using var sheet = await Bench.OpenAsync("search.html");
        await sheet.TypeAsync("Number or words", "P-26-1147");
        await sheet.PressAsync("Find");
        await Assertions.Expect(sheet.Page.Locator("#answer tbody tr")).ToHaveCountAsync(3);
        await AssertSameWhenReopenedAsync(sheet);
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "P-26-1147-C", Exact = true }).First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("part.html?");
        Assert.Contains("Coolant pump", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    // P-26-1147-C with a letter for a digit and two digits swapped.
    [Fact]
    public async Task While_a_number_is_typed_the_recorded_and_the_nearly_written_ones_show_without_a_button()
    {
        await using var sheet = await Bench.OpenAsync("search.html");
        var typing = sheet.Page.Locator(".typing");
        await sheet.Page.GetByLabel("Number or words").PressSequentiallyAsync("P-26-l174-C");
        var meant = typing.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "P-26-1147-C", Exact = true });
        await Assertions.Expect(meant).ToBeVisibleAsync();
        await Assertions.Expect(typing).ToContainTextAsync(new Regex(@"Nearly so: .*P-26-1147-C \(\d slips?\)"));
        await sheet.Page.GetByLabel("Number or words").FillAsync("P-26-1147");
        await Assertions.Expect(typing).ToContainTextAsync(new Regex("Recorded: P-26-1147"));
        await sheet.Page.GetByLabel("Number or words").FillAsync("pump");
        await Assertions.Expect(typing).ToBeEmptyAsync();
        await sheet.Page.GetByLabel("Number or words").FillAsync("P-26-l174-C");
        await sheet.TabToAsync(meant);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("part.html?number=pellworth:P-26-1147-C");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_part_that_is_dangerously_mixed_up_says_so_in_words_and_leads_to_its_look_alikes()
    {
        await using var sheet = await Bench.OpenAsync("search.html?q=P-26-1147-C");
        var warning = sheet.Page.Locator("#answer tbody tr").First.Locator("a", new LocatorLocatorOptions { Has = sheet.Page.Locator(".danger") });
        await Assertions.Expect(warning).ToContainTextAsync(new Regex("(high|medium) danger"));
        await Assertions.Expect(warning.Locator("svg")).ToBeVisibleAsync();
        await sheet.TabToAsync(warning);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("look-alikes.html?number=pellworth:P-26-1147-C");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_next_page_goes_on_where_this_one_ended()
    {
        await using var sheet = await Bench.OpenAsync("search.html?q=P-1");
        var first = await sheet.Page.Locator("#answer tbody th").AllInnerTextsAsync();
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "The next ones" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#answer tbody th").First).Not.ToHaveTextAsync(first[0]);
        await sheet.SettleAsync();
        var second = await sheet.Page.Locator("#answer tbody th").AllInnerTextsAsync();
        Assert.NotEmpty(second);
        Assert.Empty(first.Intersect(second, StringComparer.Ordinal));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Finding_nothing_is_said_and_leads_on()
    {
        await using var sheet = await Bench.OpenAsync("search.html?q=zeppelin");
        Assert.Contains("No part found", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_query_that_is_too_long_is_refused_at_its_field()
    {
        await using var sheet = (await Bench.OpenAsync("search.html")).Expecting(400);
        await sheet.TypeAsync("Number or words", new string('x', 101));
        await sheet.PressAsync("Find");
        await sheet.AssertRefusedAsync("q", "xxx", "1 to 100 characters");
        sheet.AssertQuiet();
    }
}
