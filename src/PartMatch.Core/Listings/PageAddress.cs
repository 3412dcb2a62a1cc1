namespace PartMatch.Core.Listings;

/// <summary>Where a page says that it stands: its canonical link (RFC 6596), what it tells other sites, or what the browser wrote when it saved it.</summary>
internal static class PageAddress
{
    // Longer addresses carry a session, not a place. Ours, no source.
    private const int Longest = 2_000;

    private const int MostAsked = 10;

    /// <summary>Null where none is stated whole: a relative address says nothing without its page.</summary>
    public static string? Find(IReadOnlyList<PageNode.Element> elements, string? savedFrom) =>
        elements.Where(element => element.Name == "link" && Words(element.Find("rel")).Contains("canonical", StringComparer.OrdinalIgnoreCase))
            .Select(element => element.Find("href")).Take(MostAsked)
            .Concat(elements.Where(element => element.Name == "meta" && (element.Find("property") ?? element.Find("name"))?.Trim() == "og:url")
                .Select(element => element.Find("content")).Take(MostAsked))
            .Append(savedFrom).Select(Whole).FirstOrDefault(address => address is not null);

    private static string[] Words(string? text) => (text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    private static string? Whole(string? written) =>
        written?.Trim() is { Length: > 0 and <= Longest } address && Uri.TryCreate(address, UriKind.Absolute, out var read)
            && (read.Scheme == Uri.UriSchemeHttp || read.Scheme == Uri.UriSchemeHttps) && read.UserInfo.Length == 0 && !address.Any(char.IsControl)
            ? address : null;
}
