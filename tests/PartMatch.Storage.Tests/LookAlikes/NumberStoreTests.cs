using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Books;
using PartMatch.Storage.History;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Editing;
using PartMatch.Storage.Tests.History;
using Xunit;

namespace PartMatch.Storage.Tests.LookAlikes;

public sealed class NumberStoreTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly NumberStore _store;

    public NumberStoreTests() => _store = new NumberStore(_base.Base.Database);

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Own_and_further_numbers_come_with_the_part_they_stand_on()
    {
        Assert.Equal(
            [
                ("B12", "marl", NumberSort.Service, "marl:B-1/2"), ("B13", "marl", NumberSort.Service, "marl:B-1/3"), ("B77", "orrin", NumberSort.Service, "orrin:B-77"),
                ("CAST9", "orrin", NumberSort.CastingMark, "marl:B-1/2"), ("CAST9", "orrin", NumberSort.CastingMark, "marl:B-1/3"),
                ("I1", "marl", NumberSort.Service, "marl:I-1"), ("S100", "marl", NumberSort.Service, "marl:S-100"), ("S100", "orrin", NumberSort.Supplier, "marl:I-1"),
            ],
            _store.All().Numbers.Select(number => (number.Key, number.Maker, number.Sort, number.Part)).Order());
        Assert.Equal("CAST 9", _store.All().Numbers.First(number => number.Key == "CAST9").Written);
    }

    // B12, B13 and B77: the key asked about is shorter than six characters, so one edit is near.
    [Fact]
    public void Numbers_near_a_key_are_those_that_an_index_over_all_finds()
    {
        var all = new LookAlikeIndex(_store.All().Numbers);
        foreach (var key in (string[])["B12", "CAST9", "S100X", "X"])
        {
            Assert.Equal(all.Find(key).Select(near => near.Number), new LookAlikeIndex(_store.Near(key).Numbers).Find(key).Select(near => near.Number));
        }

        Assert.Equal(["B12", "B13"], _store.Near("B12").Numbers.Select(number => number.Key).Order());
    }

    [Fact]
    public void Nothing_has_changed_since_the_last_change()
    {
        var since = _store.Since(_store.All().End, 10);
        Assert.NotNull(since);
        Assert.Empty(since.Parts);
        Assert.Equal(_store.All().End, since.End);
    }

    [Fact]
    public void A_change_names_the_parts_it_touches_with_all_their_numbers_and_no_other()
    {
        var before = _store.All().End;
        _base.Done(EditBase.Add("parts", "part=marl:N-5", "kind=bush", "name=New bush"));
        _base.Done(EditBase.Add("sellers", "seller=abel", "name=Abel"));
        var since = Since(before);
        Assert.Equal(["marl:N-5"], since.Parts);
        Assert.Equal("N5", Assert.Single(since.Numbers).Key);
    }

    [Fact]
    public void A_part_that_is_gone_is_named_and_has_no_number()
    {
        var change = _base.Done(EditBase.Add("parts", "part=marl:N-5", "kind=bush", "name=New bush")).Change;
        var before = _store.All().End;
        _base.Undo(change);
        var since = Since(before);
        Assert.Equal(["marl:N-5"], since.Parts);
        Assert.Empty(since.Numbers);
    }

    [Fact]
    public void Further_numbers_of_a_part_come_with_its_own()
    {
        var before = _store.All().End;
        _base.Done(EditBase.Add("numbers", "number=orrin:C-4", "sort=supplier", "part=marl:B-1/2"));
        Assert.Equal(["B12", "C4", "CAST9"], Since(before).Numbers.Select(number => number.Key).Order());
    }

    [Fact]
    public void Imports_are_changes_too_and_too_many_rows_are_not_read()
    {
        var before = _store.All().End;
        Assert.IsType<ImportOutcome.Imported>(_base.Base.Import(
            SampleBook.Family().Add("parts.csv", "marl:X-9,bush,Third bush,,").Add("parts.csv", "marl:X-8,bush,Fourth bush,,").Files, ImportMode.Replace));
        Assert.Equal(["marl:X-8", "marl:X-9"], Since(before).Parts.Order());
        Assert.Null(_store.Since(before, 1));
    }

    // The older base has as many changes by now as the one that was read, and others.
    [Fact]
    public void Another_base_in_place_of_this_one_shows_though_its_history_is_no_shorter()
    {
        using var kept = new KeptCopy(_base.Base.Path);
        _base.Done(EditBase.Add("parts", "part=marl:N-5", "kind=bush", "name=New bush"));
        _base.Done(EditBase.Add("parts", "part=marl:N-6", "kind=bush", "name=New bush"));
        var before = _store.All().End;

        kept.PutBack();
        foreach (var number in new[] { "7", "8", "9" })
        {
            _base.Done(EditBase.Add("parts", $"part=marl:N-{number}", "kind=bush", "name=New bush"));
        }

        Assert.Equal(before.Change + 1, _store.All().End.Change);
        Assert.Null(_store.Since(before, 100));
    }

    private NumbersChanged Since(HistoryEnd end)
    {
        var since = _store.Since(end, 100);
        Assert.NotNull(since);
        return since;
    }
}
