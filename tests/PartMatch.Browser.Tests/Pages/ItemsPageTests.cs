using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Looking at items; what changes them is in <see cref="ItemEditingTests"/>.</summary>
public sealed class ItemsPageTests(Bench bench) : PageTests(
    bench, "items.html", ("list", "items.html?family=tern-16"), ("within", "items.html?family=tern-16&item=it-0001"),
    ("beyond", "items.html?family=hs-2&item=it-0005"))
{
    [Fact]
    public async Task Items_stand_by_their_origin_each_with_its_condition_in_words()
    {
        await using var sheet = await Bench.OpenAsync("items.html?family=tern-16");
        await Assertions.Expect(sheet.Page.Locator("h2")).ToContainTextAsync(["20 items", "Donor engine’s own", "Pulled in the yard", "Came by post", "On the bench already"]);
        var bent = sheet.Page.Locator("tr").Filter(new() { HasText = "it-0004" });
        await Assertions.Expect(bent.Locator(".met")).ToHaveTextAsync("beyond limits");
        await Assertions.Expect(bent.Locator(".met svg")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator("tr").Filter(new() { HasText = "it-0005" }).Locator(".met")).ToHaveTextAsync("not inspected");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task From_the_family_to_one_item_by_keyboard_and_the_address_gives_the_same_answer()
    {
        await using var sheet = await Bench.OpenAsync("items.html");
        await sheet.ChooseAsync("Engine family", "Pellworth Tern 16");
        await sheet.PressAsync("Show");
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new() { Name = "it-0001", Exact = true }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("items.html?family=tern-16&item=it-0001");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToBeFocusedAsync();
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task One_item_shows_limit_reading_verdict_and_the_graded_part_to_order()
    {
        await using var sheet = await Bench.OpenAsync("items.html?family=tern-16&item=it-0001");
        var journal = sheet.Page.Locator("tr").Filter(new() { HasText = "within the limit of at least 51.974 mm" });
        await Assertions.Expect(journal).ToContainTextAsync("51.983 mm (known to ± 0.002)");
        await Assertions.Expect(journal.Locator(".met")).ToHaveTextAsync("within limits");
        var text = await sheet.TextAsync("#answer");
        Assert.Contains("order P-11-2101-B", text, StringComparison.Ordinal); // 44.982 … 44.986 lies in the row 44.981 … 44.987
        Assert.Contains("does not show that the part is sound", text, StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Limit_of_one_number_is_told_from_that_of_its_kind()
    {
        await using var sheet = await Bench.OpenAsync("items.html?family=hs-2&item=it-0005");
        var lobe = sheet.Page.Locator("tr").Filter(new() { HasText = "beyond the limit of at least 36 mm for harrow-stane:H-12-9382-A" });
        await Assertions.Expect(lobe).ToContainTextAsync("of this number");
        await Assertions.Expect(sheet.Page.Locator("tr").Filter(new() { HasText = "at least 27.94 mm" })).ToContainTextAsync("of the kind");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Whether_it_fits_is_asked_with_the_item_in_place_of_its_number()
    {
        await using var sheet = await Bench.OpenAsync("items.html?family=tern-16&item=it-0001");
        await sheet.ChooseAsync("On which variant", "TM marine");
        await sheet.PressAsync("Will it fit?");
        await sheet.ArriveAtAsync("fit.html?family=tern-16&item=it-0001&variant=tm&position=crankshaft");
        Assert.Contains("Does not fit", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_item_that_is_not_there_is_said_with_the_question_still_open()
    {
        await using var sheet = (await Bench.OpenAsync("items.html")).Expecting(404);
        await sheet.GoAsync("items.html?family=tern-16&item=it-9999");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("it-9999");
        sheet.AssertQuiet();
    }
}
