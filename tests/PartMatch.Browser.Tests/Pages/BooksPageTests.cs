using System.IO.Compression;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;
using PartMatch.Storage.Books;

namespace PartMatch.Browser.Tests.Pages;

public sealed class BooksPageTests(Bench bench) : PageTests(bench, "books.html")
{
    private const string Token = "a token for this test";

    [Fact]
    public async Task Every_book_is_listed_and_can_be_taken_out()
    {
        await using var sheet = await Bench.OpenAsync("books.html");
        await Assertions.Expect(sheet.Page.Locator("#books tbody tr")).ToHaveCountAsync(3);
        var download = await sheet.Page.RunAndWaitForDownloadAsync(() => sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "hs-2.zip" }).PressAsync("Enter"));
        Assert.Equal("hs-2.zip", download.SuggestedFilename);
        await using var zip = await ZipFile.OpenReadAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Contains(zip.Entries, entry => entry.FullName == "book.csv");
    }

    [Fact]
    public async Task Without_a_file_it_is_refused_at_the_file()
    {
        await using var sheet = await Bench.OpenAsync("books.html");
        await sheet.PressAsync("Read the zip");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#zip")).ToHaveAttributeAsync("aria-invalid", "true");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_book_that_is_there_is_refused_then_checked_then_replaced()
    {
        await using var server = Guarded();
        await using var sheet = (await OpenAsync(server)).Expecting(409);
        await ChooseAsync(sheet, await server.GetBookAsync("hs-2"));
        await sheet.TypeAsync("Edit token", Token);
        await sheet.PressAsync("Read the zip");
        Assert.Contains("mode=replace", await sheet.TextAsync(".faults"), StringComparison.Ordinal);
        await sheet.Page.GetByLabel("put it in place of the old one").PressAsync("Space");
        await sheet.PressAsync("Read the zip");
        Assert.Contains("No fault found", await sheet.TextAsync("#answer h2"), StringComparison.Ordinal);
        await sheet.Page.GetByLabel("only check it, store nothing").PressAsync("Space");
        await sheet.PressAsync("Read the zip");
        Assert.Contains("took the place", await sheet.TextAsync("#answer h2"), StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator("#answer h2")).ToBeFocusedAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_faults_of_a_book_stand_in_a_table_by_file_line_and_column()
    {
        await using var server = Guarded();
        await using var sheet = (await OpenAsync(server)).Expecting(400);
        await ChooseAsync(sheet, await Books.SpoilAsync(await server.GetBookAsync("hs-2"), "values.csv", ",mm,", ",furlong,"));
        await sheet.TypeAsync("Edit token", Token);
        await sheet.Page.GetByLabel("put it in place of the old one").CheckAsync();
        await sheet.PressAsync("Read the zip");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        var row = sheet.Page.Locator("#answer tbody tr").First;
        await Assertions.Expect(row).ToContainTextAsync("values.csv");
        await Assertions.Expect(row).ToContainTextAsync("unit");
        await Assertions.Expect(row).ToContainTextAsync("furlong");
        await Pictures.TakeAsync(sheet, "books-faults-light");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_the_token_it_is_refused_at_the_token_and_a_token_typed_outlives_only_the_tab()
    {
        await using var server = Guarded();
        await using var sheet = (await OpenAsync(server)).Expecting(401);
        await ChooseAsync(sheet, await server.GetBookAsync("hs-2"));
        await sheet.PressAsync("Read the zip");
        await Assertions.Expect(sheet.Page.Locator("#token")).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.TypeAsync("Edit token", "wrong");
        await sheet.PressAsync("Read the zip");
        await Assertions.Expect(sheet.Page.Locator("#token")).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Equal(0, await sheet.Page.EvaluateAsync<int>("localStorage.length"));
        Assert.Equal("", await sheet.Page.EvaluateAsync<string>("document.cookie"));
        sheet.AssertQuiet();
    }

    // The gate is another import of the same server, which holds the right to write: the one of the page then waits where everything is checked and nothing stored.
    [Fact]
    public async Task How_far_an_import_is_stands_there_and_it_can_be_stopped()
    {
        await using var server = Guarded();
        await using var sheet = await OpenAsync(server);
        var zip = await server.GetBookAsync("hs-2");
        var (inside, open) = (new TaskCompletionSource(), new TaskCompletionSource());
        var other = Task.Run(() => Hold(server, zip, inside, open), TestContext.Current.CancellationToken);
        await inside.Task;
        await ChooseAsync(sheet, zip);
        await sheet.TypeAsync("Edit token", Token);
        await sheet.Page.GetByLabel("put it in place of the old one").CheckAsync();
        await sheet.Page.GetByLabel("only check it, store nothing").UncheckAsync();
        await sheet.PressAsync("Read the zip");
        await Assertions.Expect(sheet.Page.Locator("#answer .waiting")).ToContainTextAsync("rows checked, cell by cell");
        await Assertions.Expect(sheet.Page.Locator("#answer progress")).ToBeVisibleAsync();
        await Pictures.TakeAsync(sheet, "books-importing-light");
        await sheet.PressAsync("Stop, and keep nothing");
        await Assertions.Expect(sheet.Page.Locator("#answer .notice")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#answer .notice")).ToContainTextAsync("Nothing of this book was stored");
        open.SetResult();
        await other;
        sheet.AssertQuiet();
    }

    private static void Hold(DemoServer server, byte[] zip, TaskCompletionSource inside, TaskCompletionSource open)
    {
        using var stream = new MemoryStream(zip);
        var files = ((BookRead)BookZip.Read(stream, new BookZipLimits())).Files;
        server.Services.GetRequiredService<BookStore>().Import(files, ImportMode.Replace, dryRun: false, CancellationToken.None, tell: progress =>
        {
            if (progress.Stage == ImportStage.Storing)
            {
                inside.TrySetResult();
                open.Task.Wait();
            }
        });
    }

    private static DemoServer Guarded()
    {
        Chromium.MustBeThere();
        return new DemoServer { Settings = { ["PartMatch:Token"] = Token } };
    }

    private Task<Sheet> OpenAsync(DemoServer server) => Bench.OpenAsync(server.Start(), "books.html", Look.Light);

    private static Task ChooseAsync(Sheet sheet, byte[] zip) =>
        sheet.Page.GetByLabel("The book as a zip").SetInputFilesAsync(new FilePayload { Name = "hs-2.zip", MimeType = "application/zip", Buffer = zip });
}
