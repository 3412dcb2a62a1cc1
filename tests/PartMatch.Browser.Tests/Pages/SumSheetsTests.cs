using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>What the sheets of the sums have in common: the answer in front, what it rests on behind it.</summary>
public sealed class SumSheetsTests(Bench bench)
{
    private const string Injectors = "injectors.html?family=tern-16&variant=ts&fuel=petrol-e0&power=180+kW&speed=6800%2Fmin&boost=1.1+bar";

    /// <summary>Twice what a telephone shows at a time.</summary>
    private const int TwoScreens = 2 * 640;

    [Theory]
    [InlineData(Injectors)]
    [InlineData("fuel-supply.html?family=tern-16&variant=ts&fuel=petrol-e0&power=180+kW&speed=6800%2Fmin&boost=1.1+bar")]
    [InlineData("valve-timing.html?family=tern-16&variant=ts&intake-cam=pellworth%3AP-12-3307-A&wanted-trapped=9.0")]
    [InlineData("compression.html?family=tern-16&variant=ts&head-gasket=pellworth%3AP-14-0203-A")]
    [InlineData("tightening.html?family=tern-16&variant=ts&position=flywheel-bolt")]
    public async Task On_a_telephone_the_verdict_is_within_two_screens_and_the_working_is_folded_but_not_on_paper(string address)
    {
        await using var sheet = await bench.OpenAsync("index.html");
        await sheet.TakeAsync(Look.Phone);
        await sheet.GoAsync(address);
        var end = await sheet.Page.EvaluateAsync<double>("document.querySelector('.headline').getBoundingClientRect().bottom + scrollY");
        Assert.InRange(end, 1, TwoScreens);

        var heading = sheet.Page.GetByRole(AriaRole.Heading, new() { Name = "The working", Exact = true });
        var working = sheet.Page.Locator("details.fold").Filter(new() { Has = heading });
        await Assertions.Expect(working.Locator("ol")).ToBeHiddenAsync();
        var cautions = await sheet.Page.Locator(".cautions").EvaluateAsync<double>("list => list.getBoundingClientRect().top");
        Assert.True(cautions < await working.EvaluateAsync<double>("fold => fold.getBoundingClientRect().top"), "the cautions stand behind the working");

        await sheet.TakeAsync(Look.Print);
        await Assertions.Expect(working.Locator("ol")).ToBeVisibleAsync();
        await sheet.TakeAsync(Look.Phone);
        await sheet.TabToAsync(working.Locator("summary"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(working.Locator("ol")).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Ranked_injectors_behind_the_first_five_are_folded_and_on_paper_all_stand()
    {
        await using var sheet = await bench.OpenAsync(Injectors);
        var rows = sheet.Page.Locator(".ranked tbody tr");
        await Assertions.Expect(rows).ToHaveCountAsync(18);
        await Assertions.Expect(rows.Nth(4)).ToBeVisibleAsync();
        await Assertions.Expect(rows.Nth(5)).ToBeHiddenAsync();
        await sheet.TakeAsync(Look.Print);
        await Assertions.Expect(rows.Nth(17)).ToBeVisibleAsync();
        await sheet.TakeAsync(Look.Light);
        await sheet.TabToAsync(sheet.Page.GetByText("The other 13 injectors"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(rows.Nth(17)).ToBeVisibleAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_fault_in_folded_fields_unfolds_them_and_the_summary_leads_there()
    {
        await using var sheet = await bench.OpenAsync("index.html");
        await sheet.Expecting(400).GoAsync($"{Injectors}&idle-speed=fast");
        await Assertions.Expect(sheet.Page.Locator("#idle-speed")).ToBeVisibleAsync();
        await sheet.Page.Locator(".faults li a").ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#idle-speed")).ToBeFocusedAsync();
        sheet.AssertQuiet();
    }

    [Theory]
    [InlineData("valve-timing.html?family=tern-16&intake-cam=pellworth:P-12-3307-A", "#intake-cam", "pellworth:P-12-3307-A")]
    [InlineData("compression.html?family=tern-16&head-gasket=tessick:TG-7514", "#head-gasket", "tessick:TG-7514")]
    [InlineData("tightening.html?family=tern-16&position=head-bolt&part=pellworth:P-14-0301-B", "#part", "pellworth:P-14-0301-B")]
    public async Task A_part_in_the_address_waits_for_the_engine_and_reckoning_without_one_is_refused(string address, string field, string part)
    {
        await using var sheet = await bench.OpenAsync(address);
        await Assertions.Expect(sheet.Page.Locator(field)).ToHaveValueAsync(part);
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToHaveCountAsync(0);
        await sheet.Expecting(400).PressAsync("Reckon");
        await Assertions.Expect(sheet.Page.Locator("#variant")).ToHaveAttributeAsync("aria-invalid", "true");
        sheet.AssertQuiet();
    }

    // A head gasket, an injector and a head bolt that no engine left the works with.
    [Theory]
    [InlineData("TG-7514", "compression.html?family=tern-16&head-gasket=tessick:TG-7514")]
    [InlineData("K-860", "injectors.html?family=tern-16")]
    [InlineData("P-14-0301-B", "tightening.html?family=tern-16&position=head-bolt&part=pellworth:P-14-0301-B")]
    public async Task A_part_that_nobody_fitted_leads_to_the_sum_of_its_kind(string number, string address)
    {
        await using var sheet = await bench.OpenAsync($"part.html?number={number}");
        await Assertions.Expect(sheet.Page.Locator($"#answer a[href='{address}']")).ToHaveCountAsync(1);
        sheet.AssertQuiet();
    }
}
