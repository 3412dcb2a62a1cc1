using MimeKit;

namespace PartMatch.Core.Listings;

/// <summary>
/// The page inside a file that a browser saved with all its parts (RFC 2557). Only its HTML is taken out; pictures and scripts are not looked at.
/// </summary>
/// <remarks>The only file that names MimeKit.</remarks>
internal static class SavedPage
{
    /// <summary>
    /// Bytes of the page, the character set that its part declares and the address it was saved from; null when there is no page inside. A letter is
    /// written to somebody.
    /// </summary>
    public static (byte[] Bytes, string? Charset, bool IsLetter, string? SavedFrom)? FindPage(ReadOnlyMemory<byte> file)
    {
        // Parts inside one another: a saved page has one level, or two. Ours, no source.
        var options = new ParserOptions { MaxMimeDepth = 16 };
        try
        {
            using var stream = new MemoryStream(file.ToArray(), writable: false);
            var message = new MimeParser(options, stream).ParseMessage();
            return message.Body is { } body && FindHtml(body) is { } page
                ? (Content(page), page.ContentType.Charset, message.To.Count > 0, SavedFrom(message, page)) : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    // The header of the whole file is what browsers write, in no standard; that of the part is RFC 2557, 4.2.
    private static string? SavedFrom(MimeMessage message, MimePart page) =>
        message.Headers["Snapshot-Content-Location"] ?? page.ContentLocation?.OriginalString;

    private static MimePart? FindHtml(MimeEntity entity)
    {
        // The root of multipart/related is what its start parameter names, else the first part (RFC 2387, 3.2).
        if (entity is MultipartRelated { Root: MimePart root } && IsHtml(root))
        {
            return root;
        }

        return entity is MimePart part && IsHtml(part) ? part
            : entity is Multipart parts ? parts.Select(FindHtml).FirstOrDefault(found => found is not null)
            : null;
    }

    private static bool IsHtml(MimePart part) => part.ContentType.IsMimeType("text", "html") || part.ContentType.IsMimeType("application", "xhtml+xml");

    private static byte[] Content(MimePart part)
    {
        using var into = new MemoryStream();
        part.Content?.DecodeTo(into);
        return into.ToArray();
    }
}
