namespace PartMatch.Core.Photos;

/// <summary>Reads a JPEG or PNG by what it is, never by its name, and writes it anew without metadata. Pixels are neither decoded nor changed.</summary>
/// <remarks>
/// What browsers and cameras put around the pixels (place, time, owner, serial number of the camera, thumbnails of the uncropped picture, comments,
/// further pictures after the end) is left out. The one thing kept of it is which side is up. Colour profiles go too: a picture with more than the
/// usual range of colours looks a little paler.
/// </remarks>
public static class PhotoReader
{
    /// <summary>Largest file, in bytes. Ours, no source: a telephone's picture of 12 megapixels has 2 to 4 MB.</summary>
    public const int MaxBytes = 5 << 20;

    /// <summary>Most pixels, by the header: a small file can claim more than a browser has memory for. Ours, no source.</summary>
    public const int MaxPixels = 50_000_000;

    public static PhotoOutcome Read(ReadOnlyMemory<byte> file)
    {
        if (file.IsEmpty)
        {
            return PhotoRefusals.Empty();
        }

        if (file.Length > MaxBytes)
        {
            return PhotoRefusals.TooLarge(file.Length);
        }

        return PhotoSignature.Find(file.Span) switch
        {
            PhotoFormat.Jpeg => new JpegRewrite(file).Run(),
            PhotoFormat.Png => new PngRewrite(file).Run(),
            _ => PhotoRefusals.OtherFormat(PhotoSignature.Describe(file.Span)),
        };
    }

    /// <summary>The refusal of a size that no picture has or that is too large, or null.</summary>
    internal static PhotoRefused? CheckSize(long width, long height) =>
        width < 1 || height < 1 ? PhotoRefusals.Damaged($"a picture of {width} × {height} pixels", "at least one pixel each way")
        : height > MaxPixels / width ? PhotoRefusals.TooManyPixels(width, height)
        : null;
}
