using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The sport engine's flywheel bolts, which are the van's and are oiled; its head bolts, which are turned on by an angle.</summary>
public sealed class TighteningPageTests(Bench bench) : PageTests(
    bench, "tightening.html", ("records", Flywheel), ("angle", "tightening.html?family=tern-16&variant=tm&position=head-bolt"), ("typed", Typed))
{
    private const string Flywheel = "tightening.html?family=tern-16&variant=ts&position=flywheel-bolt";
    private const string Typed = "tightening.html?torque=75.83+N%C2%B7m&lubrication=dry&thread=M10%C3%971.5&class=8.8";

    [Fact]
    public async Task Asked_by_keyboard_it_shows_the_records_and_what_each_does_dry_and_oiled()
    {
        await using var sheet = await Bench.OpenAsync("tightening.html");
        await sheet.ChooseAsync("Engine family", "Pellworth");
        await sheet.ChooseAsync("Variant", "TS");
        await sheet.ChooseAsync("Fastener", "Flywheel bolts");
        await sheet.PressAsync("Reckon");

        // 70 ÷ (0.18 × 0.010) = 38.9 kN of 53.5 kN: 73 %, by hand.
        var text = await sheet.TextAsync("#answer");
        Assert.Contains("70 N·m ± 5", text, StringComparison.Ordinal);
        Assert.Contains("38.9", text, StringComparison.Ordinal);
        Assert.Contains("30 N·m, then 70 N·m ± 5; threads: oiled", await sheet.TextAsync(".headline"), StringComparison.Ordinal);
        Assert.Contains("never proposed", text, StringComparison.Ordinal);
        await Assertions.Expect(sheet.Page.Locator("#answer h3")).ToHaveCountAsync(2);
        await Assertions.Expect(sheet.Page.Locator("svg.plot")).ToHaveCountAsync(1);
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_thread_and_a_torque_are_enough()
    {
        await using var sheet = await Bench.OpenAsync("tightening.html");
        await sheet.TypeAsync("Torque to judge", "75.83 N·m");
        await sheet.ChooseAsync("Threads as they are", "Dry");
        await sheet.TabToAsync(sheet.Page.GetByText("Another bolt than the one recorded there"));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.TypeAsync("Thread", "M10×1.5");
        await sheet.ChooseAsync("Class on the head", "8.8");
        await sheet.PressAsync("Reckon");

        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToHaveTextAsync("75.83 N·m pulls 25.3 kN, 75 % of the proof load, from 53 % to 98 %");
        await AssertSameWhenReopenedAsync(sheet);
    }

    [Fact]
    public async Task A_torque_for_bolts_that_are_turned_by_an_angle_is_refused_at_its_field()
    {
        await using var sheet = await Bench.OpenAsync("tightening.html");
        await sheet.Expecting(400).GoAsync("tightening.html?family=tern-16&variant=tv&position=head-bolt&torque=90+N%C2%B7m");
        Assert.Contains("comes from the angle", await sheet.TextAsync(".faults"), StringComparison.Ordinal);
        Assert.Empty(await sheet.TextAsync("#answer"));
        sheet.AssertQuiet();
    }
}
