using System.Text;
using System.Text.Json;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;
using PartMatch.Core.Tests.Photos;

namespace PartMatch.Browser.Tests.Pages;

public sealed class PartPageTests(Bench bench) : PageTests(
    bench, "part.html", ("pump", "part.html?number=P-26-1147-C"), ("casting-mark", "part.html?number=26-70-5"),
    ("curves", "part.html?number=harl:I-4401"), ("unknown", "part.html?number=P-26-1174-Z"))
{
    [Fact]
    public async Task Asked_by_keyboard_it_shows_values_with_evidence_places_and_the_number_it_replaced()
    {
        await using var sheet = await Bench.OpenAsync("part.html");
        await sheet.TypeAsync("Part number", "p-26-1147-c");
        await sheet.PressAsync("Show");
        var text = await sheet.TextAsync("#answer");
        Assert.Contains("Coolant pump", text, StringComparison.Ordinal);
        Assert.Contains("clockwise", text, StringComparison.Ordinal);
        Assert.Contains("maker’s document", text, StringComparison.Ordinal);
        Assert.Contains("TV delivery van", text, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "P-26-1147-B" }).First).ToBeVisibleAsync();
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_part_with_dangerous_look_alikes_leads_to_the_key_before_paying()
    {
        await using var sheet = await Bench.OpenAsync("part.html?number=P-26-1147-C");
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Tell them apart before paying" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("tell-apart.html?parts=pellworth:P-26-1147-C");
        await Assertions.Expect(sheet.Page.GetByLabel("Message to the seller")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Which_of_two_numbers_is_the_newer_is_said_above_the_table()
    {
        await using var older = await Bench.OpenAsync("part.html?number=P-26-1147-B");
        await using var newer = await Bench.OpenAsync("part.html?number=P-26-1147-C");

        await Assertions.Expect(older.Page.GetByRole(AriaRole.Heading, new() { Name = "Replaced by these newer numbers" })).ToBeVisibleAsync();
        await Assertions.Expect(newer.Page.GetByRole(AriaRole.Heading, new() { Name = "Replaces these older numbers" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task What_was_found_of_it_in_any_family_is_told_with_who_says_so_and_leads_to_the_answer()
    {
        await using var sheet = await Bench.OpenAsync("part.html?number=P-11-3104-A");
        var broken = sheet.Page.Locator("#tern-16-fi-0010");
        await Assertions.Expect(broken).ToContainTextAsync("Runs differently");
        await Assertions.Expect(broken).ToContainTextAsync("Beam of rod 2 folded");
        await Assertions.Expect(broken).ToContainTextAsync("4 h under load, 125 kW, petrol 95");
        await sheet.TabToAsync(broken.GetByRole(AriaRole.Link, new() { Name = "Connecting rods, TG range-extender generator set" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("fit.html?family=tern-16&variant=tg&position=connecting-rod&part=pellworth:P-11-3104-A&with=piston%3Dvardmoor:VF-8500-20");
        await Assertions.Expect(sheet.Page.Locator("#fi-0010")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_photograph_of_its_evidence_is_shown_with_what_it_shows()
    {
        Chromium.MustBeThere();
        await using var server = new DemoServer();
        var address = server.Start();
        using var client = server.CreateClient();
        using var picture = new ByteArrayContent(DrawnJpeg.Plain) { Headers = { ContentType = new("image/jpeg") } };
        using var stored = await client.PostAsync(new Uri("/api/images", UriKind.Relative), picture, TestContext.Current.CancellationToken);
        var answer = JsonDocument.Parse(await stored.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        using var row = new StringContent(
            $$"""{"photo":"ph-0001","image":"{{answer.GetProperty("image").GetString()}}","evidence":"ev-0040","caption":"the radiator inlet"}""", Encoding.UTF8, "application/json");
        using var added = await client.PostAsync(new Uri("/api/books/tern-16/photos", UriKind.Relative), row, TestContext.Current.CancellationToken);
        Assert.True(added.IsSuccessStatusCode, await added.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        await using var sheet = await Bench.OpenAsync(address, "part.html?number=P-26-1147-C", Look.Light);

        var shown = sheet.Page.GetByAltText("the radiator inlet");
        await shown.ScrollIntoViewIfNeededAsync();
        Assert.Equal(16, await shown.EvaluateAsync<int>("async picture => { await picture.decode(); return picture.naturalWidth; }"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_casting_mark_shows_every_part_that_carries_it()
    {
        await using var sheet = await Bench.OpenAsync("part.html?number=26-70-5");
        foreach (var number in new[] { "P-26-1147-B", "P-26-1147-C", "P-26-1147-E" })
        {
            Assert.Contains(number, await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        }

        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_unknown_number_is_no_error_and_leads_to_its_nearest()
    {
        await using var sheet = await Bench.OpenAsync("part.html?number=P-26-1174-Z");
        await sheet.TabToAsync(sheet.Page.Locator("#answer a[href^='look-alikes.html']").First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("look-alikes.html?");
        Assert.Contains("P-26-1147-C", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_text_without_any_sign_of_a_number_is_refused_at_its_field()
    {
        await using var sheet = (await Bench.OpenAsync("part.html")).Expecting(400);
        await sheet.TypeAsync("Part number", "---");
        await sheet.PressAsync("Show");
        await sheet.AssertRefusedAsync("number", "---", "letter");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_fastener_leads_to_how_it_is_tightened_where_it_was_fitted()
    {
        await using var sheet = await Bench.OpenAsync("part.html?number=P-13-0426-A");
        await sheet.TabToAsync(sheet.Page.Locator("a[href^='tightening.html?']").First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("tightening.html?family=tern-16&variant=ts&position=flywheel-bolt");
        Assert.Contains("70 N·m ± 5", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }
}
