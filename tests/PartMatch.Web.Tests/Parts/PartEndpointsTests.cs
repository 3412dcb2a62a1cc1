using System.Net;

namespace PartMatch.Web.Tests.Parts;

public sealed class PartEndpointsTests(SmallBase server)
{
    private readonly HttpClient _client = server.CreateClient();

    [Theory]
    [InlineData("/api/parts/12%2F34")]
    [InlineData("/api/parts/12%2f34")]
    [InlineData("/api/parts/12-34")]
    [InlineData("/api/parts/1234")]
    [InlineData("/api/parts/%2012.34%20")]
    [InlineData("/api/parts/ardlow:12%2F34")]
    [InlineData("/api/parts/12-34?maker=ardlow")]
    public async Task A_number_is_read_by_its_key_however_it_is_written(string address)
    {
        var answer = await _client.AskAsync(address);

        var part = Assert.Single(answer.List("parts"));
        Assert.Equal("ardlow:12/34", part.Text("part"));
        Assert.Equal("1234", answer.GetProperty("asked").Text("numberKey"));
    }

    [Fact]
    public async Task A_part_shows_values_numbers_places_and_replacements()
    {
        var part = Assert.Single((await _client.AskAsync("/api/parts/12-34")).List("parts"));

        Assert.Equal("Coolant pump", part.Text("name"));
        Assert.Equal("Ardlow", part.Text("makerName"));
        Assert.Equal("duo-2", part.Text("book"));
        Assert.Equal(["drive", "rotation"], part.List("values").Select(value => value.Text("feature")));
        var rotation = part.List("values")[1];
        Assert.Equal("clockwise", rotation.GetProperty("known").Text("text"));
        Assert.Equal("makers-document", Assert.Single(rotation.List("recorded")).GetProperty("source").Text("grade"));
        Assert.Equal(["service 12/34", "casting-mark C-9", "supplier S 501"], part.List("numbers").Select(number => $"{number.Text("sort")} {number.Text("number")}"));
        var place = Assert.Single(part.List("fitted"));
        Assert.Equal("duo-2 a coolant-pump 1", $"{place.Text("family")} {place.Text("variant")} {place.Text("position")} {place.GetProperty("quantity").GetInt32()}");
        Assert.Equal("ardlow:12/36", Assert.Single(part.List("replacedBy")).Text("part"));
        Assert.Empty(part.List("replaces"));
        Assert.Equal("hot-parts", Assert.Single(part.List("cautions")).Text("code"));
    }

    [Fact]
    public async Task A_quantity_is_shown_in_the_base_unit_with_its_tolerance()
    {
        var part = Assert.Single((await _client.AskAsync("/api/parts/77-1?maker=ardlow")).List("parts"));

        var length = Assert.Single(part.List("values"));
        var recorded = Assert.Single(length.List("recorded"));
        Assert.Equal(0.026m, recorded.GetProperty("quantity").GetProperty("value").GetDecimal());
        Assert.Equal("m", recorded.GetProperty("quantity").Text("unit"));
        Assert.Equal("26.0 mm", recorded.GetProperty("quantity").Text("text"));
        Assert.Equal(0.0002m, recorded.GetProperty("minus").GetDecimal());
        Assert.Equal(0.0258m, length.GetProperty("known").GetProperty("low").GetDecimal());
        Assert.Equal(0.0262m, length.GetProperty("known").GetProperty("high").GetDecimal());
    }

    [Fact]
    public async Task A_number_of_two_makers_lists_both_parts()
    {
        var answer = await _client.AskAsync("/api/parts/77.1");

        Assert.Equal(["ardlow:77-1", "brask:77-1"], answer.List("parts").Select(part => part.Text("part")));
        Assert.Equal("/api/parts/77.1", answer.Text("permalink"));
    }

    [Fact]
    public async Task An_unknown_number_is_an_empty_list() => Assert.Empty((await _client.AskAsync("/api/parts/QX-999")).List("parts"));

    [Theory]
    [InlineData("/api/parts/---")]
    [InlineData("/api/parts/12345678901234567890123456789012345678901")]
    public async Task A_number_without_a_key_or_with_a_longer_one_than_any_is_refused(string address)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal("number", problem.OnlyError().Text("field"));
    }

    [Theory]
    [InlineData("12", 3)]
    [InlineData("coolant pump", 3)]
    [InlineData("s501", 1)]
    [InlineData("nothing of the kind", 0)]
    public async Task A_search_finds_numbers_and_names(string query, int total)
    {
        var answer = await _client.AskAsync($"/api/parts?q={Uri.EscapeDataString(query)}");

        Assert.Equal(total, answer.GetProperty("total").GetInt32());
        Assert.Equal(total, answer.List("parts").Count);
        Assert.Equal(query, answer.GetProperty("asked").Text("q"));
        Assert.Equal(20, answer.GetProperty("asked").GetProperty("limit").GetInt32());
        Assert.False(answer.Has("cursor"));
    }

    [Fact]
    public async Task Pages_follow_each_other_without_gap_or_overlap()
    {
        var all = (await _client.AskAsync("/api/parts?q=12")).List("parts").Select(part => part.Text("part")).ToList();
        List<string> paged = [];
        var address = "/api/parts?q=12&limit=1";
        for (var cursor = ""; cursor is not null;)
        {
            var page = await _client.AskAsync(cursor.Length == 0 ? address : $"{address}&cursor={cursor}");
            paged.Add(Assert.Single(page.List("parts")).Text("part"));
            cursor = page.Has("cursor") ? page.Text("cursor") : null;
        }

        Assert.Equal(3, all.Count);
        Assert.Equal(all, paged);
    }

    [Theory]
    [InlineData("/api/parts", "q", "nothing")]
    [InlineData("/api/parts?q=", "q", "nothing")]
    [InlineData("/api/parts?q=12&limit=0", "limit", "0")]
    [InlineData("/api/parts?q=12&limit=201", "limit", "201")]
    [InlineData("/api/parts?q=12&limit=+5", "limit", " 5")]
    [InlineData("/api/parts?q=12&limit=2.5", "limit", "2.5")]
    [InlineData("/api/parts?q=12&cursor=nonsense", "cursor", "nonsense")]
    [InlineData("/api/parts?q=12&q=13", "q", "12 and 13")]
    public async Task A_bad_search_is_refused_with_the_parameter_named(string address, string field, string found)
    {
        var problem = await _client.RefuseAsync(address, HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal(field, problem.OnlyError().Text("field"));
        Assert.Equal(found, problem.OnlyError().Text("found"));
        Assert.NotEmpty(problem.OnlyError().Text("expected"));
    }

    [Fact]
    public async Task An_unknown_parameter_is_refused_with_the_nearest_known_one()
    {
        var problem = await _client.RefuseAsync("/api/parts?q=12&limti=5", HttpStatusCode.BadRequest, "bad-question");

        Assert.Equal("limti", problem.OnlyError().Text("field"));
        Assert.Equal("did you mean limit?", problem.OnlyError().Text("mend"));
    }
}
