namespace PartMatch.Web.Tests;

/// <summary>The source tree that the tests were built from.</summary>
internal static class Repository
{
    public static string Folder { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "PartMatch.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("No PartMatch.sln above the test assembly.");
    }
}
