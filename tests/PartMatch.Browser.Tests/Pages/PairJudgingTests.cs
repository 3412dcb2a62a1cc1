using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>Judging pairs on the work list.</summary>
public sealed class PairJudgingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    [Fact]
    public async Task A_pair_is_judged_with_a_new_source_as_one_change_and_leaves_the_work_list()
    {
        const string Pair = "P-14-0203-A and P-14-0204-A";
        await using var sheet = (await OpenAsync("look-alikes.html?family=tern-16&judgement=not-judged")).Expecting(400);
        await sheet.PressAsync($"Judge {Pair}");
        await Assertions.Expect(sheet.Page.Locator("#judge-judgement")).ToBeFocusedAsync();
        await sheet.TypeAsync("Note", "the dish is deeper");
        await sheet.PressAsync("Judge them");
        await Assertions.Expect(sheet.Page.Locator("#judge-judgement")).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(sheet.Page.GetByLabel("Note", new() { Exact = true })).ToHaveValueAsync("the dish is deeper");
        await sheet.AssertUsableAsync("look-alikes-judge");
        await sheet.ChooseAsync("What was found", "A trap");
        await sheet.TypeAsync("What the source is", "bench sheet 71");
        await sheet.PressAsync("Judge them");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync($"{Pair} are judged, as change");
        await Assertions.Expect(sheet.Page.GetByRole(AriaRole.Button, new() { Name = $"Judge {Pair}", Exact = true })).ToHaveCountAsync(0);
        var row = await server.ReadRowAsync("tern-16", "pairs", "pellworth:P-14-0203-A,pellworth:P-14-0204-A");
        Assert.Contains("\"judgement\":\"trap\",\"evidence\":\"ev-", row, StringComparison.Ordinal);
        Assert.Contains("\"note\":\"the dish is deeper\"", row, StringComparison.Ordinal);
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task A_judgement_is_confirmed_before_the_list_is_ranked_anew()
    {
        await using var sheet = await OpenAsync("look-alikes.html?family=tern-16&judgement=harmless");
        var ranking = new TaskCompletionSource();
        await sheet.Page.RouteAsync("**/api/look-alikes?*", async route =>
        {
            await ranking.Task;
            await route.ContinueAsync();
        });
        await sheet.Page.Locator("button", new() { HasText = "Judge again" }).First.PressAsync("Enter");
        await sheet.TypeAsync("Note", "looked at once more");
        await sheet.Page.GetByRole(AriaRole.Button, new() { Name = "Change the judgement", Exact = true }).PressAsync("Enter"); // the page stays busy until the ranking is let through
        await Assertions.Expect(sheet.Page.Locator(".done")).ToContainTextAsync("are judged, as change");
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator(".waiting")).ToBeVisibleAsync();

        ranking.SetResult();
        await Assertions.Expect(sheet.Page.Locator(".waiting")).ToHaveCountAsync(0);
        await Assertions.Expect(sheet.Page.Locator(".done")).ToHaveCountAsync(1);
        await Assertions.Expect(sheet.Page.Locator(".done")).ToBeFocusedAsync();
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task The_second_of_two_to_judge_again_sees_the_first()
    {
        const string List = "look-alikes.html?family=tern-16&judgement=trap";
        const string Button = "Judge again I-4401 and I-4402";
        await using var first = await OpenAsync(List);
        await using var second = (await OpenAsync(List)).Expecting(412);
        await first.PressAsync(Button);
        await second.PressAsync(Button);
        await Assertions.Expect(second.Page.GetByRole(AriaRole.Link, new() { Name = "History", Exact = true }).Last)
            .ToHaveAttributeAsync("href", "history.html?book=tern-16&table=pairs&key=harl:I-4401,harl:I-4402");
        await first.TypeAsync("Note", "coil resistance tells");
        await first.TypeAsync("Your name", "Ann");
        await first.PressAsync("Change the judgement");
        await Assertions.Expect(first.Page.Locator(".done")).ToBeVisibleAsync();
        await second.ChooseAsync("What was found", "Harmless");
        await second.PressAsync("Change the judgement");
        await Assertions.Expect(second.Page.Locator(".conflict")).ToBeFocusedAsync();
        await Assertions.Expect(second.Page.Locator(".conflict")).ToContainTextAsync("coil resistance tells");
        await second.PressAsync("Save mine in its place");
        await Assertions.Expect(second.Page.Locator(".done")).ToBeVisibleAsync();
        Assert.Contains("\"judgement\":\"harmless\"", await server.ReadRowAsync("tern-16", "pairs", "harl:I-4401,harl:I-4402"), StringComparison.Ordinal);
        second.AssertQuiet();
    }

    private async Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        await server.ReckonAsync("/api/look-alikes?family=tern-16&limit=1");
        return await bench.OpenAsync(server.Address, address, Look.Light);
    }
}
