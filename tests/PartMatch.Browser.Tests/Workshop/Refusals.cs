using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>How a page shows that the server refused a question.</summary>
internal static class Refusals
{
    /// <summary>The summary has the focus and the field is marked; both say what was found and what was expected.</summary>
    public static async Task AssertRefusedAsync(this Sheet sheet, string fieldId, string found, string expected)
    {
        var summary = sheet.Page.Locator(".faults");
        await Assertions.Expect(summary).ToBeFocusedAsync();
        await Assertions.Expect(summary).ToContainTextAsync(found);
        await Assertions.Expect(summary).ToContainTextAsync(expected);
        var field = sheet.Page.Locator($"#{fieldId}");
        await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(field).ToHaveAccessibleDescriptionAsync(new Regex(Regex.Escape(expected)));
        Assert.Empty(await sheet.TextAsync("#answer"));
    }
}
