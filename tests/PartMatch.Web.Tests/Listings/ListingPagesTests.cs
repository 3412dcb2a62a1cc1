using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Listings;

/// <summary>Every saved page, read and judged over HTTP, against what a careful builder made of it by reading (the README.md beside the pages).</summary>
public sealed class ListingPagesTests(SeedServer server)
{
    /// <summary>Page and question of every row.</summary>
    public static TheoryData<string, string> Rows
    {
        get
        {
            var rows = new TheoryData<string, string>();
            foreach (var row in ExpertTable.Rows)
            {
                rows.Add(row.Page, row.Question);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task Headline_is_the_experts(string page, string question)
    {
        var (row, answer) = await AskAsync(page, question);

        var found = answer.Text("headline");
        Assert.True(row.Headline == found, $"{page}: expected {row.Headline}, found {found}: {string.Join(" ", answer.Texts("because"))}");
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task Every_number_that_matters_has_the_experts_verdict(string page, string question)
    {
        var (row, answer) = await AskAsync(page, question);
        var found = answer.List("numbers").Select(number => $"{number.Text("numberKey")}={number.Text("verdict")}").ToList();

        Assert.All(row.Verdicts, expected => Assert.Contains($"{expected.Key}={expected.Value}", found));
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task Prices_shipping_and_days_are_what_the_page_says(string page, string question)
    {
        var (row, answer) = await AskAsync(page, question);
        var found = answer.List("offers").Select(Found.Of).ToList();

        Assert.All(row.Offers, expected => Assert.True(
            found.Exists(one => one.Agrees(expected)), $"expected {expected}, found {string.Join("; ", found)}"));
        // What has no price is nothing that can be bought.
        Assert.All(row.GoesOn ? [] : found.FindAll(one => one.Price is not null), one => Assert.True(row.Offers.Any(one.Agrees), $"no offer of this page: {one}"));
    }

    [Fact]
    public void Every_saved_page_has_a_row_and_every_row_a_page() => Assert.Equal(
        ExpertTable.Folders.SelectMany(Directory.EnumerateFiles).Select(file => Path.GetFileName(file)).Where(name => name != "README.md")
            .Order(StringComparer.Ordinal),
        ExpertTable.Rows.Select(row => row.Page).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void Every_headline_is_expected_of_some_page() =>
        Assert.Equal(["ask-first", "buy", "leave-it"], ExpertTable.Rows.Select(row => row.Headline).Distinct().Order(StringComparer.Ordinal));

    private async Task<(ExpertRow Row, JsonElement Answer)> AskAsync(string page, string question)
    {
        var row = ExpertTable.Rows.Single(row => row.Page == page && row.Question == question);
        using var client = server.CreateClient();
        using var body = new ByteArrayContent(await File.ReadAllBytesAsync(Path.Combine(row.Folder, page), TestContext.Current.CancellationToken));
        body.Headers.ContentType = MediaTypeHeaderValue.Parse(Path.GetExtension(page) switch
        {
            ".mhtml" => "message/rfc822",
            ".txt" => "text/plain; charset=utf-8",
            _ => "text/html",
        });
        using var answer = await client.PostAsync(new Uri($"/api/listings/read?{question}", UriKind.Relative), body, TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{page} answered {(int)answer.StatusCode}: {text}");
        return (row, JsonDocument.Parse(text).RootElement);
    }

    /// <summary>An offer of an answer, in the words of the table; null where it is not stated.</summary>
    private sealed record Found(string? Price, bool Ambiguous, string? Shipping, string? Days, string Condition)
    {
        public static Found Of(JsonElement judged)
        {
            var offer = judged.GetProperty("offer");
            var price = Member(offer, "price");
            var ambiguous = price?.Text("as") == "ambiguous";
            return new Found(
                ambiguous ? price?.Text("written") : Stated(price), ambiguous,
                Stated(Member(Member(offer, "shipping"), "rate")),
                Member(offer, "days") is { } days ? $"{days.GetProperty("least")}-{days.GetProperty("most")}" : null,
                offer.Text("condition"));
        }

        public bool Agrees(ExpertOffer expected) =>
            Ambiguous == expected.Ambiguous && (Ambiguous ? Price?.Contains(expected.Price, StringComparison.Ordinal) == true : Price == expected.Price)
            && Agrees(Shipping, expected.Shipping) && Agrees(Days, expected.Days) && (expected.Condition ?? Condition) == Condition;

        private static bool Agrees(string? found, Expected expected) => found == expected.Value || (expected.Said && found is null);

        private static string? Stated(JsonElement? price) =>
            price?.Text("as") == "stated" && Member(price, "money") is { } money ? ExpertTable.Money(money.Text("amount"), money.Text("currency")) : null;

        private static JsonElement? Member(JsonElement? element, string name) =>
            element is { ValueKind: JsonValueKind.Object } of && of.TryGetProperty(name, out var member) && member.ValueKind != JsonValueKind.Null
                ? member
                : null;
    }
}
