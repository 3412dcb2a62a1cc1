namespace PartMatch.Browser.Tests.Workshop;

/// <summary>The browser that the machine brings along; the tests never download one.</summary>
internal static class Chromium
{
    private static readonly string[] _names = ["chromium", "chromium-browser", "google-chrome", "chrome"];

    /// <summary>Path of the program, or null when there is none.</summary>
    public static string? Path { get; } = Find();

    /// <summary>Without a browser: skips the test, or fails it where PARTMATCH_REQUIRE_BROWSER is 1.</summary>
    public static void MustBeThere()
    {
        const string Reason = "No Chromium was found: neither PARTMATCH_CHROMIUM nor PATH names one (looked for chromium, chromium-browser, google-chrome, chrome).";
        if (Path is null && Environment.GetEnvironmentVariable("PARTMATCH_REQUIRE_BROWSER") == "1")
        {
            Assert.Fail(Reason);
        }

        Assert.SkipUnless(Path is not null, Reason);
    }

    private static string? Find()
    {
        var given = Environment.GetEnvironmentVariable("PARTMATCH_CHROMIUM");
        return !string.IsNullOrEmpty(given)
            ? (File.Exists(given) ? given : null)
            : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
                .SelectMany(folder => _names.Select(name => System.IO.Path.Combine(folder, name)))
                .FirstOrDefault(File.Exists);
    }
}
