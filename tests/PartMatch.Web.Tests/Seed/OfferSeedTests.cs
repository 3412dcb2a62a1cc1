using System.Globalization;
using System.Text.Json;

namespace PartMatch.Web.Tests.Seed;

/// <summary>What the demo books hold of offers: enough to plan with, and what data-seed/README.md says is to be found there.</summary>
public sealed class OfferSeedTests(SeedServer server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task The_offers_are_of_many_sellers_in_several_currencies_and_states_over_eighteen_months()
    {
        var all = (await RowsAsync("tern-16", "offers")).Concat(await RowsAsync("hs-2", "offers")).ToList();

        Assert.True(all.Count >= 150, $"{all.Count} offers");
        Assert.True(all.Select(row => row.Text("seller")).Distinct().Count() >= 6);
        Assert.Equal(["EUR", "GBP", "SEK", "USD"], all.Select(row => row.Text("currency")).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(["", "damaged", "new", "refurbished", "used"], Cells(all, "condition"));
        Assert.Superset(new HashSet<string> { "bare", "short", "long", "complete", "heard-running" }, Cells(all, "level").ToHashSet());
        var days = all.Select(row => DateOnly.ParseExact(row.Text("seenOn"), "yyyy-MM-dd", CultureInfo.InvariantCulture)).ToList();
        Assert.True(days.Max().DayNumber - days.Min().DayNumber > 500);
        Assert.Contains(all, row => Cell(row, "coreDeposit") != "" && Cell(row, "corePart") != "");
        Assert.Contains(all, row => Cell(row, "returnable") == "no");
        Assert.Contains(all, row => Cell(row, "freightBack") == "seller");
        Assert.Contains(all, row => Cell(row, "part") == "" && Cell(row, "numberAsWritten") != "");
        Assert.Contains(all, row => Cell(row, "pack") == "");
    }

    [Theory]
    [InlineData("tern-16", 5)]
    [InlineData("hs-2", 1)]
    public async Task Every_kept_listing_is_tied_to_an_offer(string book, int atLeast)
    {
        var kept = await RowsAsync(book, "listings");
        var tied = (await RowsAsync(book, "offers")).Select(row => Cell(row, "listing")).ToHashSet();

        Assert.True(kept.Count >= atLeast);
        Assert.All(kept, row => Assert.Contains(row.Text("listing"), tied));
    }

    // The trap of the look-alike pumps: looked up by price alone, the wrong one wins.
    [Theory]
    [InlineData("EUR", "new")]
    [InlineData("GBP", "used")]
    public async Task The_wrong_pump_is_cheaper_than_the_right_one(string currency, string condition) =>
        Assert.True(await LeastAsync("P-26-1147-C", currency, condition) < await LeastAsync("P-26-1147-E", currency, condition));

    [Fact]
    public async Task One_seller_asked_for_the_sport_pump_at_five_times()
    {
        var points = (await _client.AskAsync("/api/parts/P-26-1147-E/prices")).List("points")
            .Where(point => point.Text("seller") == "fenmoor-engine-spares").ToList();

        Assert.True(points.Count >= 5, $"{points.Count} points");
        Assert.True(points.Select(point => point.GetProperty("price").Text("amount")).Distinct().Count() >= 3);
    }

    // What the ways to the hill-climb engine are made of.
    [Theory]
    [InlineData("VF-8500-20")]
    [InlineData("VR-152-45")]
    [InlineData("P-11-1003-A")]
    [InlineData("P-11-3122-A")]
    [InlineData("P-11-4003-A")]
    [InlineData("P-13-0303-A")]
    [InlineData("P-90-0503-A")]
    public async Task What_a_conversion_needs_is_offered_by_two_sellers_at_least(string number)
    {
        var offers = (await _client.AskAsync($"/api/offers?part={number}&limit=100")).List("offers");

        Assert.True(offers.Select(offer => offer.Text("seller")).Distinct().Count() >= 2);
    }

    private async Task<decimal> LeastAsync(string number, string currency, string condition) =>
        decimal.Parse(
            (await _client.AskAsync($"/api/parts/{number}/prices")).List("ranges")
                .Single(range => range.Text("currency") == currency && range.Text("condition") == condition).GetProperty("low").Text("amount"),
            CultureInfo.InvariantCulture);

    private async Task<IReadOnlyList<JsonElement>> RowsAsync(string book, string table)
    {
        List<JsonElement> rows = [];
        for (var address = $"/api/books/{book}/{table}?limit=100"; address.Length > 0;)
        {
            var page = await _client.AskAsync(address);
            rows.AddRange(page.List("rows").Select(row => row.GetProperty("row")));
            address = page.Has("cursor") ? $"/api/books/{book}/{table}?limit=100&cursor={Uri.EscapeDataString(page.Text("cursor"))}" : "";
        }

        return rows;
    }

    private static IReadOnlyList<string> Cells(IEnumerable<JsonElement> rows, string column) =>
        [.. rows.Select(row => Cell(row, column)).Distinct().Order(StringComparer.Ordinal)];

    private static string Cell(JsonElement row, string column) => row.Has(column) ? row.Text(column) : "";
}
