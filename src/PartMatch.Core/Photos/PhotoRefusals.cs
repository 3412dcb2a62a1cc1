using System.Globalization;

namespace PartMatch.Core.Photos;

/// <summary>The sentences of the refusals.</summary>
internal static class PhotoRefusals
{
    private const string Either = "a picture as JPEG or PNG";

    private const string SaveAnew = "open it in a program for pictures and save it anew as JPEG or PNG";

    public static PhotoRefused Empty() => new(PhotoFault.Empty, "nothing", Either, "send the file itself as the body");

    public static PhotoRefused TooLarge(int bytes) => new(
        PhotoFault.TooLarge, Text($"{bytes} bytes"), Text($"at most {PhotoReader.MaxBytes} bytes"), "save it with fewer pixels or in a lower quality");

    public static PhotoRefused TooManyPixels(long width, long height) => new(
        PhotoFault.TooManyPixels,
        Text($"{width} × {height} pixels"),
        Text($"at most {PhotoReader.MaxPixels} pixels in all"),
        "save it with fewer pixels, or cut out what matters");

    public static PhotoRefused OtherFormat(string found) => new(PhotoFault.OtherFormat, found, Either, "save it as JPEG or PNG");

    public static PhotoRefused OtherForm(string found, string expected) => new(PhotoFault.OtherForm, found, expected, SaveAnew);

    public static PhotoRefused CutShort(int length, string within) => new(
        PhotoFault.CutShort,
        Text($"a file that ends after {length} bytes, {within}"),
        "the whole picture",
        "copy or send it again; if it stays so, " + SaveAnew);

    public static PhotoRefused Damaged(FormattableString found, string expected) =>
        new(PhotoFault.Damaged, Text(found), expected, "copy or send it again; if it stays so, " + SaveAnew);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
