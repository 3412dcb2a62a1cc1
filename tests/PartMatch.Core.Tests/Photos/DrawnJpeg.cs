using System.Text;

namespace PartMatch.Core.Tests.Photos;

/// <summary>A JPEG written byte by byte: 16 × 8 pixels in grey, the left half black, the right half white.</summary>
/// <remarks>
/// Each half is one block. All quantization steps are 8, so that the one coefficient of a block is its grey less 128 (T.81, A.3.1 and A.3.3): −128 and 127.
/// Codes for the categories of the differences: 00 is 0, 01 is 7, 10 is 8; the code for the end of a block is 0. The pixels, by T.81, F.1.2.1:
/// −128 is 10 01111111, end 0; from there to 127 is 255, 10 11111111, end 0; then ones up to the byte: 10011111 11010111 11111011. No byte is FF.
/// </remarks>
internal static class DrawnJpeg
{
    public const int Width = 16;
    public const int Height = 8;

    public static byte[] Start { get; } = [0xFF, 0xD8];

    public static byte[] End { get; } = [0xFF, 0xD9];

    public static byte[] Quantization { get; } = Segment(0xDB, [0, .. Enumerable.Repeat((byte)8, 64)]);

    public static byte[] DcTable { get; } = Segment(0xC4, [0x00, 0, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, 8]);

    public static byte[] AcTable { get; } = Segment(0xC4, [0x10, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);

    public static byte[] Tables { get; } = [.. Quantization, .. DcTable, .. AcTable];

    public static byte[] Scan { get; } = [.. Segment(0xDA, [1, 1, 0x00, 0, 63, 0]), 0b10011111, 0b11010111, 0b11111011];

    /// <summary>The same pixels in two progressive scans: mean values without their lowest bit, then that bit (T.81, G.1.2.1): −64 and 63, then 0 and 1.</summary>
    /// <remarks>−64 is 01 0111111, from there to 63 is 127, 01 1111111: 01011111 10111111 111; the bits 01, then ones.</remarks>
    public static byte[] ProgressiveScans { get; } =
        [.. Segment(0xDA, [1, 1, 0x00, 0, 0, 0x01]), 0b01011111, 0b10111111, 0b11111111, 0x00, .. Segment(0xDA, [1, 1, 0x00, 0, 0, 0x10]), 0b01111111];

    /// <summary>The picture with nothing around its pixels.</summary>
    public static byte[] Plain { get; } = With();

    public static byte[] Progressive { get; } = [.. Start, .. Tables, .. Frame(marker: 0xC2), .. ProgressiveScans, .. End];

    public static byte[] Frame(int width = Width, int height = Height, byte marker = 0xC0, byte bits = 8) =>
        Segment(marker, [bits, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 1, 1, 0x11, 0]);

    /// <summary>The picture with these segments at its beginning.</summary>
    public static byte[] With(params IEnumerable<byte> segments) => [.. Start, .. segments, .. Tables, .. Frame(), .. Scan, .. End];

    public static byte[] Segment(byte marker, params IReadOnlyCollection<byte> content) =>
        [0xFF, marker, (byte)((content.Count + 2) >> 8), (byte)(content.Count + 2), .. content];

    public static byte[] Named(byte marker, string name, params IReadOnlyCollection<byte> content) =>
        Segment(marker, [.. Encoding.Latin1.GetBytes(name), .. content]);

    /// <summary>What a camera writes: who, and which side is up. The orientation is the last of three entries.</summary>
    public static byte[] Exif(int orientation, bool isLittleEndian = false) => Named(0xE1, "Exif\0\0", Tiff(orientation, isLittleEndian));

    public static byte[] Tiff(int orientation, bool isLittleEndian = false, int type = 3)
    {
        byte[] Number(int value, int bytes)
        {
            var digits = Enumerable.Range(0, bytes).Select(place => (byte)(value >> (8 * place)));
            return [.. isLittleEndian ? digits : digits.Reverse()];
        }

        byte[] Entry(int tag, int entryType, int count, byte[] value) => [.. Number(tag, 2), .. Number(entryType, 2), .. Number(count, 4), .. value];

        return
        [
            .. Encoding.ASCII.GetBytes(isLittleEndian ? "II" : "MM"), .. Number(42, 2), .. Number(16, 4), .. "somebody"u8,
            .. Number(3, 2),
            .. Entry(0x010F, 2, 8, Number(8, 4)), .. Entry(0x0110, 2, 8, Number(8, 4)), .. Entry(0x0112, type, 1, [.. Number(orientation, 2), 0, 0]),
            .. Number(0, 4),
        ];
    }
}
