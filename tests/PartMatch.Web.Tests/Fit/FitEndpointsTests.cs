using System.Net;

namespace PartMatch.Web.Tests.Fit;

public sealed class FitEndpointsTests(SmallBase server)
{
    private const string Pump = "/api/fit?family=duo-2&variant=b&position=coolant-pump";

    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task The_fitted_part_fits_by_identity()
    {
        var answer = await _client.AskAsync(Pump + "&part=12-35");

        Assert.Equal("fits", answer.Text("headline"));
        Assert.Equal("documented", answer.Text("sureness"));
        Assert.Equal("fitted-here", answer.GetProperty("identity").Text("relation"));
        Assert.Equal("ardlow:12/35", answer.GetProperty("asked").Text("part"));
    }

    [Fact]
    public async Task A_pump_of_the_other_rotation_mounts_but_runs_differently_and_is_warned_of()
    {
        var answer = await _client.AskAsync(Pump + "&part=12%2F34");

        Assert.Equal("mounts-but-runs-differently", answer.Text("headline"));
        Assert.Equal("yes", answer.GetProperty("mounts").Text("value"));
        Assert.Equal("differently", answer.GetProperty("runs").Text("value"));
        Assert.Equal("damage", answer.Text("consequence"));
        var rotation = answer.List("reasons").First(reason => reason.Has("feature") && reason.Text("feature") == "rotation");
        Assert.Equal("no", rotation.Text("met"));
        Assert.Equal("clockwise", rotation.GetProperty("part").Text("text"));
        Assert.Contains("ardlow:12/35", answer.List("lookAlikes").Select(warning => warning.Text("part")));
        Assert.Equal("hot-parts", Assert.Single(answer.List("cautions")).Text("code"));
    }

    [Fact]
    public async Task What_another_variant_has_there_is_asked_by_from()
    {
        var answer = await _client.AskAsync(Pump + "&from=a");

        Assert.Equal("mounts-but-runs-differently", answer.Text("headline"));
        Assert.Equal("a", answer.GetProperty("asked").Text("from"));
    }

    [Theory]
    [InlineData("&part=12-34")]
    [InlineData("&from=a&built=2017-01")]
    [InlineData("&part=12-34&built=2017-01-15&serial=400&with=injector=I-1&with=pump-bolt=none")]
    [InlineData("&part=QX-1&maker=nobody")]
    public async Task The_permalink_asks_the_same_question_again(string question)
    {
        var answer = await _client.AskAsync(Pump + question);

        var again = await _client.AskAsync(answer.Text("permalink"));
        Assert.Equal(answer.Text("permalink"), again.Text("permalink"));
        Assert.Equal(answer.Text("headline"), again.Text("headline"));
        Assert.Equal(answer.List("reasons").Select(reason => reason.Text("text")), again.List("reasons").Select(reason => reason.Text("text")));
    }

    [Fact]
    public async Task Neighbours_are_shown_in_asked_in_order_of_their_positions()
    {
        var answer = await _client.AskAsync(Pump + "&part=12-34&with=pump-bolt=none&with=injector=I-1");

        Assert.Equal(["injector=ardlow:I-1", "pump-bolt=none"], answer.GetProperty("asked").Texts("with"));
    }

    [Fact]
    public async Task An_unknown_number_is_an_answer_not_a_problem()
    {
        var answer = await _client.AskAsync(Pump + "&part=QX-999");

        Assert.Equal("not-known-yet", answer.Text("headline"));
        Assert.Equal("unknown-number", answer.GetProperty("identity").Text("relation"));
        Assert.False(answer.GetProperty("asked").Has("part"));
        Assert.Equal("QX-999", answer.GetProperty("asked").Text("number"));
    }

    [Fact]
    public async Task An_unknown_number_comes_with_the_nearest_known_ones()
    {
        var answer = await _client.AskAsync(Pump + "&part=12-37");

        // Keys of 4 characters: one edit is near. 1237 against 1234, 1235 and 1236 is one substitution each.
        Assert.Equal(["ardlow:12/34", "ardlow:12/35", "ardlow:12/36"], answer.List("nearestNumbers").Select(near => near.Text("part")).Order());
        Assert.All(answer.List("nearestNumbers"), near => Assert.Equal(1, near.GetProperty("edits").GetInt32()));
        Assert.Empty((await _client.AskAsync(Pump + "&part=12-34")).List("nearestNumbers"));
    }

    [Fact]
    public async Task Leaving_a_position_empty_is_a_question_too()
    {
        var answer = await _client.AskAsync("/api/fit?family=duo-2&variant=b&position=injector&part=none");

        Assert.Equal("fits", answer.Text("headline"));
        Assert.Equal("none", answer.GetProperty("asked").Text("part"));
        Assert.Equal("/api/fit?family=duo-2&variant=b&position=injector&part=none", answer.Text("permalink"));
    }

    [Fact]
    public async Task Members_that_are_lists_are_always_there()
    {
        var answer = await _client.AskAsync(Pump + "&part=QX-999");

        foreach (var list in new[] { "reasons", "disagreements", "alsoNeeded", "perhapsNeeded", "works", "measureNext", "spans", "cautions", "lookAlikes" })
        {
            Assert.True(answer.Has(list), $"{list} is missing");
        }

        Assert.DoesNotContain("null", answer.GetRawText());
    }

    [Fact]
    public async Task A_number_of_two_makers_is_refused_with_both_parts_named()
    {
        var problem = await _client.RefuseAsync("/api/fit?family=duo-2&variant=a&position=pump-bolt&part=77-1", HttpStatusCode.BadRequest, "ambiguous-number");

        Assert.Equal(2, problem.List("errors").Count);
        Assert.All(problem.List("errors"), error => Assert.Equal("part", error.Text("field")));
        Assert.Contains("ardlow:77-1", problem.List("errors")[0].Text("expected"));
        Assert.Contains("brask:77-1", problem.List("errors")[1].Text("expected"));
        Assert.Contains("maker=brask", problem.List("errors")[1].Text("mend"));
    }

    [Fact]
    public async Task A_casting_mark_narrows_and_never_identifies()
    {
        var problem = await _client.RefuseAsync(Pump + "&part=C-9", HttpStatusCode.BadRequest, "ambiguous-number");

        Assert.Contains("ardlow:12/34", problem.OnlyError().Text("expected"));
        Assert.Contains("casting mark", problem.Text("detail"));
    }

    [Fact]
    public async Task A_suppliers_number_identifies_the_part() =>
        Assert.Equal("ardlow:12/34", (await _client.AskAsync(Pump + "&part=S501")).GetProperty("asked").Text("part"));

    [Theory]
    [InlineData("part=77-1&maker=brask")]
    [InlineData("part=brask:77-1")]
    [InlineData("part=brask:77-1&maker=brask")]
    public async Task The_maker_settles_it(string part)
    {
        var answer = await _client.AskAsync($"/api/fit?family=duo-2&variant=a&position=pump-bolt&{part}");

        // 40 mm where 26.0 ± 0.2 mm, allowance 1 mm, is wanted: surely no.
        Assert.Equal("does-not-fit", answer.Text("headline"));
        Assert.Equal("brask:77-1", answer.GetProperty("asked").Text("part"));
    }

    [Theory]
    [InlineData("/api/fit?family=duo-9&variant=b&position=coolant-pump&part=12-34", "family")]
    [InlineData("/api/fit?family=duo-2&variant=z&position=coolant-pump&part=12-34", "variant")]
    [InlineData("/api/fit?family=duo-2&variant=b&position=coolant-pomp&part=12-34", "position")]
    [InlineData("/api/fit?family=duo-2&variant=b&position=coolant-pump&from=z", "from")]
    [InlineData("/api/fit?family=duo-2&variant=b&position=coolant-pump&part=12-34&with=flywheel=none", "with")]
    public async Task An_unknown_family_variant_or_position_is_404(string address, string field)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.NotFound, "not-found");

        Assert.Equal(field, problem.OnlyError().Text("field"));
    }

    [Theory]
    [InlineData("", "part", "none of them")]
    [InlineData("&part=&from=", "part", "none of them")]
    [InlineData("&part=12-34&from=a", "part", "several of them")]
    [InlineData("&part=12-34&item=it-1", "part", "several of them")]
    [InlineData("&part=---", "part", "---")]
    [InlineData("&part=12-34&built=2016", "built", "2016")]
    [InlineData("&part=12-34&built=2016-13", "built", "2016-13")]
    [InlineData("&part=12-34&serial=12a", "serial", "12a")]
    [InlineData("&part=12-34&serial=-1", "serial", "-1")]
    [InlineData("&part=12-34&with=injector", "with", "injector=")]
    [InlineData("&part=12-34&with=injector=none&with=injector=I-1", "with", "injector=I-1")]
    [InlineData("&part=12-34&with=coolant-pump=12-35", "with", "coolant-pump=12-35")]
    [InlineData("&part=12-34&with=injector=QX-999", "with", "injector=QX-999")]
    [InlineData("&from=a&maker=ardlow", "maker", "ardlow")]
    [InlineData("&part=brask:77-1&maker=ardlow", "maker", "ardlow")]
    [InlineData("&part=12-34&part=12-35", "part", "12-34 and 12-35")]
    public async Task A_bad_question_is_refused_with_the_parameter_named(string question, string field, string found)
    {
        var problem = await _client.RefuseAsync(Pump + question, HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal(field, problem.OnlyError().Text("field"));
        Assert.Equal(found, problem.OnlyError().Text("found"));
    }

    [Fact]
    public async Task Everything_that_is_missing_is_named_at_once()
    {
        var problem = await _client.RefuseAsync("/api/fit", HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal(["family", "variant", "position", "part"], problem.List("errors").Select(error => error.Text("field")));
    }

    [Fact]
    public async Task An_ambiguous_neighbour_is_refused_by_name()
    {
        var problem = await _client.RefuseAsync(Pump + "&part=12-34&with=pump-bolt=77-1", HttpStatusCode.BadRequest, "ambiguous-number");

        Assert.All(problem.List("errors"), error => Assert.Equal("with", error.Text("field")));
    }
}
