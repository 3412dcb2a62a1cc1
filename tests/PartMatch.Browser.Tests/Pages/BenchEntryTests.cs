using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>A new variant from a pile of measurements. Every test has a variant of its own.</summary>
public sealed class BenchEntryTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task Three_positions_of_a_new_variant_rest_on_one_sheet_and_what_is_unknown_changes_with_each()
    {
        await using var sheet = await OpenAsync("bench.html?family=tern-16");
        await BeginAsync(sheet, "tx");
        await Assertions.Expect(sheet.Page.Locator(".why")).ToHaveTextAsync("0 of 86 positions");
        var open = sheet.Page.Locator(".open");
        await Assertions.Expect(open).ToContainTextAsync("86 positions not recorded, 0 values missing");
        await Pictures.TakeAsync(sheet, "bench-begun-light");

        await GoToAsync(sheet, "Coolant pump");
        await sheet.PressAsync("The same part (pellworth:P-26-1147-C), as on tm, tv");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".why")).ToHaveTextAsync("1 of 86 positions");
        await Assertions.Expect(open).ToContainTextAsync("85 positions not recorded");

        await GoToAsync(sheet, "Accessory belt");
        await sheet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Nothing there") }).PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator(".why")).ToHaveTextAsync("2 of 86 positions");

        await GoToAsync(sheet, "Crankshaft");
        await sheet.TypeAsync("Part", "halden:K-7701");
        await sheet.Page.Keyboard.PressAsync("Tab");
        await sheet.TypeAsync("Its name", "Crankshaft, pins 45");
        await sheet.TypeAsync("Name of the maker", "Halden");
        await sheet.TypeAsync("main journal diameter: ± how good it is", "0.002 mm");
        await ReadAsync(sheet, "main journal diameter", "51.99 mm");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.AssertUsableAsync("bench-another-part");
        await sheet.PressAsync("Record this part");
        await Assertions.Expect(sheet.Page.Locator(".why")).ToHaveTextAsync("3 of 86 positions");
        await Assertions.Expect(open).ToContainTextAsync("83 positions not recorded");
        await Assertions.Expect(open).Not.ToContainTextAsync(" 0 values missing");

        var begun = await server.ReadRowAsync("tern-16", "variants", "tx");
        var code = Regex.Match(begun, "\"evidence\":\"(ev-\\d+)\"").Groups[1].Value;
        Assert.Contains($"\"evidence\":\"{code}\"", await server.ReadRowAsync("tern-16", "fitments", "tx,coolant-pump,pellworth:P-26-1147-C,,,,"), StringComparison.Ordinal);
        Assert.Contains("\"quantity\":\"0\"", await server.ReadRowAsync("tern-16", "fitments", "tx,accessory-belt,none,,,,"), StringComparison.Ordinal);
        var value = await server.ReadRowAsync("tern-16", "values", $"halden:K-7701,main-journal,{code}");
        Assert.Contains("\"value\":\"51.99\",\"unit\":\"mm\",\"uncertainty\":\"0.002\"", value, StringComparison.Ordinal);
        Assert.Contains("\"instrument\":\"outside micrometer\"", await server.ReadRowAsync("tern-16", "sources", code), StringComparison.Ordinal);
        await sheet.AssertUsableAsync("bench-entered");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task After_a_fault_everything_typed_stays_and_comes_back_by_hand_after_leaving()
    {
        await using var sheet = (await OpenAsync("bench.html?family=tern-16")).Expecting(400);
        await BeginAsync(sheet, "ty");
        await GoToAsync(sheet, "Flywheel, coupling or rotor hub");
        await sheet.TypeAsync("Part", "pellworth:F-90-1");
        await sheet.Page.Keyboard.PressAsync("Tab");
        await sheet.TypeAsync("Its name", "Flywheel");
        var value = sheet.Page.Locator(".feature input[id$=-value]").First;
        await value.FillAsync("12,5 mm");
        await sheet.PressAsync("Record this part");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(value).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(value).ToHaveValueAsync("12,5 mm");
        await Assertions.Expect(sheet.Page.GetByLabel("Its name")).ToHaveValueAsync("Flywheel");
        await sheet.AssertUsableAsync("bench-wrong");

        var address = sheet.Page.Url;
        sheet.Page.Dialog += (_, dialog) => _ = dialog.AcceptAsync(); // that what was typed would be lost
        await sheet.GoAsync("bench.html?family=tern-16&variant=tg");
        await sheet.GoAsync(address);
        await sheet.PressAsync("Fill in what I typed");
        await Assertions.Expect(sheet.Page.GetByLabel("Part", new() { Exact = true })).ToHaveValueAsync("pellworth:F-90-1");
        await Assertions.Expect(sheet.Page.GetByLabel("Its name")).ToHaveValueAsync("Flywheel");
        await Assertions.Expect(sheet.Page.Locator(".feature input[id$=-value]").First).ToHaveValueAsync("12,5 mm");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Where_another_variant_changed_over_is_shown_and_not_taken_along()
    {
        await using var sheet = await OpenAsync("bench.html?family=tern-16");
        await BeginAsync(sheet, "tu");
        await sheet.GoAsync("bench.html?family=tern-16&variant=tu&position=front-seal");
        await Assertions.Expect(sheet.Page.Locator(".same li").Filter(new() { HasText = "P-13-2148-A" })).ToContainTextAsync("tm (serial up to 41206)");
        await Assertions.Expect(sheet.Page.Locator("form.row .hint").Filter(new() { HasText = "changed over is not taken along" })).ToBeVisibleAsync();
        await sheet.Page.Locator(".same li").Filter(new() { HasText = "P-13-2148-A" }).GetByRole(AriaRole.Button).PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("recorded, as change");
        Assert.Contains("\"quantity\":\"1\"", await server.ReadRowAsync("tern-16", "fitments", "tu,front-seal,pellworth:P-13-2148-A,,,,"), StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task What_is_measured_later_on_a_recorded_part_is_added_to_it()
    {
        await using var sheet = await OpenAsync("bench.html?family=tern-16&variant=tg&position=crank-damper");
        await ReadAsync(sheet, "plane of the belt from the cover face", "31.0 mm");
        await sheet.TypeAsync("What the source is", "bench sheet 61");
        await sheet.PressAsync("Add what was measured");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("recorded, as change");
        await Assertions.Expect(sheet.Page.Locator(".feature").Filter(new() { HasText = "Plane of the belt" })).ToContainTextAsync("Recorded: 31.0 mm");
        await Assertions.Expect(sheet.Page.Locator(".open")).ToContainTextAsync("0 values missing");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_variant_without_a_name_is_refused_at_the_name()
    {
        await using var sheet = (await OpenAsync("bench.html?family=tern-16")).Expecting(400);
        await sheet.TypeAsync("Short name", "tz");
        await sheet.PressAsync("Begin it");
        await Assertions.Expect(sheet.Page.Locator("#new-name")).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(sheet.Page.GetByLabel("Short name")).ToHaveValueAsync("tz");
        sheet.AssertQuiet();
    }

    [Theory]
    [InlineData("family.html?family=tern-16", "Bench sheet: enter an engine", "bench.html?family=tern-16")]
    [InlineData("family.html?family=tern-16&variant=tg", "Bench sheet", "bench.html?family=tern-16&variant=tg")]
    [InlineData("consistency.html?family=tern-16&variant=tg&sort=missing-value", "Enter it on the bench sheet", "bench.html?family=tern-16&variant=tg&position=crank-damper")]
    public async Task The_other_sheets_lead_here(string from, string link, string to)
    {
        await using var sheet = await bench.OpenAsync(from);
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Link, new() { NameRegex = new($"^{Regex.Escape(link)}") }).First);
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.ArriveAtAsync(to);
        sheet.AssertQuiet();
    }

    private async Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return await bench.OpenAsync(server.Address, address, Look.Light);
    }

    private static async Task BeginAsync(Sheet sheet, string variant)
    {
        await sheet.TypeAsync("Short name", variant);
        await sheet.TypeAsync("Name", $"{variant.ToUpperInvariant()} from the shed");
        await sheet.TypeAsync("Instrument", "outside micrometer");
        await sheet.PressAsync("Begin it");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync($"{variant} is begun, as change");
        await sheet.SettleAsync();
    }

    private static async Task GoToAsync(Sheet sheet, string position)
    {
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Rowheader).GetByRole(AriaRole.Link, new() { Name = position, Exact = true }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("form.row")).ToHaveAttributeAsync("aria-label", position);
        await sheet.SettleAsync();
    }

    private static async Task ReadAsync(Sheet sheet, string feature, string value)
    {
        await sheet.TabToAsync(sheet.Page.GetByLabel(new Regex($"^{Regex.Escape(feature)}: Read")));
        await sheet.Page.Keyboard.TypeAsync(value);
    }
}
