using System.Text;
using PartMatch.Core.Photos;
using Xunit;
using static PartMatch.Core.Tests.Photos.DrawnPng;

namespace PartMatch.Core.Tests.Photos;

public sealed class PngTests
{
    private static readonly byte[] _palette = Chunk("PLTE", 0, 0, 0, 255, 255, 255);

    [Fact]
    public void Picture_with_nothing_around_its_pixels_comes_back_byte_for_byte()
    {
        var photo = PhotoAssert.Taken(Plain);

        Assert.Equal((PhotoFormat.Png, 4, 2), (photo.Format, photo.Width, photo.Height));
        Assert.Equal(Plain, photo.Bytes.ToArray());
    }

    [Fact]
    public void Everything_around_the_pixels_goes()
    {
        byte[] loaded =
        [
            .. Signature, .. Header(),
            .. Chunk("tEXt", "Author\0somebody"u8.ToArray()), .. Chunk("zTXt", 1, 2), .. Chunk("iTXt", 1, 2),
            .. Chunk("tIME", 7, 234, 1, 1, 0, 0, 0), .. Chunk("iCCP", 1, 2),
            .. Chunk("eXIf", DrawnJpeg.Tiff(1)), .. Chunk("pHYs", 0, 0, 11, 19, 0, 0, 11, 19, 1), .. Chunk("cICP", 9, 16, 0, 1),
            .. Chunk("abCd", "somebody"u8.ToArray()),
            .. Chunk("acTL", 0, 0, 0, 2, 0, 0, 0, 0), .. Chunk("fcTL", new byte[26]), .. Pixels,
            .. Chunk("fcTL", new byte[26]), .. Chunk("fdAT", 0, 0, 0, 2, 1),
            .. Chunk("tEXt", "Author\0somebody"u8.ToArray()), .. End, .. "somebody"u8,
        ];

        Assert.Equal(Plain, PhotoAssert.Taken(loaded).Bytes.ToArray());
    }

    [Fact]
    public void What_changes_the_colours_stays()
    {
        byte[] before = [.. Chunk("gAMA", 0, 0, 177, 143), .. Chunk("cHRM", new byte[32]), .. Chunk("sRGB", 0), .. Chunk("sBIT", 8)];
        byte[] grey = With([.. before, .. Chunk("tRNS", 0, 1), .. Chunk("bKGD", 0, 255)]);
        byte[] palette = [.. Signature, .. Header(colour: 3), .. _palette, .. Chunk("tRNS", 0, 128), .. Chunk("bKGD", 1), .. Pixels, .. Pixels, .. End];

        Assert.Equal(grey, PhotoAssert.Taken(grey).Bytes.ToArray());
        Assert.Equal(palette, PhotoAssert.Taken(palette).Bytes.ToArray());
    }

    [Fact]
    public void Which_side_is_up_stays_and_nothing_else_of_what_the_camera_wrote()
    {
        var photo = PhotoAssert.Taken(With([.. Chunk("tEXt", 1), .. Chunk("eXIf", DrawnJpeg.Tiff(6))]));

        Assert.Equal((2, 4), (photo.Width, photo.Height));
        Assert.Equal(With(Chunk("eXIf", [.. "MM"u8, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0])), photo.Bytes.ToArray());
        Assert.DoesNotContain("somebody", Encoding.Latin1.GetString(photo.Bytes.Span), StringComparison.Ordinal);
    }

    [Fact]
    public void Orientation_behind_the_pixels_comes_too_late() =>
        Assert.Equal(Plain, PhotoAssert.Taken([.. Signature, .. Header(), .. Pixels, .. Chunk("eXIf", DrawnJpeg.Tiff(6)), .. End]).Bytes.ToArray());

    /// <summary>PNG, 11.2.1: the bits that each colour type may have.</summary>
    [Theory]
    [InlineData(0, "1 2 4 8 16")]
    [InlineData(2, "8 16")]
    [InlineData(3, "1 2 4 8")]
    [InlineData(4, "8 16")]
    [InlineData(6, "8 16")]
    [InlineData(1, "")]
    [InlineData(5, "")]
    [InlineData(7, "")]
    public void Colour_type_has_the_bits_of_the_format(byte colour, string allowed)
    {
        foreach (var bits in new byte[] { 0, 1, 2, 3, 4, 8, 16, 32 })
        {
            byte[] file = [.. Signature, .. Header(bits: bits, colour: colour), .. colour == 3 ? _palette : [], .. Pixels, .. End];
            Assert.Equal(allowed.Split(' ').Contains($"{bits}"), PhotoReader.Read(file) is PhotoRead);
        }
    }

    public static TheoryData<string, byte[]> DamagedOnes => new()
    {
        { "line ends changed", [.. Plain[..4], 0x0A, .. Plain[5..]] },
        { "no header", [.. Signature, .. Pixels, .. End] },
        { "two headers", With(Header()) },
        { "a header of 12 bytes", [.. Signature, .. Chunk("IHDR", new byte[12]), .. Pixels, .. End] },
        { "another compression", [.. Signature, .. Chunk("IHDR", 0, 0, 0, 4, 0, 0, 0, 2, 8, 0, 1, 0, 0), .. Pixels, .. End] },
        { "interlaced in a third way", [.. Signature, .. Header(interlace: 2), .. Pixels, .. End] },
        { "no width", [.. Signature, .. Header(width: 0), .. Pixels, .. End] },
        { "no pixels", [.. Signature, .. Header(), .. End] },
        { "pixels in two places", [.. Signature, .. Header(), .. Pixels, .. Chunk("tEXt", 1), .. Pixels, .. End] },
        { "an end with content", [.. Signature, .. Header(), .. Pixels, .. Chunk("IEND", 65)] },
        { "a palette of grey", With(_palette) },
        { "no palette", [.. Signature, .. Header(colour: 3), .. Pixels, .. End] },
        { "a palette after the pixels", [.. Signature, .. Header(colour: 2), .. Pixels, .. _palette, .. End] },
        { "two palettes", [.. Signature, .. Header(colour: 3), .. _palette, .. _palette, .. Pixels, .. End] },
        { "half a colour", [.. Signature, .. Header(colour: 2), .. Chunk("PLTE", 1, 2, 3, 4), .. Pixels, .. End] },
        { "three colours for one bit", [.. Signature, .. Header(bits: 1, colour: 3), .. Chunk("PLTE", new byte[9]), .. Pixels, .. End] },
        { "more transparencies than colours", [.. Signature, .. Header(colour: 3), .. _palette, .. Chunk("tRNS", 1, 2, 3), .. Pixels, .. End] },
        { "transparency before the palette", [.. Signature, .. Header(colour: 2), .. Chunk("tRNS", new byte[6]), .. _palette, .. Pixels, .. End] },
        { "transparency beside alpha", [.. Signature, .. Header(colour: 4), .. Chunk("tRNS", 0, 0), .. Pixels, .. End] },
        { "gamma after the palette", [.. Signature, .. Header(colour: 3), .. _palette, .. Chunk("gAMA", 0, 0, 1, 1), .. Pixels, .. End] },
        { "gamma twice", With([.. Chunk("gAMA", 0, 0, 1, 1), .. Chunk("gAMA", 0, 0, 1, 1)]) },
        { "gamma with a word in it", With(Chunk("gAMA", "somebody"u8.ToArray())) },
        { "background after the pixels", [.. Signature, .. Header(), .. Pixels, .. Chunk("bKGD", 0, 0), .. End] },
        { "a check sum that does not match", [.. Signature, .. Header()[..^1], 0, .. Pixels, .. End] },
        { "a check sum that does not match in a chunk that goes", With([.. Chunk("tEXt", 1)[..^1], 0]) },
        { "a type that is no word", With(Chunk("te1t", 1)) },
    };

    [Theory]
    [MemberData(nameof(DamagedOnes))]
    public void Contradiction_is_refused(string what, byte[] file)
    {
        Assert.NotEmpty(what);
        PhotoAssert.Refused(PhotoFault.Damaged, file);
    }

    [Fact]
    public void Unknown_chunk_that_is_needed_to_show_it_is_refused_by_name() =>
        Assert.Contains("CgBI", PhotoAssert.Refused(PhotoFault.OtherForm, With(Chunk("CgBI", 1))).Found, StringComparison.Ordinal);

    [Theory]
    [InlineData(10_000, 5_000, true)]
    [InlineData(50_000_000, 1, true)]
    [InlineData(50_000_001, 1, false)]
    [InlineData(10_000, 5_001, false)]
    [InlineData(4_294_967_295, 4_294_967_295, false)]
    public void Fifty_million_pixels_are_the_most(long width, long height, bool isTaken)
    {
        byte[] file = [.. Signature, .. Header(width, height), .. Pixels, .. End];
        if (isTaken)
        {
            PhotoAssert.Taken(file);
        }
        else
        {
            PhotoAssert.Refused(PhotoFault.TooManyPixels, file);
        }
    }
}
