using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.Builds;

namespace PartMatch.Web.Tests.Builds;

/// <summary>What was found out of a family holds as long as nothing of it changes, and not a moment longer.</summary>
public sealed class BuildSourceTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();

        await PostAsync("/api/books/duo-2/items", """{"item":"it-1","part":"ardlow:12/34"}""");
        await PostAsync("/api/books/duo-2/sellers", """{"seller":"corner","name":"Corner Shop"}""");
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Storing_a_build_changes_nothing_of_it()
    {
        var before = Find();

        await PostAsync("/api/builds", SmallBuild.Cart);

        Assert.Same(before.Memory, Find().Memory);
        Assert.Same(before.Facts.Family, Find().Facts.Family);
    }

    [Fact]
    public async Task New_offer_is_seen_and_no_fit_answer_is_forgotten()
    {
        var before = Find();

        await PostAsync("/api/books/duo-2/offers", """{"offer":"of-1","seller":"corner","part":"ardlow:12/34","price":"50.00","currency":"EUR","seenOn":"2026-11-01"}""");

        Assert.Same(before.Memory, Find().Memory);
        Assert.Single(Find().Facts.Buying.Offers);
    }

    [Theory]
    [InlineData("values", """{"part":"ardlow:77-1","feature":"length","value":"27.0","minus":"0.2","plus":"0.2","unit":"mm","evidence":"ev-2"}""")]
    [InlineData("readings", """{"item":"it-1","feature":"rotation","value":"anticlockwise"}""")]
    [InlineData("contents", """{"set":"ardlow:12/36","part":"ardlow:77-1","quantity":"3","certain":"yes"}""")]
    public async Task Changed_row_that_a_fit_answer_can_hang_on_forgets_them_all(string table, string row)
    {
        var before = Find();

        await PostAsync($"/api/books/duo-2/{table}", row);

        Assert.NotSame(before.Memory, Find().Memory);
        Assert.NotSame(before.Facts, Find().Facts);
    }

    [Fact]
    public void Unknown_family_has_no_grounds() => Assert.Null(_server.Services.GetRequiredService<BuildSource>().Find("solo"));

    private BuildGrounds Find() => _server.Services.GetRequiredService<BuildSource>().Find("duo-2") ?? throw new InvalidOperationException("duo-2 was imported.");

    private async Task PostAsync(string address, string body)
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, address, body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
