using System.Buffers;

namespace PartMatch.Core.Photos;

/// <summary>The second byte of a JPEG marker; the first is 0xFF.</summary>
/// <remarks>Source: ITU-T T.81, Table B.1; Exif and Adobe: common practice, from memory.</remarks>
internal static class JpegMarker
{
    public const byte Stuffed = 0x00;
    public const byte BaselineFrame = 0xC0;
    public const byte ExtendedFrame = 0xC1;
    public const byte ProgressiveFrame = 0xC2;
    public const byte HuffmanTables = 0xC4;
    public const byte FirstRestart = 0xD0;
    public const byte LastRestart = 0xD7;
    public const byte StartOfImage = 0xD8;
    public const byte EndOfImage = 0xD9;
    public const byte StartOfScan = 0xDA;
    public const byte QuantizationTables = 0xDB;
    public const byte RestartInterval = 0xDD;
    public const byte Jfif = 0xE0;
    public const byte Exif = 0xE1;
    public const byte Adobe = 0xEE;
    public const byte LastApplication = 0xEF;
    public const byte Comment = 0xFE;

    public static bool IsRestart(byte code) => code is >= FirstRestart and <= LastRestart;

    /// <summary>Cameras and programs put what they like into these.</summary>
    public static bool IsApplicationOrComment(byte code) => code is (>= Jfif and <= LastApplication) or Comment;

    /// <summary>Markers of the format that no browser shows: lossless, hierarchical and arithmetic coding, a height told only after the first scan.</summary>
    public static bool IsOtherForm(byte code) => code is (>= 0xC3 and <= 0xCF and not HuffmanTables) or 0xDC or 0xDE or 0xDF;

    public static void WriteSegment(IBufferWriter<byte> writer, byte marker, ReadOnlySpan<byte> content)
    {
        var length = content.Length + 2;
        writer.Write<byte>([0xFF, marker, (byte)(length >> 8), (byte)length]);
        writer.Write(content);
    }
}
