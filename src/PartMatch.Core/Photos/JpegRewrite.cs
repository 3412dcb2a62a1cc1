using System.Buffers;
using System.Buffers.Binary;

namespace PartMatch.Core.Photos;

/// <summary>
/// Walks the markers of a JPEG and keeps those that are needed to decode it, as they are: each segment that stays is exactly as long as its content.
/// </summary>
/// <remarks>Source: ITU-T T.81, Annex B; ITU-T T.871, clause 10 (JFIF).</remarks>
internal sealed class JpegRewrite(ReadOnlyMemory<byte> file)
{
    /// <summary>A browser decodes the whole picture anew for each scan. Ours, no source; cameras and programs write about ten.</summary>
    private const int MostScans = 100;

    private readonly ArrayBufferWriter<byte> _kept = new(file.Length);
    private readonly JpegTables _tables = new();
    private readonly JpegOpening _opening = new();
    private JpegFrame? _frame;
    private int _scans;
    private int _at = 2; // behind the start of the image

    public PhotoOutcome Run()
    {
        while (true)
        {
            if (ReadMarker(out var marker) is { } refused)
            {
                return refused;
            }

            if (marker == JpegMarker.EndOfImage)
            {
                return Finish();
            }

            if (Take(marker) is { } refusal)
            {
                return refusal;
            }
        }
    }

    private PhotoOutcome Finish()
    {
        if (_frame is null || _scans == 0)
        {
            return PhotoRefusals.Damaged($"a JPEG without a picture in it", "a frame and at least one scan");
        }

        var whole = new ArrayBufferWriter<byte>(file.Length);
        _opening.WriteTo(whole);
        whole.Write(_kept.WrittenSpan);
        whole.Write<byte>([0xFF, JpegMarker.EndOfImage]);
        var (width, height) = ExifOrientation.ExchangesSides(_opening.Orientation) ? (_frame.Height, _frame.Width) : (_frame.Width, _frame.Height);
        return new PhotoRead(new Photo(PhotoFormat.Jpeg, width, height, whole.WrittenMemory.ToArray()));
    }

    /// <summary>Any number of 0xFF may fill the space before a marker (B.1.1.2).</summary>
    private PhotoRefused? ReadMarker(out byte marker)
    {
        marker = 0;
        var bytes = file.Span;
        if (_at < bytes.Length && bytes[_at] != 0xFF)
        {
            return PhotoRefusals.Damaged($"the byte {bytes[_at]:X2} at {_at}", "a marker, which begins with FF");
        }

        while (_at < bytes.Length && bytes[_at] == 0xFF)
        {
            _at++;
        }

        if (_at >= bytes.Length)
        {
            return PhotoRefusals.CutShort(bytes.Length, "before its end mark");
        }

        marker = bytes[_at++];
        return null;
    }

    private PhotoRefused? Take(byte marker)
    {
        if (JpegMarker.IsOtherForm(marker))
        {
            return PhotoRefusals.OtherForm($"a JPEG in a rare form (marker FF{marker:X2})", "a baseline or progressive JPEG");
        }

        if (marker is < JpegMarker.BaselineFrame
            or (>= JpegMarker.FirstRestart and <= JpegMarker.StartOfImage)
            or (> JpegMarker.LastApplication and not JpegMarker.Comment))
        {
            return PhotoRefusals.Damaged($"the marker FF{marker:X2} before byte {_at}", "a marker that may stand there");
        }

        var rest = file.Span[_at..];
        var length = rest.Length < 2 ? 2 : BinaryPrimitives.ReadUInt16BigEndian(rest);
        if (length < 2)
        {
            return PhotoRefusals.Damaged($"a segment of {length} bytes at {_at}", "at least the 2 bytes of its length");
        }

        if (rest.Length < length)
        {
            return PhotoRefusals.CutShort(file.Length, "within its header");
        }

        _at += length;
        return Take(marker, rest[2..length]);
    }

    private PhotoRefused? Take(byte marker, ReadOnlySpan<byte> content)
    {
        if (JpegMarker.IsApplicationOrComment(marker))
        {
            // What follows the first scan comes too late for a decoder to heed.
            if (_scans == 0)
            {
                _opening.Take(marker, content);
            }

            return null;
        }

        var isSound = marker switch
        {
            JpegMarker.QuantizationTables => _tables.TakeQuantization(content),
            JpegMarker.HuffmanTables => _tables.TakeHuffman(content),
            JpegMarker.RestartInterval => content.Length == 2,
            JpegMarker.StartOfScan => _frame?.Allows(content, _tables) is true,
            _ => _frame is null,
        };
        if (!isSound)
        {
            return PhotoRefusals.Damaged(
                $"a segment FF{marker:X2} before byte {_at} that contradicts the format or the segments before it", "tables, one frame, and then its scans");
        }

        if (marker is JpegMarker.BaselineFrame or JpegMarker.ExtendedFrame or JpegMarker.ProgressiveFrame)
        {
            _frame = JpegFrame.Read(marker, content, out var refusal);
            if (refusal is not null)
            {
                return refusal;
            }
        }

        JpegMarker.WriteSegment(_kept, marker, content);
        return marker == JpegMarker.StartOfScan ? TakeScan() : null;
    }

    /// <summary>The coded pixels: up to the next marker that is neither a stuffed zero nor a restart.</summary>
    private PhotoRefused? TakeScan()
    {
        _scans++;
        if (_scans > MostScans)
        {
            return PhotoRefusals.OtherForm($"a JPEG of more than {MostScans} scans", "a baseline JPEG, or a progressive one of about ten scans");
        }

        var bytes = file.Span;
        var begin = _at;
        while (true)
        {
            var next = bytes[_at..].IndexOf((byte)0xFF);
            var code = next < 0 ? bytes.Length : _at + next;
            while (code < bytes.Length && bytes[code] == 0xFF)
            {
                code++;
            }

            if (code >= bytes.Length)
            {
                return PhotoRefusals.CutShort(bytes.Length, "within its pixels");
            }

            if (bytes[code] != JpegMarker.Stuffed && !JpegMarker.IsRestart(bytes[code]))
            {
                _at += next;
                _kept.Write(bytes[begin.._at]);
                return _at > begin ? null : PhotoRefusals.Damaged($"a scan without pixels at {begin}", "pixels");
            }

            _at = code + 1;
        }
    }

}
