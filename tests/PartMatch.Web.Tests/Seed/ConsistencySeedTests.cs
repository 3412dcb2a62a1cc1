namespace PartMatch.Web.Tests.Seed;

/// <summary>The demo books contradict themselves nowhere, and their known gaps are found.</summary>
public sealed class ConsistencySeedTests(SeedServer server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Theory]
    [InlineData("tern-16")]
    [InlineData("hs-2")]
    public async Task Nothing_recorded_in_a_demo_book_contradicts_anything_else_in_it(string family) =>
        Assert.DoesNotContain((await _client.AskAsync($"/api/consistency?family={family}&limit=1000")).List("faults"), fault => fault.Text("severity") == "wrong");

    // Read off the books by hand: two documents on one gasket, two packets of pushrods, no row for the marine dipstick, no belt plane of the plain hub.
    [Theory]
    [InlineData("tern-16", "values-disputed", "tessick:TG-7514,compressed-thickness,ev-0014")]
    [InlineData("hs-2", "values-disputed", "kestlow:PR-231,length,ev-0020")]
    [InlineData("tern-16", "not-recorded", "dipstick")]
    [InlineData("tern-16", "missing-value", "pellworth:P-13-1102-A")]
    public async Task A_known_gap_is_found_and_nothing_else_of_its_sort(string family, string sort, string key)
    {
        var fault = Assert.Single((await _client.AskAsync($"/api/consistency?family={family}&sort={sort}")).List("faults"));

        Assert.Contains(key, fault.List("rows").Select(row => row.Text("key")));
    }

    // A pulley of any of the three other variants on tg lacks the plane of its hub; the pump pulley stops for another reason.
    [Fact]
    public async Task Every_question_that_hangs_on_the_hub_names_it_as_the_only_thing_to_measure()
    {
        var next = Assert.Single((await _client.AskAsync("/api/consistency?family=tern-16&variant=tg")).List("measureNext"));

        Assert.Equal((3, 0), (next.GetProperty("unlocks").GetProperty("alone").GetInt32(), next.GetProperty("unlocks").GetProperty("together").GetInt32()));
        foreach (var from in new[] { "tm", "ts", "tv" })
        {
            var answer = await _client.AskAsync($"/api/fit?family=tern-16&variant=tg&position=alternator-pulley&from={from}");
            Assert.Equal("belt-plane", Assert.Single(answer.List("measureNext")).Text("feature"));
        }
    }
}
