using System.Text;

namespace PartMatch.Core.Listings;

/// <summary>From bytes to characters, or to what the bytes are instead.</summary>
/// <remarks>
/// Order of belief: byte order mark, the sender's word, the declaration inside the page, UTF-8 where the bytes are valid UTF-8, else windows-1252.
/// Source: WHATWG, HTML, "Determining the character encoding"; what a declaration may be called: WHATWG, Encoding, "Names and labels".
/// </remarks>
internal static class ListingBytes
{
    // A declaration has to stand within the first 1024 bytes (HTML, "Specifying the document's character encoding").
    private const int DeclarationWithin = 1024;

    private static readonly (byte[] Magic, string Name)[] _notText =
    [
        ([0x89, .. "PNG"u8], "a picture (PNG)"), ([0xFF, 0xD8, 0xFF], "a picture (JPEG)"), ([.. "GIF8"u8], "a picture (GIF)"),
            ([.. "%PDF-"u8], "a PDF document"),
        ([.. "PK\x03\x04"u8], "a zip archive, or an office document"), ([0x1F, 0x8B], "compressed data (gzip)"),
            ([0x28, 0xB5, 0x2F, 0xFD], "compressed data (zstd)"),
        ([.. "RIFF"u8], "a picture or film (RIFF)"), ([.. "bplist"u8], "a web archive"), ([0xD0, 0xCF, 0x11, 0xE0], "an old office document"),
            ([.. "SQLite format 3"u8], "a database"),
    ];

    /// <summary>What the bytes are, where they are no text; null for text.</summary>
    public static string? FindNotText(ReadOnlySpan<byte> bytes)
    {
        foreach (var (magic, name) in _notText)
        {
            if (bytes.StartsWith(magic))
            {
                return name;
            }
        }

        // ISO base media (HEIC, AVIF, MP4): the box's name stands after its length.
        return bytes.Length > 8 && bytes[4..8].SequenceEqual("ftyp"u8) ? "a picture or film (ISO media)"
            : FindMark(bytes) is null && (Nulls(bytes) > bytes.Length / 8 || Controls(bytes) > 8 + (bytes.Length / MostControls)) ? "binary data"
            : null;
    }

    /// <summary>The text. Every sequence that is none in its character set becomes U+FFFD, with a warning.</summary>
    public static string Decode(ReadOnlySpan<byte> bytes, string? sentAs, bool isPage, List<ListingWarning> warnings)
    {
        var (encoding, from) = Choose(bytes, sentAs, isPage, warnings);
        var text = encoding.GetString(bytes[from..]);
        if (text.Contains('\uFFFD', StringComparison.Ordinal))
        {
            warnings.Add(new("invalid-characters", $"some bytes are no {encoding.WebName} and are shown as \uFFFD: a number that holds one cannot be read; paste the text instead"));
        }

        return WholeCharacters(text);
    }

    /// <summary>Half of a surrogate pair becomes U+FFFD, so that nothing after this has to expect it.</summary>
    public static string WholeCharacters(string text)
    {
        var half = -1;
        for (var index = 0; index < text.Length && half < 0; index += char.IsSurrogate(text[index]) ? 2 : 1)
        {
            half = char.IsSurrogate(text[index]) && !(index + 1 < text.Length && char.IsSurrogatePair(text[index], text[index + 1])) ? index : -1;
        }

        return half < 0 ? text : string.Concat(text.EnumerateRunes().Select(rune => rune.ToString()));
    }

    private static (Encoding Encoding, int From) Choose(ReadOnlySpan<byte> bytes, string? sentAs, bool isPage, List<ListingWarning> warnings)
    {
        if (FindMark(bytes) is { } mark)
        {
            return mark;
        }

        foreach (var (name, who) in new[] { (sentAs, "the sender"), (isPage ? FindDeclared(bytes) : null, "the page") })
        {
            if (string.IsNullOrWhiteSpace(name))
            {
                continue;
            }

            if (Find(name) is { } named)
            {
                // Whatever is declared: bytes that are valid UTF-8 beyond ASCII are UTF-8, because no other text happens to be.
                return named.WebName != "utf-8" && IsUtf8BeyondAscii(bytes) ? Told(warnings, who, name, "the bytes are UTF-8", Encoding.UTF8)
                    : named.WebName == "utf-8" && !IsUtf8(bytes) && !IsMostlyUtf8(bytes)
                    ? Told(warnings, who, name, "the bytes are not; read as windows-1252", Western)
                    : (named, 0);
            }

            warnings.Add(Wrong(who, name, "no such character set is known"));
        }

        return (IsUtf8(bytes) || IsMostlyUtf8(bytes) ? Encoding.UTF8 : Western, 0);
    }

    private static Encoding Western => CodePagesEncodingProvider.Instance.GetEncoding(1252)!; // part of the runtime

    private static (Encoding Encoding, int From) Told(List<ListingWarning> warnings, string who, string name, string what, Encoding instead)
    {
        warnings.Add(Wrong(who, name, what));
        return (instead, 0);
    }

    private static ListingWarning Wrong(string who, string name, string what) =>
        new("charset-wrong", $"{who} says the characters are {(name.Length > 40 ? name[..40] : name)}; {what}");

    private static (Encoding Encoding, int From)? FindMark(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? (Encoding.UTF8, 3)
        : bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) ? (Encoding.Unicode, 2)
        : bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) ? (Encoding.BigEndianUnicode, 2)
        : null;

    private static string? FindDeclared(ReadOnlySpan<byte> bytes)
    {
        var head = Encoding.Latin1.GetString(bytes[..Math.Min(bytes.Length, DeclarationWithin)]);
        var at = head.IndexOf("charset", StringComparison.OrdinalIgnoreCase);
        at = at < 0 && head.StartsWith("<?xml", StringComparison.Ordinal) ? head.IndexOf("encoding", StringComparison.Ordinal) : at;
        var equals = at < 0 ? -1 : head.IndexOf('=', at);
        return equals < 0 ? null : new string([.. head[(equals + 1)..].TrimStart(' ', '"', '\'')
            .TakeWhile(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or ':')]);
    }

    private static Encoding? Find(string name)
    {
        // The labels of the Encoding Standard that mean windows-1252; UTF-16 in a declaration that could be read as ASCII is UTF-8 there as well.
        var label = name.Trim().ToLowerInvariant() switch
        {
            "latin1" or "iso-8859-1" or "iso8859-1" or "iso_8859-1" or "us-ascii" or "ascii" or "l1" or "cp1252" => "windows-1252",
            "utf8" or "utf-16" or "utf-16le" or "utf-16be" or "unicode" => "utf-8",
            "utf-7" or "utf-32" => "",
            var other => other,
        };
        try
        {
            return label == "utf-8" ? Encoding.UTF8 : label.Length == 0 ? null : CodePagesEncodingProvider.Instance.GetEncoding(label);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static bool IsUtf8(ReadOnlySpan<byte> bytes) => System.Text.Unicode.Utf8.IsValid(bytes);

    private static bool IsUtf8BeyondAscii(ReadOnlySpan<byte> bytes) => IsUtf8(bytes) && !Ascii.IsValid(bytes);

    // A cut or a few spoilt places in a page of UTF-8: more sequences of it than places that are none. Ours, no source.
    private static bool IsMostlyUtf8(ReadOnlySpan<byte> bytes)
    {
        int whole = 0, broken = 0;
        var wasBroken = false;
        while (!bytes.IsEmpty)
        {
            var plain = bytes.IndexOfAnyInRange<byte>(0x80, 0xFF);
            if (plain < 0)
            {
                break;
            }

            var status = Rune.DecodeFromUtf8(bytes[plain..], out _, out var length);
            var isBroken = status != System.Buffers.OperationStatus.Done;
            whole += isBroken ? 0 : 1;
            broken += isBroken && !(wasBroken && plain == 0) ? 1 : 0;
            wasBroken = isBroken;
            bytes = bytes[(plain + length)..];
        }

        return whole > broken;
    }

    // Random bytes have one in nine, text has none; a stray one here and there is a page's own fault. Ours, no source.
    private const int MostControls = 32;

    private static int Controls(ReadOnlySpan<byte> bytes)
    {
        var count = 0;
        foreach (var one in bytes)
        {
            count += one is (> 0 and < 9) or 11 or (> 13 and < 32) or 127 ? 1 : 0;
        }

        return count;
    }

    private static int Nulls(ReadOnlySpan<byte> bytes) => bytes.Count((byte)0);
}
