using System.Text;
using PartMatch.Core.Buying;
using PartMatch.Storage.Offers;
using Xunit;

namespace PartMatch.Storage.Tests.Offers;

public sealed class PriceListCsvTests
{
    public static TheoryData<byte[]> SameTable =>
    [
        Encoding.UTF8.GetBytes("Nummer,Preis\nÖ-77,\"9,50\"\n"),
        Encoding.UTF8.GetBytes("\uFEFFNummer;Preis\r\nÖ-77;9,50\r\n"),
        Encoding.UTF8.GetBytes("\n\nNummer\tPreis\nÖ-77\t9,50"),
        (byte[])[.. "Nummer;Preis\n"u8, 0xD6, .. "-77;9,50\n"u8], // Ö in Windows-1252
        (byte[])[.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("Nummer\tPreis\r\nÖ-77\t9,50\r\n")],
    ];

    [Theory]
    [MemberData(nameof(SameTable))]
    public void Separator_encoding_and_line_ends_do_not_matter(byte[] bytes)
    {
        var table = Assert.IsType<PriceListReading.Read>(PriceListCsv.Of(bytes)).Table;
        Assert.Equal(["Nummer", "Preis"], table.Headers);
        Assert.Equal(["Ö-77", "9,50"], Assert.Single(table.Rows).Cells);
    }

    [Theory]
    [InlineData("", "no rows")]
    [InlineData("Nummer;Preis\n", "no rows")]
    [InlineData("Nummer;Preis\nA-1;\"9", "line 2: a quote opens here and never closes")]
    [InlineData("%PDF\0\0", "bytes that are no text")]
    public void What_is_no_list_is_told(string text, string found) =>
        Assert.Equal(found, Assert.IsType<PriceListReading.Unreadable>(PriceListCsv.Of(Encoding.UTF8.GetBytes(text))).Found);

    [Theory]
    [InlineData(PriceListTable.MostRows, true)]
    [InlineData(PriceListTable.MostRows + 1, false)]
    public void List_is_read_up_to_its_bound(int rows, bool isRead)
    {
        var text = "number,price\n" + string.Concat(Enumerable.Repeat("A-1,9.50\n", rows));
        Assert.Equal(isRead, PriceListCsv.Of(Encoding.UTF8.GetBytes(text)) is PriceListReading.Read);
    }
}
