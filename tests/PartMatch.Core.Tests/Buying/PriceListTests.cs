using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Buying;

public sealed class PriceListTests
{
    private static readonly SoldNumbers _numbers = new(
        new LookAlikeFacts(
        new LookAlikeIndex(
        [
            new PartNumber("ardlow", "12/34-O", "1234O", NumberSort.Service, "ardlow:12/34-O"), new PartNumber("ardlow", "77-1", "771", NumberSort.Service,
                "ardlow:77-1"),
            new PartNumber("brask", "77-1", "771", NumberSort.Service, "brask:77-1"), new PartNumber("ardlow", "C-9", "C9", NumberSort.CastingMark,
                "ardlow:12/34-O"),
            new PartNumber("other", "K-5000", "K5000", NumberSort.Service, "other:K-5000"),
        ]), []),
        new HashSet<string> { "ardlow:12/34-O", "ardlow:77-1", "brask:77-1" });

    [Theory]
    [InlineData("12 34 o", SoldVerdict.KnownPart, "ardlow:12/34-O")]
    [InlineData("77-1", SoldVerdict.NarrowsOnly, null)]
    [InlineData("C-9", SoldVerdict.NarrowsOnly, null)] // a casting mark names no part
    [InlineData("K-5000", SoldVerdict.KnownElsewhere, null)]
    [InlineData("12/34-0", SoldVerdict.LookAlikeCharacters, null)] // a zero for the O
    [InlineData("ZZ-999", SoldVerdict.Unknown, null)]
    public void Number_is_judged_and_only_one_known_part_is_recorded(string written, SoldVerdict verdict, string? recorded)
    {
        var sold = _numbers.Judge(written);
        Assert.Equal((verdict, recorded), (sold.Verdict, sold.Recorded));
    }

    // The nearest number is the part's own here, and would only repeat it; a part that no book describes has no name to say.
    [Theory]
    [InlineData("12/34-0", "in no book, but reads like ardlow:12/34-O: danger")]
    [InlineData("12/34-O", "it is ardlow:12/34-O")]
    public void Words_name_a_number_once(string written, string beginning)
    {
        var text = _numbers.Judge(written).Text;
        Assert.StartsWith(beginning, text, StringComparison.Ordinal);
        Assert.Equal(1, text.Split("12/34-O").Length - 1);
    }

    [Theory]
    [InlineData("on request", true)]
    [InlineData("", true)]
    [InlineData("–", true)]
    [InlineData("0", false)] // a price of nothing is a fault, not the lack of a price
    [InlineData("84.005", false)]
    [InlineData("84.00", false)]
    public void Row_without_a_price_has_no_digit_where_it_should_stand(string cell, bool isUnpriced) => Assert.Equal(isUnpriced, Line(cell).IsUnpriced);

    [Theory]
    [InlineData("Part number,Description,Price,Qty", "number=1 price=3 quantity=4 note=2")]
    [InlineData("Teile-Nr.,Bezeichnung,Preis (netto) EUR,Bestand,VPE,Zustand,Altteilpfand", "number=1 price=3 quantity=4 pack=5 condition=6 core-deposit=7 note=2")]
    [InlineData("Désignation,Référence,Prix unitaire,État,Consigne", "number=2 price=3 condition=4 core-deposit=5 note=1")]
    [InlineData("Artikelnummer,Benämning,À-pris,Antal,Skick", "number=1 price=3 quantity=4 condition=5 note=2")]
    [InlineData("Descripción,Código,Precio,Existencias,Estado", "number=2 price=3 quantity=4 condition=5 note=1")]
    public void Columns_are_known_by_their_heads(string heads, string mapped) => Assert.Equal(mapped, Mapped([heads, string.Join(',', heads.Split(',')
        .Select(_ => "x"))]));

    // No head says anything; the second column holds known numbers, the third amounts, the fourth small whole numbers.
    [Fact]
    public void Columns_without_telling_heads_are_known_by_what_they_hold()
    {
        Assert.Equal("number=2 price=3 quantity=4", Mapped(["a,b,c,d", "one,12/34-O,84.00,2", "two,77-1,9.50,11"]));
        Assert.Equal("number=2 price=3 quantity=4", Mapped(["one,12/34-O,84.00,2", "two,77-1,9.50,11"])); // and no row of heads at all
    }

    [Fact]
    public void What_the_user_says_outranks_heads_and_content()
    {
        var table = TableOf(["Number,Alt,Price", "12/34-O,77-1,84.00"]);
        var given = new Dictionary<PriceColumn, int?> { [PriceColumn.Number] = 1, [PriceColumn.Quantity] = null };
        var mapping = PriceListMapping.Propose(table, _numbers.IsKnown, given);
        Assert.Equal(("Alt", "you said so"), (mapping.Find(PriceColumn.Number)?.Head, mapping.Find(PriceColumn.Number)?.Because));
        Assert.Equal(["Number"], mapping.Unused);
    }

    [Theory]
    [InlineData("84.00", "84.00")]
    [InlineData("84,00", "84.00")]
    [InlineData("1.299,00 €", "1299.00")]
    [InlineData("€ 1 299,00", "1299.00")]
    [InlineData("EUR 1,299.00", "1299.00")]
    [InlineData("1'299.50", "1299.50")]
    [InlineData("84,-", "84.00")]
    [InlineData("1.299.000", "1299000.00")]
    [InlineData("84", "84.00")]
    public void Price_is_read_in_the_usual_written_forms(string cell, string amount) => Assert.Equal(new Money(amount, "EUR"), Line(cell).Price);

    [Theory]
    [InlineData("1.299")] // 1299 or 1.299?
    [InlineData("1,299")]
    [InlineData("1.29,00")]
    [InlineData("84.005")]
    [InlineData("ask")]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("-5.00")]
    [InlineData("£84.00")] // another currency
    [InlineData("84.00 SEK")]
    public void Price_that_can_mean_two_things_or_nothing_is_a_fault_with_its_mend(string cell)
    {
        var fault = Assert.Single(Line(cell).Faults);
        Assert.Equal("Price", fault.Column);
        Assert.NotEmpty(fault.Mend);
    }

    // 12.345,60 settles the comma for the column: 1.299 is then 1299.
    [Fact]
    public void Column_settles_what_one_cell_leaves_open()
    {
        Assert.Equal(new Money("1299.00", "EUR"), Lines(["Number,Price", "A-1,\"12.345,60\"", "A-2,1.299"], null)[1].Price);
        Assert.Equal(new Money("1299.00", "EUR"), Lines(["Number,Price", "A-1,1.299"], ',')[0].Price);
        Assert.True(Lines(["Number,Price", "A-1,84.50"], ',')[0].IsFaulty); // a point where commas are said to be
    }

    // The same words as of any listing: a list reads 1.299 as a page does.
    [Theory]
    [InlineData("１２.50", "12.50")] // full-width digits
    [InlineData("84.00 net", "84.00")]
    [InlineData("1.299:-", null)]
    [InlineData("from 20.00", null)]
    [InlineData("10.00 - 20.00", null)]
    [InlineData("10.00 / 20.00", null)]
    public void Price_is_read_by_the_reader_of_listings(string cell, string? amount) => Assert.Equal(amount, Line(cell).Price?.Amount);

    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public void Cell_of_more_than_a_hundred_characters_is_words(int length, bool isRead) =>
        Assert.Equal(isRead, Line("84.00 " + new string('x', length - 6)).Price is not null);

    [Fact]
    public void Mark_of_a_column_says_which_cell_settles_it_and_which_cells_that_settles()
    {
        var mark = MarkOf(["Number,Price", "A-1,1.299", "A-2,\"12,50\"", "A-3,2.450"], null);
        Assert.Equal((',', "12,50 in line 3 can mean nothing else; that settles 1.299 and 1 more"), (mark.Mark, mark.Because));
        Assert.Equal("you said so", MarkOf(["Number,Price", "A-1,1.299"], ',').Because);
    }

    [Fact]
    public void Column_in_which_every_price_is_open_is_asked_and_one_that_contradicts_itself_is_not()
    {
        var open = MarkOf(["Number,Price", "A-1,1.299", "A-2,84", "A-3,2.450"], null);
        Assert.Equal((true, null), (open.IsAsked, open.Mark));
        Assert.Equal(["1.299", "2.450"], open.Open);
        var mixed = MarkOf(["Number,Price", "A-1,\"12,50\"", "A-2,12.50"], null);
        Assert.Equal((false, null, "12,50 in line 2 and 12.50 in line 3 contradict each other, so each price is read by itself"), (mixed.IsAsked, mixed.Mark, mixed.Because));
        Assert.False(MarkOf(["Number,Price", "A-1,84"], null).IsAsked);
    }

    [Theory]
    [InlineData("gebraucht", ItemCondition.Used)]
    [InlineData("Neuf", ItemCondition.New)]
    [InlineData("renoverad", ItemCondition.Refurbished)]
    [InlineData("para piezas", ItemCondition.Damaged)]
    [InlineData("", ItemCondition.NotStated)]
    public void Condition_is_read_in_several_languages(string cell, ItemCondition condition) =>
        Assert.Equal(condition, Lines(["Number,Price,Condition", $"A-1,84.00,{cell}"], null)[0].Condition);

    [Fact]
    public void Condition_in_unknown_words_is_a_fault_and_not_silently_dropped() =>
        Assert.Equal("Condition", Assert.Single(Lines(["Number,Price,Condition", "A-1,84.00,grade B"], null)[0].Faults).Column);

    [Fact]
    public void List_without_a_column_of_packs_prices_single_pieces_and_an_empty_cell_is_not_known()
    {
        Assert.Equal(1, Lines(["Number,Price", "A-1,84.00"], null)[0].Pack);
        Assert.Null(Lines(["Number,Price,Pack", "A-1,84.00,"], null)[0].Pack);
        Assert.Equal(12, Lines(["Number,Price,Pack", "A-1,84.00,12"], null)[0].Pack);
        Assert.True(Lines(["Number,Price,Pack", "A-1,84.00,0"], null)[0].IsFaulty);
    }

    private static PriceListLine Line(string cell) => Lines(["Number,Price", $"A-1,\"{cell}\""], null)[0];

    private static List<PriceListLine> Lines(string[] lines, char? mark) => [.. TableOf(lines).Rows.Select(ListOf(lines, mark).Read)];

    private static PriceMark MarkOf(string[] lines, char? mark) => ListOf(lines, mark).DecimalMark;

    private static PriceList ListOf(string[] lines, char? mark)
    {
        var table = TableOf(lines);
        var mapping = PriceListMapping.Propose(table, _numbers.IsKnown, new Dictionary<PriceColumn, int?>());
        return new PriceList(table, mapping, new PriceListTerms("EUR", mark, ItemCondition.NotStated), _numbers);
    }

    private static string Mapped(string[] lines) => string.Join(' ', PriceListMapping.Propose(TableOf(lines), _numbers.IsKnown, new Dictionary<PriceColumn,
        int?>()).Columns
        .Select(column => $"{Codes.Of(column.Holds)}={column.Column}"));

    /// <summary>Cells apart by commas; a comma inside quotes belongs to its cell.</summary>
    private static PriceListTable TableOf(string[] lines) =>
        PriceListTable.Of(lines.Select((line, index) => new PriceListRow(index + 1, [.. Hidden(line).Split(',').Select(cell => cell.Replace(';',
            ','))])))!; // never empty

    private static string Hidden(string line) => string.Concat(line.Split('"').Select((piece, at) => at % 2 == 1 ? piece.Replace(',', ';') : piece));
}
