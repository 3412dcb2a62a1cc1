using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>What every page promises, whatever it is for.</summary>
/// <param name="page">The file of the page.</param>
/// <param name="answers">Addresses with an answer, each by a short name.</param>
public abstract class PageTests(Bench bench, string page, params IReadOnlyList<(string Name, string Address)> answers)
{
    /// <summary>Largest first load of a page, everything together.</summary>
    private const int MaxFirstLoadBytes = 60_000;

    /// <summary>Also more than any page has stops before its answer.</summary>
    private const int StopsLookedAt = 40;

    private IEnumerable<(string Name, string Address)> States => answers.Prepend(("blank", page));

    protected Bench Bench { get; } = bench;

    [Fact]
    public async Task In_every_look_nothing_is_wider_than_the_window_and_axe_finds_no_violation()
    {
        List<string> faults = [];
        foreach (var (name, address) in States)
        {
            await using var sheet = await Bench.OpenAsync(address);
            await DrawnAsync(sheet);
            foreach (var look in Look.All)
            {
                await sheet.TakeAsync(look);
                await Pictures.TakeAsync(sheet, $"{Path.GetFileNameWithoutExtension(page)}-{name}-{look.Name}");
                faults.AddRange((await FaultsOfAsync(sheet, look)).Select(fault => $"{name}, {look.Name}: {fault}"));
            }

            faults.AddRange(sheet.Complaints.Select(complaint => $"{name}: {complaint}"));
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    [Fact]
    public async Task First_load_is_small()
    {
        await using var sheet = await Bench.OpenAsync(page);
        Assert.InRange(sheet.Bytes, 1, MaxFirstLoadBytes);
    }

    [Fact]
    public async Task First_stop_of_the_keyboard_skips_to_the_content_and_the_focus_shows_on_every_stop()
    {
        await using var sheet = await Bench.OpenAsync(page);
        await sheet.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(sheet.Page.Locator(":focus")).ToBeInViewportAsync();
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.Page.Keyboard.PressAsync("Tab");
        Assert.True(await sheet.Page.EvaluateAsync<bool>("document.querySelector('main, footer').contains(document.activeElement)"), "after the skip link, Tab stays outside main");
        for (var stop = 0; stop < StopsLookedAt; stop++)
        {
            Assert.Null(await sheet.Page.EvaluateAsync<string?>(
                """
                () => {
                  const element = document.activeElement;
                  const style = getComputedStyle(element);
                  const shows = element === document.body || (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2);
                  return shows ? null : element.outerHTML.slice(0, 200);
                }
                """));
            await sheet.Page.Keyboard.PressAsync("Tab");
        }
    }

    [Fact]
    public async Task Without_script_it_says_what_it_is_and_does_not_seem_to_wait()
    {
        await using var sheet = await Bench.OpenAsync(page, script: false);
        Assert.NotEmpty(await sheet.TextAsync("h1"));
        await Assertions.Expect(sheet.Page.Locator("noscript")).ToBeVisibleAsync();
        await Assertions.Expect(sheet.Page.Locator(".waiting")).ToHaveCountAsync(0);
    }

    /// <summary>The page opened again at the address in its window gives the same answer.</summary>
    protected static async Task AssertSameWhenReopenedAsync(Sheet sheet)
    {
        await DrawnAsync(sheet);
        var answer = await sheet.TextAsync("#answer");
        await sheet.GoAsync(sheet.Page.Url);
        await DrawnAsync(sheet);
        Assert.Equal(answer, await sheet.TextAsync("#answer"));
        sheet.AssertQuiet();
    }

    /// <summary>Drawings arrive by themselves, after the answer.</summary>
    private static Task DrawnAsync(Sheet sheet) => Assertions.Expect(sheet.Page.Locator(".waiting")).ToHaveCountAsync(0);

    /// <summary>What is too wide for the window, and what axe finds.</summary>
    internal static async Task<IReadOnlyList<string>> FaultsOfAsync(Sheet sheet, Look look)
    {
        List<string> faults = [];
        var overhang = await sheet.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        if (overhang > 0)
        {
            faults.Add($"{overhang} px wider than the window of {look.Width} px");
        }

        // Colours are the same at every width: each scheme is examined once, one of them in the narrow window.
        if (look == Look.Light || look == Look.PhoneDark)
        {
            var found = await sheet.Page.RunAxe();
            faults.AddRange(found.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{violation.Id}: {violation.Help}: {node.Html}")));
        }

        return faults;
    }
}
