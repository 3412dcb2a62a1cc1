using System.Net;

namespace PartMatch.Web.Tests.Consistency;

public sealed class ConsistencyEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    // The pump bolt of b is not recorded; both bolt questions between a and b hang on that.
    [Fact]
    public async Task What_is_missing_is_listed_with_its_row_and_what_hangs_on_it()
    {
        var answer = await _client.AskAsync("/api/consistency?family=duo-2");

        var fault = Assert.Single(answer.List("faults"));
        Assert.Equal(["not-recorded", "missing", "pump-bolt"], new[] { "sort", "severity", "position" }.Select(name => fault.Text(name)));
        Assert.Equal(["b"], fault.Texts("variants"));
        Assert.Equal((2, 0), (fault.GetProperty("unlocks").GetProperty("alone").GetInt32(), fault.GetProperty("unlocks").GetProperty("together").GetInt32()));
        var row = Assert.Single(fault.List("rows"));
        Assert.Equal(["duo-2", "positions", "pump-bolt"], new[] { "book", "table", "key" }.Select(name => row.Text(name)));
        Assert.Equal(1, answer.GetProperty("total").GetInt32());
        Assert.Equal(1, answer.GetProperty("counts").GetProperty("not-recorded").GetInt32());
        Assert.Equal(0, answer.GetProperty("counts").GetProperty("joint-contradicts").GetInt32());
        Assert.False(answer.GetProperty("counts").TryGetProperty("near-unjudged", out _));
    }

    [Fact]
    public async Task The_question_of_a_fault_is_answered_as_it_says()
    {
        var fault = Assert.Single((await _client.AskAsync("/api/consistency?family=duo-2")).List("faults"));

        Assert.Equal("not-known-yet", (await _client.AskAsync(fault.Text("fit"))).Text("headline"));
    }

    [Fact]
    public async Task What_was_left_out_is_filled_in_and_in_the_permalink()
    {
        var answer = await _client.AskAsync("/api/consistency?family=duo-2&variant=b&sort=not-recorded");

        Assert.Equal("/api/consistency?family=duo-2&variant=b&sort=not-recorded&limit=100", answer.Text("permalink"));
        var again = await _client.AskAsync(answer.Text("permalink"));
        Assert.Equal(answer.GetRawText(), again.GetRawText());
    }

    [Theory]
    [InlineData("variant=a", 0)]
    [InlineData("variant=b", 1)]
    [InlineData("sort=not-recorded", 1)]
    [InlineData("sort=values-disputed", 0)]
    [InlineData("limit=1000", 1)]
    public async Task Filters_leave_faults_out(string filter, int faults) =>
        Assert.Equal(faults, (await _client.AskAsync($"/api/consistency?family=duo-2&{filter}")).List("faults").Count);

    // 12/34 and 12/35 differ in one character, look the same and turn the other way: nobody has judged the pair. 12/36 is a newer number of 12/34.
    [Fact]
    public async Task Near_numbers_are_looked_for_when_asked_for()
    {
        var answer = await _client.AskAsync("/api/consistency?family=duo-2&sort=near-unjudged");

        Assert.Contains(answer.List("faults"), fault => fault.List("rows").Select(row => row.Text("key")).SequenceEqual(["ardlow:12/34", "ardlow:12/35"]));
        Assert.Equal(answer.List("faults").Count, answer.GetProperty("counts").GetProperty("near-unjudged").GetInt32());
    }

    [Theory]
    [InlineData("", "family", "nothing")]
    [InlineData("family=duo-2&sort=odd", "sort", "odd")]
    [InlineData("family=duo-2&limit=0", "limit", "0")]
    [InlineData("family=duo-2&limit=1001", "limit", "1001")]
    [InlineData("family=duo-2&limit=many", "limit", "many")]
    [InlineData("family=duo-2&position=injector", "position", "position")]
    public async Task A_bad_question_is_refused_with_the_parameter_named(string query, string field, string found)
    {
        var problem = await _client.RefuseAsync($"/api/consistency?{query}", HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal((field, found), (problem.OnlyError().Text("field"), problem.OnlyError().Text("found")));
    }

    [Theory]
    [InlineData("family=duo-9", "family")]
    [InlineData("family=duo-2&variant=z", "variant")]
    public async Task An_unknown_family_or_variant_is_404(string query, string field) =>
        Assert.Equal(field, (await _client.RefuseAsync($"/api/consistency?{query}", HttpStatusCode.NotFound, "not-found")).OnlyError().Text("field"));
}
