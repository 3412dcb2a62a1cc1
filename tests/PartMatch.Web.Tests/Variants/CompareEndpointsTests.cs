using System.Net;

namespace PartMatch.Web.Tests.Variants;

public sealed class CompareEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task Two_variants_are_compared_position_by_position()
    {
        var answer = await _client.AskAsync("/api/compare?family=duo-2&variants=a,b");

        // Pump: other rotation. Injector: only on a. Bolt: not recorded on b.
        var statuses = answer.List("positions").Select(position => $"{position.Text("position")} {position.Text("status")}");
        Assert.Equal(["coolant-pump differs", "injector only-on-some", "pump-bolt not-known"], statuses);
        var counts = answer.GetProperty("counts");
        Assert.Equal([0, 1, 1, 1, 0], new[] { "shared", "differs", "onlyOnSome", "notKnown", "stoppers" }.Select(name => counts.GetProperty(name).GetInt32()));
        var pump = answer.List("positions")[0];
        Assert.Equal("rotation", Assert.Single(pump.List("differences")).Text("feature"));
        Assert.Equal(["a>b mounts-but-runs-differently", "b>a mounts-but-runs-differently"], pump.List("across").Select(pair => $"{pair.Text("from")}>{pair.Text("to")} {pair.Text("headline")}"));
    }

    [Fact]
    public async Task The_link_of_a_pair_answers_with_the_same_headline()
    {
        var pump = (await _client.AskAsync("/api/compare?family=duo-2&variants=a,b")).List("positions")[0];
        foreach (var pair in pump.List("across"))
        {
            var fit = await _client.AskAsync(pair.Text("fit"));
            Assert.Equal(pair.Text("headline"), fit.Text("headline"));
            Assert.Equal(pair.Text("from"), fit.GetProperty("asked").Text("from"));
        }
    }

    [Fact]
    public async Task What_was_left_out_is_filled_in_and_in_the_permalink()
    {
        var answer = await _client.AskAsync("/api/compare?family=duo-2");

        Assert.Equal(["a", "b"], answer.GetProperty("asked").Texts("variants"));
        Assert.Equal("all", answer.GetProperty("asked").Text("show"));
        Assert.Equal("/api/compare?family=duo-2&variants=a,b&show=all", answer.Text("permalink"));
        var again = await _client.AskAsync(answer.Text("permalink"));
        Assert.Equal(answer.GetRawText(), again.GetRawText());
    }

    [Theory]
    [InlineData("show=differences", 3)]
    [InlineData("show=stoppers", 0)]
    [InlineData("group=cooling", 2)]
    [InlineData("group=fuel&show=all", 1)]
    [InlineData("built=a:2016-05", 3)]
    [InlineData("built=a:2016-05&built=b:2017-01-31", 3)]
    public async Task Filters_leave_positions_out(string filter, int positions) =>
        Assert.Equal(positions, (await _client.AskAsync($"/api/compare?family=duo-2&{filter}")).List("positions").Count);

    [Theory]
    [InlineData("family=duo-2&variants=a", "variants", "a")]
    [InlineData("family=duo-2&variants=a,a", "variants", "a,a")]
    [InlineData("family=duo-2&variants=a,b,c,d,e,f,g", "variants", "a,b,c,d,e,f,g")]
    [InlineData("variants=a,b", "family", "nothing")]
    [InlineData("family=duo-2&show=some", "show", "some")]
    [InlineData("family=duo-2&group=cooking", "group", "cooking")]
    [InlineData("family=duo-2&built=a", "built", "a")]
    [InlineData("family=duo-2&built=a:05-2016", "built", "a:05-2016")]
    [InlineData("family=duo-2&built=a:2016-05&built=a:2016-06", "built", "a:2016-05 and a:2016-06")]
    [InlineData("family=duo-2&family=duo-2", "family", "duo-2 and duo-2")]
    public async Task A_bad_comparison_is_refused_with_the_parameter_named(string query, string field, string found)
    {
        var problem = await _client.RefuseAsync($"/api/compare?{query}", HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal(field, problem.OnlyError().Text("field"));
        Assert.Equal(found, problem.OnlyError().Text("found"));
    }

    [Theory]
    [InlineData("family=duo-9", "family")]
    [InlineData("family=duo-2&variants=a,z", "variants")]
    [InlineData("family=duo-2&variants=a,b&built=z:2016-05", "variants")]
    public async Task An_unknown_family_or_variant_is_404(string query, string field)
    {
        var problem = await _client.RefuseAsync($"/api/compare?{query}", HttpStatusCode.NotFound, "not-found");

        Assert.Equal(field, problem.OnlyError().Text("field"));
    }
}
