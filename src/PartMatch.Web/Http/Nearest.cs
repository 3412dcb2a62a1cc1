namespace PartMatch.Web.Http;

/// <summary>Which known word was probably meant?</summary>
internal static class Nearest
{
    /// <summary>The known word nearest to the one found, or null when none is near enough to suggest.</summary>
    public static string? Find(string found, IEnumerable<string> known) =>
        known.FirstOrDefault(word => word.StartsWith(found, StringComparison.OrdinalIgnoreCase));
}
