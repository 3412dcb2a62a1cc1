using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PartMatch.Browser.Tests.Workshop;

namespace PartMatch.Browser.Tests.Pages;

/// <summary>"This turned out wrong", said at a finding of an answer. Every test has a finding of its own.</summary>
public sealed partial class RetractFindingTests(Bench bench, WritingServer server) : IClassFixture<WritingServer>
{
    private const string Tern = "fit.html?family=tern-16&";

    [Fact]
    public async Task Withdrawn_evidence_says_what_else_rests_on_it_changes_the_answer_and_stays_to_be_seen()
    {
        await using var sheet = await OpenAsync(Tern + "variant=ts&position=manifold-pressure-sensor&part=P-18-3311-A");
        await Assertions.Expect(sheet.Page.Locator("#answer h2").First).ToContainTextAsync("Mounts but runs differently");
        await PressAsync(sheet, "fi-0030");
        await Assertions.Expect(sheet.Page.GetByLabel("What was wrong")).ToBeFocusedAsync();
        await Assertions.Expect(sheet.Page.Locator("#fi-0030 form")).ToContainTextAsync("1 other row rests on it and will not count either: Findings 1.");
        foreach (var look in Look.All)
        {
            await sheet.TakeAsync(look);
            await Pictures.TakeAsync(sheet, $"fit-withdraw-{look.Name}");
            Assert.Empty(await PageTests.FaultsOfAsync(sheet, look));
        }

        await sheet.TakeAsync(Look.Light);
        await sheet.PressAsync("Withdraw it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("The reason is missing");
        await sheet.TypeAsync("What was wrong", "the hose was split");
        await sheet.TypeAsync("Your name", "Ann");
        await sheet.PressAsync("Withdraw it");

        var told = sheet.Page.Locator(".done");
        await Assertions.Expect(told).ToBeFocusedAsync();
        await Assertions.Expect(told).ToContainTextAsync("Withdrawn as change");
        await Assertions.Expect(told).ToContainTextAsync(new Regex("Before.*runs differently, proven.*Now", RegexOptions.Singleline));
        await Assertions.Expect(told.Locator("dd").Last).Not.ToContainTextAsync("proven)");
        await sheet.Page.Locator(".folded > summary").PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator("#fi-0030 .standing")).ToHaveTextAsync("withdrawn");
        await Assertions.Expect(sheet.Page.Locator("#fi-0030")).ToContainTextAsync("the hose was split");
        await Assertions.Expect(sheet.Page.Locator("#fi-0030").GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        await Pictures.TakeAsync(sheet, "fit-withdrawn-light");
        sheet.AssertQuiet();
    }

    [Fact]
    public async Task Evidence_that_somebody_changed_meanwhile_is_not_overwritten()
    {
        await using var sheet = (await OpenAsync(Tern + "variant=tv&position=oil-filter&part=F-2015")).Expecting(412);
        await PressAsync(sheet, "fi-0047");
        await using var other = await OpenAsync("record.html?book=tern-16&table=evidence&key=ev-0082");
        await other.TypeAsync("Who says so", "bench 4");
        await other.PressAsync("Save");
        await Assertions.Expect(other.Page.Locator(".done")).ToContainTextAsync("Saved as change");
        await sheet.TypeAsync("What was wrong", "another filter");
        await sheet.PressAsync("Withdraw it");
        await Assertions.Expect(sheet.Page.Locator(".faults")).ToContainTextAsync("Somebody has changed this evidence meanwhile");
        await Assertions.Expect(sheet.Page.GetByLabel("What was wrong")).ToHaveValueAsync("another filter");
        var row = (await server.ReadAsync("/api/books/tern-16/evidence/ev-0082")).GetProperty("row");
        Assert.False(row.TryGetProperty("retractedOn", out _));
    }

    /// <summary>What else rests on a piece of evidence is counted over every table that names evidence: those of the page are those of the base.</summary>
    [Fact]
    public async Task Every_table_that_names_evidence_is_looked_through()
    {
        Chromium.MustBeThere();
        var root = Path.Combine(Pictures.Root, "src", "PartMatch.Web", "wwwroot", "js");
        var words = await File.ReadAllTextAsync(Path.Combine(root, "record-words.js"), TestContext.Current.CancellationToken);
        var list = Resting().Match(await File.ReadAllTextAsync(Path.Combine(root, "fit-retract.js"), TestContext.Current.CancellationToken)).Groups[1].Value;
        List<string> naming = [];
        foreach (var table in Tables().Matches(words).Select(match => match.Groups[1].Value).Where(table => table is not "sources"))
        {
            var columns = (await server.ReadAsync($"/api/books/tern-16/{table}?limit=1")).GetProperty("columns").EnumerateArray();
            if (columns.Any(column => column.GetProperty("column").GetString() == "evidence" && column.TryGetProperty("refers", out _)))
            {
                naming.Add(table);
            }
        }

        Assert.Equal(naming.Order(StringComparer.Ordinal), Quoted().Matches(list).Select(match => match.Groups[1].Value));
    }

    [GeneratedRegex(@"const resting = \[([^\]]*)\]")]
    private static partial Regex Resting();

    [GeneratedRegex(@"^    '([a-z-]+)': \[", RegexOptions.Multiline)]
    private static partial Regex Tables();

    [GeneratedRegex("'([a-z-]+)'")]
    private static partial Regex Quoted();

    private static async Task PressAsync(Sheet sheet, string finding)
    {
        await sheet.TabToAsync(sheet.Page.Locator($"#{finding}").GetByRole(AriaRole.Button));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(sheet.Page.Locator($"#{finding} form")).ToBeVisibleAsync();
    }

    private Task<Sheet> OpenAsync(string address)
    {
        Chromium.MustBeThere();
        return bench.OpenAsync(server.Address, address, Look.Light);
    }
}
