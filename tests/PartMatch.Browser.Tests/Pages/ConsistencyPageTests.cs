using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class ConsistencyPageTests(Bench bench) : PageTests(
    bench, "consistency.html", ("family", Tern), ("variant", Tern + "&variant=tg"), ("nothing", Tern + "&sort=supersession-loop"), ("near", Tern + "&sort=near-unjudged&limit=5"))
{
    private const string Tern = "consistency.html?family=tern-16";

    [Fact]
    public async Task Asked_by_keyboard_for_a_variant_it_says_what_to_measure_and_leads_to_a_question_that_hangs_on_it()
    {
        await using var sheet = await Bench.OpenAsync("consistency.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("Variant", "TG range-extender generator set");
        await sheet.PressAsync("Look");
        await sheet.ArriveAtAsync("consistency.html?family=tern-16&variant=tg");
        var row = sheet.Page.GetByRole(AriaRole.Row).Filter(new LocatorFilterOptions { HasText = "P-13-1102-A" });
        await Assertions.Expect(row).ToContainTextAsync("steel rule, 2 min");
        await Assertions.Expect(row).ToContainTextAsync("3 alone");
        await AssertSameWhenReopenedAsync(sheet);
        await sheet.TabToAsync(row.GetByRole(AriaRole.Link).Filter(new LocatorFilterOptions { HasText = "See it" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("fit.html?family=tern-16&variant=tg&position=alternator-pulley&from=");
        Assert.Contains("Not known yet", await sheet.TextAsync("#answer h2"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Every_row_leads_to_its_record()
    {
        await using var sheet = await Bench.OpenAsync(Tern);
        var links = await sheet.Page.Locator("#answer article details a").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))");
        Assert.Contains("record.html?book=tern-16&table=values&key=tessick:TG-7514,compressed-thickness,ev-0014", links);
        Assert.Contains("record.html?book=tern-16&table=positions&key=dipstick", links);
        Assert.All(links, link => Assert.StartsWith("record.html?book=tern-16&table=", link, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Counts_stay_the_same_whatever_is_shown_and_the_worst_stands_first()
    {
        await using var sheet = await Bench.OpenAsync(Tern);
        var counts = await sheet.TextAsync(".tally");
        Assert.StartsWith("Values on which sources exclude each other", await sheet.TextAsync("#answer section:not(.headline) h2"), StringComparison.Ordinal);
        var link = sheet.Page.Locator(".tally a").Filter(new LocatorFilterOptions { HasText = "nothing is recorded" });
        await sheet.TabToAsync(link);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync(Tern + "&sort=not-recorded");
        Assert.Equal(counts, await sheet.TextAsync(".tally"));
        await Assertions.Expect(sheet.Page.Locator("#answer article")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator("#answer article")).ToContainTextAsync("Dipstick");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Many_faults_of_a_sort_say_once_what_they_share_and_the_rest_unfolds_by_keyboard_and_on_paper()
    {
        await using var sheet = await Bench.OpenAsync(Tern + "&sort=near-unjudged");
        var rows = sheet.Page.Locator("#answer tbody tr");
        var seen = sheet.Page.Locator("#answer tbody tr:visible");
        await Assertions.Expect(sheet.Page.Locator("#answer").GetByText("To mend it:")).ToHaveCountAsync(1);
        await Assertions.Expect(seen).ToHaveCountAsync(10);
        Assert.Equal(100, await rows.CountAsync()); // as many as the page asks for at once

        await sheet.TakeAsync(Look.Print);
        await Assertions.Expect(seen).ToHaveCountAsync(100);
        await sheet.TakeAsync(Look.Light);
        await Assertions.Expect(seen).ToHaveCountAsync(10);

        var rest = sheet.Page.Locator("summary").Filter(new LocatorFilterOptions { HasText = "The other 90" });
        await sheet.TabToAsync(rest);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(seen).ToHaveCountAsync(100);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Nothing_found_is_said_to_be_no_proof()
    {
        await using var sheet = await Bench.OpenAsync(Tern + "&sort=supersession-loop");
        Assert.Contains("Nothing found", await sheet.TextAsync("#answer h2"), StringComparison.Ordinal);
        Assert.Contains("not a proof", await sheet.TextAsync(".headline"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_a_family_it_is_refused_there()
    {
        await using var sheet = (await Bench.OpenAsync("consistency.html")).Expecting(400);
        await sheet.ChooseAsync("Sort of fault", "Spans that overlap");
        await sheet.PressAsync("Look");
        await sheet.AssertRefusedAsync("family", "nothing", "family");
        sheet.AssertQuiet();
    }
}
