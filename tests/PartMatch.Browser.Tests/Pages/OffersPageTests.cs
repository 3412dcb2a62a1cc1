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
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("1 row of 3 cannot be stored");
        await Assertions.Expect(sheet.Page.Locator("#list-answer tr").Filter(new() { HasText = "on request" })).ToContainTextAsync("To mend: leave the row out");
        await sheet.AssertUsableAsync("offers-price-list");

        await ChooseListAsync(sheet, List.Replace("P-26-1147-C;on request;\n", "", StringComparison.Ordinal));
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Store 2 offers" }).ClickAsync();
        await Assertions.Expect(sheet.Page.Locator("#list-answer h3").First).ToHaveTextAsync("2 offers stored");

        await sheet.GoAsync(new Uri(server.Address, "offers.html?part=P-26-1147-C&seller=tannhorst-motorteile&currency=EUR&on=2027-06-30").ToString());
        var offer = sheet.Page.Locator("#answer tr").Filter(new() { HasText = "61.50 EUR" }).First;
        await Assertions.Expect(offer).ToContainTextAsync("at least 67.90 EUR"); // 61.50 + 5.90 + 0.50; the import charge is not recorded
        await Assertions.Expect(offer).ToContainTextAsync("Old: seen");
        await Assertions.Expect(sheet.Page.Locator("[data-plot=prices] svg")).ToHaveCountAsync(1);
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
