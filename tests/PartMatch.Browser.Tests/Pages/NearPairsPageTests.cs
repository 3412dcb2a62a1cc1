using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class NearPairsPageTests(Bench bench) : PageTests(bench, "near-pairs.html", ("tern", Tern), ("none", "near-pairs.html?book=common"))
{
    private const string Tern = "near-pairs.html?book=tern-16&limit=20";

    [Fact]
    public async Task Asked_by_keyboard_for_a_book_it_lists_the_likeliest_first_and_leads_to_what_tells_them_apart()
    {
        await using var sheet = await Bench.OpenAsync("near-pairs.html");
        await sheet.Page.GetByLabel("Book").SelectOptionAsync("tern-16");
        await sheet.PressAsync("Look");
        await sheet.ArriveAtAsync("near-pairs.html?book=tern-16");
        await Assertions.Expect(sheet.Page.Locator("#answer h2")).ToContainTextAsync("near pairs that nobody has judged");
        var row = sheet.Page.Locator("#answer tbody tr").First;
        await Assertions.Expect(row).ToContainTextAsync("1 slip");
        await Assertions.Expect(sheet.Page.Locator("#answer tbody tr")).ToHaveCountAsync(20);
        await AssertSameWhenReopenedAsync(sheet);
        await sheet.TabToAsync(row.GetByRole(AriaRole.Link).Filter(new LocatorFilterOptions { HasText = "what tells them apart" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("look-alikes.html?number=");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_number_of_a_pair_leads_to_its_part()
    {
        await using var sheet = await Bench.OpenAsync(Tern);
        var part = sheet.Page.Locator("#answer tbody tr").First.GetByRole(AriaRole.Link).First;
        var id = await part.InnerTextAsync();
        await sheet.TabToAsync(part);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("part.html?number=");
        Assert.Contains(id.Split(':')[1], await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }
}
