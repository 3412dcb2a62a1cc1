using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

public sealed class LookAlikesPageTests(Bench bench) : PageTests(
    bench, "look-alikes.html", ("pump", Pump), ("missing-digit", "look-alikes.html?number=P-13-426-A&family=tern-16"),
    ("unknown", "look-alikes.html?number=P-26-1174-Z&family=tern-16"), ("nothing", "look-alikes.html?number=QQQQQQQQ"), ("family", Family), ("work-list", Family + "&judgement=not-judged"))
{
    private const string Pump = "look-alikes.html?number=P-26-1147-C&family=tern-16";

    private const string Family = "look-alikes.html?family=tern-16";

    private static readonly string[] _dangers = ["no danger", "low danger", "medium danger", "high danger"];

    [Fact]
    public async Task Asked_by_keyboard_the_sport_pump_is_a_dangerous_look_alike_told_apart_by_photo()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html");
        await sheet.TypeAsync("Number", "p 26 1147 c");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.PressAsync("Look");
        var sport = sheet.Page.Locator(".candidate").Filter(new LocatorFilterOptions { Has = sheet.Page.Locator("h3", new PageLocatorOptions { HasText = "P-26-1147-E" }) });
        await Assertions.Expect(sport).ToHaveCountAsync(1);
        await Assertions.Expect(sport.Locator("h3")).ToContainTextAsync("danger");
        await Assertions.Expect(sport).ToContainTextAsync("anticlockwise");
        await Assertions.Expect(sport).ToContainTextAsync("Before paying");
        await Assertions.Expect(sport).ToContainTextAsync("photo");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task The_character_in_which_they_differ_is_marked_by_more_than_colour()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        var sport = sheet.Page.Locator(".candidate").Filter(new LocatorFilterOptions { Has = sheet.Page.Locator("h3", new PageLocatorOptions { HasText = "P-26-1147-E" }) });
        var marks = sport.Locator("mark");
        Assert.Equal(["C", "E"], await marks.AllInnerTextsAsync());
        Assert.True(await marks.First.EvaluateAsync<bool>(
            """
            mark => {
              const style = getComputedStyle(mark);
              return style.textDecorationLine.includes('underline') || parseFloat(style.borderBottomWidth) > 0 || parseFloat(style.outlineWidth) > 0;
            }
            """));
    }

    [Fact]
    public async Task A_number_in_no_book_is_said_to_be_unknown_and_gets_its_nearest()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html?number=P-26-1174-Z");
        Assert.Contains("in no book", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        Assert.Contains("P-26-1147-C", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Each_candidate_and_the_whole_set_lead_to_the_key_that_parts_them()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await Assertions.Expect(sheet.Page.Locator(".headline a[href^='tell-apart.html?']")).ToHaveCountAsync(1);
        var link = sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Tell them apart P-26-1147-E" });
        await sheet.TabToAsync(link);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("tell-apart.html?parts=pellworth:P-26-1147-C,pellworth:P-26-1147-E");
        await Assertions.Expect(sheet.Page.Locator(".card")).ToContainTextAsync("P-26-1147-E");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Asked_by_keyboard_for_a_family_it_ranks_the_pairs_by_danger()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.PressAsync("Look");
        await sheet.ArriveAtAsync(Family);
        var shown = await DangersAsync(sheet);
        Assert.NotEmpty(shown);
        Assert.Equal(shown.OrderDescending(), shown);
        await Assertions.Expect(sheet.Page.Locator(".tally li")).ToHaveCountAsync(5);
        await Assertions.Expect(sheet.Page.Locator(".twins mark").First).ToBeVisibleAsync();
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Filters_are_in_the_address_and_leave_the_counts_as_they_are()
    {
        await using var sheet = await Bench.OpenAsync(Family);
        var counts = await sheet.TextAsync(".tally");
        await sheet.PressSummaryAsync();
        await sheet.ChooseAsync("Danger", "high");
        await sheet.ChooseAsync("Kind of part", "Coolant pump");
        await sheet.PressAsync("Look");
        await sheet.ArriveAtAsync(Family + "&danger=high&kind=coolant-pump");
        Assert.Equal(counts, await sheet.TextAsync(".tally"));
        Assert.All(await DangersAsync(sheet), rank => Assert.Equal(3, rank));
        Assert.All(await sheet.Page.Locator("#answer tbody th").AllInnerTextsAsync(), text => Assert.Contains("coolant pump", text, StringComparison.OrdinalIgnoreCase));
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Pairs_that_nobody_has_judged_are_said_to_be_the_work_list()
    {
        await using var sheet = await Bench.OpenAsync(Family + "&judgement=not-judged");
        await Assertions.Expect(sheet.Page.Locator("#answer .notice")).ToContainTextAsync("work list");
        Assert.All(await sheet.Page.Locator("#answer tbody td[data-label='To each other']").AllInnerTextsAsync(), text => Assert.Contains("Nobody has judged them", text, StringComparison.Ordinal));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_next_page_of_pairs_goes_on_where_this_one_ended()
    {
        await using var sheet = await Bench.OpenAsync(Family);
        var first = await sheet.Page.Locator("#answer tbody th").AllInnerTextsAsync();
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "The next ones" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#answer tbody th").First).Not.ToHaveTextAsync(first[0]);
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToBeFocusedAsync();
        var second = await sheet.Page.Locator("#answer tbody th").AllInnerTextsAsync();
        Assert.NotEmpty(second);
        Assert.Empty(first.Intersect(second, StringComparer.Ordinal));
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_number_puts_the_filters_of_the_list_away()
    {
        await using var sheet = await Bench.OpenAsync("look-alikes.html");
        await Assertions.Expect(sheet.Page.GetByLabel("Judgement")).ToBeVisibleAsync();
        await sheet.TypeAsync("Number", "P-26");
        await Assertions.Expect(sheet.Page.GetByLabel("Judgement")).ToBeHiddenAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Without_number_and_family_it_is_refused_at_the_family()
    {
        await using var sheet = (await Bench.OpenAsync("look-alikes.html")).Expecting(400);
        await sheet.ChooseAsync("Danger", "high");
        await sheet.PressAsync("Look");
        await sheet.AssertRefusedAsync("family", "nothing", "family");
        sheet.AssertQuiet();
    }

    /// <summary>The danger of each row, none = 0 to high = 3, in the order shown.</summary>
    private static async Task<IReadOnlyList<int>> DangersAsync(Sheet sheet) =>
        [.. (await sheet.Page.Locator("#answer tbody .danger").AllInnerTextsAsync()).Select(text => Array.IndexOf(_dangers, text.Trim()))];
}
