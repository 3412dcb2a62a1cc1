using System.Net;
using PartMatch.Web.Http;

namespace PartMatch.Web.Tests.Http;

public sealed class ProblemTypesTests(SmallBase server)
{
    [Fact]
    public async Task Every_sort_of_problem_is_explained_at_the_address_of_its_type()
    {
        using var client = server.CreateClient();
        foreach (var type in ProblemTypes.All)
        {
            var text = await client.GetStringAsync(new Uri($"/problems/{type.Code}", UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Contains(type.Title, text, StringComparison.Ordinal);
            Assert.Contains(type.Explanation, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_unknown_sort_is_404()
    {
        using var client = server.CreateClient();

        await client.RefuseAsync("/problems/no-such-sort", HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public void The_list_is_ordered_by_status_then_code() =>
        Assert.Equal(ProblemTypes.All.OrderBy(type => type.Status).ThenBy(type => type.Code, StringComparer.Ordinal), ProblemTypes.All);
}
