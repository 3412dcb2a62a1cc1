using System.IO.Compression;
using System.IO.Hashing;
using System.Text;

namespace PartMatch.Core.Tests.Photos;

/// <summary>A PNG written chunk by chunk: 4 × 2 pixels in grey, the left half black, the right half white.</summary>
internal static class DrawnPng
{
    public const int Width = 4;
    public const int Height = 2;

    public static byte[] Signature { get; } = [0x89, .. "PNG"u8, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Each row begins with its filter, 0 for none.</summary>
    public static byte[] Pixels { get; } = Chunk("IDAT", Deflate([0, 0, 0, 255, 255, 0, 0, 0, 255, 255]));

    public static byte[] End { get; } = Chunk("IEND");

    public static byte[] Plain { get; } = With();

    /// <param name="colour">0 grey, 2 true colour, 3 palette, 4 grey with alpha, 6 true colour with alpha.</param>
    public static byte[] Header(long width = Width, long height = Height, byte bits = 8, byte colour = 0, byte interlace = 0) =>
        Chunk("IHDR", [.. Number(width), .. Number(height), bits, colour, 0, 0, interlace]);

    /// <summary>The picture with these chunks between its header and its pixels.</summary>
    public static byte[] With(params IEnumerable<byte> chunks) => [.. Signature, .. Header(), .. chunks, .. Pixels, .. End];

    public static byte[] Chunk(string type, params IEnumerable<byte> content)
    {
        byte[] summed = [.. Encoding.ASCII.GetBytes(type), .. content];
        return [.. Number(summed.Length - 4), .. summed, .. Number(Crc32.HashToUInt32(summed))];
    }

    private static byte[] Number(long value) => [(byte)(value >> 24), (byte)(value >> 16), (byte)(value >> 8), (byte)value];

    private static byte[] Deflate(byte[] rows)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize))
        {
            zlib.Write(rows);
        }

        return packed.ToArray();
    }
}
