using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class LookAlikesPageTests(Bench bench) : PageTests(
    bench, "look-alikes.html", ("pump", Pump), ("missing-digit", "look-alikes.html?number=P-13-426-A&family=tern-16"),
    ("unknown", "look-alikes.html?number=P-26-1174-Z&family=tern-16"), ("nothing", "look-alikes.html?number=QQQQQQQQ"))
{
    private const string Pump = "look-alikes.html?number=P-26-1147-C&family=tern-16";

    [Fact]
    public async Task Asked_by_keyboard_the_sport_pump_is_a_dangerous_look_alike_told_apart_by_photo()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html");
        await sheet.TypeAsync("Number", "p 26 1147 c");
        await sheet.ChooseAsync("Judge the danger in", "Pellworth");
        await sheet.PressAsync("Look");
        var sport = sheet.Page.Locator(".candidate").Filter(new LocatorFilterOptions { Has = sheet.Page.Locator("h3", new PageLocatorOptions { HasText = "P-26-1147-E" }) });
        await Assertions.Expect(sport).ToHaveCountAsync(1);
        await Assertions.Expect(sport.Locator("h3")).ToContainTextAsync("danger");
        await Assertions.Expect(sport).ToContainTextAsync("anticlockwise");
        await Assertions.Expect(sport).ToContainTextAsync("Before paying");
        await Assertions.Expect(sport).ToContainTextAsync("photo");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task The_character_in_which_they_differ_is_marked_by_more_than_colour()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        var sport = sheet.Page.Locator(".candidate").Filter(new LocatorFilterOptions { Has = sheet.Page.Locator("h3", new PageLocatorOptions { HasText = "P-26-1147-E" }) });
        var marks = sport.Locator("mark");
        Assert.Equal(["C", "E"], await marks.AllInnerTextsAsync());
        Assert.True(await marks.First.EvaluateAsync<bool>(
            """
            mark => {
              const style = getComputedStyle(mark);
              return style.textDecorationLine.includes('underline') || parseFloat(style.borderBottomWidth) > 0 || parseFloat(style.outlineWidth) > 0;
            }
            """));
    }

    [Fact]
    public async Task A_number_in_no_book_is_said_to_be_unknown_and_gets_its_nearest()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html?number=P-26-1174-Z");
        Assert.Contains("in no book", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        Assert.Contains("P-26-1147-C", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_a_number_it_is_refused_at_the_number()
    {
        await using var sheet = (await Bench.OpenAsync("look-alikes.html")).Expecting(400);
        await sheet.ChooseAsync("Judge the danger in", "Pellworth");
        await sheet.PressAsync("Look");
        await sheet.AssertRefusedAsync("number", "nothing", "number");
        sheet.AssertQuiet();
    }
}
