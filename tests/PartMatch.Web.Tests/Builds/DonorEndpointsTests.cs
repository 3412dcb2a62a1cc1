using System.Net;
using System.Text.Json;

namespace PartMatch.Web.Tests.Builds;

/// <summary>Donors of the small cart: an engine of each variant, of which all parts are good.</summary>
public sealed class DonorEndpointsTests : IAsyncLifetime
{
    private const string Donors =
        """
        "donors":[
         {"code":"shed","name":"In the shed","donor":{"variant":"b","price":"100.00","freight":"10.00","states":[{"position":"coolant-pump","state":"good"}]}},
         {"code":"unpriced","name":"On the heap","donor":{"variant":"a","states":[]}}],
        """;

    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await _client.StoreAsync(Cart);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    private static string Cart => SmallBuild.With("\"wishes\":", $"{Donors}\"wishes\":");

    [Fact]
    public async Task Ranking_names_every_donor_and_its_permalink_asks_it_again()
    {
        var ranks = await _client.AskAsync("/api/donors?build=cart&on=2026-11-26");

        Assert.Equal(["donor", "shed", "unpriced"], ranks.List("donors").Select(donor => donor.Text("donor")).Order(StringComparer.Ordinal));
        Assert.Equal("/api/donors?build=cart&objective=cheapest&version=1&on=2026-11-26", ranks.Text("permalink"));
        Assert.True(JsonElement.DeepEquals(ranks, await _client.AskAsync(ranks.Text("permalink"))));
        Assert.Contains(ranks.List("cautions"), caution => caution.Text("code") == "high-voltage");
    }

    [Fact]
    public async Task Plan_of_a_ranked_donor_is_the_plan_of_the_build_with_it()
    {
        var ranks = await _client.AskAsync("/api/donors?build=cart&on=2026-11-26");
        var shed = Assert.Single(ranks.List("donors"), donor => donor.Text("donor") == "shed");
        var plan = await _client.AskAsync(shed.Text("plan"));
        Assert.Equal((shed.Text("headlineText"), "shed"), (plan.Text("headlineText"), plan.GetProperty("asked").Text("donor")));
        Assert.Equal(shed.Text("plan"), plan.Text("permalink"));

        var taken = SmallBuild.With("\"donor\":{\"variant\":\"a\",\"built\":\"2016-05\",\"states\":[{\"position\":\"coolant-pump\",\"state\":\"damaged\",\"sellsFor\":\"5.00\"}]}",
            "\"donor\":{\"variant\":\"b\",\"price\":\"100.00\",\"freight\":\"10.00\",\"states\":[{\"position\":\"coolant-pump\",\"state\":\"good\"}]}");
        using var stored = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart", taken, "1");
        Assert.Equal(HttpStatusCode.OK, stored.StatusCode);
        var own = await _client.AskAsync("/api/builds/cart/plan?on=2026-11-26");
        Assert.Equal(plan.Text("headlineText"), own.Text("headlineText"));
        Assert.True(JsonElement.DeepEquals(plan.GetProperty("lines"), own.GetProperty("lines")));
    }

    [Fact]
    public async Task Ranking_told_in_lines_ends_with_the_ranking()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/donors?build=cart&on=2026-11-26")
        {
            Headers = { Accept = { new("application/jsonl") } },
        };
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);

        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var lines = text.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement).ToList();
        Assert.All(lines.SkipLast(1), line => Assert.Equal(3, line.GetProperty("of").GetInt32()));
        Assert.True(JsonElement.DeepEquals(lines[^1], await _client.AskAsync("/api/donors?build=cart&on=2026-11-26")));
    }

    [Theory]
    [InlineData("/api/donors", "build")]
    [InlineData("/api/donors?build=cart&objective=nearest", "objective")]
    [InlineData("/api/donors?build=cart&on=tomorrow", "on")]
    public async Task Question_that_cannot_be_asked_names_its_parameter(string address, string field) =>
        Assert.Equal(field, (await _client.RefuseAsync(address, HttpStatusCode.BadRequest, "bad-question")).OnlyError().Text("field"));

    [Fact]
    public async Task Unknown_build_and_unknown_donor_are_not_found()
    {
        await _client.RefuseAsync("/api/donors?build=solo", HttpStatusCode.NotFound, "not-found");
        var problem = await _client.RefuseAsync("/api/builds/cart/plan?donor=shet", HttpStatusCode.NotFound, "not-found");
        Assert.Equal(("donor", "shet", "did you mean shed?"),
            (problem.OnlyError().Text("field"), problem.OnlyError().Text("found"), problem.OnlyError().Text("mend")));
    }

    [Theory]
    [InlineData("\"code\":\"shed\"", "\"code\":\"donor\"", "donors[0].code")]
    [InlineData("\"code\":\"unpriced\"", "\"code\":\"shed\"", "donors[0].code,donors[1].code")]
    [InlineData("\"freight\":\"10.00\"", "\"freight\":\"-1\"", "donors[0].donor.freight")]
    [InlineData("\"variant\":\"a\",\"states\":[]", "\"variant\":\"z\",\"states\":[]", "donors[1].donor.variant")]
    [InlineData("\"variant\":\"a\",\"states\":[]", "\"variant\":\"a\",\"states\":[],\"level\":\"whole\"", "donors[1].donor.level")]
    [InlineData("\"variant\":\"a\",\"states\":[]", "\"variant\":\"a\",\"states\":[],\"comesWith\":[{\"part\":\"ardlow:99\",\"pieces\":1}]", "donors[1].donor.comesWith[0].part")]
    public async Task Donor_of_the_list_that_cannot_be_is_refused_with_its_place(string was, string becomes, string fields)
    {
        using var answer = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart", Cart.Replace(was, becomes, StringComparison.Ordinal), "1");

        var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-build");
        Assert.Equal(fields, string.Join(',', problem.List("errors").Select(error => error.Text("field"))));
    }
}
