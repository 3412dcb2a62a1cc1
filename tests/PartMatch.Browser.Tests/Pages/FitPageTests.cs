using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Will it fit: above all the van's coolant pump on the sport engine, which bolts on and turns the water the wrong way.</summary>
public sealed class FitPageTests(Bench bench) : PageTests(
    bench, "fit.html", ("misfit", Pump), ("stack", Tern + "variant=tv&position=flywheel-bolt&part=P-13-0420-A"),
    ("work", Tern + "variant=ts&position=cylinder-block&part=P-10-2202-A"), ("spans", Tern + "variant=tv&position=crank-sensor&part=P-18-0410-A"),
    ("changes", Tern + "variant=tg&position=intake-camshaft&from=ts"), ("unknown", Tern + "variant=tv&position=coolant-pump&part=P-26-1174-Z"),
    ("apart", Filter), ("disputed", Rods))
{
    private const string Tern = "fit.html?family=tern-16&";

    private const string Pump = Tern + "variant=ts&position=coolant-pump&part=P-26-1147-C";

    /// <summary>A bench found that the engine rattles with it; what is recorded of the two filters says that it runs the same.</summary>
    private const string Filter = Tern + "variant=tv&position=oil-filter&part=F-2015";

    /// <summary>Two benches ran these rods under boost: in one engine they broke, in the other they held.</summary>
    private const string Rods = Tern + "variant=tg&position=connecting-rod&part=P-11-3104-A"
        + "&with=piston%3Dvardmoor:VF-8500-20&with=service-boost%3Dpellworth:P-00-0180-A";

    [Fact]
    public async Task Asked_by_keyboard_it_says_that_the_vans_pump_mounts_but_runs_differently()
    {
        await using var sheet = await Bench.OpenAsync("fit.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("The engine it is to go on", "TS");
        await sheet.ChooseAsync("Position", "Coolant pump");
        await sheet.TypeAsync("Part number", "P-26-1147-C");
        await sheet.PressAsync("Ask");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Mounts but runs differently");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("Mounts but runs differently");
        Assert.Contains("clockwise", await sheet.TextAsync("#answer"), StringComparison.Ordinal);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task Asked_with_a_neighbour_the_address_carries_it_and_the_answer_counts_on_it()
    {
        await using var sheet = await Bench.OpenAsync(Tern + "variant=tg&position=front-cover&part=P-13-2001-A");
        await sheet.PressSummaryAsync();
        await sheet.PressAsync("Add a neighbour");
        await sheet.Page.Keyboard.TypeAsync("Coolant pump");
        await sheet.TypeAsync("Part there, or none", "P-26-1147-C");
        await sheet.PressAsync("Ask");
        Assert.Contains("with=coolant-pump", sheet.Page.Url, StringComparison.Ordinal);
        Assert.Contains("with 1 other change", await sheet.TextAsync("#answer h2"), StringComparison.OrdinalIgnoreCase);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task On_a_telephone_the_first_screen_holds_headline_why_what_then_and_how_to_tell_them_apart()
    {
        await using var sheet = await Bench.OpenAsync(Pump, Look.Phone);
        var headline = sheet.Page.Locator("#answer section").First;
        foreach (var part in new[] { headline.Locator("h2"), headline.Locator(".why"), headline.GetByText("What happens then"), headline.GetByText("Telling apart") })
        {
            var box = await part.BoundingBoxAsync();
            Assert.NotNull(box);
            Assert.InRange(box.Y + box.Height, 1, Look.Phone.Height);
        }
    }

    [Fact]
    public async Task A_link_to_a_reason_goes_there_and_asks_nothing_again()
    {
        await using var sheet = await Bench.OpenAsync(Filter);
        var asked = 0;
        sheet.Page.Request += (_, request) => asked += request.Url.Contains("/api/", StringComparison.Ordinal) ? 1 : 0;
        var link = sheet.Page.Locator("#answer a[href^='#r']").First;
        var reason = await link.GetAttributeAsync("href") ?? "";
        await sheet.TabToAsync(link);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator($"tr:target{reason}")).ToBeInViewportAsync();
        Assert.Equal(0, asked);
    }

    [Fact]
    public async Task The_look_alike_of_the_part_leads_to_the_key_before_paying()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Tell them apart before paying" }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync("tell-apart.html?parts=pellworth:P-26-1147-C");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_headline_names_the_part_the_maker_fitted_what_was_seen_and_how_sure_it_is()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        var headline = await sheet.TextAsync("#answer section.headline");

        Assert.Matches(new Regex(@"The maker fitted\s+P-26-1147-E"), headline);
        Assert.Contains("Head outlet 121 °C after eleven minutes", headline, StringComparison.Ordinal);
        Assert.Matches(new Regex(@"The records say so too\s+Turned which way, seen from the front: this part has clockwise"), headline);
        Assert.Matches(new Regex(@"proven – Somebody tried it on such an engine, or measured it there, and nothing that counts says otherwise\."), headline);
    }

    [Fact]
    public async Task Where_the_axes_are_not_equally_sure_each_is_said_with_its_meaning()
    {
        await using var sheet = await Bench.OpenAsync(Filter);
        var headline = await sheet.TextAsync("#answer section.headline");

        Assert.Matches(new Regex(@"Mounts yes:\s+proven – Somebody tried it"), headline);
        Assert.Matches(new Regex(@"Runs differently:\s+documented – The maker says so"), headline);
    }

    [Fact]
    public async Task A_finding_says_who_when_and_how_long_and_what_does_not_count_is_folded_with_its_reason()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        var found = sheet.Page.Locator("#fi-0002");
        await Assertions.Expect(found).ToContainTextAsync("Runs differently");
        await Assertions.Expect(found).ToContainTextAsync("counts, rank 1");
        await Assertions.Expect(found).ToContainTextAsync("bench 3, 2026-06-04");
        await Assertions.Expect(found).ToContainTextAsync("0.2 h under load, 41 kW, on petrol 95");
        await Assertions.Expect(sheet.Page.Locator("#fi-0003")).ToBeHiddenAsync();
        await sheet.TabToAsync(sheet.Page.Locator(".folded > summary"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#fi-0003 .standing")).ToHaveTextAsync("a copy");
        await Assertions.Expect(sheet.Page.Locator("#fi-0003")).ToContainTextAsync("goes back to the same source as fi-0002");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_was_found_and_what_is_reckoned_stand_side_by_side_where_they_disagree()
    {
        await using var sheet = await Bench.OpenAsync(Filter);
        var sides = sheet.Page.Locator(".apart .side");
        await Assertions.Expect(sides).ToHaveCountAsync(2);
        await Assertions.Expect(sides.First).ToContainTextAsync("Runs differently");
        await Assertions.Expect(sides.First).ToContainTextAsync("Ran under load, bench 1, 2026-09-12, 310 h, 64 kW, petrol 95");
        await Assertions.Expect(sides.Last).ToContainTextAsync("Runs the same");
        await Assertions.Expect(sides.Last).ToContainTextAsync("Reckoned from what is recorded: r3");
    }

    [Fact]
    public async Task A_dispute_shows_both_sides_next_to_each_other_even_on_a_telephone_and_neither_speaks_alone_in_the_headline()
    {
        await using var sheet = await Bench.OpenAsync(Rods, Look.Phone);
        var sides = sheet.Page.Locator(".apart .side");
        await Assertions.Expect(sides).ToHaveCountAsync(2);
        var (left, right) = (await sides.First.BoundingBoxAsync(), await sides.Last.BoundingBoxAsync());
        Assert.NotNull(left);
        Assert.NotNull(right);
        Assert.Equal(left.Y, right.Y, 1.0);
        Assert.True(right.X >= left.X + left.Width, "one side below the other");
        await Assertions.Expect(sheet.Page.Locator(".why")).ToContainTextAsync("Runs differently: beam of rod 2 folded");
        await Assertions.Expect(sheet.Page.Locator(".why")).ToContainTextAsync("Runs the same: ran 245 N·m");
    }

    [Fact]
    public async Task A_code_of_evidence_leads_to_who_says_so_and_from_there_to_its_record()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await sheet.TabToAsync(sheet.Page.Locator(".reasons a[href='#source-ev-0006']").First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        var source = sheet.Page.Locator("#source-ev-0006");
        await Assertions.Expect(source).ToBeInViewportAsync();
        await Assertions.Expect(source).ToContainTextAsync("maker’s document: drawing schedule 26, cooling, Pellworth, 2018-03");
        Assert.Equal("record.html?book=tern-16&table=evidence&key=ev-0006", await source.Locator("a").GetAttributeAsync("href"));
    }

    [Fact]
    public async Task A_serial_number_that_the_variant_never_had_is_said_in_the_headline()
    {
        await using var sheet = await Bench.OpenAsync(Pump + "&serial=5");

        Assert.Contains("30118 to 86020", await sheet.TextAsync(".headline .notice"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_date_that_cannot_be_read_is_said_at_its_field_and_in_a_summary_that_has_the_focus()
    {
        await using var sheet = (await Bench.OpenAsync(Pump)).Expecting(400);
        await sheet.PressSummaryAsync();
        await sheet.TypeAsync("Engine built", "spring 2017");
        await sheet.PressAsync("Ask");
        await sheet.AssertRefusedAsync("built", "spring 2017", "YYYY-MM");
        await sheet.TypeAsync("Engine built", "2017-01");
        await sheet.PressAsync("Ask");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToHaveCountAsync(0);
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Mounts but runs differently");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task An_unknown_variant_in_the_address_is_answered_with_those_that_there_are()
    {
        await using var sheet = await Bench.OpenAsync("fit.html");
        await sheet.Expecting(404).GoAsync(Tern + "variant=tx&position=coolant-pump&part=P-26-1147-C");
        await sheet.AssertRefusedAsync("variant", "tx", "tv");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_hint_is_read_again_after_a_mended_fault()
    {
        await using var sheet = (await Bench.OpenAsync(Pump + "&built=spring")).Expecting(400);
        await sheet.TypeAsync("Engine built", "2017-01");
        await sheet.PressAsync("Ask");
        await Assertions.Expect(sheet.Page.Locator("#built")).ToHaveAccessibleDescriptionAsync(new Regex("2017-01"));
    }

    [Theory]
    [InlineData("position=flywheel-bolt&part=P-13-0426-A", "tightening.html?family=tern-16&variant=ts&position=flywheel-bolt")]
    [InlineData("position=injector&part=I-7001", "injectors.html?family=tern-16&variant=ts")]
    [InlineData("position=fuel-pump&part=P-17-0701-A", "fuel-supply.html?family=tern-16&variant=ts&pump=pellworth:P-17-0701-A")]
    public async Task The_answer_leads_to_the_sum_that_speaks_of_the_part(string asked, string sum)
    {
        await using var sheet = await Bench.OpenAsync($"fit.html?family=tern-16&variant=ts&{asked}");
        var link = sheet.Page.Locator("#answer section", new() { HasText = "Its sum" }).GetByRole(AriaRole.Link);
        await Assertions.Expect(link).ToHaveAttributeAsync("href", sum);
    }
}
