using System.Buffers;
using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;

namespace PartMatch.Core.Photos;

/// <summary>Walks the chunks of a PNG and keeps those that are needed to show its first picture as it was meant.</summary>
/// <remarks>Source: W3C, PNG Specification (Third Edition), 5.3 (layout), 5.4 (naming), 5.6 (order).</remarks>
internal sealed class PngRewrite(ReadOnlyMemory<byte> file)
{
    private const int FrameBytes = 12; // length, type, check sum
    private const int HeaderChunkBytes = FrameBytes + PngHeader.HeaderBytes;

    /// <summary>Of the chunks that may be left out: all but those that change how the colours come out.</summary>
    private static readonly string[] _beforePalette = ["gAMA", "cHRM", "sRGB", "sBIT"];
    private static readonly string[] _afterPalette = ["tRNS", "bKGD"];

    private static readonly SearchValues<byte> _letters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"u8);

    private readonly ArrayBufferWriter<byte> _kept = new(file.Length);
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private PngHeader? _header;
    private string _previous = "";
    private int _colours;
    private int _orientation = ExifOrientation.AsStored;
    private int _at = PhotoSignature.Png.Length;

    public PhotoOutcome Run()
    {
        if (!file.Span.StartsWith(PhotoSignature.Png))
        {
            return file.Length < PhotoSignature.Png.Length
                ? PhotoRefusals.CutShort(file.Length, "within its signature")
                : PhotoRefusals.Damaged($"a PNG whose line ends were changed on the way", "its signature unchanged; send it as a binary file");
        }

        while (true)
        {
            if (ReadChunk(out var type, out var chunk) is { } refused)
            {
                return refused;
            }

            if ((_header is null ? TakeHeader(type, chunk) : Take(type, chunk)) is { } refusal)
            {
                return refusal;
            }

            if (type == "IEND")
            {
                return Finish();
            }

            _previous = type;
            _seen.Add(type);
        }
    }

    private PhotoRead Finish()
    {
        // The header was taken before anything else could be.
        var header = _header!;
        var whole = new ArrayBufferWriter<byte>(file.Length);
        whole.Write(PhotoSignature.Png);
        whole.Write(_kept.WrittenSpan[..HeaderChunkBytes]);
        if (_orientation != ExifOrientation.AsStored)
        {
            WriteChunk(whole, "eXIf"u8, ExifOrientation.Write(_orientation));
        }

        whole.Write(_kept.WrittenSpan[HeaderChunkBytes..]);
        var (width, height) = ExifOrientation.ExchangesSides(_orientation) ? (header.Height, header.Width) : (header.Width, header.Height);
        return new PhotoRead(new Photo(PhotoFormat.Png, width, height, whole.WrittenMemory.ToArray()));
    }

    /// <param name="chunk">With its length, type and check sum.</param>
    private PhotoRefused? ReadChunk(out string type, out ReadOnlySpan<byte> chunk)
    {
        type = "";
        chunk = [];
        var rest = file.Span[_at..];
        if (rest.Length < FrameBytes)
        {
            return PhotoRefusals.CutShort(file.Length, "before its end chunk");
        }

        var length = BinaryPrimitives.ReadUInt32BigEndian(rest);
        var name = rest.Slice(4, 4);
        if (name.ContainsAnyExcept(_letters))
        {
            return PhotoRefusals.Damaged($"a chunk of type {Convert.ToHexString(name)} at {_at}", "a type of four letters");
        }

        type = Encoding.ASCII.GetString(name);
        if (length > (uint)(rest.Length - FrameBytes))
        {
            return PhotoRefusals.CutShort(file.Length, $"within its chunk {type}");
        }

        chunk = rest[..(FrameBytes + (int)length)];
        _at += chunk.Length;
        return Crc32.HashToUInt32(chunk[4..^4]) == BinaryPrimitives.ReadUInt32BigEndian(chunk[^4..])
            ? null
            : PhotoRefusals.Damaged($"a chunk {type} before byte {_at} whose check sum does not match", "the check sum that it states");
    }

    private PhotoRefused? TakeHeader(string type, ReadOnlySpan<byte> chunk)
    {
        if (type != "IHDR")
        {
            return PhotoRefusals.Damaged($"the chunk {type} first", "IHDR, the header, first");
        }

        _header = PngHeader.Read(chunk[8..^4], out var refusal);
        _kept.Write(chunk);
        return refusal;
    }

    private PhotoRefused? Take(string type, ReadOnlySpan<byte> chunk)
    {
        var content = chunk[8..^4];
        switch (type)
        {
            case "IHDR":
                return Misplaced(type);
            case "IDAT":
                return (_previous == type || !_seen.Contains(type)) && (_colours > 0 || _header?.Colour != PngHeader.Palette) ? Keep(chunk) : Misplaced(type);
            case "IEND":
                return _seen.Contains("IDAT") && content.IsEmpty ? Keep(chunk) : Misplaced(type);
            case "eXIf":
                // Only before the pixels: a browser ignores a later one.
                _orientation = _seen.Contains("IDAT") || _seen.Contains(type) ? _orientation : ExifOrientation.Read(content);
                return null;
            case "PLTE":
                _colours = content.Length / 3;
                return TakeOnce(type, chunk, isPlaced: !_seen.Overlaps(_afterPalette));
        }

        return _beforePalette.Contains(type) ? TakeOnce(type, chunk, isPlaced: !_seen.Contains("PLTE"))
            : _afterPalette.Contains(type) ? TakeOnce(type, chunk, isPlaced: true)
            : char.IsAsciiLetterLower(type[0]) ? null
            : PhotoRefusals.OtherForm($"a PNG with the chunk {type}, which is needed to show it and is not in the standard", "a PNG of the standard");
    }

    private PhotoRefused? TakeOnce(string type, ReadOnlySpan<byte> chunk, bool isPlaced) =>
        isPlaced && !_seen.Contains(type) && !_seen.Contains("IDAT") && _header?.Allows(type, chunk.Length - FrameBytes, _colours) is true
            ? Keep(chunk)
            : Misplaced(type);

    private PhotoRefused? Keep(ReadOnlySpan<byte> chunk)
    {
        _kept.Write(chunk);
        return null;
    }

    private PhotoRefused Misplaced(string type) =>
        PhotoRefusals.Damaged($"the chunk {type} before byte {_at}, which has another length or place than the format gives it", "the chunks in their order");

    private static void WriteChunk(ArrayBufferWriter<byte> writer, ReadOnlySpan<byte> type, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        writer.Write(number);
        byte[] summed = [.. type, .. content];
        writer.Write(summed);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.HashToUInt32(summed));
        writer.Write(number);
    }
}
