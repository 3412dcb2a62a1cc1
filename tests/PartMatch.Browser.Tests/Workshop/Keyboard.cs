using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Working a page without a mouse: only Tab, typing and Enter.</summary>
public static class Keyboard
{
    private const int MostStops = 600;

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

    /// <summary>Goes to the field of that label and types over what it holds.</summary>
    public static async Task TypeAsync(this Sheet sheet, string label, string text)
    {
        await sheet.TabToAsync(Field(sheet, label));
        await sheet.Page.Keyboard.PressAsync("ControlOrMeta+A");
        await sheet.Page.Keyboard.TypeAsync(text);
    }

    /// <summary>Goes to the list of that label and types the beginning of a choice, once that is offered.</summary>
    public static async Task ChooseAsync(this Sheet sheet, string label, string beginning)
    {
        var list = Field(sheet, label);
        await Assertions.Expect(list.Locator("option").Filter(new LocatorFilterOptions { HasText = beginning }).First).ToBeAttachedAsync();
        await sheet.TabToAsync(list);
        await sheet.Page.Keyboard.TypeAsync(beginning);
        Assert.StartsWith(beginning, await list.EvaluateAsync<string>("list => list.selectedOptions[0].text"), StringComparison.Ordinal);
    }

    /// <summary>Goes to the box or button of that label and presses the space bar.</summary>
    public static async Task TickAsync(this Sheet sheet, string label)
    {
        await sheet.TabToAsync(Field(sheet, label));
        await sheet.Page.Keyboard.PressAsync("Space");
    }

    /// <summary>Goes to the group of the choice of that label, which is one stop, and on by arrows until it is chosen.</summary>
    public static async Task PickAsync(this Sheet sheet, string label)
    {
        var choice = Field(sheet, label);
        var group = sheet.Page.Locator($"input[name='{await choice.GetAttributeAsync("name")}']");
        var chosen = group.And(sheet.Page.Locator(":checked"));
        await sheet.TabToAsync(await chosen.CountAsync() > 0 ? chosen : group.First);
        await sheet.Page.Keyboard.PressAsync("Space");
        for (var step = await group.CountAsync(); step > 0 && !await choice.IsCheckedAsync(); step--)
        {
            await sheet.Page.Keyboard.PressAsync("ArrowDown");
        }

        await Assertions.Expect(choice).ToBeCheckedAsync();
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

    private static ILocator Field(Sheet sheet, string label) => sheet.Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true });
}
