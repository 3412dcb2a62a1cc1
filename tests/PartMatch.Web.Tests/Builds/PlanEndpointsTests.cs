using System.Net;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.Builds;

namespace PartMatch.Web.Tests.Builds;

public sealed class PlanEndpointsTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new() { Settings = { ["PartMatch:PlansAtOnce"] = "1" } };
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await _client.StoreAsync(SmallBuild.Cart);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Plan_names_its_question_and_its_permalink_asks_it_again()
    {
        var plan = await _client.AskAsync("/api/builds/cart/plan?on=2026-11-26");

        var asked = plan.GetProperty("asked");
        Assert.Equal(("cart", 1, "cheapest"), (asked.Text("build"), asked.GetProperty("version").GetInt32(), asked.Text("objective")));
        Assert.Equal("/api/builds/cart/plan?objective=cheapest&version=1&on=2026-11-26", plan.Text("permalink"));
        Assert.True(JsonElement.DeepEquals(plan, await _client.AskAsync(plan.Text("permalink"))));
    }

    [Fact]
    public async Task Plan_of_an_earlier_version_is_of_that_version()
    {
        using var changed = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart", SmallBuild.With("\"400.00\"", "\"90.00\""), "1");

        Assert.Equal(1, (await _client.AskAsync("/api/builds/cart/plan?version=1")).GetProperty("asked").GetProperty("version").GetInt32());
        Assert.Equal(2, (await _client.AskAsync("/api/builds/cart/plan?objective=soonest")).GetProperty("asked").GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Plan_told_in_lines_ends_with_the_plan()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/builds/cart/plan?on=2026-11-26")
        {
            Headers = { Accept = { new("application/jsonl") } },
        };
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal("application/jsonl", answer.Content.Headers.ContentType?.MediaType);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var lines = text.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement).ToList();
        Assert.All(lines.SkipLast(1), line => Assert.True(line.Has("bound")));
        Assert.True(JsonElement.DeepEquals(lines[^1], await _client.AskAsync("/api/builds/cart/plan?on=2026-11-26")));
    }

    [Fact]
    public async Task Question_beyond_the_turns_there_are_is_told_when_to_ask_again()
    {
        using var turn = await _server.Services.GetRequiredService<BuildSolves>().BeginAsync("cart", TestContext.Current.CancellationToken);
        Assert.NotNull(turn);

        using var answer = await _client.SendAsync(HttpMethod.Get, "/api/builds/cart/plan");

        await answer.ProblemAsync(HttpStatusCode.ServiceUnavailable, "planning-busy");
        Assert.Equal(TimeSpan.FromSeconds(5), answer.Headers.RetryAfter?.Delta);
    }

    [Fact]
    public async Task Stop_ends_what_is_worked_out_for_the_build_and_nothing_else()
    {
        Assert.Equal(0, (await StopAsync()).GetProperty("stopped").GetInt32());
        using var turn = await _server.Services.GetRequiredService<BuildSolves>().BeginAsync("cart", TestContext.Current.CancellationToken);
        var work = turn!.RunAsync(stop => stop.WaitHandle.WaitOne(TimeSpan.FromSeconds(30))); // the only turn was free

        Assert.Equal(1, (await StopAsync()).GetProperty("stopped").GetInt32());

        Assert.True(await work);
        using var unknown = await _client.SendAsync(HttpMethod.Post, "/api/builds/solo/stop");
        await unknown.ProblemAsync(HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task Build_that_names_what_the_base_no_longer_holds_is_told_so()
    {
        var row = await _client.AskAsync("/api/books/duo-2/fitments?where=position:pump-bolt");
        var part = await _client.AskAsync("/api/books/duo-2/positions/pump-bolt");
        using var changed = await _client.SendAsync(
            HttpMethod.Post, "/api/books/duo-2/changes",
            $$"""
            {"rows":[{"table":"fitments","key":"{{row.List("rows")[0].Text("key")}}","version":"{{row.List("rows")[0].Text("version")}}"},
                     {"table":"positions","key":"pump-bolt","version":"{{part.Text("version")}}"}]}
            """);
        Assert.True(changed.IsSuccessStatusCode, await changed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        var problem = await _client.RefuseAsync("/api/builds/cart/plan", HttpStatusCode.Conflict, "build-outdated");

        Assert.Equal(("wishes[0].position", "pump-bolt"), (problem.OnlyError().Text("field"), problem.OnlyError().Text("found")));
        Assert.Equal("A cart from a pump set", (await _client.AskAsync("/api/builds/cart")).GetProperty("document").Text("title"));
    }

    [Theory]
    [InlineData("/api/builds/cart/plan?objective=cheap", "objective")]
    [InlineData("/api/builds/cart/plan?on=tomorrow", "on")]
    [InlineData("/api/builds/cart/plan?version=first", "version")]
    [InlineData("/api/builds/cart/plan?budget=400", "budget")]
    public async Task Question_that_cannot_be_asked_names_its_parameter(string address, string field) =>
        Assert.Equal(field, (await _client.RefuseAsync(address, HttpStatusCode.BadRequest, "bad-question")).OnlyError().Text("field"));

    [Fact]
    public async Task Plan_of_a_build_that_is_not_there_is_not_found()
    {
        await _client.RefuseAsync("/api/builds/solo/plan", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/cart/plan?version=9", HttpStatusCode.NotFound, "not-found");
        using var deleted = await _client.SendAsync(HttpMethod.Delete, "/api/builds/cart", version: "1");
        await _client.RefuseAsync("/api/builds/cart/plan", HttpStatusCode.NotFound, "not-found");
    }

    private async Task<JsonElement> StopAsync()
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/stop");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
    }
}
