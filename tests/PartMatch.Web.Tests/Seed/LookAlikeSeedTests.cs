using Microsoft.Extensions.DependencyInjection;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Families;

namespace PartMatch.Web.Tests.Seed;

/// <summary>The traps of the demo books, and what has to be recorded so that a buyer can tell them apart.</summary>
public sealed class LookAlikeSeedTests(SeedServer server)
{
    private readonly HttpClient _client = server.CreateClient();

    // The checks a builder would name for each trap; written down before the books were. Common practice, no source.
    [Theory]
    [InlineData("P-26-1147-C", "P-26-1147-E", "photo")]
    [InlineData("P-12-4102-A", "P-12-4103-A", "photo", "caliper")]
    [InlineData("P-13-0420-A", "P-13-0426-A", "steel-rule")]
    [InlineData("P-13-0426-A", "P-13-0432-A", "steel-rule")]
    [InlineData("P-18-3311-A", "P-18-3317-A", "label")]
    [InlineData("P-12-3306-A", "P-12-3308-A", "photo")]
    [InlineData("P-12-3406-A", "P-12-3407-A", "photo")]
    [InlineData("P-14-0202-A", "P-14-0212-A", "count")]
    [InlineData("P-11-3101-A", "P-11-3104-A", "scale")]
    [InlineData("P-15-0501-A", "P-15-0507-A", "gauge")]
    [InlineData("P-17-0605-A", "P-17-0606-A", "photo")]
    [InlineData("P-18-0410-A", "P-18-0411-A", "count")]
    [InlineData("P-18-0703-A", "P-18-0705-A", "label", "meter")]
    [InlineData("P-18-0302-A", "P-18-0305-A", "meter")]
    [InlineData("P-16-0210-A", "P-16-0211-A", "label")]
    [InlineData("I-7001", "I-7002", "caliper")]
    [InlineData("P-26-0312-A", "P-26-0314-A", "label")]
    [InlineData("P-18-0801-A", "P-18-0802-A", "label")]
    public async Task A_trap_is_listed_as_one_with_the_check_that_a_builder_would_name(string number, string other, params string[] methods)
    {
        var row = await FindRowAsync(number, other);

        Assert.Equal("trap", row.Text("relation"));
        Assert.Superset(methods.ToHashSet(), row.List("tellApart").Select(check => check.Text("check")).ToHashSet());
    }

    // Both heads carry the mark; the drilling for the phaser's oil makes the number.
    [Fact]
    public async Task A_casting_mark_is_told_apart_into_the_parts_that_carry_it()
    {
        var answer = await _client.AskAsync("/api/tell-apart?parts=16-1203-R");

        Assert.Equal(["pellworth:P-14-0001-A", "pellworth:P-14-0004-A"], answer.List("candidates").Select(candidate => candidate.Text("candidate")));
        Assert.Equal("phaser-feed", answer.GetProperty("key").GetProperty("check").Text("feature"));
    }

    [Fact]
    public async Task Nothing_separates_the_two_620_injectors_and_it_says_so()
    {
        Assert.Empty((await FindRowAsync("I-6201", "I-6207")).List("tellApart"));
        var answer = await _client.AskAsync("/api/tell-apart?parts=I-6201,I-6207&mode=in-hand");
        Assert.Equal("not-told-apart", answer.Text("headline"));
        Assert.Equal(["harl:I-6201", "harl:I-6207"], Assert.Single(answer.List("inseparable")).Texts("candidates"));
    }

    [Theory]
    [InlineData("tern-16", 30)]
    [InlineData("hs-2", 8)]
    public void Every_kind_has_its_photographs_and_every_position_a_way_to_it(string code, int judgedPairs)
    {
        var family = server.Services.GetRequiredService<FamilyStore>().FindFamily(code);
        Assert.NotNull(family);
        var kinds = family.Positions.Select(position => family.GetKind(position.Kind)).Distinct().ToList();

        Assert.All(kinds, kind => Assert.InRange(kind.Shots.Count, 2, 5));
        Assert.All(kinds, kind => Assert.Empty(
            kind.Checks.Where(check => check.Method is Method.Photo or Method.Label).Select(check => check.Feature).Except(kind.Shots.SelectMany(shot => shot.Shows))));
        Assert.All(family.Positions, position => Assert.NotNull(position.AccessMinutes));
        Assert.True(family.Pairs.Count >= judgedPairs, $"{family.Pairs.Count} judged pairs");
    }

    [Theory]
    [InlineData("tern-16")]
    [InlineData("hs-2")]
    public async Task Every_variant_is_told_from_the_others_by_what_shows_from_outside(string code)
    {
        var answer = await _client.AskAsync($"/api/tell-apart?family={code}");

        Assert.Equal("told-apart", answer.Text("headline"));
        Assert.True(answer.List("walkRound").Count >= 5, "fewer than five positions tell the variants apart from outside");
        Assert.All(answer.List("walkRound"), stop => Assert.Equal(0, stop.GetProperty("check").GetProperty("accessMinutes").GetDecimal()));
    }

    private async Task<System.Text.Json.JsonElement> FindRowAsync(string number, string other)
    {
        var answer = await _client.AskAsync($"/api/numbers/{number}/look-alikes?family=tern-16&limit=200");
        return answer.List("lookAlikes").First(row => row.Text("part").EndsWith($":{other}", StringComparison.Ordinal));
    }
}
