using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Tests.Editing;
using PartMatch.Storage.Tests.Keeping;
using Xunit;

namespace PartMatch.Storage.Tests.LookAlikes;

public sealed class LookAlikeStampTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly LookAlikeStamp _stamp;

    public LookAlikeStampTests() => _stamp = new LookAlikeStamp(_base.Base.Database);

    public static TheoryData<string> Read => [.. BookTables.All.Except(LookAlikeStamp.Unread).Select(table => table.Name)];

    public void Dispose() => _base.Dispose();

    // Nothing can depend on a table that is not there.
    [Fact]
    public void What_look_alikes_are_decided_from_is_read_without_the_tables_that_do_not_count()
    {
        string[] unread = [.. LookAlikeStamp.Unread.Select(table => table.Name), "images", "changed_rows"];
        KeptBase.Execute(_base.Base.Path, string.Concat(unread.Select(table => $"drop table {table};")));

        Assert.NotNull(new FamilyStore(_base.Base.Database).FindFamily(EditBase.Book));
        Assert.NotEmpty(new FamilyStore(_base.Base.Database).List());
        Assert.NotEmpty(new NumberStore(_base.Base.Database).All().Numbers);
        Assert.NotEmpty(_stamp.Get());
    }

    // The other way round: a row less in any other table shows.
    [Theory]
    [MemberData(nameof(Read))]
    public void Any_row_of_a_table_that_counts_changes_the_stamp(string table)
    {
        var before = _stamp.Get();
        var key = Key(table);
        var rows = Count(table);
        Assert.True(rows > 0, $"{table} has rows in the sample");

        KeptBase.Execute(_base.Base.Path, $"delete from \"{table}\" where ({key}) = (select {key} from \"{table}\" limit 1)");

        Assert.Equal(rows - 1, Count(table));
        Assert.NotEqual(before, _stamp.Get());
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

    private string Key(string table) => string.Join(", ", BookTables.All.Single(one => one.Name == table).Key
        .Select(column => $"\"{column}\"").Prepend("book").Distinct());

    private long Count(string table) => KeptBase.Read<long>(_base.Base.Path, $"select count(*) from \"{table}\"");
}
