using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;
using PartMatch.Core.Tests.Photos;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Recording items and what was read on them. Every test has an item of its own.</summary>
public sealed class ItemEditingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task A_new_item_with_readings_gets_its_verdicts_and_is_one_change()
    {
        await using var sheet = await OpenAsync("items.html?family=tern-16");
        await BeginAsync(sheet, "pellworth:P-11-1002-A");
        await Assertions.Expect(sheet.Page.Locator(".feature").First).ToContainTextAsync("1 min"); // the quickest check comes first
        await sheet.AssertUsableAsync("items-new");
        await sheet.TypeAsync("Condition as found", "bright");
        await ReadAsync(sheet, "main journal diameter", "51.970 mm", "0.002 mm"); // the limit is at least 51.974
        await ReadAsync(sheet, "nose diameter", "1.181 in", "0.0001 in"); // 29.9974 mm ± 0.00254; the limit is at least 29.985
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync(new Regex(@"^it-00\d\d is recorded, as change \d+\.$"));
        await Assertions.Expect(sheet.Page.Locator(".why .met")).ToHaveTextAsync("beyond limits");
        await Assertions.Expect(VerdictOf(sheet, "Main journal diameter")).ToHaveTextAsync("beyond limits");
        await Assertions.Expect(VerdictOf(sheet, "Nose diameter")).ToHaveTextAsync("within limits");
        await Assertions.Expect(VerdictOf(sheet, "Width between the thrust faces")).ToHaveTextAsync("not inspected");
        await sheet.AssertUsableAsync("items-recorded");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_wrong_reading_is_refused_at_its_field_everything_typed_stays_and_comes_back_after_a_reload()
    {
        await using var sheet = (await OpenAsync("items.html?family=tern-16")).Expecting(400);
        await BeginAsync(sheet, "pellworth:P-11-1001-A");
        await ReadAsync(sheet, "main journal diameter", "51,983 mm", "0.002 mm");
        await sheet.TypeAsync("Condition as found", "a word to keep");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        var value = Field(sheet, "main journal diameter: Read");
        await Assertions.Expect(value).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(value).ToHaveAccessibleDescriptionAsync(new Regex("write 51.983 mm"));
        await Assertions.Expect(value).ToHaveValueAsync("51,983 mm");
        await Assertions.Expect(sheet.Page.GetByLabel("Condition as found")).ToHaveValueAsync("a word to keep");
        await sheet.AssertUsableAsync("items-wrong");

        sheet.Page.Dialog += (_, dialog) => _ = dialog.AcceptAsync(); // that what was typed would be lost
        await sheet.GoAsync(sheet.Page.Url);
        await sheet.PressAsync("Record a new item");
        await sheet.PressAsync("Fill in what I typed");
        await Assertions.Expect(Field(sheet, "main journal diameter: Read")).ToHaveValueAsync("51,983 mm");
        await ReadAsync(sheet, "main journal diameter", "51.983 mm", "0.002 mm");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("is recorded");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_a_part_it_is_refused_at_the_part()
    {
        await using var sheet = (await OpenAsync("items.html?family=tern-16")).Expecting(400);
        await sheet.PressAsync("Record a new item");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator("#item-part")).ToHaveAttributeAsync("aria-invalid", "true");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_reading_that_was_missing_settles_the_verdict()
    {
        await using var sheet = await OpenAsync("items.html?family=tern-16&item=it-0005");
        await sheet.PressAsync("Add readings");
        await Assertions.Expect(sheet.Page.Locator(".feature").Filter(new() { HasText = "Mass" })).ToHaveCountAsync(0); // read already
        await ReadAsync(sheet, "centre to centre", "151.99 mm", "0.01 mm");
        await sheet.PressAsync("Add what was read");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Added, as change");
        Assert.Contains("\"evidence\":\"ev-0088\"", await server.ReadRowAsync("tern-16", "readings", "it-0005,length"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_second_of_two_to_change_a_reading_sees_the_first_and_can_still_save()
    {
        const string Item = "items.html?family=tern-16&item=it-0012";
        await using var first = await OpenAsync(Item);
        await using var second = (await OpenAsync(Item)).Expecting(412);
        await first.PressAsync("Change stem diameter");
        await second.PressAsync("Change stem diameter");
        await Assertions.Expect(Field(second, "stem diameter: ± how good it is")).ToHaveValueAsync("0.004 mm");
        await ReadAsync(first, "stem diameter", "5.944 mm", "0.002 mm");
        await first.TypeAsync("Your name", "Ann");
        await first.PressAsync("Save the reading");
        await Assertions.Expect(first.Page.Locator(".done")).ToContainTextAsync("changed");
        await ReadAsync(second, "stem diameter", "5.946 mm", "0.002 mm");
        await second.PressAsync("Save the reading");
        await Assertions.Expect(second.Page.Locator(".conflict")).ToBeFocusedAsync();
        await Assertions.Expect(second.Page.Locator(".conflict")).ToContainTextAsync("by Ann");
        await second.AssertUsableAsync("items-conflict");
        await second.PressAsync("Save mine in its place");
        await Assertions.Expect(second.Page.Locator(".done")).ToContainTextAsync("changed");
        Assert.Contains("\"value\":\"5.946\"", await server.ReadRowAsync("tern-16", "readings", "it-0012,stem-diameter"), StringComparison.Ordinal);
        second.AssertQuiet();
    }

    [Fact]
    public async Task A_reading_counts_for_the_number_only_after_a_second_step_that_says_what_it_does()
    {
        await using var sheet = await OpenAsync("items.html?family=tern-16&item=it-0003");
        await sheet.PressAsync("Let it count for the number – mass of one rod with bolts");
        await Assertions.Expect(sheet.Page.Locator(".editing .ask")).ToContainTextAsync("one measured example among the sources of P-11-3104-A");
        await sheet.AssertUsableAsync("items-promote");
        await sheet.TypeAsync("Why it speaks for the number", "mass does not wear");
        await sheet.PressAsync("Yes, let it count");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("It counts for the number, as change");
        await Assertions.Expect(sheet.Page.Locator("tr").Filter(new() { HasText = "counts for the number" })).ToHaveCountAsync(1);
        Assert.Contains("\"value\":\"411\"", await server.ReadRowAsync("tern-16", "values", "pellworth:P-11-3104-A,mass,promoted-it-0003-mass"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_photograph_is_shown_with_its_caption_and_another_file_is_refused()
    {
        await using var sheet = await OpenAsync("items.html?family=tern-16&item=it-0009");
        await sheet.PressAsync("Add a photograph");
        await sheet.Page.GetByLabel("The picture").SetInputFilesAsync(new FilePayload { Name = "tang.txt", MimeType = "text/plain", Buffer = [65] });
        await sheet.TypeAsync("What it shows", "rear tang, beaten side");
        await sheet.PressAsync("Store it");
        await Assertions.Expect(sheet.Page.Locator("#photo-file")).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.Page.GetByLabel("The picture").SetInputFilesAsync(new FilePayload { Name = "tang.jpg", MimeType = "image/jpeg", Buffer = DrawnJpeg.Plain });
        await sheet.PressAsync("Store it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("The photograph is stored");
        var picture = sheet.Page.GetByRole(AriaRole.Img, new() { Name = "rear tang, beaten side" });
        await picture.ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(picture).ToHaveJSPropertyAsync("naturalWidth", 16);
        await sheet.AssertUsableAsync("items-photo");
        sheet.AssertQuiet();
    }

    private Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return bench.OpenAsync(server.Address, address, Look.Light);
    }

    private static async Task BeginAsync(Sheet sheet, string part)
    {
        await sheet.PressAsync("Record a new item");
        await sheet.TypeAsync("Which part it is taken to be", part);
        await sheet.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(sheet.Page.Locator(".feature").First).ToBeVisibleAsync();
    }

    private static ILocator Field(Sheet sheet, string label) => sheet.Page.GetByLabel(new Regex($"^{Regex.Escape(label)}"));

    private static async Task ReadAsync(Sheet sheet, string feature, string value, string uncertainty)
    {
        await sheet.TabToAsync(Field(sheet, $"{feature}: Read"));
        await sheet.Page.Keyboard.PressAsync("ControlOrMeta+A");
        await sheet.Page.Keyboard.TypeAsync(value);
        await sheet.TypeAsync($"{feature}: ± how good it is", uncertainty);
    }

    private static ILocator VerdictOf(Sheet sheet, string feature) =>
        sheet.Page.Locator("tr[data-met]").Filter(new() { Has = sheet.Page.Locator("th", new() { HasTextRegex = new Regex($"^{feature}") }) }).Locator(".met");
}
