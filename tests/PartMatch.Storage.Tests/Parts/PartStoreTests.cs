using PartMatch.Core.Catalogue;
using PartMatch.Storage.Parts;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Parts;

public sealed class PartStoreTests : IDisposable
{
    private readonly TempBase _temp = new();
    private readonly PartStore _store;

    public PartStoreTests()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        _store = new PartStore(_temp.Database);
    }

    public void Dispose() => _temp.Dispose();

    [Theory]
    [InlineData("B-1/2", null, "marl:B-1/2")]
    [InlineData("b 12", null, "marl:B-1/2")]
    [InlineData("s.100", null, "marl:S-100 marl:I-1")]
    [InlineData("S100", "marl", "marl:S-100")]
    [InlineData("S100", "orrin", "marl:I-1")]
    [InlineData("cast9", null, "marl:B-1/2 marl:B-1/3")]
    [InlineData("cast9", "marl", "")]
    [InlineData("nothing", null, "")]
    [InlineData("", null, "")]
    [InlineData("%", null, "")]
    public void Number_finds_the_parts_it_can_mean_own_numbers_first(string number, string? maker, string expected) =>
        Assert.Equal(expected, string.Join(' ', _store.FindByNumber(number, maker).Select(part => part.Id)));

    [Fact]
    public void Casting_mark_adds_no_candidate_to_a_number_that_identifies()
    {
        _temp.Load(SampleBook.Family().Add("parts.csv", "marl:CAST-9,bush,Cast bush,,").Files);
        Assert.Equal(["marl:CAST-9"], _store.FindByNumber("CAST 9", null).Select(part => part.Id));
    }

    [Theory]
    [InlineData("marl:B-1/2", "marl:B-1/2")]
    [InlineData("marl:b12", "marl:B-1/2")]
    [InlineData("orrin:B12", null)]
    [InlineData("B-1/2", null)]
    [InlineData("", null)]
    public void Part_is_found_by_maker_and_number_key(string id, string? expected) => Assert.Equal(expected, _store.FindPart(id)?.Id);

    [Fact]
    public void Parts_of_a_kind_come_from_every_book() =>
        Assert.Equal(["marl:B-1/2", "marl:B-1/3", "orrin:B-77"], _store.ListOfKind("bush").Select(part => part.Id));

    [Fact]
    public void Record_holds_everything_that_is_said_about_a_part()
    {
        var record = _store.FindRecord("marl:b-12");
        Assert.NotNull(record);
        Assert.Equal(("lark-2", "Marl Engines", "bush"), (record.Book, record.MakerName, record.Kind.Code));
        Assert.Equal("first line\nsecond \"line\", with a comma", record.Part.Note);
        Assert.Equal([("B-1/2", NumberSort.Service), ("CAST 9", NumberSort.CastingMark)], record.Numbers.Select(number => (number.Written, number.Sort)));
        var fitment = Assert.Single(record.Fitments);
        Assert.Equal(("lark-2", "Front bush", "la", "front-bush", 1), (fitment.Family, fitment.PositionName, fitment.Fitment.Variant, fitment.Fitment.Position, fitment.Fitment.Quantity));
        Assert.Equal("marl:B-1/3", Assert.Single(record.ReplacedBy).NewPart);
        Assert.Empty(record.Replaces);
        Assert.Empty(record.Holds);
        Assert.Equal([new ContentsRow("marl:S-100", "marl:B-1/2", 2, Certainty.Certain, null)], record.HeldIn);
    }

    [Fact]
    public void Record_of_a_set_lists_what_it_holds()
    {
        var record = _store.FindRecord("marl:S-100");
        Assert.Equal([(2, Certainty.Certain), (null, Certainty.Possible)], record?.Holds.Select(row => (row.Quantity, row.Certainty)));
        Assert.Null(_store.FindRecord("marl:S-101"));
    }

    [Theory]
    [InlineData("b-1", "marl:B-1/2 marl:B-1/3")]
    [InlineData("77", "orrin:B-77")]
    [InlineData("s100", "marl:I-1 marl:S-100")]
    [InlineData("bush", "marl:B-1/2 marl:B-1/3 orrin:B-77")]
    [InlineData("fr bu", "marl:B-1/2 marl:B-1/3")]
    [InlineData("ush", "")]
    [InlineData("WIDE bush", "marl:B-1/3")]
    [InlineData("s", "marl:I-1 marl:S-100 marl:B-1/2 marl:B-1/3")]
    [InlineData("%", "")]
    [InlineData("' or 1=1 --", "")]
    [InlineData("", "marl:B-1/2 marl:B-1/3 marl:I-1 marl:S-100 orrin:B-77")]
    public void Search_finds_numbers_by_beginning_then_by_content_then_names(string query, string expected)
    {
        var page = _store.Search(query, 50, null);
        Assert.Equal(expected, string.Join(' ', page.Parts.Select(part => part.Part)));
        Assert.Equal(page.Parts.Count, page.Total);
        Assert.Null(page.Cursor);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Pages_join_to_the_whole(int limit)
    {
        var whole = _store.Search("s", 50, null).Parts;
        var found = new List<PartSummary>();
        for (string? cursor = null; found.Count == 0 || cursor is not null;)
        {
            var page = _store.Search("s", limit, cursor);
            Assert.Equal(whole.Count, page.Total);
            found.AddRange(page.Parts);
            cursor = page.Cursor;
        }

        Assert.Equal(whole, found);
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("????")]
    [InlineData("")]
    public void Foreign_cursor_is_refused(string cursor) => Assert.Throws<ArgumentException>(() => _store.Search("s", 2, cursor));
}
