using System.Buffers;

namespace PartMatch.Core.Photos;

/// <summary>The segments at the beginning of a JPEG that are written anew: of each only what changes how the picture is shown.</summary>
internal sealed class JpegOpening
{
    private const int AdobeBytes = 12;

    private bool _isJfif;
    private byte? _adobeTransform;
    private bool _isExif;

    private static ReadOnlySpan<byte> JfifName => "JFIF\0"u8;

    private static ReadOnlySpan<byte> ExifName => "Exif\0\0"u8;

    private static ReadOnlySpan<byte> AdobeName => "Adobe"u8;

    public int Orientation { get; private set; } = ExifOrientation.AsStored;

    public void Take(byte marker, ReadOnlySpan<byte> content)
    {
        if (marker == JpegMarker.Jfif && content.StartsWith(JfifName))
        {
            _isJfif = true;
        }
        else if (marker == JpegMarker.Exif && content.StartsWith(ExifName) && !_isExif)
        {
            _isExif = true;
            Orientation = ExifOrientation.Read(content[ExifName.Length..]);
        }
        else if (marker == JpegMarker.Adobe && content.StartsWith(AdobeName) && content.Length >= AdobeBytes)
        {
            _adobeTransform = content[AdobeBytes - 1];
        }
    }

    /// <remarks>
    /// JFIF says that three components are YCbCr, Adobe's segment which transform they went through: a decoder without either has to guess.
    /// Sources: ITU-T T.871, 10.1; Adobe's Technical Note 5116, section 18, from memory.
    /// </remarks>
    public void WriteTo(IBufferWriter<byte> writer)
    {
        writer.Write<byte>([0xFF, JpegMarker.StartOfImage]);
        if (_isJfif)
        {
            // Version 1.02, square pixels, no thumbnail.
            JpegMarker.WriteSegment(writer, JpegMarker.Jfif, [.. JfifName, 1, 2, 0, 0, 1, 0, 1, 0, 0]);
        }

        if (Orientation != ExifOrientation.AsStored)
        {
            JpegMarker.WriteSegment(writer, JpegMarker.Exif, [.. ExifName, .. ExifOrientation.Write(Orientation)]);
        }

        if (_adobeTransform is { } transform)
        {
            JpegMarker.WriteSegment(writer, JpegMarker.Adobe, [.. AdobeName, 0, 100, 0, 0, 0, 0, transform]);
        }
    }
}
