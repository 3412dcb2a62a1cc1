using System.Net;

namespace PartMatch.Web.Tests.LookAlikes;

public sealed class LookAlikeEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task Near_numbers_come_with_edits_and_cost_only()
    {
        var answer = await _client.AskAsync("/api/numbers/12-34/near");

        // Keys 1234 against 1235 and 1236: one substitution each; shorter than six characters, so one edit counts as near.
        Assert.Equal(["ardlow:12/35", "ardlow:12/36"], answer.List("numbers").Select(row => row.Text("part")).Order());
        Assert.All(answer.List("numbers"), row => Assert.Equal(["number", "part", "edits", "foldedEdits", "cost"], row.EnumerateObject().Select(member => member.Name)));
        Assert.Equal(1, answer.GetProperty("within").GetInt32());
        Assert.True(answer.GetProperty("complete").GetBoolean());
        Assert.Equal(2, answer.GetProperty("total").GetInt32());
        Assert.Equal("1234", answer.GetProperty("asked").Text("numberKey"));
    }

    [Fact]
    public async Task A_look_alike_shows_danger_difference_and_how_to_tell_them_apart()
    {
        var answer = await _client.AskAsync("/api/numbers/12%2F34/look-alikes?family=duo-2");

        var other = answer.List("lookAlikes").First(row => row.Text("part") == "ardlow:12/35");
        Assert.Equal("rotation", Assert.Single(other.List("differs")).Text("feature"));
        var check = other.List("tellApart")[0];
        Assert.Equal("photo", check.Text("check"));
        Assert.True(check.GetProperty("beforePaying").GetBoolean());
        Assert.Equal("mounts-but-runs-differently", other.GetProperty("worst").Text("headline"));

        // Near in number, told apart by a photo: ease 1. Runs differently with damage: harm 5. 1 × 5 is medium (4 to 7).
        Assert.Equal([1, 5], new[] { other.GetProperty("ease").GetInt32(), other.GetProperty("harm").GetInt32() });
        Assert.Equal("medium", other.Text("danger"));
        Assert.Equal("newer-number", answer.List("lookAlikes").First(row => row.Text("part") == "ardlow:12/36").Text("relation"));
    }

    [Fact]
    public async Task A_number_in_no_book_is_still_compared()
    {
        var answer = await _client.AskAsync("/api/numbers/12-3A/look-alikes");

        Assert.Empty(answer.List("known"));
        Assert.Contains("ardlow:12/34", answer.List("lookAlikes").Select(row => row.Text("part")));
    }

    [Theory]
    [InlineData("near")]
    [InlineData("look-alikes")]
    public async Task Pages_follow_each_other(string route)
    {
        var list = route == "near" ? "numbers" : "lookAlikes";
        var first = await _client.AskAsync($"/api/numbers/12-34/{route}?limit=1");
        var second = await _client.AskAsync($"/api/numbers/12-34/{route}?limit=1&cursor={first.Text("cursor")}");

        var all = (await _client.AskAsync($"/api/numbers/12-34/{route}")).List(list).Select(row => row.Text("part"));
        Assert.Equal(all, [first.List(list)[0].Text("part"), second.List(list)[0].Text("part")]);
        Assert.False(second.Has("cursor"));
    }

    [Theory]
    [InlineData("/api/numbers/---/near", "number")]
    [InlineData("/api/numbers/12-34/near?limit=x", "limit")]
    [InlineData("/api/numbers/12-34/near?cursor=%25", "cursor")]
    [InlineData("/api/numbers/12-34/near?family=duo-2", "family")]
    [InlineData("/api/numbers/---/look-alikes", "number")]
    [InlineData("/api/numbers/12-34/look-alikes?limit=201", "limit")]
    [InlineData("/api/numbers/12-34/look-alikes?cursor=abc", "cursor")]
    public async Task A_bad_question_is_refused_with_the_parameter_named(string address, string field)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal(field, problem.OnlyError().Text("field"));
    }

    [Fact]
    public async Task An_unknown_family_is_404()
    {
        var problem = await _client.RefuseAsync("/api/numbers/12-34/look-alikes?family=duo-9", HttpStatusCode.NotFound, "not-found");

        Assert.Equal("family", problem.OnlyError().Text("field"));
    }
}
