using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Parts;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Parts;

/// <summary>The index finds what looking at every row finds: the same parts in the same order, page by page.</summary>
public sealed class PartIndexTests : IDisposable
{
    private readonly TempBase _temp = new();
    private readonly PartStore _store;

    public PartIndexTests() => _store = new PartStore(_temp.Database);

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void Demo_books_answer_alike_by_the_index_and_by_every_row()
    {
        _temp.Load(SeedBooks.InOrder().Select(book => book.Files));
        var (_, index) = _store.Index();
        var parts = _store.Search("", int.MaxValue - 1, null).Parts;
        var dice = new Random(20261127);
        var asked = new List<string> { "", " ", "p", "1", "-", ".", "pump", "PUMP seal", "seal pump", "\u00F6l", "a b c", "no such thing", "\uD83D\uDD27", "%", "\n", "0" };
        for (var question = 0; question < 150; question++)
        {
            var part = parts[dice.Next(parts.Count)];
            var words = part.Name.Split(' ');
            asked.Add(Piece(part.Number, dice));
            asked.Add(Piece(words[dice.Next(words.Length)], dice) + " " + Piece(words[dice.Next(words.Length)], dice));
            asked.Add(Piece(words[dice.Next(words.Length)], dice));
        }

        Assert.True(parts.Count > 400, $"{parts.Count} parts are too few to say anything");
        Assert.All(asked, query => AssertAlike(query, index));
    }

    [Fact]
    public void Parts_that_changed_since_are_found_as_they_stand()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        var (change, index) = _store.Index();
        _temp.Load(SampleBook.Family().Remove("numbers.csv").Change("parts.csv", "Front bush wide", "Wide bearing").Add("parts.csv", "marl:S-99,bush,Late seal,,").Files);
        var later = _store.Index(index, change, 5_000);

        Assert.NotNull(later);
        Assert.NotSame(index, later.Value.Index);
        string[] asked = ["", "s", "s100", "late", "wide bear", "s99", "b", "cast9", "i1", "seal", "bush", "m"];
        Assert.All(asked, query => AssertAlike(query, later.Value.Index));

        // And once more on top of that, as it was at first.
        _temp.Load(SampleBook.Family().Files);
        var last = _store.Index(later.Value.Index, later.Value.Change, 5_000);
        Assert.NotNull(last);
        Assert.All(asked, query => AssertAlike(query, last.Value.Index));

        // More parts have changed than are read, however many rows of the history tell of one of them.
        Assert.Null(_store.Index(index, change, 1));
        Assert.Null(new NumberStore(_temp.Database).Since(change, 1));
    }

    private static string Piece(string text, Random dice)
    {
        var from = dice.Next(2) == 0 ? 0 : dice.Next(text.Length);
        return text.Substring(from, 1 + dice.Next(Math.Min(6, text.Length - from)));
    }

    private void AssertAlike(string query, PartIndex index)
    {
        const int Limit = 7;
        string? cursor = null;
        for (var page = 0; page < 4; page++)
        {
            var (found, expected) = (_store.Search(query, Limit, cursor, index), _store.Search(query, Limit, cursor));
            Assert.Equal(expected.Parts, found.Parts);
            Assert.Equal((expected.Total, expected.Cursor), (found.Total, found.Cursor));
            if ((cursor = found.Cursor) is null)
            {
                return;
            }
        }
    }
}
