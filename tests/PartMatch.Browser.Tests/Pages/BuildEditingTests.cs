using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Stating a build and changing what was stated. Every test has a build of its own.</summary>
public sealed class BuildEditingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task A_budget_that_is_too_small_is_named_in_the_conflict_with_what_would_mend_it()
    {
        await using var sheet = await OpenAsync("poor");
        await ChangeAsync(sheet, "Money and days", "At most", "50.00");
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToContainTextAsync("at most 50.00 EUR");
        await server.ReckonAsync("/api/builds/poor/conflict");
        await sheet.PressAsync("Plan it");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToHaveAttributeAsync("data-status", "infeasible");
        var budget = sheet.Page.Locator("tr[data-wish=budget]");
        await Assertions.Expect(budget).ToContainTextAsync("50.00 EUR");
        await sheet.AssertUsableAsync("build-conflict");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_is_saved_is_another_version_and_the_line_of_wants_says_it()
    {
        await using var sheet = await OpenAsync("saved");
        await ChangeAsync(sheet, "Money and days", "At most", "2900.00");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToContainTextAsync("at most 2900.00 EUR");
        var saved = await server.ReadAsync("/api/builds/saved");
        Assert.Equal(2, saved.GetProperty("version").GetInt32());
        Assert.Equal("2900.00", saved.GetProperty("document").GetProperty("budget").GetString());
        Assert.Equal("Ann", saved.GetProperty("saved").GetProperty("who").GetString());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_statement_that_is_opened_and_saved_untouched_makes_no_version()
    {
        await using var sheet = await OpenAsync("untouched");
        await OpenStatementAsync(sheet);
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToBeVisibleAsync();
        Assert.Equal(1, (await server.ReadAsync("/api/builds/untouched")).GetProperty("version").GetInt32());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Of_two_who_change_the_same_build_the_second_sees_both_and_loses_nothing()
    {
        await using var second = (await OpenAsync("shared")).Expecting(412);
        await ChangeAsync(second, "Money and days", "Needed by", "2026-12-24");
        await using var first = await bench.OpenAsync(server.Address, "build.html?build=shared", Look.Light);
        await ChangeAsync(first, "Money and days", "At most", "2900.00");
        await first.PressAsync("Save it");
        await Assertions.Expect(first.Page.Locator("#statement > summary")).ToContainTextAsync("2900.00");
        await second.PressAsync("Save it");
        var conflict = second.Page.Locator(".conflict");
        await Assertions.Expect(conflict).ToBeFocusedAsync();
        await Assertions.Expect(conflict).ToContainTextAsync("2900.00");
        await Assertions.Expect(conflict).ToContainTextAsync("2026-12-24");
        await second.AssertUsableAsync("build-overtaken");
        await second.PressAsync("Save what is picked");
        await Assertions.Expect(second.Page.Locator("#statement > summary")).ToContainTextAsync("at most 2900.00 EUR; by 2026-12-24");
        second.AssertQuiet();
    }

    [Fact]
    public async Task What_is_typed_survives_the_page_until_it_is_saved()
    {
        await using var sheet = await OpenAsync("drafted");
        await ChangeAsync(sheet, "Money and days", "At most", "1234.00");
        sheet.Page.Dialog += async (_, dialog) => await dialog.AcceptAsync();
        await sheet.GoAsync("builds.html");
        await Assertions.Expect(sheet.Page.Locator("tr").Filter(new() { HasText = "drafted" })).ToContainTextAsync("Typed here and not saved");
        await sheet.GoAsync("build.html?build=drafted");
        await OpenStatementAsync(sheet);
        await sheet.PressAsync("Fill in what I typed");
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToContainTextAsync("at most 1234.00 EUR");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_plan_beside_unsaved_typing_says_that_it_is_not_of_it()
    {
        await using var sheet = await OpenAsync("half-typed");
        var warning = sheet.Page.Locator(".unsaved");
        await sheet.PressAsync("Plan it");
        await Assertions.Expect(sheet.Page.Locator(".headline h2")).ToBeFocusedAsync();
        await Assertions.Expect(warning).ToHaveCountAsync(0);
        await ChangeAsync(sheet, "Money and days", "At most", "1.00");
        await sheet.PressAsync("Plan it");
        await Assertions.Expect(warning).ToContainTextAsync("not saved and not in it");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToHaveAttributeAsync("data-status", "proven-optimal");
        await sheet.PressAsync("Go to what I typed");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToBeFocusedAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Which_offers_count_is_said_in_short_with_what_is_taken_where_they_say_nothing()
    {
        await using var sheet = await OpenAsync("counted");
        await ChangeAsync(sheet, "Which offers count", "Days, where not said", "4");
        var line = Fold(sheet, "Which offers count").Locator(".set");
        await Assertions.Expect(line).ToHaveTextAsync(new Regex("days taken as 4 where not said; import charge taken as 0 % where not said; left out where not said: sending$"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_wrong_wish_is_refused_at_its_field_in_the_fold_it_stands_in()
    {
        await using var sheet = (await OpenAsync("wrong")).Expecting(400);
        await ChangeAsync(sheet, "What it is to become", "Power at the crank", "240 hp");
        await sheet.TabToAsync(Fold(sheet, "What it is to become"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        var power = sheet.Page.GetByLabel("Power at the crank", new() { Exact = true });
        await Assertions.Expect(power).ToBeVisibleAsync();
        await Assertions.Expect(power).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(power).ToHaveValueAsync("240 hp");
        await sheet.AssertUsableAsync("build-wrong");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_wish_is_added_by_keyboard_and_said_in_words()
    {
        await using var sheet = await OpenAsync("wished");
        await OpenStatementAsync(sheet);
        await sheet.TabToAsync(Fold(sheet, "Wishes"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.PressAsync("Add a wish");
        var wish = sheet.Page.Locator(".wish").Last;
        await wish.GetByLabel("Where", new() { Exact = true }).SelectOptionAsync("position:coolant-pump");
        await wish.GetByLabel("Of the donor’s own", new() { Exact = true }).SelectOptionAsync("renew");
        await wish.GetByLabel("buy only new parts", new() { Exact = true }).CheckAsync();
        await Assertions.Expect(wish.Locator("summary").First).ToHaveTextAsync("Coolant pump: renew it; only new parts");
        await sheet.AssertUsableAsync("build-wishes");
        await sheet.PressAsync("Save it");
        await Assertions.Expect(sheet.Page.Locator("#statement > summary")).ToBeFocusedAsync();
        var added = (await server.ReadAsync("/api/builds/wished")).GetProperty("document").GetProperty("wishes").EnumerateArray().Last();
        Assert.Equal("coolant-pump", added.GetProperty("position").GetString());
        Assert.Equal("renew", added.GetProperty("keep").GetString());
        Assert.True(added.GetProperty("onlyNew").GetBoolean());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Every_fold_of_a_statement_opened_is_usable()
    {
        await using var sheet = await OpenAsync("opened");
        await OpenStatementAsync(sheet);
        await sheet.Page.EvaluateAsync("document.querySelectorAll('#statement .more').forEach(fold => { fold.open = true; })");
        await sheet.AssertUsableAsync("build-statement");
        sheet.AssertQuiet();
    }

    private async Task<Sheet> OpenAsync(string code)
    {
        Chromium.MustBeThere();
        await server.CopyBuildAsync("hill-climb", code);
        return await bench.OpenAsync(server.Address, $"build.html?build={code}", Look.Light);
    }

    private static ILocator Fold(Sheet sheet, string title) => sheet.Page.Locator("#statement .more > summary").Filter(new() { HasText = title }).First;

    private static async Task OpenStatementAsync(Sheet sheet)
    {
        await sheet.PressSummaryAsync();
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Save it" })).ToBeVisibleAsync();
    }

    private static async Task ChangeAsync(Sheet sheet, string fold, string label, string text)
    {
        await OpenStatementAsync(sheet);
        await sheet.TabToAsync(Fold(sheet, fold));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.TypeAsync(label, text);
    }
}
