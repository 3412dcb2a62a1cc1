using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Of two families chosen in quick succession the first one's answer may come last: it belongs to a choice that nobody sees any more.</summary>
public sealed class LateAnswersTests(Bench bench)
{
    [Theory]
    [InlineData("injectors.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    [InlineData("valve-timing.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    [InlineData("tightening.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    [InlineData("fit.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    [InlineData("compare.html", "#variant-ts", "#variant-hc")]
    [InlineData("consistency.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    [InlineData("bench.html", "#variant option[value=ts]", "#variant option[value=hc]")]
    public async Task A_family_left_again_does_not_come_late_into_the_lists(string page, string ofTheSecond, string ofTheFirst)
    {
        await using var sheet = await bench.OpenAsync(page);
        var held = new TaskCompletionSource();
        await sheet.Page.RouteAsync("**/api/families/hs-2", async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await sheet.Page.Locator("#family").SelectOptionAsync("hs-2");
        var late = sheet.Page.WaitForResponseAsync("**/api/families/hs-2");
        await sheet.Page.Locator("#family").SelectOptionAsync("tern-16");
        await Assertions.Expect(sheet.Page.Locator(ofTheSecond)).ToBeAttachedAsync();
        held.SetResult();
        await (await late).FinishedAsync();
        await sheet.Page.EvaluateAsync("() => new Promise(done => setTimeout(done, 200))");
        await Assertions.Expect(sheet.Page.Locator(ofTheSecond)).ToBeAttachedAsync();
        await Assertions.Expect(sheet.Page.Locator(ofTheFirst)).ToHaveCountAsync(0);
        sheet.AssertQuiet();
    }
}
