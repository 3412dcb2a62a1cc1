using System.Text;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Merge;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Tests.Editing;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class MergeTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly MergeStore _merges;

    public MergeTests() => _merges = new MergeStore(_base.Base.Database, TimeProvider.System);

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Rows_that_only_the_other_book_has_are_added_and_those_it_lacks_stay()
    {
        var other = SampleBook.Family().Remove("pairs.csv").Add("values.csv", "marl:B-1/3,bore,25.60,,,mm,,ev-0002");

        var merged = Assert.IsType<MergeOutcome.Merged>(Merge(other));
        Assert.Equal((1, 0, 0), (merged.Counts.Added, merged.Counts.Changed, merged.Counts.Kept));
        Assert.NotNull(_base.Row("values", "marl:B-1/3,bore,ev-0002"));
        Assert.NotNull(_base.Row("pairs", "marl:S-100,marl:B-1/2"));
        Assert.Equal(Act.Merge, _base.Told(merged.Change ?? 0).Act);
    }

    [Fact]
    public void Same_book_again_changes_nothing()
    {
        var merged = Assert.IsType<MergeOutcome.Merged>(Merge(SampleBook.Family()));
        Assert.Null(merged.Change);
        Assert.True(merged.Counts.Same > 60);
    }

    [Fact]
    public void Cells_that_differ_come_as_a_table_and_nothing_is_stored()
    {
        var before = _base.Everything();
        var undecided = Assert.IsType<MergeOutcome.Undecided>(Merge(Differing()));

        Assert.Equal(
            """
            file,key,column,here,there,take
            positions.csv,injector,name,Injector,Squirter,
            values.csv,"marl:S-100,outer,ev-0001",value,'-0.5,'-0.4,
            variants.csv,la,name,LA pump set,LA pump,

            """,
            Encoding.UTF8.GetString(undecided.Csv));
        Assert.Equal(3, undecided.Open);
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Filled_in_table_decides_cell_by_cell()
    {
        var merged = Assert.IsType<MergeOutcome.Merged>(Merge(Differing(), Decide("here", "there", "there")));

        Assert.Equal((0, 2, 1), (merged.Counts.Added, merged.Counts.Changed, merged.Counts.Kept));
        Assert.Equal("Injector", _base.Row("positions", "injector")?["name"]);
        Assert.Equal("-0.4", _base.Row("values", "marl:S-100,outer,ev-0001")?["value"]);
        Assert.Equal("LA pump", _base.Row("variants", "la")?["name"]);
    }

    [Fact]
    public void Table_that_is_half_filled_in_comes_back_with_what_was_decided()
    {
        var undecided = Assert.IsType<MergeOutcome.Undecided>(Merge(Differing(), Decide("here", "", "there")));

        Assert.Equal(1, undecided.Open);
        Assert.Contains("positions.csv,injector,name,Injector,Squirter,here\n", Encoding.UTF8.GetString(undecided.Csv), StringComparison.Ordinal);
        Assert.Equal("LA pump set", _base.Row("variants", "la")?["name"]);
    }

    [Fact]
    public void Word_that_decides_nothing_is_a_fault_of_its_line()
    {
        var refused = Assert.IsType<MergeOutcome.Refused>(Merge(Differing(), Decide("here", "ther", "there")));

        var error = Assert.Single(refused.Errors);
        Assert.Equal((MergeDecisions.File, 3, "take", "ther", "there"), (error.File, error.Line, error.Column, error.Value, error.Suggestion));
    }

    [Fact]
    public void Table_that_a_spreadsheet_saved_with_semicolons_is_told_as_one_fault()
    {
        var csv = Encoding.UTF8.GetString(Decide("here", "there", "there").Content.Span).Replace(',', ';');
        var refused = Assert.IsType<MergeOutcome.Refused>(Merge(Differing(), new BookFile("conflicts.csv", Encoding.UTF8.GetBytes("\uFEFF" + csv))));

        var error = Assert.Single(refused.Errors);
        Assert.Equal((MergeDecisions.File, 1), (error.File, error.Line));
        Assert.Contains("separated by semicolons, expected commas", error.Reason, StringComparison.Ordinal);
        Assert.Contains("commas between the columns", error.Suggestion, StringComparison.Ordinal);
    }

    [Fact]
    public void Decision_about_a_cell_that_has_changed_since_is_refused()
    {
        var decisions = Decide("here", "there", "there");
        _base.Done(_base.Change("variants", "la", "name=LA set"));

        var refused = Assert.IsType<MergeOutcome.Refused>(Merge(Differing(), decisions));
        Assert.Equal(4, Assert.Single(refused.Errors).Line);
        Assert.Equal("LA set", _base.Row("variants", "la")?["name"]);
    }

    [Fact]
    public void Book_that_would_come_of_it_is_checked_as_a_whole()
    {
        // Sound in itself: there the part is of another kind, and so is the position. Here the position stays what it is.
        var other = SampleBook.Family().Add("fitments.csv", "la,main-shaft,marl:B-9,,,,,,1,").Add("parts.csv", "marl:B-9,bush,Bush,,");

        var refused = Assert.IsType<MergeOutcome.Refused>(Merge(other));
        Assert.Equal(("fitments.csv", 7), (refused.Errors[0].File, refused.Errors[0].Line));
        Assert.Null(_base.Row("parts", "marl:B-9"));
    }

    [Fact]
    public void Dry_run_stores_nothing()
    {
        var before = _base.Everything();
        Assert.IsType<MergeOutcome.Checked>(Merge(Differing(), Decide("there", "there", "there"), dryRun: true));
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Rows_that_would_come_in_are_told_by_file_before_anything_is_stored()
    {
        var other = Differing().Add("makers.csv", "abel,Abel Works").Add("values.csv", "marl:B-1/3,bore,25.60,,,mm,,ev-0002");

        var told = Assert.IsType<MergeOutcome.Checked>(Merge(other, Decide("here", "there", "here"), dryRun: true));

        Assert.Equal([("makers.csv", 1, 0), ("values.csv", 1, 1)], told.Files.Select(file => (file.File, file.Added, file.Changed)));
        var maker = Assert.Single(told.Files[0].Rows);
        Assert.Equal(("makers", "abel", null, "Abel Works"), (maker.Table, maker.Key, maker.Before, maker.After?["name"]));
        Assert.Equal(["marl:B-1/3,bore,ev-0002", "marl:S-100,outer,ev-0001"], told.Files[1].Rows.Select(row => row.Key));
        Assert.Equal(("-0.5", "-0.4"), (told.Files[1].Rows[1].Before?["value"], told.Files[1].Rows[1].After?["value"]));
        Assert.Equal(["value"], told.Files[1].Rows[1].Differs);
        Assert.Empty(Assert.IsType<MergeOutcome.Checked>(Merge(SampleBook.Family(), dryRun: true)).Files);
    }

    [Theory]
    [InlineData(49)]
    [InlineData(50)]
    [InlineData(51)]
    public void Of_a_file_with_many_rows_the_first_are_told_and_all_are_counted(int rows)
    {
        var other = Enumerable.Range(100, rows).Aggregate(SampleBook.Family(), (book, number) => book.Add("makers.csv", $"abel-{number},Abel {number}"));

        var file = Assert.Single(Assert.IsType<MergeOutcome.Checked>(Merge(other, dryRun: true)).Files);
        Assert.Equal((rows, Math.Min(rows, 50)), (file.Added, file.Rows.Count));
        Assert.Equal("abel-100", file.Rows[0].Key);
    }

    [Fact]
    public void Book_of_another_name_is_refused()
    {
        Assert.Equal("shared", Assert.IsType<MergeOutcome.OtherBook>(Merge(SampleBook.Common())).Found);
        Assert.IsType<MergeOutcome.NoBook>(_merges.Merge(
            "wren", SampleBook.Family().Change("book.csv", "lark-2", "wren").Files, null, false, ChangeNote.None, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Merge_can_be_taken_back()
    {
        var before = _base.Everything();
        var merged = Assert.IsType<MergeOutcome.Merged>(Merge(Differing(), Decide("there", "there", "there")));
        Assert.IsType<UndoOutcome.Done>(_base.Undo(merged.Change ?? 0));
        Assert.Equal(before, _base.Everything());
    }

    private static SampleBook Differing() => SampleBook.Family().Change("variants.csv", "LA pump set", "LA pump")
        .Change("positions.csv", "injector,Injector", "injector,Squirter").Change("values.csv", "outer,-0.5", "outer,-0.4");

    /// <summary>The table of <see cref="Differing"/> with the last column filled in, row by row.</summary>
    private BookFile Decide(params string[] take)
    {
        var undecided = Assert.IsType<MergeOutcome.Undecided>(Merge(Differing()));
        var lines = Encoding.UTF8.GetString(undecided.Csv).TrimEnd('\n').Split('\n');
        return new BookFile("conflicts.csv", Encoding.UTF8.GetBytes(string.Join('\n', lines.Select((line, index) => index == 0 ? line : line + take[index - 1]))));
    }

    private MergeOutcome Merge(SampleBook other, BookFile? decisions = null, bool dryRun = false) =>
        _merges.Merge(EditBase.Book, other.Files, decisions, dryRun, new ChangeNote("Ada"), TestContext.Current.CancellationToken);
}
