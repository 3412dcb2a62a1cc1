using System.Text;
using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Buying;

/// <summary>Price lists on web pages. Expectations are read off the written tables; cells by WHATWG, HTML, "Forming a table".</summary>
public sealed class PriceListPageTests
{
    private const string List = "<table><caption>Pumps</caption><thead><tr><th>Part number<th>Description<th>Price<tbody><tr><td>QZ-900<td>Pump<td>84.00<tr><td>QZ-901<td>Seal<td>9.50</table>";

    [Fact]
    public void Only_table_is_taken_with_its_caption_heads_and_rows()
    {
        var read = Read(List);
        Assert.Equal(["Part number", "Description", "Price"], read.Table.Headers);
        Assert.Equal("2: QZ-900|Pump|84.00 / 3: QZ-901|Seal|9.50", Rows(read));
        Assert.Equal(("Pumps", 1, "the only one"), (read.Tables!.Offered[0].Caption, read.Tables.Taken, read.Tables.Because));
        Assert.Empty(read.Tables.Notes);
    }

    // The second is the widest with numbers; the third is wider and has none.
    [Fact]
    public void Widest_table_with_numbers_and_prices_is_proposed_and_another_can_be_chosen()
    {
        const string Page = "<table><tr><th>Number<th>Price<tr><td>QZ-1<td>1.00</table>" + List
            + "<table><tr><th>Monday<th>Tuesday<th>Wednesday<th>Thursday<tr><td>open<td>open<td>shut<td>open</table>";
        var read = Read(Page);
        Assert.Equal((2, "the widest with columns of part numbers and prices"), (read.Tables!.Taken, read.Tables.Because));
        Assert.Equal([1, 2, 3], read.Tables.Offered.Select(table => table.Table));
        Assert.Equal("2: QZ-1|1.00", Rows(Read(Page, 1)));
    }

    [Fact]
    public void Table_that_only_lays_out_the_page_is_counted_and_not_offered()
    {
        var read = Read($"<table><tr><td>menu<td>{List}</table>");
        Assert.Equal([2], read.Tables!.Offered.Select(table => table.Table));
        Assert.Equal("2: QZ-900|Pump|84.00 / 3: QZ-901|Seal|9.50", Rows(read));
    }

    [Fact]
    public void Merged_cells_stand_in_each_row_and_column_that_they_span()
    {
        var read = Read("<table><thead><tr><th rowspan=2>Number<th colspan=2>Price<tr><th>net<th>gross<tbody><tr><td rowspan=2>QZ-1<td>10.00<td>11.90<tr><td>20.00<td>23.80</table>");
        Assert.Equal(["Number", "Price net", "Price gross"], read.Table.Headers);
        Assert.Equal("3: QZ-1|10.00|11.90 / 4: QZ-1|20.00|23.80", Rows(read));
    }

    [Fact]
    public void Titles_feet_sums_and_repeated_heads_are_left_out_and_told()
    {
        var read = Read("<table><tr><td colspan=2>Cooling</td><tr><td>Number<td>Price<tr><td>QZ-1<td>10.00<tr><td>Number<td>Price<tr><td>QZ-2<td>20.00"
            + "<tr><td>Total:<td>30.00<tfoot><tr><td>Prices without VAT<td>2026</table>");
        Assert.Equal(["Number", "Price"], read.Table.Headers);
        Assert.Equal("3: QZ-1|10.00 / 5: QZ-2|20.00", Rows(read));
        Assert.Equal(
            [
                "1 row across the whole table left out: Cooling", "1 row in the foot of the table left out: Prices without VAT 2026",
                "1 row of sums left out: Total: 30.00", "1 row of heads again left out: Number Price",
            ],
            read.Tables!.Notes);
    }

    [Fact]
    public void Table_without_heads_has_numbered_columns_and_heads_below_another_row_are_found()
    {
        Assert.Equal(["column 1", "column 2"], Read("<table><tr><td>QZ-1<td>10.00<tr><td>QZ-2<td>20.00</table>").Table.Headers);
        var below = Read("<table><tr><td>List of 3 May<td>Millrace<tr><td>Nummer<td>Preis<tr><td>QZ-1<td>10,00</table>");
        Assert.Equal("Nummer/Preis; 3: QZ-1|10,00", $"{string.Join('/', below.Table.Headers)}; {Rows(below)}");
        Assert.Equal(["1 row above the heads left out: List of 3 May Millrace"], below.Tables!.Notes);
    }

    [Theory]
    [InlineData("<p>QZ-1 costs 10.00</p>", null, "no table", "body")]
    [InlineData("<table><tr><td>one cell</table>", null, "no table with several columns and rows", "body")]
    [InlineData("<table hidden><tr><td>QZ-1<td>10.00<tr><td>QZ-2<td>20.00</table>", null, "no table", "body")]
    [InlineData(List + List, 3, "table 3", "table")]
    [InlineData("<table><tr><td>a<td>b<tr><td>c<td>d</table><table><tr><td>a<td>b<tr><td>c<td>d</table>", null, "2 tables, none with a column of part numbers", "table")]
    [InlineData("", null, "nothing but white space", "body")]
    public void Page_without_a_list_says_what_was_found_and_how_to_mend_it(string page, int? chosen, string found, string field)
    {
        var unreadable = Assert.IsType<PriceListReading.Unreadable>(Of(page, chosen));
        Assert.Equal((found, field), (unreadable.Found, unreadable.Field));
        Assert.NotEmpty(unreadable.Mend);
    }

    [Theory]
    [InlineData(PriceListTable.MostRows, true)]
    [InlineData(PriceListTable.MostRows + 1, false)]
    public void List_is_read_up_to_its_bound(int rows, bool isRead) =>
        Assert.Equal(isRead, Of($"<table><tr><th>Number<th>Price{string.Concat(Enumerable.Repeat("<tr><td>A-1<td>9.50", rows))}</table>") is PriceListReading.Read);

    // 30,000 rows of which each is to be 60 cells wide: 1,800,000 cells out of few bytes.
    [Fact]
    public void Spans_that_multiply_cells_without_end_are_refused() =>
        Assert.Equal("more than 1,500,000 cells in its tables", Assert.IsType<PriceListReading.Unreadable>(
            Of($"<table><tr><td rowspan=99999 colspan=59>A-1{string.Concat(Enumerable.Repeat("<tr><td>9.50", 30_000))}</table>")).Found);

    private static PriceListReading.Read Read(string page, int? chosen = null) => Assert.IsType<PriceListReading.Read>(Of(page, chosen));

    private static PriceListReading Of(string page, int? chosen = null) =>
        PriceListPage.Of(new ListingDocument(ListingFormat.Html, Encoding.UTF8.GetBytes(page), "utf-8"), _ => false, chosen);

    private static string Rows(PriceListReading.Read read) =>
        string.Join(" / ", read.Table.Rows.Select(row => FormattableString.Invariant($"{row.Line}: {string.Join('|', row.Cells)}")));
}
