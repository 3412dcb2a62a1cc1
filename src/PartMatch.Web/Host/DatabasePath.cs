namespace PartMatch.Web.Host;

/// <summary>Where the database is, or the sentence that says why there is no place for it.</summary>
internal sealed record DatabasePath(string? Path, string? Refusal)
{
    private const string Setting = "PartMatch:Database";

    /// <summary>
    /// The path that the setting gives; otherwise <c>partmatch/partmatch.db</c> in the user's data folder, whose folder is made when it is missing.
    /// </summary>
    public static DatabasePath Read(IConfiguration configuration)
    {
        var given = configuration[Setting];
        if (!string.IsNullOrWhiteSpace(given))
        {
            var path = System.IO.Path.GetFullPath(given);
            return Directory.Exists(System.IO.Path.GetDirectoryName(path)) && !Directory.Exists(path)
                ? new(path, null)
                : Refuse($"{Setting} is '{given}', expected a file in a folder that exists.");
        }

        return FindUserDataFolder() is { } folder
            ? MakeIn(folder)
            : Refuse($"this user has no data folder (neither XDG_DATA_HOME nor HOME names a folder that exists); set {Setting} to a file in a folder that exists.");
    }

    private static string? FindUserDataFolder()
    {
        if (OperatingSystem.IsWindows() || OperatingSystem.IsMacOS())
        {
            var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
            return local.Length > 0 ? local : null;
        }

        // XDG Base Directory Specification: a relative path there is invalid and to be ignored; the default may have to be made.
        var xdg = Environment.GetEnvironmentVariable("XDG_DATA_HOME");
        if (System.IO.Path.IsPathRooted(xdg))
        {
            return Directory.Exists(xdg) ? xdg : null;
        }

        var home = Environment.GetEnvironmentVariable("HOME");
        return System.IO.Path.IsPathRooted(home) && Directory.Exists(home) ? System.IO.Path.Combine(home, ".local", "share") : null;
    }

    private static DatabasePath MakeIn(string dataFolder)
    {
        var folder = System.IO.Path.Combine(dataFolder, "partmatch");
        try
        {
            Directory.CreateDirectory(folder);
            return new(System.IO.Path.Combine(folder, "partmatch.db"), null);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return Refuse($"the folder '{folder}' cannot be made; set {Setting} to a file in a folder that exists.");
        }
    }

    private static DatabasePath Refuse(string sentence) => new(null, sentence);
}
