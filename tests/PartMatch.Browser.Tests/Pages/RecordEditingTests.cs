using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Changing rows on their sheets. Every test has rows of its own.</summary>
public sealed class RecordEditingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    private const string Lobe = "pellworth:P-12-3306-A,base-to-lobe-height,ev-0009";

    [Fact]
    public async Task A_value_typed_in_inches_is_recorded_in_inches()
    {
        await using var sheet = await OpenAsync($"record.html?book=tern-16&table=values&key={Lobe}");
        await sheet.TypeAsync("Value", "1.763 in");
        await sheet.TypeAsync("Uncertainty", "0.002 in");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.TypeAsync("Why", "read again with the inch micrometer");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        var row = await server.ReadRowAsync("tern-16", "values", Lobe);
        Assert.Contains("\"value\":\"1.763\",\"unit\":\"in\",\"uncertainty\":\"0.002\"", row, StringComparison.Ordinal);
        Assert.Contains("\"who\":\"Ann\"", row, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator(".entry").First).ToContainTextAsync("44.78");
        await Assertions.Expect(sheet.Page.GetByLabel("Your name")).ToHaveValueAsync("Ann");
        await Pictures.TakeAsync(sheet, "record-saved-light");
        await AssertAccessibleAsync(sheet, Look.Light);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_point_of_a_curve_is_typed_with_the_units_of_the_gauge()
    {
        await using var sheet = await OpenAsync("record.html?book=tern-16&table=curves&key=harl:I-4401,dead-time,10.0,2.5,ev-0011");
        await sheet.TypeAsync("At", "10.5 V");
        await sheet.TypeAsync("And at", "36.3 psi");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        var row = await server.ReadRowAsync("tern-16", "curves", "harl:I-4401,dead-time,10.5,36.3,ev-0011");
        Assert.Contains("\"x\":\"10.5\",\"xUnit\":\"V\",\"y\":\"36.3\",\"yUnit\":\"psi\"", row, StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_wrong_cell_is_refused_at_its_field_and_everything_typed_stays()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=values&key=pellworth:P-12-3306-A,bearing-diameter,ev-0003")).Expecting(400);
        await sheet.TypeAsync("Value", "26,00 mm");
        await sheet.TypeAsync("Minus", "0.009 mm");
        await sheet.TypeAsync("Why", "a word to keep");
        await sheet.PressAsync("Save");
        var summary = sheet.Page.Locator(".faults");
        await Assertions.Expect(summary).ToBeFocusedAsync();
        await Assertions.Expect(summary).ToContainTextAsync("Is the comma a decimal point");
        var value = sheet.Page.GetByLabel("Value", new() { Exact = true });
        await Assertions.Expect(value).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(value).ToHaveAccessibleDescriptionAsync(new Regex("To mend: write 26.00 mm"));
        await Assertions.Expect(value).ToHaveValueAsync("26,00 mm");
        await Assertions.Expect(sheet.Page.GetByLabel("Minus")).ToHaveValueAsync("0.009 mm");
        await Assertions.Expect(sheet.Page.GetByLabel("Why")).ToHaveValueAsync("a word to keep");
        await Pictures.TakeAsync(sheet, "record-wrong-light");
        await AssertAccessibleAsync(sheet, Look.Light);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Two_units_in_one_row_are_refused_at_the_cell_that_is_left_behind()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=values&key=pellworth:P-12-3306-A,bearing-diameter,ev-0003")).Expecting(400);
        await sheet.TypeAsync("Value", "1.0236 in");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.GetByLabel("Minus")).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("0.008 mm is 0.000314961 in"); // 0.008 / 25.4 = 0.00031496…
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_second_of_two_to_save_sees_both_versions_loses_nothing_and_can_then_save()
    {
        const string Row = "record.html?book=tern-16&table=evidence&key=ev-0010";
        await using var first = await OpenAsync(Row);
        await using var second = (await OpenAsync(Row)).Expecting(412);
        await first.TypeAsync("Who says so", "bench 3");
        await first.TypeAsync("What it is", "sheet of the first");
        await first.TypeAsync("Your name", "Ann");
        await first.TypeAsync("Why", "wrong bench");
        await first.PressAsync("Save");
        await second.TypeAsync("Made or written on", "2026-03-01");
        await second.TypeAsync("What it is", "sheet of the second");
        await second.PressAsync("Save");

        var conflict = second.Page.Locator(".conflict");
        await Assertions.Expect(conflict).ToBeFocusedAsync();
        await Assertions.Expect(conflict).ToContainTextAsync("by Ann");
        await Assertions.Expect(conflict).ToContainTextAsync("because “wrong bench”");
        await Assertions.Expect(conflict.Locator("tbody tr")).ToHaveCountAsync(3);
        await Assertions.Expect(conflict.GetByLabel("sheet of the first")).Not.ToBeCheckedAsync();
        await Assertions.Expect(conflict.GetByLabel("sheet of the second")).ToBeCheckedAsync();
        await Assertions.Expect(conflict.GetByLabel("bench 3")).ToBeCheckedAsync();
        foreach (var look in Look.All)
        {
            await second.TakeAsync(look);
            await Pictures.TakeAsync(second, $"record-conflict-{look.Name}");
            await AssertAccessibleAsync(second, look);
        }

        await second.TakeAsync(Look.Light);
        await conflict.GetByLabel("sheet of the first").PressAsync("Space");
        await second.PressAsync("Save what is picked");
        await Assertions.Expect(second.Page.Locator(".done")).ToBeFocusedAsync();
        var row = await server.ReadRowAsync("tern-16", "evidence", "ev-0010");
        Assert.Contains("\"date\":\"2026-03-01\",\"author\":\"bench 3\",\"source\":\"sheet of the first\"", row, StringComparison.Ordinal);
        second.AssertQuiet();
    }

    [Fact]
    public async Task A_row_removed_meanwhile_can_be_added_again_with_what_was_typed()
    {
        const string Row = "record.html?book=tern-16&table=numbers&key=kestlow:77-2041,pellworth:P-12-3306-A";
        await using var first = await OpenAsync(Row);
        await using var second = (await OpenAsync(Row)).Expecting(412);
        await first.PressAsync("Remove this further number …");
        await first.PressAsync("Yes, remove it");
        await Assertions.Expect(first.Page.Locator(".done")).ToContainTextAsync("Removed");
        await second.TypeAsync("Note", "on the box");
        await second.PressAsync("Save");
        await Assertions.Expect(second.Page.Locator(".conflict")).ToContainTextAsync("removed this row");
        await second.PressAsync("Add it again with what is typed");
        await Assertions.Expect(second.Page.Locator(".done")).ToContainTextAsync("Added as change");
        Assert.Contains("on the box", await server.ReadRowAsync("tern-16", "numbers", "kestlow:77-2041,pellworth:P-12-3306-A"), StringComparison.Ordinal);
        first.AssertQuiet();
        second.AssertQuiet();
    }

    [Fact]
    public async Task What_is_in_use_is_not_removed_and_its_users_are_links()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=evidence&key=ev-0004")).Expecting(409);
        await sheet.PressAsync("Remove this piece of evidence …");
        await sheet.PressAsync("Yes, remove it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Pictures.TakeAsync(sheet, "record-in-use-light");
        await AssertAccessibleAsync(sheet, Look.Light);
        var user = sheet.Page.Locator(".faults").GetByRole(AriaRole.Link, new() { NameRegex = new("boost-needs-knock-sensor") });
        Assert.Equal("record.html?book=tern-16&table=companions&key=boost-needs-knock-sensor", await user.GetAttributeAsync("href"));
        await sheet.Page.Locator(".faults").GetByRole(AriaRole.Button, new() { Name = "Retract it instead" }).PressAsync("Enter");
        await Assertions.Expect(sheet.Page.GetByLabel("Retracted because")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.GetByLabel("Retracted on")).ToHaveValueAsync(new Regex(@"^\d{4}-\d{2}-\d{2}$"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_was_typed_comes_back_after_a_reload_by_hand_only()
    {
        await using var sheet = await OpenAsync("record.html?book=tern-16&table=parts&key=pellworth:P-26-1147-B");
        var warned = 0;
        sheet.Page.Dialog += async (_, dialog) =>
        {
            warned++;
            await dialog.AcceptAsync();
        };
        await sheet.TypeAsync("Note", "seal face as first made");
        await sheet.Page.ReloadAsync(new() { WaitUntil = WaitUntilState.NetworkIdle });
        await sheet.SettleAsync();
        Assert.Equal(1, warned);
        await Assertions.Expect(sheet.Page.GetByLabel("Note")).ToHaveValueAsync("");
        await Assertions.Expect(sheet.Page.Locator(".draft")).ToContainTextAsync("You typed something here and did not save it");
        await Pictures.TakeAsync(sheet, "record-draft-light");
        await sheet.PressAsync("Fill in what I typed");
        await Assertions.Expect(sheet.Page.GetByLabel("Note")).ToHaveValueAsync("seal face as first made");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        await sheet.Page.ReloadAsync(new() { WaitUntil = WaitUntilState.NetworkIdle });
        await Assertions.Expect(sheet.Page.Locator(".draft")).ToHaveCountAsync(0);
        Assert.Equal(1, warned);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_variant_is_added_and_another_begins_as_its_copy()
    {
        await using var sheet = (await OpenAsync("record.html?book=tern-16&table=variants&new")).Expecting(400);
        await sheet.TypeAsync("Name", "TX test stand");
        await sheet.PressAsync("Add this variant");
        await Assertions.Expect(sheet.Page.GetByLabel("Short name")).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.TypeAsync("Short name", "tx");
        await sheet.TypeAsync("Built from", "2019-04");
        await sheet.TypeAsync("Evidence", "ev-0001");
        await sheet.PressAsync("Add this variant");
        await sheet.ArriveAtAsync("record.html?book=tern-16&table=variants&key=tx");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Added as change");
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "Add another like it" }).PressAsync("Enter");
        await sheet.ArriveAtAsync("record.html?book=tern-16&table=variants&copy=tx&new");
        await Assertions.Expect(sheet.Page.GetByLabel("Name", new() { Exact = true })).ToHaveValueAsync("TX test stand");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_change_is_taken_back_from_the_history_and_both_refer_to_each_other()
    {
        const string Row = "book=tern-16&table=positions&key=alternator";
        await using var sheet = (await OpenAsync($"record.html?{Row}")).Expecting(409);
        await sheet.TypeAsync("Name", "Charging alternator");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        await sheet.GoAsync($"history.html?{Row}");
        var change = await sheet.Page.Locator(".entry").First.GetAttributeAsync("id");
        await sheet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take this change back") }).First.PressAsync("Enter");
        await sheet.TypeAsync("Why take it back", "the old name was right");
        await sheet.PressAsync("Yes, take it back");
        await Assertions.Expect(sheet.Page.Locator(".changes > .notice")).ToBeFocusedAsync();
        Assert.Contains("\"name\":\"Alternator\"", await server.ReadRowAsync("tern-16", "positions", "alternator"), StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator(".entry").First).ToContainTextAsync($"It took back {change?.Replace('-', ' ')}");
        await Assertions.Expect(sheet.Page.Locator($"#{change}")).ToContainTextAsync("Taken back by change");
        await Pictures.TakeAsync(sheet, "history-undone-light");

        await sheet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take this change back") }).Last.PressAsync("Enter");
        await sheet.PressAsync("Yes, take it back");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        Assert.NotEqual(0, await sheet.Page.Locator(".faults li a").CountAsync());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task With_the_server_out_of_reach_the_form_keeps_everything_and_saves_later()
    {
        await using var sheet = await OpenAsync("record.html?book=tern-16&table=access&key=alternator");
        await sheet.Page.RouteAsync("**/api/books/tern-16/access/alternator*", route => route.AbortAsync());
        await sheet.TypeAsync("How", "belt cover off first");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("The server cannot be reached");
        await Assertions.Expect(sheet.Page.GetByLabel("How")).ToHaveValueAsync("belt cover off first");
        await sheet.Page.UnrouteAllAsync();
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
    }

    [Fact]
    public async Task A_server_with_a_token_asks_for_it_where_it_is_needed()
    {
        Chromium.MustBeThere();
        await using var guarded = new DemoServer { Settings = { ["PartMatch:Token"] = "a token for this test" } };
        await using var sheet = (await bench.OpenAsync(guarded.Start(), "record.html?book=tern-16&table=access&key=alternator", Look.Light)).Expecting(401);
        await Assertions.Expect(sheet.Page.GetByLabel("Edit token", new() { Exact = true })).ToBeHiddenAsync();
        await sheet.TypeAsync("How", "belt cover off first");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.GetByLabel("Edit token", new() { Exact = true })).ToHaveAttributeAsync("aria-invalid", "true");
        await sheet.TypeAsync("Edit token", "a token for this test");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        Assert.Equal(0, await sheet.Page.EvaluateAsync<int>("localStorage.length"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_list_takes_one_thing_in_each_line()
    {
        const string Key = "pellworth:P-13-0552-A,pellworth:P-13-0552-B";
        await using var sheet = await OpenAsync($"record.html?book=tern-16&table=supersessions&key={Key}");
        await Assertions.Expect(sheet.Page.GetByLabel("Together with, line 1")).ToHaveValueAsync("pellworth:P-13-0553-A");
        await sheet.TypeAsync("Together with, line 2", "pellworth:P-26-0312-A");
        await Assertions.Expect(sheet.Page.GetByLabel("Together with, line 3")).ToHaveValueAsync("");
        await sheet.TickAsync("TV delivery van");
        await Pictures.TakeAsync(sheet, "record-list-light");
        await sheet.PressAsync("Save");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        var row = await server.ReadRowAsync("tern-16", "supersessions", Key);
        Assert.Contains("\"with\":\"pellworth:P-13-0553-A|pellworth:P-26-0312-A\",\"variants\":\"tv\"", row, StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    private static async Task AssertAccessibleAsync(Sheet sheet, Look look)
    {
        Assert.InRange(await sheet.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"), 0, 0);
        if (look.Medium == Media.Screen)
        {
            var found = await sheet.Page.RunAxe();
            Assert.Empty(found.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{violation.Id}: {node.Html}")));
        }
    }

    private Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return bench.OpenAsync(server.Address, address, Look.Light);
    }
}
