using System.Buffers.Binary;

namespace PartMatch.Core.Photos;

/// <summary>Which side of a picture is up: the only thing read of the data that a camera adds, and the only thing written back.</summary>
/// <remarks>
/// 1 as stored; 2 mirrored; 3 half a turn; 4 mirrored and half a turn; 5 to 8 the same with a quarter turn, which exchanges width and height.
/// Source: TIFF 6.0, section 2 (header and directory) and section 8 (tag 274, Orientation), which EXIF takes over; from memory.
/// </remarks>
internal static class ExifOrientation
{
    public const int AsStored = 1;

    private const int FirstQuarterTurn = 5;
    private const int Largest = 8;
    private const ushort Tag = 0x0112;
    private const ushort Short = 3;
    private const int HeaderBytes = 8;
    private const int EntryBytes = 12;

    public static bool ExchangesSides(int orientation) => orientation >= FirstQuarterTurn;

    /// <summary>The orientation that the first directory of the TIFF data states; as stored where it states none, or cannot be read.</summary>
    public static int Read(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < HeaderBytes)
        {
            return AsStored;
        }

        var isLittleEndian = tiff.StartsWith("II"u8);
        if (!isLittleEndian && !tiff.StartsWith("MM"u8))
        {
            return AsStored;
        }

        var directory = isLittleEndian ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (directory > (uint)tiff.Length - 2)
        {
            return AsStored;
        }

        var entries = tiff[(int)directory..];
        var count = ReadShort(entries, isLittleEndian);
        for (entries = entries[2..]; count > 0 && entries.Length >= EntryBytes; count--, entries = entries[EntryBytes..])
        {
            if (ReadShort(entries, isLittleEndian) == Tag && ReadShort(entries[2..], isLittleEndian) == Short)
            {
                var orientation = ReadShort(entries[8..], isLittleEndian);
                return orientation is >= AsStored and <= Largest ? orientation : AsStored;
            }
        }

        return AsStored;
    }

    /// <summary>TIFF data of one directory with one entry.</summary>
    public static byte[] Write(int orientation) =>
    [
        (byte)'M', (byte)'M', 0, 42, 0, 0, 0, HeaderBytes,
        0, 1, // entries
        Tag >> 8, Tag & 0xFF, 0, (byte)Short, 0, 0, 0, 1, 0, (byte)orientation, 0, 0,
        0, 0, 0, 0, // no further directory
    ];

    private static ushort ReadShort(ReadOnlySpan<byte> bytes, bool isLittleEndian) =>
        isLittleEndian ? BinaryPrimitives.ReadUInt16LittleEndian(bytes) : BinaryPrimitives.ReadUInt16BigEndian(bytes);
}
