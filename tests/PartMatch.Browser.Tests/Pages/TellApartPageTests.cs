using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Tell apart: above all the van's and the sport engine's coolant pumps, which one photograph of the vanes parts.</summary>
public sealed class TellApartPageTests(Bench bench) : PageTests(
    bench, "tell-apart.html", ("pair", Pumps), ("alone", "tell-apart.html?parts=P-26-1147-C&mode=before-paying"), ("in-hand", Springs), ("seen", Springs + "&seen=paint:white"),
    ("steps", Camshafts), ("engine", Engine), ("mixed-engine", Engine + "&seen=coolant-pump.drive:tang&seen=cam-cover.breather:rear&seen=intake-camshaft.nose:phaser"),
    ("engine-before-paying", "tell-apart.html?family=tern-16&mode=before-paying"), ("together", Injectors))
{
    private const string Pumps = "tell-apart.html?parts=P-26-1147-C,P-26-1147-E&mode=before-paying";

    private const string Springs = "tell-apart.html?parts=P-12-4102-A,P-12-4103-A,P-12-4104-A&mode=in-hand";

    private const string Camshafts = "tell-apart.html?parts=P-12-3306-A,P-12-3307-A,P-12-3308-A,P-12-3309-A&mode=in-hand";

    private const string Injectors = "tell-apart.html?parts=I-6201,I-6207&mode=before-paying";

    private const string Engine = "tell-apart.html?family=tern-16&mode=in-hand";

    [Fact]
    public async Task Asked_by_keyboard_one_photo_parts_the_two_pumps()
    {
        await using var sheet = await Bench.OpenAsync("tell-apart.html");
        await sheet.TypeAsync("Part numbers", "P-26-1147-C, P-26-1147-E");
        await sheet.PressAsync("Make the key");
        var headline = sheet.Page.Locator("#answer h2").First;
        await Assertions.Expect(headline).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Status).First).ToContainTextAsync(await headline.InnerTextAsync());
        await Assertions.Expect(sheet.Page.Locator(".check")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator(".check")).ToContainTextAsync("by photo");
        await Assertions.Expect(Arm(sheet, "Anticlockwise").Locator("[data-end=one]")).ToContainTextAsync("P-26-1147-E");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task An_answer_chosen_in_the_key_goes_into_the_address_narrows_and_can_be_taken_back()
    {
        await using var sheet = await Bench.OpenAsync(Pumps);
        await sheet.TabToAsync(Arm(sheet, "Anticlockwise").Locator("a"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("tell-apart.html?parts=P-26-1147-C,P-26-1147-E&mode=before-paying&seen=vane-curve@photo:anticlockwise");
        await Assertions.Expect(sheet.Page.Locator("[data-told=identified] h2")).ToContainTextAsync("P-26-1147-E");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("[data-state=ruled-out]")).ToContainTextAsync("P-26-1147-C");
        await AssertSameWhenReopenedAsync(sheet);
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { NameRegex = new Regex("^take back") }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page).Not.ToHaveURLAsync(new Regex("seen="));
        await Assertions.Expect(sheet.Page.Locator(".check")).ToHaveCountAsync(1);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_answer_further_down_carries_those_above_it_along()
    {
        await using var sheet = await Bench.OpenAsync(Camshafts);
        await Assertions.Expect(sheet.Page.Locator(".check")).ToHaveCountAsync(2);
        await sheet.TabToAsync(sheet.Page.Locator(".arms .arms .answer").First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync(Camshafts + "&seen=base-to-lobe-height@caliper:44.8+mm&seen=nose@photo:fixed");
        await Assertions.Expect(sheet.Page.Locator(".seen-so-far li")).ToHaveCountAsync(2);
        await Assertions.Expect(sheet.Page.Locator("[data-told=identified] h2")).ToContainTextAsync("P-12-3308-A");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Unticking_what_was_seen_in_the_question_takes_it_back()
    {
        await using var sheet = await Bench.OpenAsync(Springs + "&seen=paint:white");
        await sheet.PressSummaryAsync();
        await sheet.TickAsync("paint: white");
        await sheet.PressAsync("Make the key");
        Assert.DoesNotContain("seen=", sheet.Page.Url, StringComparison.Ordinal);
        Assert.NotEmpty(await sheet.Page.Locator(".check").AllAsync());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_tool_that_is_not_at_hand_stands_in_no_check()
    {
        await using var sheet = await Bench.OpenAsync("tell-apart.html");
        await sheet.TypeAsync("Part numbers", "P-12-4102-A, P-12-4103-A, P-12-4104-A");
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { NameRegex = new Regex("before paying") }));
        await sheet.Page.Keyboard.PressAsync("ArrowDown");
        await sheet.TickAsync("caliper");
        await sheet.PressAsync("Make the key");
        Assert.Contains("mode=in-hand&tools=steel-rule,gauge,scale,meter,bench", sheet.Page.Url, StringComparison.Ordinal);
        Assert.DoesNotContain("with a caliper", await sheet.TextAsync(".card"), StringComparison.Ordinal);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task The_message_to_the_seller_is_copied_and_that_is_said()
    {
        await using var sheet = await Bench.OpenAsync(Pumps);
        await sheet.Page.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        var message = await sheet.Page.GetByLabel("Message to the seller").InputValueAsync();
        Assert.NotEmpty(message);
        await sheet.PressAsync("Copy");
        await Assertions.Expect(sheet.Page.Locator(".copied[role=status]")).ToHaveTextAsync("Copied.");
        Assert.Equal(message, await sheet.Page.EvaluateAsync<string>("navigator.clipboard.readText()"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_a_clipboard_the_message_is_selected_and_that_is_said()
    {
        await using var sheet = await Bench.OpenAsync(Pumps);
        await sheet.Page.EvaluateAsync("Object.defineProperty(navigator, 'clipboard', { value: undefined })");
        await sheet.PressAsync("Copy");
        await Assertions.Expect(sheet.Page.Locator(".copied")).ToContainTextAsync("selected");
        var message = sheet.Page.GetByLabel("Message to the seller");
        await Assertions.Expect(message).ToBeFocusedAsync();
        Assert.True(await message.EvaluateAsync<bool>("area => area.selectionStart === 0 && area.selectionEnd === area.value.length"));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_card_prints_alone_on_one_page_with_candidates_checks_answers_and_minutes()
    {
        await using var sheet = await Bench.OpenAsync(Springs);
        await sheet.Page.EvaluateAsync("window.print = () => { window.hasPrinted = true; }");
        await sheet.PressAsync("Print this card");
        Assert.True(await sheet.Page.EvaluateAsync<bool>("window.hasPrinted === true"));
        await sheet.TakeAsync(Look.Print);
        await Pictures.TakeAsync(sheet, "tell-apart-card");
        var card = sheet.Page.Locator(".card");
        foreach (var text in new[] { "P-12-4102-A", "P-12-4103-A", "P-12-4104-A", " min" })
        {
            await Assertions.Expect(card).ToContainTextAsync(text);
        }

        Assert.NotEmpty(await card.Locator(".answer").AllAsync());
        var visible = await sheet.Page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('.strip, .foot, .question, #answer > *')].filter(element => element.getClientRects().length > 0).map(element => element.className)");
        Assert.Equal(["card"], visible);
        var box = await card.BoundingBoxAsync();
        Assert.NotNull(box);
        Assert.InRange(box.Height, 1, Look.Print.Height);
        await sheet.Page.EvaluateAsync("window.dispatchEvent(new Event('afterprint'))");
        await Assertions.Expect(sheet.Page.Locator(".headline")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_nothing_separates_is_said_with_what_would()
    {
        await using var sheet = await Bench.OpenAsync(Injectors);
        await Assertions.Expect(sheet.Page.Locator("[data-told=not-told-apart]")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".together")).ToHaveCountAsync(1);
        Assert.NotEmpty(await sheet.Page.Locator(".together li").AllAsync());
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Marked_on_the_walk_round_by_keyboard_the_cam_cover_of_another_variant_shows_up()
    {
        await using var sheet = await Bench.OpenAsync(Engine);
        foreach (var check in new[] { "Accessory belt: profile", "Alternator pulley: takes belt", "Cam cover: breather" })
        {
            // The first answers are: nothing there and nothing there, as on the generator set; a baffled check valve, as on the sport engine.
            await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Group, new PageGetByRoleOptions { Name = check, Exact = true }).Locator("input:checked"));
            await sheet.Page.Keyboard.PressAsync("ArrowDown");
        }

        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Take in 3 observations" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator(".seen-so-far li")).ToHaveCountAsync(3);
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = "Parts of other variants in it" })).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator("tr[data-foreign]")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator("tr[data-foreign]")).ToContainTextAsync("Cam cover");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Without_a_number_it_is_refused_at_the_numbers()
    {
        await using var sheet = (await Bench.OpenAsync("tell-apart.html")).Expecting(400);
        await sheet.PressAsync("Make the key");
        await sheet.AssertRefusedAsync("parts", "neither", "parts=");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Asked_about_an_engine_without_its_family_it_is_refused_at_the_family()
    {
        await using var sheet = (await Bench.OpenAsync("tell-apart.html")).Expecting(400);
        await sheet.TabToAsync(sheet.Page.Locator("#by-parts"));
        await sheet.Page.Keyboard.PressAsync("ArrowDown");
        await sheet.PressAsync("Make the key");
        await sheet.AssertRefusedAsync("family", "neither", "family=");
        sheet.AssertQuiet();
    }

    /// <summary>The arm of the key with that answer.</summary>
    private static ILocator Arm(Sheet sheet, string answer) =>
        sheet.Page.Locator(".arm").Filter(new LocatorFilterOptions { Has = sheet.Page.Locator(".answer", new PageLocatorOptions { HasTextRegex = new Regex($"^{Regex.Escape(answer)}\\b") }) });
}
