using System.Text;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Tests.LookAlikes;

/// <summary>What was worked out of the look-alikes hangs on the facts: it is kept exactly as long as they are.</summary>
public sealed class LookAlikeSourceTests
{
    [Fact]
    public async Task Facts_are_kept_over_a_change_that_they_do_not_depend_on_and_built_anew_after_any_other()
    {
        await using var server = new PartMatchServer();
        using var client = server.CreateClient();
        await client.PostSmallBooksAsync();

        var source = server.Services.GetRequiredService<LookAlikeSource>();
        var before = source.Get();
        await ChangeAsync(client, """{"rows":[{"table":"items","row":{"item":"it-1","part":"ardlow:77-1"}},{"table":"sellers","row":{"seller":"abel","name":"Abel"}}]}""");
        Assert.Same(before, source.Get());

        await ChangeAsync(client, """{"rows":[{"table":"parts","row":{"part":"ardlow:77-2","kind":"bolt","name":"Pump bolt"}}]}""");
        Assert.NotSame(before, source.Get());
    }

    private static async Task ChangeAsync(HttpClient client, string rows)
    {
        using var body = new StringContent(rows, Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync(new Uri("/api/books/duo-2/changes", UriKind.Relative), body, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
