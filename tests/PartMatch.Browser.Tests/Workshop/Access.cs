using Deque.AxeCore.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Whether everybody can use what a page shows after somebody has worked on it: opened forms, faults, conflicts.</summary>
internal static class Access
{
    /// <summary>In every look nothing is wider than the window, and axe finds nothing in the light and in the narrow dark one; each is pictured.</summary>
    /// <param name="name">Of the pictures.</param>
    public static async Task AssertUsableAsync(this Sheet sheet, string name)
    {
        foreach (var look in Look.All)
        {
            await sheet.TakeAsync(look);
            await Pictures.TakeAsync(sheet, $"{name}-{look.Name}");
            var overhang = await sheet.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overhang <= 0, $"{look.Name}: {overhang} px wider than the window");
            if (look == Look.Light || look == Look.PhoneDark)
            {
                var found = await sheet.Page.RunAxe();
                Assert.Empty(found.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{look.Name}: {violation.Id}: {violation.Help}: {node.Html}")));
            }
        }

        await sheet.TakeAsync(Look.Light);
    }
}
