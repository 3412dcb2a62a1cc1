using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Reading records; what changes them is in <see cref="RecordEditingTests"/>.</summary>
public sealed class RecordPageTests(Bench bench) : PageTests(
    bench, "record.html", ("tables", "record.html?book=tern-16"), ("rows", "record.html?book=tern-16&table=joints&q=pin"),
    ("empty", "record.html?book=tern-16&table=items"), ("value", Value), ("joint", "record.html?book=tern-16&table=joints&key=piston-pin-in-rod"),
    ("new", "record.html?book=tern-16&table=values&part=pellworth:P-26-1147-C&feature=rotation&new"))
{
    private const string Value = "record.html?book=tern-16&table=values&key=pellworth:P-12-3306-A,base-to-lobe-height,ev-0003";

    [Fact]
    public async Task From_the_book_to_a_row_by_keyboard()
    {
        await using var sheet = await Bench.OpenAsync("record.html");
        await FollowAsync(sheet, "Tern 16", "record.html?book=tern-16");
        await FollowAsync(sheet, "Evidence", "record.html?book=tern-16&table=evidence");
        await sheet.TypeAsync("Some cell contains", "bench sheet 17");
        await sheet.PressAsync("Find");
        await sheet.ArriveAtAsync("record.html?book=tern-16&table=evidence&q=bench");
        await FollowAsync(sheet, "ev-0009", "record.html?book=tern-16&table=evidence&key=ev-0009");
        await Assertions.Expect(sheet.Page.GetByLabel("Grade")).ToHaveValueAsync("measured");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_row_shows_number_and_unit_in_one_field_and_what_its_codes_stand_for()
    {
        await using var sheet = await Bench.OpenAsync(Value);
        await Assertions.Expect(sheet.Page.GetByLabel("Value", new() { Exact = true })).ToHaveValueAsync("44.80 mm");
        await Assertions.Expect(sheet.Page.GetByLabel("Minus")).ToHaveValueAsync("0.05 mm");
        var text = await sheet.TextAsync("form");
        Assert.Contains("Intake camshaft, phaser nose", text, StringComparison.Ordinal);
        Assert.Contains("drawing schedule 12, valve train", text, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.GetByLabel("Unit", new() { Exact = true })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_feature_of_words_is_chosen_from_those_words_and_asks_for_no_tolerance()
    {
        await using var sheet = await Bench.OpenAsync("record.html?book=tern-16&table=values&part=pellworth:P-26-1147-C&new");
        await Assertions.Expect(sheet.Page.GetByLabel("Minus")).ToBeVisibleAsync();
        await sheet.TypeAsync("Feature", "rotation");
        await sheet.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(sheet.Page.Locator("select#f-value option")).ToContainTextAsync(["Choose", "Anticlockwise", "Clockwise"]);
        await Assertions.Expect(sheet.Page.GetByLabel("Minus")).ToBeHiddenAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-feature option[value=rotation]")).ToHaveCountAsync(1);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_reference_proposes_the_rows_that_it_can_name()
    {
        await using var sheet = await Bench.OpenAsync("record.html?book=tern-16&table=fitments&new");
        await sheet.TabToAsync(sheet.Page.GetByLabel("Position"));
        await Assertions.Expect(sheet.Page.Locator("#list-position option[value=coolant-pump]")).ToHaveAttributeAsync("label", "coolant-pump – Coolant pump");
        await Assertions.Expect(sheet.Page.Locator("#list-part option[value=none]")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Evidence_of_a_used_book_is_found_there()
    {
        await using var sheet = (await Bench.OpenAsync("record.html?book=tern-16&table=kinds&key=valve-spring")).Expecting(404);
        await sheet.ArriveAtAsync("record.html?book=common&table=kinds&key=valve-spring");
        await Assertions.Expect(sheet.Page.Locator("h1")).ToHaveTextAsync("Kind of part");
    }

    [Theory]
    [InlineData("record.html?book=tern-16&table=evidence&key=ev-9999", "No such piece of evidence")]
    [InlineData("record.html?book=tern-61", "Not found")]
    [InlineData("record.html?book=tern-16&table=evidences", "Not found")]
    public async Task What_is_not_there_is_said_with_a_way_on(string address, string said)
    {
        await using var sheet = (await Bench.OpenAsync("record.html")).Expecting(404);
        await sheet.GoAsync(address);
        Assert.Contains(said, await sheet.TextAsync(), StringComparison.Ordinal);
        Assert.NotEqual(0, await sheet.Page.Locator("#answer a").CountAsync());
        sheet.AssertQuiet();
    }

    [Theory]
    [InlineData("part.html?number=P-26-1147-C", "Edit this part", "record.html?book=tern-16&table=parts&key=pellworth:P-26-1147-C")]
    [InlineData("part.html?number=P-26-1147-C", "Its values", "record.html?book=tern-16&table=values&where=part:pellworth:P-26-1147-C")]
    [InlineData("part.html?number=P-26-1147-C", "ev-0006", "record.html?book=tern-16&table=evidence&key=ev-0006")]
    [InlineData("family.html?family=tern-16", "Add a variant", "record.html?book=tern-16&table=variants&new")]
    [InlineData("books.html", "Open", "record.html?book=common")]
    public async Task The_other_sheets_lead_here(string from, string link, string to)
    {
        await using var sheet = await Bench.OpenAsync(from);
        await FollowAsync(sheet, link, to);
        await Assertions.Expect(sheet.Page.Locator("h1")).Not.ToHaveTextAsync("Records");
        sheet.AssertQuiet();
    }

    private static async Task FollowAsync(Sheet sheet, string link, string to)
    {
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync(to);
    }
}
