using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The generator set's thin gasket on the sport engine: 3.485 + 1.135 + 43 + 14.6 = 62.220 cm3; (533.40 + 62.22) ÷ 62.22 = 9.57 by hand.</summary>
public sealed class CompressionPageTests(Bench bench) : PageTests(bench, "compression.html", ("gasket", Gasket))
{
    private const string Gasket = "compression.html?family=tern-16&variant=ts&head-gasket=pellworth%3AP-14-0203-A&wanted-ratio=10.0";

    [Fact]
    public async Task Asked_by_keyboard_it_shows_the_volumes_the_squish_and_the_working()
    {
        await using var sheet = await Bench.OpenAsync("compression.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("The engine they go into", "TS");
        await sheet.ChooseAsync("Head gasket", "P-14-0203-A");
        await sheet.PressAsync("Reckon");

        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("Compression 9.57 to 1, traps 8.69");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("squish 0.80 instead of 1.15 mm");
        await Assertions.Expect(sheet.Page.Locator(".working")).ToContainTextAsync("62.220 cm³");
        await AssertSameWhenReopenedAsync(sheet);
    }

    // 65.7055 cm3 less 0.3 mm over half to all of the bore: 9.22 … 9.28 … 9.33, around the 9.30 as built, by hand.
    [Fact]
    public async Task Question_line_and_paper_show_everything_that_was_asked()
    {
        await using var sheet = await Bench.OpenAsync("compression.html?family=tern-16&variant=ts&gasket-thickness=1.20+mm&head-skim=0.30+mm");
        await Assertions.Expect(sheet.Page.Locator(".question > summary"))
            .ToContainTextAsync("off the face of the head: 0.30 mm; gasket, tightened: 1.20 mm");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("rises or falls: 9.22 … 9.28 … 9.33 instead of 9.30");
        await Assertions.Expect(sheet.Page.Locator(".printed")).ToBeHiddenAsync();

        await sheet.Page.EmulateMediaAsync(new() { Media = Media.Print });

        await Assertions.Expect(sheet.Page.Locator(".printed")).ToContainTextAsync("gasket-thickness=1.20");
        await Assertions.Expect(sheet.Page.Locator(".printed")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Fit_sheet_tells_the_change_and_leads_to_the_sum()
    {
        await using var sheet = await Bench.OpenAsync("fit.html?family=tern-16&variant=ts&position=head-gasket&part=P-14-0203-A");
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("trapped compression rises: 8.69 instead of 8.45, squish 0.80 instead of 1.15 mm");
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "The whole sum" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToContainTextAsync("Compression 9.57 to 1");
        sheet.AssertQuiet();
    }
}
