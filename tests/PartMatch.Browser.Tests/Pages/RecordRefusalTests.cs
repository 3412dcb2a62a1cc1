using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>What a refusal says of rows that rest on each other, and what is said of a row after it changed. Every test has rows of its own.</summary>
public sealed class RecordRefusalTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task A_refusal_does_not_stand_beside_the_word_of_an_earlier_save()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=values&key=pellworth:P-12-3307-A,bearing-diameter,ev-0003")).Expecting(400);
        await sheet.TypeAsync("Why", "nothing but a word");
        await sheet.TypeAsync("Uncertainty", "0.001 mm");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        await sheet.TypeAsync("Value", "26");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("To mend: write 26 mm, if it is that");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToHaveCountAsync(0);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_change_that_others_rest_on_is_not_taken_back_and_says_what_to_do()
    {
        await using var sheet = (await OpenAsync("history.html?book=common")).Expecting(409);
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Take this change back (1)" }).PressAsync("Enter");
        await sheet.PressAsync("Yes, take it back");
        var summary = sheet.Page.Locator(".faults");
        await Assertions.Expect(summary).ToContainTextAsync("Rows that stand now would be wrong afterwards. Nothing was taken back.");
        await Assertions.Expect(summary).ToContainTextAsync("To mend: ");
        await Assertions.Expect(summary.Locator("li")).ToHaveCountAsync(2); // both families use the common book
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_source_of_many_rows_is_not_removed_and_names_the_first_of_them()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=evidence&key=ev-0006")).Expecting(409);
        await sheet.PressAsync("Remove this piece of evidence …");
        await sheet.PressAsync("Yes, remove it");
        var summary = sheet.Page.Locator(".faults");
        await Assertions.Expect(summary.Locator("li:visible")).ToHaveCountAsync(12);
        await Assertions.Expect(summary.Locator("summary")).ToHaveTextAsync(new Regex("^[0-9]+ more$"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_value_below_nought_keeps_its_sign_beside_another_source()
    {
        await using var sheet = await OpenAsync(
            "record.html?book=tern-16&table=values&part=pellworth:P-12-3308-A&feature=intake-opens-1mm&value=-11%20deg&evidence=ev-0020&new");
        await sheet.PressAsync("Add this value");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("change");
        await using var part = await OpenAsync("part.html?number=P-12-3308-A");
        await Assertions.Expect(part.Page.Locator("main")).ToContainTextAsync("-11 deg"); // only among the sources: the maker's -10 counts
        part.AssertQuiet();
    }

    private Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return bench.OpenAsync(server.Address, address, Look.Light);
    }
}
