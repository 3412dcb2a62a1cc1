namespace PartMatch.Core.Listings;

/// <summary>A seller's page or words, as they were pasted or dropped. Nothing of it is ever run or fetched.</summary>
/// <param name="Format">What it is read as.</param>
/// <param name="Bytes">As received; text that was pasted comes as UTF-8.</param>
/// <param name="Charset">The character set the sender named; null when it named none. A byte order mark outranks it, a declaration inside the page comes
/// after it.</param>
public sealed record ListingDocument(ListingFormat Format, ReadOnlyMemory<byte> Bytes, string? Charset = null);

/// <summary>What a listing is read as.</summary>
public enum ListingFormat
{
    Text,
    Html,

    /// <summary>A web page saved with its parts in one file (RFC 2557).</summary>
    Mhtml,
}

/// <summary>How much of a document is read before it is refused.</summary>
/// <param name="MaxBytes">Of the document as received.</param>
/// <param name="MaxDepth">Elements inside one another: parsing costs the square of it.</param>
/// <param name="MaxNodes">Elements, attributes and pieces of text in all.</param>
/// <param name="MaxJsonDepth">Objects and arrays inside one another in a block of JSON-LD.</param>
public sealed record ListingBounds(int MaxBytes = 4 << 20, int MaxDepth = 256, int MaxNodes = 200_000, int MaxJsonDepth = 64)
{
    public static ListingBounds Usual { get; } = new();
}
