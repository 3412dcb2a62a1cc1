using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Another state of a book, taken in through the page. Every test has a server of its own.</summary>
public sealed class MergeTests(Bench bench)
{
    private const string Here = "journals bright, taper clean";

    [Fact]
    public async Task What_differs_is_decided_cell_by_cell_then_all_of_it_comes_in()
    {
        await using var server = Started();
        await using var sheet = (await OpenAsync(server)).Expecting(409);
        await ChooseAsync(sheet, await OtherStateAsync(server));
        await sheet.PressAsync("See what would come");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer h3")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#merge-answer h3")).ToHaveTextAsync("1 row would be added");
        var rows = sheet.Page.Locator(".versions tbody tr");
        await Assertions.Expect(rows).ToHaveCountAsync(1);
        await Assertions.Expect(rows).ToContainTextAsync("Condition");
        var incoming = sheet.Page.Locator(".incoming details");
        await Assertions.Expect(incoming.Locator("summary")).ToHaveTextAsync("Makers: 1 row");
        await Assertions.Expect(incoming.Locator("table")).ToHaveCountAsync(0);
        await incoming.Locator("summary").PressAsync("Enter");
        await Assertions.Expect(incoming.Locator("tbody tr")).ToContainTextAsync("Abel Works");

        await sheet.PressAsync("Merge");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer .faults")).ToContainTextAsync("1 cell open");
        await sheet.AssertUsableAsync("books-merge");
        await rows.GetByLabel("journals dull").PressAsync("Space");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.PressAsync("Merge");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer h3")).ToContainTextAsync("Merged, as change");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer h3")).ToBeFocusedAsync();
        using var client = server.CreateClient();
        var item = await client.GetStringAsync(new Uri("/api/books/hs-2/items/it-0002", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("journals dull, taper clean", item, StringComparison.Ordinal);
        Assert.Contains("\"who\":\"Ann\"", item, StringComparison.Ordinal);
        Assert.Contains("Abel Works", await client.GetStringAsync(new Uri("/api/books/hs-2/makers/abel", UriKind.Relative), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_list_can_be_taken_out_filled_in_elsewhere_and_brought_back()
    {
        await using var server = Started();
        await using var sheet = (await OpenAsync(server)).Expecting(409);
        await ChooseAsync(sheet, await OtherStateAsync(server));
        await sheet.PressAsync("See what would come");
        var download = await sheet.Page.RunAndWaitForDownloadAsync(() => sheet.Page.GetByText("Take the list out as CSV").PressAsync("Enter"));
        Assert.Equal("hs-2-conflicts.csv", download.SuggestedFilename);
        var csv = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.StartsWith("file,key,column,here,there,take\nitems.csv,it-0002,condition,", csv, StringComparison.Ordinal);
        Assert.EndsWith(",\n", csv, StringComparison.Ordinal);

        var saved = System.Text.Encoding.UTF8.GetBytes("\uFEFF" + csv.Replace(',', ';'));
        await sheet.Page.GetByLabel("Bring it back, filled in")
            .SetInputFilesAsync(new FilePayload { Name = "saved.csv", MimeType = "text/csv", Buffer = saved });
        await Assertions.Expect(sheet.Page.Locator("#merge-answer")).ToContainTextAsync("its columns are separated by semicolons, expected commas");

        var filled = System.Text.Encoding.UTF8.GetBytes(csv[..^1] + "there\n");
        await sheet.Page.GetByLabel("Bring it back, filled in").SetInputFilesAsync(new FilePayload { Name = "filled.csv", MimeType = "text/csv", Buffer = filled });
        await Assertions.Expect(sheet.Page.GetByLabel("journals dull")).ToBeCheckedAsync();
        await sheet.PressAsync("Merge");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer h3")).ToContainTextAsync("Merged, as change");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_zip_of_another_book_is_refused_with_what_was_found()
    {
        await using var server = Started();
        await using var sheet = (await OpenAsync(server)).Expecting(400);
        await ChooseAsync(sheet, await server.GetBookAsync("tern-16"));
        await sheet.PressAsync("See what would come");
        await Assertions.Expect(sheet.Page.Locator("#merge-answer .faults")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#merge-answer .faults")).ToContainTextAsync("tern-16");
        sheet.AssertQuiet();
    }

    private static DemoServer Started()
    {
        Chromium.MustBeThere();
        return new DemoServer();
    }

    private Task<Sheet> OpenAsync(DemoServer server) => bench.OpenAsync(server.Start(), "books.html", Look.Light);

    /// <summary>One row more, and one cell that says something else.</summary>
    private static async Task<byte[]> OtherStateAsync(DemoServer server)
    {
        var more = await Books.SpoilAsync(await server.GetBookAsync("hs-2"), "makers.csv", "maker,name\n", "maker,name\nabel,Abel Works\n");
        return await Books.SpoilAsync(more, "items.csv", Here, "journals dull, taper clean");
    }

    private static async Task ChooseAsync(Sheet sheet, byte[] zip)
    {
        await sheet.ChooseAsync("Book", "HS-2");
        await sheet.Page.GetByLabel("The other state, as a zip").SetInputFilesAsync(new FilePayload { Name = "theirs.zip", MimeType = "application/zip", Buffer = zip });
    }
}
