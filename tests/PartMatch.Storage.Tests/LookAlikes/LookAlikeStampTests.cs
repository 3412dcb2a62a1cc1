using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Editing;
using PartMatch.Storage.Tests.Keeping;
using Xunit;

namespace PartMatch.Storage.Tests.LookAlikes;

public sealed class LookAlikeStampTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly LookAlikeStamp _stamp;

    public LookAlikeStampTests() => _stamp = new LookAlikeStamp(_base.Base.Database);

    public static TheoryData<string> Read => [.. BookTables.All.Except(LookAlikeStamp.Unread).Select(table => table.Stem)];

    public static TheoryData<string> Unread => [.. LookAlikeStamp.Unread.Select(table => table.Stem)];

    public void Dispose() => _base.Dispose();

    // Nothing can depend on a table that is not there.
    [Fact]
    public void What_look_alikes_are_decided_from_is_read_without_the_tables_that_do_not_count()
    {
        string[] unread = [.. LookAlikeStamp.Unread.Select(table => table.Name), "images"];
        KeptBase.Execute(_base.Base.Path, string.Concat(unread.Select(table => $"drop table {table};")));

        Assert.NotNull(new FamilyStore(_base.Base.Database).FindFamily(EditBase.Book));
        Assert.NotEmpty(new FamilyStore(_base.Base.Database).List());
        Assert.NotEmpty(new NumberStore(_base.Base.Database).All().Numbers);
        Assert.NotEmpty(_stamp.Get());
    }

    // The other way round: what the history tells of any other table shows. Whatever writes a row of a book tells of it in the same transaction.
    [Theory]
    [MemberData(nameof(Read))]
    public void Any_row_of_a_table_that_counts_changes_the_stamp(string table)
    {
        var before = _stamp.Get();
        TellOfRowsGone(table, rows: 1);
        Assert.NotEqual(before, _stamp.Get());
    }

    // The history of the older base ends before what was seen last: nothing in it says what differs.
    [Fact]
    public void Older_base_put_in_place_of_this_one_changes_the_stamp()
    {
        using var live = new SqliteConnection($"Data Source={_base.Base.Path};Pooling=false");
        using var kept = new SqliteConnection("Data Source=:memory:");
        live.Open();
        kept.Open();
        live.BackupDatabase(kept);
        _stamp.Get();
        TellOfRowsGone("parts", rows: 1);
        var before = _stamp.Get();

        kept.BackupDatabase(live);
        var after = _stamp.Get();

        Assert.NotEqual(before, after);
        Assert.Equal(after, _stamp.Get());
    }

    [Theory]
    [MemberData(nameof(Unread))]
    public void No_row_of_another_table_changes_the_stamp(string table)
    {
        var before = _stamp.Get();
        TellOfRowsGone(table, rows: 1);
        Assert.Equal(before, _stamp.Get());
    }

    [Theory]
    [InlineData(5_000)]
    [InlineData(5_001)] // more than are read
    public void Many_rows_at_once_change_the_stamp(int rows)
    {
        var before = _stamp.Get();
        TellOfRowsGone("values", rows);
        Assert.NotEqual(before, _stamp.Get());
    }

    // A book that comes in and goes away again is a change of the base, and of nothing that look-alikes are decided from in the end.
    [Fact]
    public void Replacing_a_book_by_itself_keeps_the_stamp_and_by_another_state_and_back_gives_the_old_one()
    {
        var before = _stamp.Get();
        _base.Base.Load(SampleBook.Family().Files);
        Assert.Equal(before, _stamp.Get());

        _base.Base.Load(SampleBook.Family().Change("parts.csv", "Front bush wide", "Front bush broad").Files);
        Assert.NotEqual(before, _stamp.Get());

        _base.Base.Load(SampleBook.Family().Files);
        Assert.Equal(before, _stamp.Get());
    }

    [Fact]
    public void Any_cell_that_counts_changes_the_stamp_and_taking_it_back_gives_the_old_one()
    {
        var before = _stamp.Get();
        var change = _base.Done(_base.Change("parts", "marl:B-1/2", "note=other")).Change;
        Assert.NotEqual(before, _stamp.Get());

        _base.Undo(change);
        Assert.Equal(before, _stamp.Get());
    }

    // They change with every offer, and no ranking rests on them: whoever shows them reads them anew.
    [Theory]
    [InlineData("insert into part_odds (part_key, offers) values ('marl:B12', 7)")]
    [InlineData("insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong) values ('marl:B12', 'marl:B13', 40, 3)")]
    [InlineData("delete from offers")]
    public void Counts_of_offers_and_deliveries_do_not_change_the_stamp(string sql)
    {
        var before = _stamp.Get();
        KeptBase.Execute(_base.Base.Path, sql);
        Assert.Equal(before, _stamp.Get());
    }

    [Fact]
    public void Items_readings_sellers_and_the_history_do_not_change_the_stamp()
    {
        var before = _stamp.Get();
        _base.Done(
            EditBase.Add("items", "item=it-0100", "part=marl:S-100"), EditBase.Add("readings", "item=it-0100", "feature=nose", "value=tang"),
            EditBase.Add("sellers", "seller=abel", "name=Abel"));
        Assert.Equal(before, _stamp.Get());
    }

    [Fact]
    public void Stamp_is_the_same_instance_until_somebody_commits()
    {
        var before = _stamp.Get();
        Assert.Same(before, _stamp.Get());
        _base.Done(EditBase.Add("sellers", "seller=abel", "name=Abel"));
        Assert.NotSame(before, _stamp.Get());
    }

    private void TellOfRowsGone(string table, int rows) => KeptBase.Execute(_base.Base.Path, $$"""
        insert into changes (book, at, act) values ('{{EditBase.Book}}', '2026-11-27T10:00:00.000Z', 'edit');
        with recursive numbers (number) as (select 1 union all select number + 1 from numbers where number < {{rows}})
        insert into changed_rows (change, "table", "key", before)
        select (select max(change) from changes), '{{table}}', number, '{"note":"gone"}' from numbers;
        """);
}
