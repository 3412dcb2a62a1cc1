using System.Net;

namespace PartMatch.Web.Tests.Identification;

public sealed class TellApartEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task Two_pumps_are_told_apart_by_the_photo_of_their_vanes()
    {
        var answer = await _client.AskAsync("/api/tell-apart?parts=12%2F34,12-35");

        // The only check that a seller can answer is the photo of the vanes, 1 min; the two turn opposite ways.
        Assert.Equal("told-apart", answer.Text("headline"));
        Assert.Equal(["ardlow:12/34", "ardlow:12/35"], answer.GetProperty("asked").List("parts").Select(part => part.GetString()));
        var key = answer.GetProperty("key");
        Assert.Equal(["rotation", "photo"], new[] { key.GetProperty("check").Text("feature"), key.GetProperty("check").Text("method") });
        Assert.All(key.List("answers"), one => Assert.Single(one.List("candidates")));
        Assert.Equal(1, answer.GetProperty("expectedMinutes").GetDecimal());
        Assert.Contains("today's date", answer.GetProperty("message").Text("text"), StringComparison.Ordinal);
        Assert.DoesNotContain("clockwise", answer.GetProperty("message").Text("text"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_seen_identifies_one_and_stays_in_the_permalink()
    {
        var answer = await _client.AskAsync("/api/tell-apart?parts=ardlow:12%2F34,ardlow:12%2F35&mode=in-hand&tools=none&seen=rotation@photo:clockwise");

        Assert.Equal("identified", answer.Text("headline"));
        Assert.Equal(["possible", "ruled-out"], answer.List("candidates").Select(candidate => candidate.Text("state")));
        Assert.Equal("/api/tell-apart?parts=ardlow:12/34,ardlow:12/35&mode=in-hand&tools=none&seen=rotation%40photo:clockwise", answer.Text("permalink"));
        Assert.Equal(answer.Text("headlineText"), (await _client.AskAsync(answer.Text("permalink"))).Text("headlineText"));
    }

    [Theory]
    [InlineData("", "parts", "neither")]
    [InlineData("parts=12%2F34&family=duo-2", "parts", "both")]
    [InlineData("parts=12%2F34,nothing-known-9", "parts", "nothing-known-9")]
    [InlineData("parts=77-1", "parts", "77-1", "ambiguous-number")]
    [InlineData("parts=%2F,12-34", "parts", "/,12-34")]
    [InlineData("parts=12%2F34&variants=a,b", "variants", "a,b")]
    [InlineData("family=duo-2&variants=a", "variants", "a")]
    [InlineData("family=duo-2&variants=a,a", "variants", "a,a")]
    [InlineData("parts=12%2F34&mode=later", "mode", "later")]
    [InlineData("parts=12%2F34&mode=in-hand&tools=hammer", "tools", "hammer")]
    [InlineData("parts=12%2F34&mode=in-hand&tools=photo", "tools", "photo")]
    [InlineData("parts=12%2F34,12-35&seen=rotation", "seen", "rotation")]
    [InlineData("parts=12%2F34,12-35&seen=rotation:sideways", "seen", "rotation:sideways")]
    [InlineData("parts=12%2F34,12-35&seen=colour:red", "seen", "colour:red")]
    public async Task A_question_that_cannot_be_asked_says_which_field_and_what_was_found(string query, string field, string found, string type = "bad-question")
    {
        var error = (await _client.RefuseAsync($"/api/tell-apart?{query}", HttpStatusCode.BadRequest, type)).List("errors")[0];
        Assert.Equal([field, found], new[] { error.Text("field"), error.Text("found") });
        Assert.NotEmpty(error.Text("mend"));
    }

    [Theory]
    [InlineData("family=nowhere")]
    [InlineData("family=duo-2&variants=a,zz")]
    public async Task What_the_base_does_not_hold_is_404(string query)
    {
        Assert.NotEmpty((await _client.RefuseAsync($"/api/tell-apart?{query}", HttpStatusCode.NotFound, "not-found")).List("errors"));
    }

    [Fact]
    public async Task Ranked_pairs_come_in_the_order_of_danger_and_page_by_page()
    {
        var all = await _client.AskAsync("/api/look-alikes?family=duo-2&limit=200");
        var first = await _client.AskAsync("/api/look-alikes?family=duo-2&limit=1");
        var second = await _client.AskAsync($"/api/look-alikes?family=duo-2&limit=1&cursor={first.Text("cursor")}");

        var danger = all.List("pairs").Select(pair => pair.GetProperty("ease").GetInt32() * pair.GetProperty("harm").GetInt32()).ToList();
        Assert.Equal(danger.OrderDescending(), danger);
        Assert.Equal(all.GetProperty("total").GetInt32(), danger.Count);
        Assert.Equal(
            all.List("pairs").Take(2).Select(pair => pair.GetProperty("b").Text("part")),
            [first.List("pairs")[0].GetProperty("b").Text("part"), second.List("pairs")[0].GetProperty("b").Text("part")]);

        // 12/34 → 12/36 is a supersession in the book, so it is not among those that nobody has judged.
        var work = await _client.AskAsync("/api/look-alikes?family=duo-2&judgement=not-judged&limit=200");
        Assert.DoesNotContain(work.List("pairs"), pair => pair.GetProperty("a").Text("part") == "ardlow:12/34" && pair.GetProperty("b").Text("part") == "ardlow:12/36");
        Assert.Equal(all.GetProperty("counts").GetProperty("notJudged").GetInt32(), work.GetProperty("total").GetInt32());
    }

    [Theory]
    [InlineData("", "family")]
    [InlineData("family=duo-2&danger=deadly", "danger")]
    [InlineData("family=duo-2&judgement=maybe", "judgement")]
    [InlineData("family=duo-2&kind=gearbox", "kind")]
    [InlineData("family=duo-2&limit=0", "limit")]
    [InlineData("family=duo-2&cursor=xyz", "cursor")]
    public async Task A_wrong_filter_is_refused_at_its_field(string query, string field)
    {
        Assert.Equal(field, (await _client.RefuseAsync($"/api/look-alikes?{query}", HttpStatusCode.BadRequest, "bad-question")).OnlyError().Text("field"));
    }

    [Fact]
    public async Task A_number_of_two_makers_is_asked_about()
    {
        var answer = await _client.AskAsync("/api/numbers/77-1/look-alikes");

        Assert.Equal(["ardlow:77-1", "brask:77-1"], answer.List("writtenForms").Select(form => form.Text("part")));
        Assert.Contains("2 makers", answer.Text("question"), StringComparison.Ordinal);
    }
}
