using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class IndexPageTests(Bench bench) : PageTests(bench, "index.html")
{
    [Fact]
    public async Task It_lists_the_families_of_the_base()
    {
        await using var sheet = await Bench.OpenAsync("");
        await Assertions.Expect(sheet.Page.Locator("#families tbody tr")).ToHaveCountAsync(2);
        Assert.Contains("Tern 16", await sheet.TextAsync("#families"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_number_typed_here_is_looked_up()
    {
        await using var sheet = await Bench.OpenAsync("");
        await sheet.TypeAsync("A number, or words", "P-26-1147-C");
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("search.html?q=P-26-1147-C");
        Assert.Contains("P-26-1147-C", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Every_link_leads_to_a_page_and_every_worked_example_to_an_answer()
    {
        await using var sheet = await Bench.OpenAsync("");
        var links = await sheet.Page.Locator("a[href]").EvaluateAllAsync<string[]>("links => [...new Set(links.map(link => link.href))]");
        Assert.True(links.Length >= 12, $"only {links.Length} links");
        foreach (var link in links)
        {
            await sheet.GoAsync(link);
            await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveCountAsync(1);
            if (link.Contains('?', StringComparison.Ordinal))
            {
                await Assertions.Expect(sheet.Page.Locator("#answer .headline").First).ToBeVisibleAsync();
            }
        }

        sheet.AssertQuiet();
    }

    [Fact]
    public async Task On_a_telephone_the_whole_list_of_sheets_fits_the_screen_and_the_sums_stand_together()
    {
        await using var sheet = await Bench.OpenAsync("compression.html", Look.Phone);
        await sheet.PressAsync("Sheets");
        var sums = sheet.Page.GetByRole(AriaRole.List, new() { Name = "Sums" });
        await Assertions.Expect(sums.GetByRole(AriaRole.Link)).ToHaveTextAsync(["Injectors and fuel", "Fuel supply", "Valve timing", "Compression", "Tightening"]);
        await Assertions.Expect(sums.GetByRole(AriaRole.Link, new() { Name = "Compression" })).ToHaveAttributeAsync("aria-current", "page");

        var box = await sheet.Page.Locator("#sheets").BoundingBoxAsync();
        Assert.NotNull(box);
        Assert.InRange(box.Y + box.Height, 1, Look.Phone.Height);
    }

    [Fact]
    public async Task In_a_wide_window_the_sheets_take_two_lines()
    {
        await using var sheet = await Bench.OpenAsync("");
        var tops = await sheet.Page.Locator("#sheets a").EvaluateAllAsync<int[]>("links => [...new Set(links.map(link => Math.round(link.getBoundingClientRect().top)))]");
        Assert.Equal(2, tops.Length);
    }
}
