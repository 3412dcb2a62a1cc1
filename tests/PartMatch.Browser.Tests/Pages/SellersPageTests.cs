using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class SellersPageTests(Bench bench) : PageTests(bench, "sellers.html", ("one", "sellers.html?seller=millrace"))
{
    [Fact]
    public async Task From_the_list_to_one_seller_and_what_is_not_known_is_said()
    {
        await using var sheet = await Bench.OpenAsync("sellers.html");
        var gullholm = sheet.Page.Locator("tr").Filter(new() { HasText = "Gullholm Boatyard Stores" });
        await Assertions.Expect(gullholm).ToContainTextAsync("a piece: not known");
        await Assertions.Expect(gullholm).ToContainTextAsync("Nothing counted yet");
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "Millrace Breakers", Exact = true }).First.ClickAsync();
        await sheet.ArriveAtAsync("sellers.html?seller=millrace");
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("22.5 % of the price");
        await AssertSameWhenReopenedAsync(sheet);
    }
}
