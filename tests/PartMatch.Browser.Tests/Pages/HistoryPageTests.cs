using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class HistoryPageTests(Bench bench) : PageTests(
    bench, "history.html", ("book", "history.html?book=tern-16"), ("row", "history.html?book=tern-16&table=evidence&key=ev-0009"), ("none", "history.html?book=tern-16&table=items"))
{
    [Fact]
    public async Task A_change_of_many_rows_is_folded_and_says_when_in_utc_and_in_the_readers_time()
    {
        await using var sheet = await Bench.OpenAsync("history.html");
        await Assertions.Expect(sheet.Page.Locator(".entry")).ToHaveCountAsync(3);
        await Assertions.Expect(sheet.Page.Locator(".changed-row")).ToHaveCountAsync(0);
        await sheet.Page.Locator(".entry summary").First.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator(".changed-row")).ToHaveCountAsync(50);
        await Assertions.Expect(sheet.Page.Locator(".entry time").First).ToContainTextAsync("UTC");
        Assert.EndsWith("Z", await sheet.Page.Locator(".entry time").First.GetAttributeAsync("datetime"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_key_without_a_table_is_refused_at_the_key()
    {
        await using var sheet = (await Bench.OpenAsync("history.html")).Expecting(400);
        await sheet.PressSummaryAsync();
        await sheet.TypeAsync("One row", "ev-0009");
        await sheet.PressAsync("Show");
        await sheet.AssertRefusedAsync("key", "ev-0009", "a key together with book and table");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Filtered_by_keyboard_it_tells_of_one_row_and_opens_again_the_same()
    {
        await using var sheet = await Bench.OpenAsync("history.html");
        await sheet.PressSummaryAsync();
        await sheet.ChooseAsync("Book", "tern-16");
        await sheet.ChooseAsync("Table", "Evidence");
        await sheet.TypeAsync("One row", "ev-0009");
        await sheet.PressAsync("Show");
        await sheet.ArriveAtAsync("history.html?book=tern-16&table=evidence&key=ev-0009");
        Assert.Matches(@"\b[1-9][0-9]* rows, 1 of them here", await sheet.TextAsync("#answer"));
        sheet.AssertQuiet();
    }
}
