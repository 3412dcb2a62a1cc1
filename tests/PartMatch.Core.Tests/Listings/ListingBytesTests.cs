using System.Text;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>From bytes to text. Source: WHATWG, Encoding and HTML; RFC 2557 for saved pages.</summary>
public sealed class ListingBytesTests
{
    private static readonly Encoding _western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!; // part of the runtime

    public static TheoryData<byte[], string?, bool> Encoded => new()
    {
        { Encoding.UTF8.GetBytes("<p>Dichtung für 5 €"), null, false },
        { [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("<p>Dichtung für 5 €")], "windows-1252", false },
        { [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("<p>Dichtung für 5 €")], "utf-8", false },
        { _western.GetBytes("<p>Dichtung für 5 €"), null, false },
        { _western.GetBytes("<p>Dichtung für 5 €"), "iso-8859-1", false },
        { _western.GetBytes("<meta charset=windows-1252><p>Dichtung für 5 €"), null, false },
        { Encoding.UTF8.GetBytes("<meta http-equiv=content-type content='text/html; charset=utf-8'><p>Dichtung für 5 €"), null, false },
        { Encoding.UTF8.GetBytes("<meta charset=iso-8859-1><p>Dichtung für 5 €"), null, true },
        { _western.GetBytes("<meta charset=utf-8><p>Dichtung für 5 €"), null, true },
        { _western.GetBytes("<p>Dichtung für 5 €"), "utf-8", true },
        { Encoding.UTF8.GetBytes("<p>Dichtung für 5 €"), "no-such-thing", true },
        { Encoding.UTF8.GetBytes("<meta charset=utf-16><p>Dichtung für 5 €"), null, false },
    };

    [Theory]
    [MemberData(nameof(Encoded))]
    public void Text_survives_what_is_declared_of_it(byte[] page, string? charset, bool warned)
    {
        var listing = ListingAssert.Read(ListingFormat.Html, page, charset);

        Assert.Equal("Dichtung für 5 €", listing.VisibleText);
        Assert.Equal(warned, listing.Warnings.Any(warning => warning.Code == "charset-wrong"));
    }

    public static TheoryData<byte[], string> OtherThings => new()
    {
        { [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A], "a picture (PNG)" },
        { [0xFF, 0xD8, 0xFF, 0xE0], "a picture (JPEG)" },
        { [.. "%PDF-1.7"u8], "a PDF document" },
        { [.. "PK\x03\x04"u8, 0], "a zip archive, or an office document" },
        { [0, 0, 0, 24, .. "ftypheic"u8, 0], "a picture or film (ISO media)" },
        { new byte[100], "binary data" },
        { [.. Enumerable.Range(1, 4096).Select(index => (byte)index)], "binary data" }, // every byte as often: 26 control characters in 256
    };

    [Theory]
    [MemberData(nameof(OtherThings))]
    public void What_is_no_text_is_refused_by_its_name(byte[] file, string found)
    {
        foreach (var format in new[] { ListingFormat.Text, ListingFormat.Html })
        {
            Assert.Equal(found, ListingAssert.Refused(format, file).Found);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \r\n\t\u00A0")]
    public void Nothing_is_refused_as_that(string text) => Assert.Equal("nothing but white space",
        ListingAssert.Refused(ListingFormat.Text, Encoding.UTF8.GetBytes(text)).Found);

    [Theory]
    [InlineData("quoted-printable", "<p>Dichtung f=C3=BCr ZQ=\r\n-1")]
    [InlineData("base64", "PHA+RGljaHR1bmcgZsO8ciBaUS0x")]
    public void Page_is_taken_out_of_a_saved_file(string encoding, string body)
    {
        var file = "From: <Saved by a browser>\r\nMIME-Version: 1.0\r\nContent-Type: multipart/related; type=\"text/html\"; boundary=\"b\"\r\n\r\n--b\r\nContent-Type: text/css\r\n\r\np{}\r\n"
            + $"--b\r\nContent-Type: text/html; charset=utf-8\r\nContent-Transfer-Encoding: {encoding}\r\n\r\n{body}\r\n--b--\r\n";

        Assert.StartsWith("Dichtung für ZQ-1", ListingAssert.Read(ListingFormat.Mhtml, Encoding.ASCII.GetBytes(file)).VisibleText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("just words")]
    [InlineData("MIME-Version: 1.0\r\nContent-Type: text/plain\r\n\r\nwords")]
    [InlineData("")]
    public void Saved_file_without_a_page_is_refused(string file) =>
        Assert.Equal("no page inside the saved file", ListingAssert.Refused(ListingFormat.Mhtml, Encoding.ASCII.GetBytes(file)).Found);
}
