using System.Text;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The list of builds: a new one, one as a file in and out.</summary>
public sealed class BuildsPageTests(Bench bench, WritingServer server) : PageTests(bench, "builds.html"), IClassFixture<WritingServer>
{
    [Fact]
    public async Task A_new_build_is_begun_by_keyboard_and_opens_at_its_statement()
    {
        await using var sheet = await OpenAsync();
        await sheet.TypeAsync("What you call it", "Boat’s second engine");
        await Assertions.Expect(sheet.Page.GetByLabel("Short name", new() { Exact = true })).ToHaveValueAsync("boat-s-second-engine");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("The engine you have", "TV");
        await sheet.ChooseAsync("It is to become", "TM");
        await sheet.PressAsync("Begin it");
        await sheet.ArriveAtAsync("build.html?build=boat-s-second-engine");
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Boat’s second engine");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Save it" })).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_build_without_an_engine_is_refused_at_its_fields()
    {
        await using var sheet = (await OpenAsync()).Expecting(400);
        await sheet.TypeAsync("What you call it", "Nothing yet");
        await sheet.PressAsync("Begin it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#family")).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.AssertUsableAsync("builds-wrong");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_file_taken_out_comes_in_under_another_name()
    {
        await using var sheet = await OpenAsync();
        var saving = sheet.Page.WaitForDownloadAsync();
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "sidecar.build.json" }).ClickAsync();
        await using var stream = await (await saving).CreateReadStreamAsync();
        using var file = new StreamReader(stream, Encoding.UTF8);
        var text = await file.ReadToEndAsync(TestContext.Current.CancellationToken);
        await sheet.Page.Locator("#file").SetInputFilesAsync(new FilePayload { Name = "sidecar.build.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(text) });
        await sheet.TypeAsync("Short name here", "sidecar-again");
        await sheet.PressAsync("Take it in");
        await sheet.ArriveAtAsync("build.html?build=sidecar-again");
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Sidecar outfit from a utility cart's engine");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_deleted_build_is_brought_back()
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("sidecar", "gone");
        await using var sheet = await Bench.OpenAsync(server.Address, "build.html?build=gone", Look.Light);
        sheet.Page.Dialog += async (_, dialog) => await dialog.AcceptAsync();
        await sheet.PressSummaryAsync();
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Delete this build" }).ClickAsync();
        await sheet.ArriveAtAsync("builds.html");
        await sheet.GoAsync("builds.html?deleted=true");
        await sheet.Page.Locator("tr").Filter(new() { HasText = "gone" }).GetByRole(AriaRole.Button, new() { Name = "Bring it back" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("tr").Filter(new() { HasText = "gone" }).GetByRole(AriaRole.Link).First).ToHaveAttributeAsync("href", "build.html?build=gone");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_deleted_build_opened_by_its_address_says_so_in_words_and_comes_back_by_a_button()
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("sidecar", "missed");
        await server.DeleteBuildAsync("missed", "Bo");
        await using var sheet = (await OpenAsync()).Expecting(404);
        await sheet.GoAsync("build.html?build=missed");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Heading, new() { Name = "This build was deleted" })).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#answer")).ToContainTextAsync("by Bo");
        await Assertions.Expect(sheet.Page.Locator("#answer")).Not.ToContainTextAsync("/api/");
        await sheet.AssertUsableAsync("build-deleted");
        await sheet.PressAsync("Bring it back");
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Sidecar outfit from a utility cart's engine");
        await Assertions.Expect(sheet.Page.Locator("#statement")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    private Task<Sheet> OpenAsync()
    {
        Chromium.MustBeThere();
        return Bench.OpenAsync(server.Address, "builds.html", Look.Light);
    }
}
