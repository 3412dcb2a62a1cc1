using System.Text.Json;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>"Tried it? Record what you found." Every test asks about a position of its own.</summary>
public sealed class RecordFindingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    private const string Tern = "fit.html?family=tern-16&";

    [Fact]
    public async Task A_run_under_load_turns_not_known_into_fits_and_taken_back_in_the_history_it_is_not_known_again()
    {
        const string Dipstick = Tern + "variant=tm&position=dipstick&from=ts";
        await using var sheet = await OpenAsync(Dipstick);
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Not known yet");
        await OpenFormAsync(sheet);
        await sheet.PickAsync("It ran under load");
        await sheet.PickAsync("went on");
        await sheet.PickAsync("the same");
        await sheet.TypeAsync("Hours under load", "3.5");
        await sheet.TypeAsync("Power while it ran", "41 kW");
        await sheet.TypeAsync("What you saw", "full mark 9 mm over the pickup");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.PressAsync("Record it");

        var told = sheet.Page.Locator(".done");
        await Assertions.Expect(told).ToBeFocusedAsync();
        await Assertions.Expect(told).ToContainTextAsync("Not known yet (mounts not known, unproven; runs not known, unproven)");
        await Assertions.Expect(told).ToContainTextAsync("Fits (mounts yes, proven; runs the same, proven)");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Fits");
        foreach (var look in Look.All)
        {
            await sheet.TakeAsync(look);
            await Pictures.TakeAsync(sheet, $"fit-recorded-{look.Name}");
        }

        var finding = await FindingAsync("where=part:pellworth:P-15-0703-A&where=axis:runs");
        Assert.Equal("full mark 9 mm over the pickup", finding.GetProperty("note").GetString());
        Assert.False(finding.TryGetProperty("serialFrom", out _));
        var evidence = finding.GetProperty("evidence").GetString() ?? "";
        Assert.Contains("\"grade\":\"ran-under-load\"", await server.ReadRowAsync("tern-16", "evidence", evidence), StringComparison.Ordinal);
        var more = await server.ReadRowAsync("tern-16", "sources", evidence);
        Assert.Contains("\"hours\":\"3.5\",\"output\":\"41\",\"outputUnit\":\"kW\"", more, StringComparison.Ordinal);

        await sheet.TakeAsync(Look.Light);
        await told.GetByRole(AriaRole.Link).PressAsync("Enter");
        await sheet.ArriveAtAsync("history.html?cursor=");
        await Assertions.Expect(sheet.Page.Locator(".entry").First).ToContainTextAsync("by Ann");
        await sheet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Take this change back") }).First.PressAsync("Enter");
        await sheet.PressAsync("Yes, take it back");
        await Assertions.Expect(sheet.Page.Locator(".changes > .notice")).ToBeFocusedAsync();
        await sheet.GoAsync(Dipstick);
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Not known yet");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_trial_fit_says_nothing_about_running_and_the_form_says_so_before_anything_is_sent()
    {
        await using var sheet = await OpenAsync(Tern + "variant=tg&position=alternator&from=tm");
        await OpenFormAsync(sheet);
        await sheet.PickAsync("I put it on, no more");
        await sheet.PickAsync("went on");
        await sheet.PickAsync("the same");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("a trial fit says nothing about how the engine runs");
        await sheet.PickAsync("not run");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Not known yet (mounts yes, proven; runs not known, unproven)");
        Assert.Equal(1, (await server.ReadAsync("/api/books/tern-16/findings?where=variant:tg&where=position:alternator")).GetProperty("total").GetInt32());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_wrong_cell_is_refused_at_its_field_and_everything_typed_stays()
    {
        await using var sheet = (await OpenAsync(Tern + "variant=tg&position=balance-shaft&from=tm")).Expecting(400);
        await OpenFormAsync(sheet);
        await sheet.PickAsync("It ran under load");
        await sheet.PickAsync("differently");
        await sheet.TypeAsync("Hours under load", "3,5");
        await sheet.TypeAsync("What you saw", "a word to keep");
        await sheet.PressAsync("Record it");
        var hours = sheet.Page.GetByLabel("Hours under load");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(hours).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(hours).ToHaveValueAsync("3,5");
        await Assertions.Expect(sheet.Page.GetByLabel("What you saw")).ToHaveValueAsync("a word to keep");
        await Pictures.TakeAsync(sheet, "fit-record-wrong-light");
        await sheet.TypeAsync("Hours under load", "3.5");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Recorded as change");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Neighbours_and_serial_number_of_the_question_go_into_the_finding_the_serial_number_only_by_hand()
    {
        await using var sheet = await OpenAsync(Tern + "variant=tg&position=turbocharger&from=ts&serial=41206&with=piston%3Dvardmoor:VF-8500-20");
        await OpenFormAsync(sheet);
        await sheet.PickAsync("I put it on, no more");
        await sheet.PickAsync("went on after work");
        await sheet.ChooseAsync("It holds for", "from this one on");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Recorded as change");
        var row = (await FindingAsync("where=variant:tg&where=position:turbocharger")).GetRawText();
        Assert.Contains("\"outcome\":\"with-work\",\"serialFrom\":\"41206\",\"with\":\"piston=vardmoor:VF-8500-20\"", row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_that_somebody_else_takes_meanwhile_is_passed_over()
    {
        await using var sheet = (await OpenAsync(Tern + "variant=tg&position=knock-sensor&from=ts")).Expecting(400);
        var tries = 0;
        await sheet.Page.RouteAsync("**/api/books/tern-16/changes*", async route =>
        {
            if (tries++ == 0)
            {
                var sent = JsonDocument.Parse(route.Request.PostData ?? "").RootElement;
                var code = sent.GetProperty("rows")[0].GetProperty("row").GetProperty("evidence").GetString();
                await server.AddRowsAsync("tern-16", $$$"""{"table":"evidence","row":{"evidence":"{{{code}}}","grade":"reported"}}""");
            }

            await route.ContinueAsync();
        });
        await OpenFormAsync(sheet);
        await sheet.PickAsync("A builder told me");
        await sheet.TypeAsync("Who told you", "builder 21");
        await sheet.PickAsync("the same");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Recorded as change");
        Assert.Equal(2, tries);
    }

    [Fact]
    public async Task A_part_of_no_book_is_added_first_and_what_was_typed_waits()
    {
        await using var sheet = await OpenAsync(Tern + "variant=tv&position=coolant-pump&part=P-26-1174-Z");
        await OpenFormAsync(sheet);
        await sheet.TypeAsync("What you saw", "a word to keep");
        await sheet.Page.GetByRole(AriaRole.Link, new() { Name = "Add the part to the book first" }).PressAsync("Enter");
        await sheet.ArriveAtAsync("record.html?book=tern-16&table=parts&part=P-26-1174-Z&kind=coolant-pump&new");
        await sheet.GoAsync(Tern + "variant=tv&position=coolant-pump&part=P-26-1174-Z");
        await OpenFormAsync(sheet);
        await sheet.PressAsync("Fill in what I typed");
        await Assertions.Expect(sheet.Page.GetByLabel("What you saw")).ToHaveValueAsync("a word to keep");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_server_with_a_token_asks_for_it_and_nothing_typed_is_lost()
    {
        Chromium.MustBeThere();
        await using var guarded = new DemoServer { Settings = { ["PartMatch:Token"] = "a token for this test" } };
        await using var sheet = (await bench.OpenAsync(guarded.Start(), Tern + "variant=tg&position=piston-jet&from=ts", Look.Light)).Expecting(401);
        await OpenFormAsync(sheet);
        await sheet.PickAsync("I measured it");
        await sheet.PickAsync("did not go on");
        await sheet.TypeAsync("With what", "caliper, 0.02 mm");
        await sheet.PressAsync("Record it");
        await Assertions.Expect(sheet.Page.GetByLabel("Edit token", new() { Exact = true })).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(sheet.Page.GetByLabel("With what")).ToHaveValueAsync("caliper, 0.02 mm");
        await sheet.TypeAsync("Edit token", "a token for this test");
        await sheet.PressAsync("Record it");

        // Measured has rank 2, proven; what is reckoned from the records says that it mounts, so it is one step less.
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("Does not fit (mounts no, documented");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_open_form_is_nowhere_too_wide_and_axe_finds_no_violation()
    {
        await using var sheet = await OpenAsync(Tern + "variant=tm&position=turbocharger&from=ts&serial=41206&with=piston%3Dvardmoor:VF-8500-20");
        await OpenFormAsync(sheet);
        await sheet.PickAsync("It ran under load");
        List<string> faults = [];
        foreach (var look in Look.All)
        {
            await sheet.TakeAsync(look);
            await Pictures.TakeAsync(sheet, $"fit-record-{look.Name}");
            faults.AddRange((await PageTests.FaultsOfAsync(sheet, look)).Select(fault => $"{look.Name}: {fault}"));
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private async Task<JsonElement> FindingAsync(string where) =>
        (await server.ReadAsync($"/api/books/tern-16/findings?{where}")).GetProperty("rows")[0].GetProperty("row");

    private static async Task OpenFormAsync(Sheet sheet)
    {
        await sheet.TabToAsync(sheet.Page.Locator(".recording > summary"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Form, new() { Name = "What you found" })).ToBeVisibleAsync();
    }

    private Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return bench.OpenAsync(server.Address, address, Look.Light);
    }
}
