using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Read a listing: the van's pump offered for the sport engine, and the right one.</summary>
public sealed class ListingPageTests(Bench bench) : PageTests(bench, "listing.html", ("asked", Pump))
{
    internal const string Pump = "listing.html?family=tern-16&variant=ts&position=coolant-pump";

    internal const string Field = "The seller’s page or words";

    [Fact]
    public async Task Pasted_words_with_the_look_alike_are_left_and_the_right_ones_bought()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await sheet.TypeAsync(Field, "Water pump Tern 16 turbo, used\nPart number: P-26-1147-C\n£38.00");
        await sheet.PressAsync("Read it");
        var headline = sheet.Page.Locator("#answer h2").First;
        await Assertions.Expect(headline).ToHaveTextAsync("Leave it");
        await Assertions.Expect(headline).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#message")).ToHaveCountAsync(0);
        await sheet.PressSummaryAsync();
        await sheet.TypeAsync(Field, "Water pump Tern 16 turbo, used\nPart number: P-26-1147-E\n£62.00");
        await sheet.PressAsync("Read it");
        await Assertions.Expect(headline).ToHaveTextAsync("Buy");
        await Assertions.Expect(sheet.Page.Locator("#message")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("photo of the impeller"));
        await sheet.AssertUsableAsync("listing-buy");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_saved_page_that_contradicts_itself_is_asked_about()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await sheet.Page.Locator("#file").SetInputFilesAsync(new FilePayload
        {
            Name = "saved.html",
            MimeType = "text/html",
            Buffer = System.Text.Encoding.UTF8.GetBytes("<title>Pump P-26-1147-E</title><h1>Pump P-26-1147-E, used</h1><table><tr><th>Number<th>Price<th>Condition<tr><td>P-26-1147-C<td>£62.00<td>used</table>"),
        });
        await sheet.PressAsync("Read it");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToHaveTextAsync("Ask first");
        await Assertions.Expect(sheet.Page.GetByText("The listing contradicts itself")).ToBeVisibleAsync();
        await sheet.AssertUsableAsync("listing-ask");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Nothing_to_read_is_refused_at_the_field_and_what_was_chosen_stays()
    {
        await using var sheet = await Bench.OpenAsync(Pump);
        await sheet.PressAsync("Read it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#listing")).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Contains("position=coolant-pump", sheet.Page.Url, StringComparison.Ordinal);
        sheet.AssertQuiet();
    }
}

/// <summary>An offer of a listing kept in the base.</summary>
public sealed class ListingKeepingTests(WritingServer server, Bench bench) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task An_offer_is_kept_once_with_its_words_and_a_new_seller()
    {
        await using var sheet = await bench.OpenAsync(server.Address, ListingPageTests.Pump, Look.Light);
        for (var time = 1; time <= 2; time++)
        {
            await sheet.TypeAsync(ListingPageTests.Field, "Water pump Tern 16 turbo, used\nPart number: P-26-1147-E\n£62.00, postage £4.20");
            await sheet.PressAsync("Read it");
            await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToHaveTextAsync("Buy");
            await sheet.Page.Locator("details.recording > summary").First.ClickAsync();
            if (time == 1)
            {
                await sheet.AssertUsableAsync("listing-keep");
                await sheet.PressAsync("Keep this offer");
                await Assertions.Expect(sheet.Page.Locator("#keep-name")).ToHaveAttributeAsync("aria-invalid", "true");
                await sheet.Page.GetByLabel("Name of the seller").FillAsync("Tilda's yard");
                await sheet.Page.GetByLabel("Address of the page").FillAsync("https://tilda.example/pump");
            }
            else
            {
                await sheet.Page.GetByLabel("Who sells it").SelectOptionAsync("tildas-yard");
            }

            await sheet.PressAsync("Keep this offer");
            await Assertions.Expect(sheet.Page.Locator(".recording .notice")).ToContainTextAsync(time == 1 ? "Kept, with the words" : "kept already");
            if (time == 1)
            {
                var listing = sheet.Page.Url;
                await sheet.Page.Locator(".recording .notice a").ClickAsync();
                await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Link, new() { Name = "https://tilda.example/pump" })).ToHaveCountAsync(1);
                await sheet.GoAsync(listing);
            }
        }

        sheet.AssertQuiet();
    }
}
