using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class FamilyPageTests(Bench bench) : PageTests(
    bench, "family.html", ("tern", "family.html?family=tern-16"), ("variant", "family.html?family=tern-16&variant=tg"), ("other", "family.html?family=hs-2"))
{
    [Fact]
    public async Task Asked_by_keyboard_it_shows_one_variant_in_full()
    {
        await using var sheet = await Bench.OpenAsync("family.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("One variant in full", "TG");
        await sheet.PressAsync("Show");
        var text = await sheet.TextAsync("#answer");
        Assert.Contains("TG range-extender generator set", text, StringComparison.Ordinal);
        Assert.Contains("85.00 mm", text, StringComparison.Ordinal);
        Assert.Contains("P-26-1160-A", text, StringComparison.Ordinal);
        Assert.Contains("carries nothing", text, StringComparison.Ordinal);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Nothing_chosen_yet_shows_the_families()
    {
        await using var sheet = await Bench.OpenAsync("family.html");
        await Assertions.Expect(sheet.Page.Locator("#answer tbody tr")).ToHaveCountAsync(2);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_unknown_family_in_the_address_is_answered_with_those_that_there_are()
    {
        await using var sheet = await Bench.OpenAsync("family.html");
        await sheet.Expecting(404).GoAsync("family.html?family=tern-61");
        await sheet.AssertRefusedAsync("family", "tern-61", "tern-16");
        sheet.AssertQuiet();
    }
}
