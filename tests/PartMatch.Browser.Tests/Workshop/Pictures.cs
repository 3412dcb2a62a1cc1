using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>Pictures of the pages, for a person to look at: <c>artifacts/pages/{page}-{state}-{look}.png</c>.</summary>
internal static class Pictures
{
    /// <summary>The folder with the solution; a copy of the tests without one keeps its pictures beside itself.</summary>
    public static string Root { get; } = FindRoot();

    private static readonly string _folder = Directory.CreateDirectory(Path.Combine(Root, "artifacts", "pages")).FullName;

    public static Task TakeAsync(Sheet sheet, string name) =>
        sheet.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(_folder, $"{name}.png"), FullPage = true });

    private static string FindRoot()
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
