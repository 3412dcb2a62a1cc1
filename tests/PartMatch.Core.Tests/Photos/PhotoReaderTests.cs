using CsCheck;
using PartMatch.Core.Photos;
using Xunit;

namespace PartMatch.Core.Tests.Photos;

/// <summary>What holds for both formats, and what is neither.</summary>
public sealed class PhotoReaderTests
{
    private static readonly byte[][] _sound =
    [
        DrawnJpeg.With(
            [.. DrawnJpeg.Named(0xE0, "JFIF\0", 1, 1, 0, 0, 1, 0, 1, 0, 0), .. DrawnJpeg.Exif(6), .. DrawnJpeg.Named(0xEE, "Adobe", 0, 100, 0, 0, 0, 0, 1)]),
        DrawnJpeg.Progressive,
        DrawnPng.With([.. DrawnPng.Chunk("gAMA", 0, 0, 177, 143), .. DrawnPng.Chunk("eXIf", DrawnJpeg.Tiff(6)), .. DrawnPng.Chunk("tRNS", 0, 1)]),
    ];

    private static readonly byte[][] _beginnings =
    [
        DrawnJpeg.Start, [.. DrawnJpeg.Start, .. DrawnJpeg.Tables, .. DrawnJpeg.Frame()],
        DrawnPng.Signature, [.. DrawnPng.Signature, .. DrawnPng.Header()], [],
    ];

    public static TheoryData<byte[], string> OtherFormats => new()
    {
        { [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0], "HEIC" },
        { [0, 0, 0, 24, .. "ftypmif1"u8, 0, 0, 0, 0], "HEIC" },
        { [0, 0, 0, 24, .. "ftypavif"u8, 0, 0, 0, 0], "AVIF" },
        { [0, 0, 0, 24, .. "ftypisom"u8, 0, 0, 0, 0], "film" },
        { [.. "RIFF"u8, 9, 0, 0, 0, .. "WEBPVP8 "u8], "WebP" },
        { [.. "GIF89a"u8, 1, 0, 1, 0], "GIF" },
        { [.. "BM"u8, 1, 0, 1, 0], "BMP" },
        { [.. "II"u8, 42, 0, 8, 0, 0, 0], "TIFF" },
        { [.. "%PDF-1.7"u8], "PDF" },
        { [.. "<svg/>"u8], "SVG" },
        { [0x12, 0x34], "1234" },
        { [0xFF], "FF" },
    };

    [Theory]
    [MemberData(nameof(OtherFormats))]
    public void Other_format_is_refused_by_its_name(byte[] file, string name)
    {
        var refused = PhotoAssert.Refused(PhotoFault.OtherFormat, file);

        Assert.Contains(name, refused.Found, StringComparison.Ordinal);
        Assert.Equal("save it as JPEG or PNG", refused.Mend);
    }

    [Fact]
    public void Nothing_is_refused() => PhotoAssert.Refused(PhotoFault.Empty, []);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void File_cut_at_any_byte_is_refused_as_that(int which)
    {
        var file = _sound[which];
        for (var length = 2; length < file.Length; length++)
        {
            // The first two bytes of a PNG could be the beginning of anything.
            PhotoAssert.Refused(length < 4 && file[0] == 0x89 ? PhotoFault.OtherFormat : PhotoFault.CutShort, file[..length]);
        }

        PhotoAssert.Taken(file);
    }

    [Fact]
    public void Five_mebibytes_are_the_most()
    {
        var largest = new byte[5 * 1024 * 1024];
        DrawnPng.Plain.CopyTo(largest, 0); // the rest lies behind the end
        Assert.Equal(DrawnPng.Plain, PhotoAssert.Taken(largest).Bytes.ToArray());

        Assert.Contains("5242881 bytes", PhotoAssert.Refused(PhotoFault.TooLarge, [.. largest, 0]).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Written_picture_read_again_is_written_the_same() =>
        Assert.All(_sound, file => Assert.True(IsSettled(PhotoAssert.Taken(file))));

    [Fact]
    public void Spoiled_picture_is_refused_or_written_so_that_it_stays() =>
        Gen.Select(Gen.Int[0, _sound.Length - 1], Gen.Select(Gen.Int[0, 300], Gen.Byte).Array[1, 4]).Sample(
            (which, spoils) =>
            {
                var file = (byte[])_sound[which].Clone();
                foreach (var (place, value) in spoils)
                {
                    file[place % file.Length] = value;
                }

                return IsRefusedOrSettled(file);
            },
            iter: 20_000);

    [Fact]
    public void Picture_with_bytes_put_in_or_taken_out_is_refused_or_written_so_that_it_stays() =>
        Gen.Select(Gen.Int[0, _sound.Length - 1], Gen.Int[0, 300], Gen.Int[0, 40], Gen.Byte.Array[0, 40]).Sample(
            (which, place, removed, added) =>
            {
                var file = _sound[which];
                var from = place % file.Length;
                return IsRefusedOrSettled([.. file[..from], .. added, .. file[Math.Min(file.Length, from + removed)..]]);
            },
            iter: 20_000);

    [Fact]
    public void Anything_behind_a_signature_is_refused_or_written_so_that_it_stays() =>
        Gen.Select(Gen.Int[0, _beginnings.Length - 1], Gen.Byte.Array[0, 200]).Sample(
            (which, rest) => IsRefusedOrSettled([.. _beginnings[which], .. rest]), iter: 20_000);

    /// <summary>Markers often, so that the walk goes far: random bytes alone seldom get past the first segment.</summary>
    [Fact]
    public void Any_row_of_jpeg_segments_is_refused_or_written_so_that_it_stays() =>
        Gen.Select(Gen.Byte[0xC0, 0xFE], Gen.Byte.Array[0, 20]).Select(pair => DrawnJpeg.Segment(pair.Item1, pair.Item2))
            .Array[0, 6].Sample(
                segments => IsRefusedOrSettled([.. DrawnJpeg.Plain[..^2], .. segments.SelectMany(segment => segment), .. DrawnJpeg.End]),
                iter: 20_000);

    private static bool IsRefusedOrSettled(byte[] file) => PhotoReader.Read(file) is PhotoRefused || IsSettled(PhotoAssert.Taken(file));

    /// <summary>What was written is a picture of the same size, in which nothing is left to take away.</summary>
    private static bool IsSettled(Photo photo)
    {
        var again = PhotoAssert.Taken(photo.Bytes.ToArray());
        return again.Bytes.Span.SequenceEqual(photo.Bytes.Span) && (again.Format, again.Width, again.Height) == (photo.Format, photo.Width, photo.Height);
    }
}
