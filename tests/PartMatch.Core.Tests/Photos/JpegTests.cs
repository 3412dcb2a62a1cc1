using System.Text;
using PartMatch.Core.Photos;
using Xunit;
using static PartMatch.Core.Tests.Photos.DrawnJpeg;

namespace PartMatch.Core.Tests.Photos;

public sealed class JpegTests
{
    public static TheoryData<string> PlainForms => ["baseline", "progressive", "restarts", "stuffed"];

    [Theory]
    [MemberData(nameof(PlainForms))]
    public void Picture_with_nothing_around_its_pixels_comes_back_byte_for_byte(string form)
    {
        byte[] file = form switch
        {
            "progressive" => Progressive,
            "restarts" => [.. Start, .. Tables, .. Segment(0xDD, 0, 1), .. Frame(), .. Scan, 0xFF, 0xD0, 0x7F, .. End],
            "stuffed" => [.. Start, .. Tables, .. Frame(), .. Scan, 0xFF, 0x00, 0x7F, .. End],
            _ => Plain,
        };

        var photo = PhotoAssert.Taken(file);

        Assert.Equal((PhotoFormat.Jpeg, 16, 8), (photo.Format, photo.Width, photo.Height));
        Assert.Equal(file, photo.Bytes.ToArray());
    }

    [Fact]
    public void Everything_around_the_pixels_goes()
    {
        byte[] loaded =
        [
            .. Start,
            .. Named(0xE0, "JFIF\0", 1, 1, 1, 0, 72, 0, 72, 1, 1, 200, 100, 50), // inches, 72 to each, a thumbnail of one pixel
            .. Exif(1),
            .. Named(0xE1, "http://ns.adobe.com/xap/1.0/\0", "<place>52.1 N</place>"u8.ToArray()),
            .. Named(0xE2, "ICC_PROFILE\0", 1, 1, 99),
            .. Named(0xE2, "MPF\0", 1, 2, 3),
            .. Named(0xED, "Photoshop 3.0\0", 1, 2, 3),
            .. Named(0xFE, "somebody"),
            .. Tables, .. Frame(), .. Named(0xFE, "somebody"), .. Scan, .. Named(0xFE, "somebody"), .. End,
            .. Plain, .. "somebody"u8,
        ];

        var bytes = PhotoAssert.Taken(loaded).Bytes.ToArray();

        // Of JFIF stays that it is one: version 1.02, no units, 1 to 1, no thumbnail.
        Assert.Equal(With(Named(0xE0, "JFIF\0", 1, 2, 0, 0, 1, 0, 1, 0, 0)), bytes);
        Assert.DoesNotContain("somebody", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
    }

    /// <summary>TIFF 6.0, tag 274: from 5 on, the rows of the file are columns of the picture.</summary>
    [Theory]
    [InlineData(2, 16, 8)]
    [InlineData(3, 16, 8)]
    [InlineData(4, 16, 8)]
    [InlineData(5, 8, 16)]
    [InlineData(6, 8, 16)]
    [InlineData(7, 8, 16)]
    [InlineData(8, 8, 16)]
    public void Which_side_is_up_stays_and_nothing_else_of_what_the_camera_wrote(byte orientation, int width, int height)
    {
        // One directory with one entry: 0112, a short, one of it.
        byte[] only = Named(0xE1, "Exif\0\0MM", 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0);
        foreach (var isLittleEndian in new[] { true, false })
        {
            var photo = PhotoAssert.Taken(With(Exif(orientation, isLittleEndian)));

            Assert.Equal((width, height), (photo.Width, photo.Height));
            Assert.Equal(With(only), photo.Bytes.ToArray());
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(9)]
    public void Orientation_that_says_nothing_is_as_stored(int orientation) => Assert.Equal(Plain, PhotoAssert.Taken(With(Exif(orientation))).Bytes.ToArray());

    [Fact]
    public void Camera_data_that_cannot_be_read_do_no_harm()
    {
        var whole = Tiff(6);
        for (var length = 0; length < whole.Length - 8; length++)
        {
            Assert.Equal(Plain, PhotoAssert.Taken(With(Named(0xE1, "Exif\0\0", whole[..length]))).Bytes.ToArray());
        }

        Assert.Equal(Plain, PhotoAssert.Taken(With(Named(0xE1, "Exif\0\0", Tiff(6, type: 4)))).Bytes.ToArray());
        Assert.Equal(Plain, PhotoAssert.Taken(With(Named(0xE1, "Exif\0\0MM", 0, 42, 255, 255, 255, 255))).Bytes.ToArray());
        Assert.Equal(Plain, PhotoAssert.Taken(With(Named(0xE1, "Exif\0\0XX", whole[2..]))).Bytes.ToArray());
    }

    [Fact]
    public void Orientation_after_the_first_scan_comes_too_late()
    {
        byte[] late = [.. Start, .. Tables, .. Frame(), .. Scan, .. Exif(6), .. End];
        Assert.Equal(Plain, PhotoAssert.Taken(late).Bytes.ToArray());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Colour_transform_stays_because_the_colours_depend_on_it(byte transform) => Assert.Equal(
        With(Named(0xEE, "Adobe", 0, 100, 0, 0, 0, 0, transform)),
        PhotoAssert.Taken(With(Named(0xEE, "Adobe", 0, 101, 0x80, 0, 0x40, 0, transform, 1, 2, 3))).Bytes.ToArray());

    [Fact]
    public void Space_before_a_marker_may_be_filled()
    {
        byte[] filled = [.. Start, 0xFF, 0xFF, .. Tables, .. Frame(), 0xFF, .. Scan, 0xFF, .. End];
        Assert.Equal(Plain, PhotoAssert.Taken(filled).Bytes.ToArray());
    }

    /// <summary>T.81, Table B.1: lossless, differential, arithmetic; a height that comes later; hierarchical.</summary>
    [Theory]
    [InlineData(0xC3)]
    [InlineData(0xC5)]
    [InlineData(0xC9)]
    [InlineData(0xCA)]
    [InlineData(0xCF)]
    [InlineData(0xDC)]
    [InlineData(0xDE)]
    public void Form_that_no_browser_shows_is_refused(byte marker) =>
        PhotoAssert.Refused(PhotoFault.OtherForm, [.. Start, .. Tables, .. Frame(marker: marker), .. Scan, .. End]);

    [Fact]
    public void Twelve_bits_and_two_components_are_refused()
    {
        PhotoAssert.Refused(PhotoFault.OtherForm, [.. Start, .. Tables, .. Frame(marker: 0xC1, bits: 12), .. Scan, .. End]);
        PhotoAssert.Refused(PhotoFault.OtherForm, [.. Start, .. Tables, .. Segment(0xC0, 8, 0, 8, 0, 16, 2, 1, 0x11, 0, 2, 0x11, 0), .. Scan, .. End]);
    }

    /// <summary>Each lacks one thing, or has it twice, or where it cannot be.</summary>
    public static TheoryData<string, byte[]> DamagedOnes => new()
    {
        { "no scan", [.. Start, .. Tables, .. Frame(), .. End] },
        { "no frame", [.. Start, .. Tables, .. Scan, .. End] },
        { "nothing at all", [.. Start, .. End] },
        { "two frames", [.. Start, .. Tables, .. Frame(), .. Frame(), .. Scan, .. End] },
        { "a start within", [.. Start, .. Start, .. Tables, .. Frame(), .. Scan, .. End] },
        { "a restart outside a scan", [.. Start, 0xFF, 0xD0, .. Tables, .. Frame(), .. Scan, .. End] },
        { "a scan without pixels", [.. Start, .. Tables, .. Frame(), .. Scan[..^3], .. End] },
        { "no quantization table", [.. Start, .. DcTable, .. AcTable, .. Frame(), .. Scan, .. End] },
        { "no table for mean values", [.. Start, .. Quantization, .. AcTable, .. Frame(), .. Scan, .. End] },
        { "no table for details", [.. Start, .. Quantization, .. DcTable, .. Frame(), .. Scan, .. End] },
        { "tables after the scan that needs them", [.. Start, .. Frame(), .. Scan, .. Tables, .. End] },
        { "a quantization table with more behind it", [.. Start, .. Segment(0xDB, [.. Quantization[4..], 65]), .. DcTable, .. AcTable, .. Frame(), .. Scan, .. End] },
        { "a Huffman table with more behind it", [.. Start, .. Tables, .. Segment(0xC4, [0x11, 1, .. new byte[15], 0, 65, 66]), .. Frame(), .. Scan, .. End] },
        { "a restart interval of three bytes", [.. Start, .. Tables, .. Segment(0xDD, 0, 1, 65), .. Frame(), .. Scan, .. End] },
        { "a frame header with more behind it", [.. Start, .. Tables, .. Segment(0xC0, 8, 0, 8, 0, 16, 1, 1, 0x11, 0, 65), .. Scan, .. End] },
        { "a component sampled 5 times", [.. Start, .. Tables, .. Segment(0xC0, 8, 0, 8, 0, 16, 1, 1, 0x51, 0), .. Scan, .. End] },
        { "a component twice", [.. Start, .. Tables, .. Segment(0xC0, 8, 0, 8, 0, 16, 3, 1, 0x11, 0, 1, 0x11, 0, 2, 0x11, 0), .. Scan, .. End] },
        { "a scan of a component that is not there", [.. Start, .. Tables, .. Frame(), .. Segment(0xDA, 1, 2, 0, 0, 63, 0), 1, 2, .. End] },
        { "a scan of no component", [.. Start, .. Tables, .. Frame(), .. Segment(0xDA, 0, 0, 63, 0), 1, 2, .. End] },
        { "a progressive scan of means and details", [.. Start, .. Tables, .. Frame(marker: 0xC2), .. Scan, .. End] },
        { "a progressive scan beyond the last coefficient", [.. Start, .. Tables, .. Frame(marker: 0xC2), .. Segment(0xDA, 1, 1, 0, 1, 64, 0), 1, .. End] },
        { "a segment of one byte", [.. Start, 0xFF, 0xFE, 0, 1, .. Tables, .. Frame(), .. Scan, .. End] },
        { "something else where a marker must be", [.. Start, .. Tables, 0x00, .. Frame(), .. Scan, .. End] },
        { "a reserved marker", [.. Start, .. Segment(0xF0, 1), .. Tables, .. Frame(), .. Scan, .. End] },
        { "no width", [.. Start, .. Tables, .. Frame(width: 0), .. Scan, .. End] },
        { "no height", [.. Start, .. Tables, .. Frame(height: 0), .. Scan, .. End] },
    };

    [Theory]
    [MemberData(nameof(DamagedOnes))]
    public void Contradiction_is_refused(string what, byte[] file)
    {
        Assert.NotEmpty(what);
        PhotoAssert.Refused(PhotoFault.Damaged, file);
    }

    [Theory]
    [InlineData(10_000, 5_000, true)]
    [InlineData(5_000, 10_000, true)]
    [InlineData(10_000, 5_001, false)]
    [InlineData(65_535, 65_535, false)]
    public void Fifty_million_pixels_are_the_most(int width, int height, bool isTaken)
    {
        byte[] file = [.. Start, .. Tables, .. Frame(width, height), .. Scan, .. End];
        if (isTaken)
        {
            Assert.Equal((width, height), (PhotoAssert.Taken(file).Width, PhotoAssert.Taken(file).Height));
        }
        else
        {
            Assert.Contains($"{width} × {height}", PhotoAssert.Refused(PhotoFault.TooManyPixels, file).Found, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public void Hundred_scans_are_the_most(int scans, bool isTaken)
    {
        byte[] file = [.. Start, .. Tables, .. Frame(), .. Enumerable.Repeat(Scan, scans).SelectMany(scan => scan), .. End];
        if (isTaken)
        {
            PhotoAssert.Taken(file);
        }
        else
        {
            PhotoAssert.Refused(PhotoFault.OtherForm, file);
        }
    }
}
