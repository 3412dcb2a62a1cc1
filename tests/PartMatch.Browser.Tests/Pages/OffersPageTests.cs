using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>The blank page and lists of the demo base; what stores offers is in <see cref="OfferStoringTests"/>.</summary>
public sealed class OffersPageTests(Bench bench) : PageTests(bench, "offers.html", ("list", "offers.html?family=tern-16&on=2026-06-30"));

/// <summary>A price list taken in, and what then stands on the page.</summary>
public sealed class OfferStoringTests(WritingServer server, Bench bench) : IClassFixture<WritingServer>
{
    private const string List = "Teilenummer;Preis;Bestand\nP-26-1147-C;61,50;3\nQZ-9000;12,00;\nP-26-1147-C;on request;\n";

    [Fact]
    public async Task A_price_list_is_judged_mended_and_stored_and_its_offers_stand_with_cost_age_and_history()
    {
        await using var sheet = (await bench.OpenAsync(new Uri(server.Address, "offers.html").ToString())).Expecting(400);
        await ChooseListAsync(sheet, List);
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("2 rows of 3 can be stored, 1 without a price cannot");
        await Assertions.Expect(sheet.Page.Locator("#list-answer tr").Filter(new() { HasText = "on request" }))
            .ToContainTextAsync("“on request” stands where the price should");
        await sheet.AssertUsableAsync("offers-price-list");

        var store = sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Store 2 offers" });
        await store.ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-answer .faults")).ToContainTextAsync("Some rows have no price");
        await sheet.Page.GetByLabel("Leave out 1 row without a price (line 4)").CheckAsync();
        await store.ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("2 offers stored");

        await sheet.GoAsync(new Uri(server.Address, "offers.html?part=P-26-1147-C&seller=tannhorst-motorteile&currency=EUR&on=2027-06-30").ToString());
        var offer = sheet.Page.Locator("#answer tr").Filter(new() { HasText = "61.50 EUR" }).First;
        await Assertions.Expect(offer).ToContainTextAsync("at least 67.90 EUR"); // 61.50 + 5.90 + 0.50; the import charge is not recorded
        await Assertions.Expect(offer).ToContainTextAsync("Old: seen");
        await Assertions.Expect(sheet.Page.Locator("[data-plot=prices] svg")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator("[data-plot=prices] figcaption")).ToContainTextAsync("Not drawn: ");
        await sheet.AssertUsableAsync("offers-with-history");
        await offer.GetByRole(AriaRole.Link, new() { NameString = "Open" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("P-26-1147-C");
        await sheet.AssertUsableAsync("offers-one");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_page_is_read_by_its_tables_and_a_row_says_its_danger()
    {
        const string Page = "<table><caption>Spring</caption><tr><th>Number<th>Price<th>Stock<tr><td colspan=3>Cooling<tr><td>P-26-1147-C<td>61,50<td>3</table>"
            + "<table><tr><th>Number<th>Price<tr><td>QZ-9000<td>12,00</table>";
        await using var sheet = await bench.OpenAsync(new Uri(server.Address, "offers.html").ToString());
        await ChooseListAsync(sheet, Page, "list.html");
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("1 row can be stored");
        await Assertions.Expect(sheet.Page.Locator("#list-answer")).ToContainTextAsync("1 row across the whole table left out: Cooling.");
        await Assertions.Expect(sheet.Page.Locator("#list-answer tbody tr .danger")).ToHaveCountAsync(1);
        await sheet.AssertUsableAsync("offers-page-tables");

        await sheet.Page.GetByLabel("Table of the page").SelectOptionAsync("2");
        await Assertions.Expect(sheet.Page.Locator("#list-answer tr").Filter(new() { HasText = "QZ-9000" })).ToHaveCountAsync(1);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_list_whose_heads_say_nothing_has_a_field_for_each_column()
    {
        await using var sheet = (await bench.OpenAsync(new Uri(server.Address, "offers.html").ToString())).Expecting(400);
        await ChooseListAsync(sheet, "foo,bar\nLantern,12\nWheel,9\n");
        await sheet.Page.GetByLabel("Column 1, “foo”").SelectOptionAsync("number");
        await sheet.Page.GetByLabel("Column 2, “bar”").SelectOptionAsync("number");
        var again = sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Judge again with these columns" });
        await again.ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-answer .faults").Last).ToContainTextAsync("Two columns for one thing");
        await sheet.Page.GetByLabel("Column 2, “bar”").SelectOptionAsync("price");
        await sheet.AssertUsableAsync("offers-columns");
        await again.ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("2 rows can be stored");
        await Assertions.Expect(sheet.Page.GetByLabel("Column 2, “bar”")).ToHaveValueAsync("price");
        sheet.AssertQuiet();
    }

    private static async Task ChooseListAsync(Sheet sheet, string list, string name = "list.csv")
    {
        var file = new FilePayload { Name = name, MimeType = name.EndsWith("csv", StringComparison.Ordinal) ? "text/csv" : "text/html", Buffer = System.Text.Encoding.UTF8.GetBytes(list) };
        await sheet.Page.GetByLabel("File with the prices").SetInputFilesAsync(file);
        await sheet.Page.GetByLabel("Book that shall hold the offers").SelectOptionAsync("tern-16");
        await sheet.Page.GetByLabel("Whose list it is").SelectOptionAsync("tannhorst-motorteile");
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Judge every row" }).ClickAsync();
        await sheet.SettleAsync();
    }
}
