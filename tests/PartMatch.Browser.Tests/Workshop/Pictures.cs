using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Pictures of the pages, for a person to look at: <c>artifacts/pages/{page}-{state}-{look}.png</c>.</summary>
internal static class Pictures
{
    private static readonly Lazy<string> _folder = new(() => Directory.CreateDirectory(Path.Combine(Root(), "artifacts", "pages")).FullName);

    public static Task TakeAsync(Sheet sheet, string name) =>
        sheet.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(_folder.Value, $"{name}.png"), FullPage = true });

    /// <summary>Up to the folder with the solution; a copy of the tests without one keeps its pictures beside itself.</summary>
    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "PartMatch.sln")))
            {
                return folder.FullName;
            }
        }

        return AppContext.BaseDirectory;
    }
}
