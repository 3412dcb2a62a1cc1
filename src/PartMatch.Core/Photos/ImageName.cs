using System.Security.Cryptography;

namespace PartMatch.Core.Photos;

/// <summary>
/// The name of a picture: SHA-256 of its bytes in lower-case hex, with <c>.jpg</c> or <c>.png</c>. Equal pictures have equal names, and a name never means
/// another picture.
/// </summary>
public static class ImageName
{
    private const int HashDigits = 64;

    private const string Jpeg = ".jpg";

    private const string Png = ".png";

    public static string Of(Photo photo) => Convert.ToHexStringLower(SHA256.HashData(photo.Bytes.Span)) + (photo.Format == PhotoFormat.Jpeg ? Jpeg : Png);

    /// <summary>The format that a name states, or null when it is no such name.</summary>
    public static PhotoFormat? FindFormat(string name) =>
        name.Length != HashDigits + Jpeg.Length || !name.Take(HashDigits).All(char.IsAsciiHexDigitLower) ? null
        : name.EndsWith(Jpeg, StringComparison.Ordinal) ? PhotoFormat.Jpeg
        : name.EndsWith(Png, StringComparison.Ordinal) ? PhotoFormat.Png
        : null;
}
