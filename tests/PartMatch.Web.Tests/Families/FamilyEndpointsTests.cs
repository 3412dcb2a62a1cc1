using System.Net;

namespace PartMatch.Web.Tests.Families;

public sealed class FamilyEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Fact]
    public async Task Families_are_listed_with_their_variants()
    {
        var answer = await _client.AskAsync("/api/families");

        var family = Assert.Single(answer.List("families"));
        Assert.Equal("duo-2", family.Text("family"));
        Assert.Equal("Duo 2", family.Text("title"));
        Assert.Equal("Ardlow", family.Text("makerName"));
        Assert.Equal(["a", "b"], family.Texts("variants"));
        Assert.Equal(3, family.GetProperty("positions").GetInt32());
        Assert.Equal("/api/families", answer.Text("permalink"));
    }

    [Fact]
    public async Task A_family_shows_variants_groups_and_positions()
    {
        var answer = await _client.AskAsync("/api/families/duo-2");

        Assert.Equal("duo-2", answer.GetProperty("asked").Text("family"));
        Assert.Equal(["cooling", "fuel"], answer.Texts("groups"));
        Assert.Equal(["coolant-pump", "injector", "pump-bolt"], answer.List("positions").Select(position => position.Text("position")));
        Assert.Equal("injector", answer.List("positions")[1].Text("role"));
        Assert.False(answer.List("positions")[0].Has("role"));
        var variant = answer.List("variants")[1];
        Assert.Equal("B cart", variant.Text("name"));
        Assert.Equal("2016-01", variant.GetProperty("built").Text("from"));
        Assert.False(variant.GetProperty("built").Has("to"));
    }

    [Fact]
    public async Task A_variant_shows_the_engine_and_what_is_fitted_known_absent_or_not_recorded()
    {
        var answer = await _client.AskAsync("/api/families/duo-2/variants/b");

        Assert.Equal("b", answer.GetProperty("variant").Text("variant"));
        var states = answer.List("positions").Select(position => $"{position.Text("position")}: {position.Text("state")}");
        Assert.Equal(["coolant-pump: fitted", "injector: none", "pump-bolt: not-recorded"], states);
        var pump = Assert.Single(answer.List("positions")[0].List("parts"));
        Assert.Equal("ardlow:12/35", pump.Text("part"));
        Assert.Equal(1, pump.GetProperty("quantity").GetInt32());
    }

    [Fact]
    public async Task An_engine_fact_is_a_quantity_in_the_base_unit_with_its_text_as_recorded()
    {
        var answer = await _client.AskAsync("/api/families/duo-2/variants/a");

        var bore = answer.List("engine").First(fact => fact.Text("property") == "bore");
        Assert.Equal(0.08m, bore.GetProperty("quantity").GetProperty("value").GetDecimal());
        Assert.Equal("m", bore.GetProperty("quantity").Text("unit"));
        Assert.Equal("80.00 mm", bore.Text("text"));
        var cylinders = answer.List("engine").First(fact => fact.Text("property") == "cylinders");
        Assert.Equal("2", cylinders.Text("text"));
        Assert.False(cylinders.Has("quantity"));
    }

    [Theory]
    [InlineData("/api/families/duo-3", "family", "duo-3", "did you mean duo-2?")]
    [InlineData("/api/families/duo-3/variants/a", "family", "duo-3", "did you mean duo-2?")]
    [InlineData("/api/families/duo-2/variants/c", "variant", "c", "did you mean a?")]
    public async Task An_unknown_name_is_404_and_names_the_nearest(string address, string field, string found, string mend)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.NotFound, "not-found");

        Assert.Equal(field, problem.OnlyError().Text("field"));
        Assert.Equal(found, problem.OnlyError().Text("found"));
        Assert.Equal(mend, problem.OnlyError().Text("mend"));
    }

    [Fact]
    public async Task A_route_without_a_query_refuses_any_parameter()
    {
        var problem = await _client.RefuseAsync("/api/families?page=2", HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal("page", problem.OnlyError().Text("field"));
        Assert.Equal("no query parameters", problem.OnlyError().Text("expected"));
    }
}
