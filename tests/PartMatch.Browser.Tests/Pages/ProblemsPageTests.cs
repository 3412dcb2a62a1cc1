using PartMatch.Browser.Tests.Workshop;
using PartMatch.Web.Http;

namespace PartMatch.Browser.Tests.Pages;

public sealed class ProblemsPageTests(Bench bench) : PageTests(bench, "problems.html", ("one", "problems.html#quantity-needs-unit"))
{
    [Fact]
    public async Task It_explains_every_sort_that_the_server_can_send_in_the_servers_words()
    {
        await using var sheet = await Bench.OpenAsync("problems.html");
        foreach (var type in ProblemTypes.All)
        {
            var text = await sheet.TextAsync($"[id='{type.Code}']");
            Assert.Contains(type.Title, text, StringComparison.Ordinal);
            Assert.Contains(type.Explanation, text, StringComparison.Ordinal);
        }

        Assert.Equal(ProblemTypes.All.Count, await sheet.Page.Locator("main section").CountAsync());
        sheet.AssertQuiet();
    }
}
