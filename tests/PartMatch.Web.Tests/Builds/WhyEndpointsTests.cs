using System.Net;

namespace PartMatch.Web.Tests.Builds;

public sealed class WhyEndpointsTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await _client.StoreAsync(SmallBuild.Cart);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Theory]
    [InlineData("why-not?position=coolant-pump&part=ardlow:12/35", "why-not?objective=cheapest&version=1&on=2026-11-26&position=coolant-pump&part=ardlow:12/35")]
    [InlineData("why-not?position=coolant-pump&part=12-35", "why-not?objective=cheapest&version=1&on=2026-11-26&position=coolant-pump&part=ardlow:12/35")]
    [InlineData("why-not?position=coolant-pump&part=none", "why-not?objective=cheapest&version=1&on=2026-11-26&position=coolant-pump&part=none")]
    [InlineData("conflict?objective=soonest", "conflict?objective=soonest&version=1&on=2026-11-26")]
    [InlineData("frontier?by=days", "frontier?by=days&version=1&on=2026-11-26")]
    public async Task Question_is_answered_and_its_permalink_asks_it_again(string question, string permalink)
    {
        var answer = await _client.AskAsync($"/api/builds/cart/{question}&on=2026-11-26");

        Assert.Equal(("cart", 1), (answer.GetProperty("asked").Text("build"), answer.GetProperty("asked").GetProperty("version").GetInt32()));
        Assert.Equal($"/api/builds/cart/{permalink}", answer.Text("permalink"));
        Assert.Equal(answer.ToString(), (await _client.AskAsync(answer.Text("permalink"))).ToString());
    }

    [Theory]
    [InlineData("why?line=coolant-pmp", "line", "did you mean coolant-pump?")]
    [InlineData("why-not?position=coolant-pmp&part=ardlow:12/35", "position", "did you mean coolant-pump?")]
    public async Task Position_that_is_not_there_is_not_found(string question, string field, string mend)
    {
        var error = (await _client.RefuseAsync($"/api/builds/cart/{question}", HttpStatusCode.NotFound, "not-found")).OnlyError();
        Assert.Equal((field, mend), (error.Text("field"), error.Text("mend")));
    }

    [Theory]
    [InlineData("why", "line")]
    [InlineData("why-not?position=coolant-pump", "part")]
    [InlineData("why-not?part=ardlow:12/35", "position")]
    [InlineData("why-not?position=coolant-pump&part=ardlow:I-1", "part")]
    [InlineData("why-not?position=coolant-pump&part=ardlow:99", "part")]
    [InlineData("frontier?by=risk", "by")]
    [InlineData("frontier?objective=soonest", "objective")]
    public async Task Question_that_cannot_be_asked_names_its_parameter(string question, string field) =>
        Assert.Equal(field, (await _client.RefuseAsync($"/api/builds/cart/{question}", HttpStatusCode.BadRequest, "bad-question")).OnlyError().Text("field"));

    [Fact]
    public async Task Frontier_names_its_drawing()
    {
        var answer = await _client.AskAsync("/api/builds/cart/frontier?on=2026-11-26");

        Assert.Equal("/api/plots/frontier.svg?build=cart&version=1&on=2026-11-26", answer.Text("plot"));
        var svg = await _client.GetStringAsync(new Uri(answer.Text("plot"), UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("<svg", svg, StringComparison.Ordinal);
        Assert.True((await _client.AskAsync("/api/plots/frontier.json?build=cart")).Has("table"));
        await _client.RefuseAsync("/api/plots/frontier.svg?build=solo", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/plots/frontier.svg", HttpStatusCode.BadRequest, "bad-question");
    }

    [Fact]
    public async Task Number_of_two_makers_is_asked_back() =>
        Assert.Equal(
            ["ardlow:77-1 (Pump bolt)", "brask:77-1 (Bolt of another maker)"],
            (await _client.RefuseAsync("/api/builds/cart/why-not?position=pump-bolt&part=77-1", HttpStatusCode.BadRequest, "ambiguous-number"))
                .List("errors").Select(error => error.Text("expected")));

    [Theory]
    [InlineData("why?line=coolant-pump")]
    [InlineData("conflict")]
    [InlineData("frontier")]
    public async Task Question_about_a_build_that_is_not_there_is_not_found(string question) =>
        await _client.RefuseAsync($"/api/builds/solo/{question}", HttpStatusCode.NotFound, "not-found");
}
