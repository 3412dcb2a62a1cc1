using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>What every page promises, whatever it is for.</summary>
/// <param name="page">The file of the page.</param>
/// <param name="states">Addresses by a short name: the page as first opened is <c>blank</c>, then those with answers.</param>
public abstract class PageTests(Bench bench, string page, IReadOnlyDictionary<string, string> states)
{
    /// <summary>Largest first load of a page, everything together.</summary>
    private const int MaxFirstLoadBytes = 60_000;

    protected Bench Bench { get; } = bench;

    protected string File { get; } = page;

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("360")]
    public async Task Axe_finds_no_violation(string look)
    {
        foreach (var (name, address) in States())
        {
            await using var sheet = await Bench.OpenAsync(address, Look.Get(look));
            var found = await sheet.Page.RunAxe();
            Assert.True(found.Violations.Length == 0, $"{name}: " + string.Join('\n', found.Violations.SelectMany(violation =>
                violation.Nodes.Select(node => $"{violation.Id}: {violation.Help}: {node.Html}"))));
        }
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("360")]
    [InlineData("360-dark")]
    [InlineData("print")]
    public async Task Nothing_is_wider_than_the_window_and_nothing_is_complained_of(string look)
    {
        foreach (var (name, address) in States())
        {
            await using var sheet = await Bench.OpenAsync(address, Look.Get(look));
            await Pictures.TakeAsync(sheet, $"{Path.GetFileNameWithoutExtension(File)}-{name}-{look}");
            var overhang = await sheet.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overhang <= 0, $"{name}: {overhang} px wider than the window of {Look.Get(look).Width} px");
            sheet.AssertQuiet();
        }
    }

    [Fact]
    public async Task First_load_is_small()
    {
        await using var sheet = await Bench.OpenAsync(File);
        Assert.InRange(sheet.Bytes, 1, MaxFirstLoadBytes);
    }

    [Fact]
    public async Task First_stop_of_the_keyboard_skips_to_the_content()
    {
        await using var sheet = await Bench.OpenAsync(File);
        await sheet.Page.Keyboard.PressAsync("Tab");
        var skip = sheet.Page.Locator(":focus");
        await Assertions.Expect(skip).ToBeInViewportAsync();
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.Page.Keyboard.PressAsync("Tab");
        Assert.True(await sheet.Page.EvaluateAsync<bool>("document.querySelector('main').contains(document.activeElement)"), "after the skip link, Tab stays outside main");
    }

    [Fact]
    public async Task Focus_shows_on_every_stop()
    {
        await using var sheet = await Bench.OpenAsync(File);
        for (var stop = 0; stop < 25; stop++)
        {
            await sheet.Page.Keyboard.PressAsync("Tab");
            var unseen = await sheet.Page.EvaluateAsync<string?>(
                """
                () => {
                  const element = document.activeElement;
                  if (element === document.body) return null;
                  const style = getComputedStyle(element);
                  return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2 ? null : element.outerHTML.slice(0, 200);
                }
                """);
            Assert.Null(unseen);
        }
    }

    [Fact]
    public async Task Without_script_it_says_what_it_is_and_where_the_answers_are()
    {
        await using var sheet = await Bench.OpenAsync(File, script: false);
        Assert.NotEmpty(await sheet.TextAsync("h1"));
        Assert.Contains("JavaScript", await sheet.TextAsync("noscript"), StringComparison.Ordinal);
    }

    private IEnumerable<KeyValuePair<string, string>> States() => states.Prepend(new("blank", File));
}
