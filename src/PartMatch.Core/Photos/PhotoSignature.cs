namespace PartMatch.Core.Photos;

/// <summary>What a file is, told from its first bytes.</summary>
internal static class PhotoSignature
{
    /// <summary>Source: W3C, PNG Specification (Third Edition), 5.2.</summary>
    public static ReadOnlySpan<byte> Png => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Source: ITU-T T.81, B.1.1.3: start of image.</summary>
    private static ReadOnlySpan<byte> Jpeg => [0xFF, 0xD8];

    /// <summary>The format whose beginning the file has, even when nothing follows; null for every other file.</summary>
    public static PhotoFormat? Find(ReadOnlySpan<byte> file) =>
        file.StartsWith(Jpeg) ? PhotoFormat.Jpeg : file.StartsWith(Png[..4]) ? PhotoFormat.Png : null;

    /// <summary>A file that is neither, in words. Signatures from memory; a wrong one makes a sentence less helpful, nothing else.</summary>
    public static string Describe(ReadOnlySpan<byte> file) => file switch
    {
        _ when Has(file, 4, "ftyp"u8) => DescribeBoxes(file),
        _ when Has(file, 0, "RIFF"u8) && Has(file, 8, "WEBP"u8) => "a WebP picture",
        _ when Has(file, 0, "GIF8"u8) => "a GIF picture",
        _ when Has(file, 0, "BM"u8) => "a BMP picture",
        _ when Has(file, 0, [0x49, 0x49, 0x2A, 0]) || Has(file, 0, [0x4D, 0x4D, 0, 0x2A]) => "a TIFF picture or a camera's raw picture",
        _ when Has(file, 4, "JXL "u8) || Has(file, 0, [0xFF, 0x0A]) => "a JPEG XL picture",
        _ when Has(file, 4, "jP  "u8) || Has(file, 0, [0xFF, 0x4F, 0xFF, 0x51]) => "a JPEG 2000 picture",
        _ when Has(file, 0, "8BPS"u8) => "a layered picture (PSD)",
        _ when Has(file, 0, [0, 0, 1, 0]) => "an icon (ICO)",
        _ when Has(file, 0, "%PDF"u8) => "a PDF document",
        _ when Has(file, 0, "PK\u0003\u0004"u8) => "a zip file",
        _ when Has(file, 0, "<"u8) || Has(file, 0, [0xEF, 0xBB, 0xBF, 0x3C]) => "text with marks, as in SVG or HTML",
        _ => $"a file that begins with the bytes {Convert.ToHexString(file[..Math.Min(8, file.Length)])}",
    };

    private static string DescribeBoxes(ReadOnlySpan<byte> file) =>
        Has(file, 8, "avi"u8) ? "an AVIF picture"
        : Has(file, 8, "hei"u8) || Has(file, 8, "hev"u8) || Has(file, 8, "mif1"u8) || Has(file, 8, "msf1"u8) ? "a HEIC picture"
        : "a film";

    private static bool Has(ReadOnlySpan<byte> file, int at, ReadOnlySpan<byte> mark) => file.Length > at && file[at..].StartsWith(mark);
}
