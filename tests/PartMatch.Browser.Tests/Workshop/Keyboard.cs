using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Working a page without a mouse: only Tab, typing and Enter.</summary>
public static class Keyboard
{
    private const int MostStops = 120;

    /// <summary>Presses Tab until the focus is on what is found; fails when a whole round does not reach it.</summary>
    public static async Task TabToAsync(this Sheet sheet, ILocator target)
    {
        for (var stop = 0; stop < MostStops; stop++)
        {
            if (await target.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }

            await sheet.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab never reached {target}");
    }

    /// <summary>Goes to the field of that label and types; a list takes the first option that begins so.</summary>
    public static async Task TypeAsync(this Sheet sheet, string label, string text)
    {
        var field = sheet.Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true });
        await sheet.TabToAsync(field);
        if (await field.EvaluateAsync<bool>("element => element.tagName === 'INPUT'"))
        {
            await sheet.Page.Keyboard.PressAsync("ControlOrMeta+A");
        }

        await sheet.Page.Keyboard.TypeAsync(text);
        await sheet.SettleAsync();
    }

    /// <summary>Unfolds the question that an answer has folded.</summary>
    public static async Task PressSummaryAsync(this Sheet sheet)
    {
        await sheet.TabToAsync(sheet.Page.Locator("details.question > summary"));
        await sheet.Page.Keyboard.PressAsync("Enter");
    }

    /// <summary>Goes to the button of that name and presses it.</summary>
    public static async Task PressAsync(this Sheet sheet, string button)
    {
        await sheet.TabToAsync(sheet.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = button, Exact = true }));
        await sheet.Page.Keyboard.PressAsync("Enter");
        await sheet.SettleAsync();
    }
}
