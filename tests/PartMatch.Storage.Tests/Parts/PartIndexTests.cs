using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Parts;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.History;
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
        var (end, index) = _store.Index();
        _temp.Load(SampleBook.Family().Remove("numbers.csv").Change("parts.csv", "Front bush wide", "Wide bearing").Add("parts.csv", "marl:S-99,bush,Late seal,,").Files);
        var later = _store.Index(index, end, 5_000);

        Assert.NotNull(later);
        Assert.NotSame(index, later.Value.Index);
        string[] asked = ["", "s", "s100", "late", "wide bear", "s99", "b", "cast9", "i1", "seal", "bush", "m"];
        Assert.All(asked, query => AssertAlike(query, later.Value.Index));

        // And once more on top of that, as it was at first.
        _temp.Load(SampleBook.Family().Files);
        var last = _store.Index(later.Value.Index, later.Value.End, 5_000);
        Assert.NotNull(last);
        Assert.All(asked, query => AssertAlike(query, last.Value.Index));

        // More parts have changed than are read, however many rows of the history tell of one of them.
        Assert.Null(_store.Index(index, end, 1));
        Assert.Null(new NumberStore(_temp.Database).Since(end, 1));
    }

    // An index from before parts were removed: a page has gaps then, and what is behind it is still to be reached.
    [Fact]
    public void Pages_go_on_behind_parts_that_are_gone()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Add("parts.csv", "marl:A-1,bush,Gone,,").Add("parts.csv", "marl:A-2,bush,Gone too,,").Files);
        var (_, index) = _store.Index();
        _temp.Load(SampleBook.Family().Files);

        var (found, cursor) = (new List<string>(), (string?)null);
        do
        {
            var page = _store.Search("", 2, cursor, index);
            found.AddRange(page.Parts.Select(part => part.Part));
            cursor = page.Cursor;
        }
        while (cursor is not null);

        Assert.Equal(_store.Search("", 100, null).Parts.Select(part => part.Part), found);
    }

    [Fact]
    public void Index_follows_changes_after_which_none_of_the_changed_parts_is_left_or_none_has_changed()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Add("parts.csv", "marl:A-1,bush,Gone,,").Files);
        var (end, index) = _store.Index();
        _temp.Load(SampleBook.Family().Files);
        var later = _store.Index(index, end, 5_000);
        Assert.NotNull(later);
        AssertAlike("", later.Value.Index);

        var same = _store.Index(later.Value.Index, later.Value.End, 5_000);
        Assert.NotNull(same);
        Assert.Same(later.Value.Index, same.Value.Index);
    }

    // The older base has as many changes by now as the one that was indexed, and others.
    [Fact]
    public void Another_base_in_place_of_this_one_shows_though_its_history_is_no_shorter()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        using var kept = new KeptCopy(_temp.Path);
        _temp.Load(SampleBook.Family().Add("parts.csv", "marl:A-1,bush,Gone,,").Files);
        var (end, index) = _store.Index();

        kept.PutBack();
        _temp.Load(SampleBook.Family().Add("parts.csv", "marl:A-2,bush,Here,,").Files);
        _temp.Load(SampleBook.Family().Add("parts.csv", "marl:A-3,bush,Here,,").Files);

        Assert.Equal(end.Change + 1, _store.Index().End.Change);
        Assert.Null(_store.Index(index, end, 5_000));
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
