using CsCheck;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Editing;
using Xunit;

namespace PartMatch.Storage.Tests.History;

public sealed class UndoTests : IDisposable
{
    private readonly EditBase _base = new();

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Change_is_told_with_who_when_why_before_and_after()
    {
        var change = _base.Done(_base.Change("variants", "la", "name=LA pump", "serialTo=50000")).Change;

        var told = _base.Told(change);
        Assert.Equal(("lark-2", "Ada", "test", Act.Edit, 1), (told.Book, told.Who, told.Why, told.Act, told.RowCount));
        Assert.EndsWith("Z", told.At, StringComparison.Ordinal);
        var row = Assert.Single(told.Rows);
        Assert.Equal(["name", "serialTo"], row.Differs);
        Assert.Equal(("LA pump set", "LA pump"), (row.Before?["name"], row.After?["name"]));
    }

    [Fact]
    public void Import_and_replacement_are_told_row_by_row()
    {
        _base.Base.Load(SampleBook.Family().Change("variants.csv", "LA pump set", "LA pump").Files);

        var changes = _base.History.List(new("lark-2", null, null, 10, null)).Changes;
        Assert.Equal([Act.Import, Act.Import], changes.Select(change => change.Act));
        Assert.Equal(["name"], Assert.Single(changes[0].Rows).Differs);
        Assert.True(changes[1].RowCount > 60);
        Assert.Equal(HistoryStore.MaxRowsShown, changes[1].Rows.Count);
    }

    [Fact]
    public void Replacement_of_a_book_can_be_taken_back()
    {
        var before = _base.Everything();
        _base.Base.Load(SampleBook.Family().Change("variants.csv", "LA pump set", "LA pump").Remove("pairs.csv").Files);

        Assert.IsType<UndoOutcome.Done>(_base.Undo(Latest()));
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Whole_book_can_be_taken_away_again_and_brought_back()
    {
        var before = _base.Everything();
        Assert.IsType<UndoOutcome.Done>(_base.Undo(Latest()));
        Assert.Null(_base.Base.Books.Export("lark-2"));

        Assert.IsType<UndoOutcome.Done>(_base.Undo(Latest()));
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Book_that_another_uses_stays()
    {
        var inUse = Assert.IsType<UndoOutcome.InUse>(_base.Undo(1));
        Assert.Contains(inUse.Users, user => user.Book == "lark-2");
    }

    [Fact]
    public void Change_on_which_a_later_one_rests_is_refused_and_named()
    {
        var added = _base.Done(EditBase.Add("evidence", "evidence=ev-0010", "grade=reported")).Change;
        _base.Done(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", "value=25.6", "unit=mm", "evidence=ev-0010"));

        var inUse = Assert.IsType<UndoOutcome.InUse>(_base.Undo(added));
        Assert.Equal(["marl:B-1/3,bore,ev-0010"], inUse.Users.Select(user => user.Key));
    }

    [Fact]
    public void Removal_of_what_rested_on_something_gone_since_is_refused_and_named()
    {
        _base.Done(EditBase.Add("evidence", "evidence=ev-0010", "grade=reported"));
        _base.Done(EditBase.Add("values", "part=marl:B-1/3", "feature=bore", "value=25.6", "unit=mm", "evidence=ev-0010"));
        var removed = _base.Done(EditBase.Remove("values", "marl:B-1/3,bore,ev-0010")).Change;
        _base.Done(EditBase.Remove("evidence", "ev-0010"));

        var inUse = Assert.IsType<UndoOutcome.InUse>(_base.Undo(removed));
        Assert.Equal(["evidence ev-0010"], inUse.Users.Select(user => user.Uses));
    }

    [Fact]
    public void Row_changed_again_since_is_refused_and_the_later_change_named()
    {
        var first = _base.Done(_base.Change("variants", "la", "name=LA 1")).Change;
        var second = _base.Done(_base.Change("variants", "la", "name=LA 2")).Change;

        var since = Assert.IsType<UndoOutcome.ChangedSince>(_base.Undo(first));
        Assert.Equal(second, Assert.Single(since.Later).By?.Change);
        Assert.IsType<UndoOutcome.Done>(_base.Undo(second));
        Assert.IsType<UndoOutcome.Done>(_base.Undo(first));
        Assert.Equal("LA pump set", _base.Row("variants", "la")?["name"]);
    }

    [Fact]
    public void Change_is_taken_back_once()
    {
        var change = _base.Done(_base.Change("variants", "la", "name=LA 1")).Change;
        var undo = Assert.IsType<UndoOutcome.Done>(_base.Undo(change)).Change;

        Assert.Equal(undo, Assert.IsType<UndoOutcome.Undone>(_base.Undo(change)).By);
        Assert.Equal((undo, (long?)change), (_base.Told(change).UndoneBy, _base.Told(undo).Undoes));
        Assert.IsType<UndoOutcome.NoChange>(_base.Undo(99_999));
    }

    [Fact]
    public void Any_sequence_of_edits_undone_in_reverse_gives_the_original_export()
    {
        var before = _base.Everything();
        var made = 0;
        Gen.Int[0, 1_000_000].Array[1, 12].Sample(
            seeds =>
            {
                var changes = seeds.Select(seed => Edit(new Random(seed))).OfType<long>().Reverse().ToList();
                made += changes.Count;
                foreach (var change in changes)
                {
                    var outcome = _base.Undo(change);
                    Assert.True(outcome is UndoOutcome.Done, EditBase.Show(outcome));
                }

                return _base.Everything() == before;
            },
            iter: 40, threads: 1);
        Assert.True(made > 60, $"only {made} edits got through");
    }

    private long Latest() => _base.History.List(new(null, null, null, 1, null)).Changes[0].Change;

    /// <summary>One edit at random: of a row that is there, or one that is added. Null when the base refused it.</summary>
    private long? Edit(Random random)
    {
        string[] tables = [.. RowStore.Tables.Where(table => table != "book")];
        var table = tables[random.Next(tables.Length)];
        var rows = _base.Rows.List(EditBase.Book, table, new RowsWanted(null, [], false, 100, null)).Rows;
        if (rows.Count == 0)
        {
            return null;
        }

        var row = rows[random.Next(rows.Count)];
        var cells = new Dictionary<string, string>(row.Row, StringComparer.Ordinal);
        var free = new[] { "note", "name", "source", "how", "author", "value", "condition", "quantity", "uncertainty" }.Where(cells.ContainsKey).ToList();
        if (free.Count > 0)
        {
            cells[free[random.Next(free.Count)]] = $"{random.Next(1, 90)}";
        }

        var keys = RowStore.FindColumns(table)!.Where(column => column.Key && column.Refers is null).Select(column => column.Column).ToList();
        var change = random.Next(4) switch
        {
            0 => new RowChange(table, row.Key, row.Version, null),
            1 when keys.Count > 0 => new RowChange(table, null, null, With(cells, keys[0], $"x-{random.Next(1000)}")),
            2 when keys.Count > 0 => new RowChange(table, row.Key, row.Version, With(cells, keys[0], $"y-{random.Next(1000)}")),
            _ => new RowChange(table, row.Key, row.Version, cells),
        };
        return _base.Apply(change) is EditOutcome.Done done ? done.Change : null;
    }

    private static Dictionary<string, string> With(Dictionary<string, string> cells, string column, string value)
    {
        cells[column] = value;
        return cells;
    }
}
