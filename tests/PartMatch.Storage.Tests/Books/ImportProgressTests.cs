using System.Globalization;
using System.Text;
using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

/// <summary>How far an import is, and what is left of one that was stopped. A book of 5,001 rows: its head, and 5,000 makers.</summary>
public sealed class ImportProgressTests : IDisposable
{
    private const int Makers = 5_000;

    private static readonly ImportStage[] _checking =
        [ImportStage.Reading, ImportStage.CheckingCells, ImportStage.CheckingReferences, ImportStage.CheckingMeaning];

    private readonly TempBase _temp = new();

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void Every_stage_is_told_in_order_and_goes_over_every_row()
    {
        var told = new List<ImportProgress>();
        Assert.IsType<ImportOutcome.Imported>(Import(told.Add));

        Assert.Equal([.. _checking, ImportStage.Storing, ImportStage.Recording, ImportStage.Finishing], told.Select(progress => progress.Stage).Distinct());
        Assert.Equal([0, 2_000, 4_000], told.Where(progress => progress.Stage == ImportStage.CheckingCells).Select(progress => progress.Rows));
        Assert.Equal([0, 2_000, 4_000], told.Where(progress => progress.Stage == ImportStage.Storing).Select(progress => progress.Rows));
        Assert.All(told.Where(progress => progress.Stage != ImportStage.Reading), progress => Assert.Equal(Makers + 1, progress.Total));

        // Two headers are lines and no rows.
        Assert.All(told.Where(progress => progress.Stage == ImportStage.Reading), progress => Assert.Equal(Makers + 3, progress.Total));
    }

    [Fact]
    public void Dry_run_ends_with_the_checks()
    {
        var told = new List<ImportProgress>();
        Assert.IsType<ImportOutcome.Checked>(_temp.Books.Import(Book("one"), ImportMode.Add, dryRun: true, TestContext.Current.CancellationToken, tell: told.Add));
        Assert.Equal(_checking, told.Select(progress => progress.Stage).Distinct());
    }

    [Theory]
    [InlineData(ImportStage.Reading)]
    [InlineData(ImportStage.CheckingCells)]
    [InlineData(ImportStage.CheckingReferences)]
    [InlineData(ImportStage.Storing)]
    [InlineData(ImportStage.Recording)]
    public void Import_that_is_stopped_leaves_nothing_of_it(ImportStage at)
    {
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => Import(progress => StopAt(progress, at, stop), stop));

        Assert.Empty(_temp.Books.List());
        Assert.IsType<ImportOutcome.Imported>(Import()); // and nothing stands in the way of the next
    }

    [Theory]
    [InlineData(ImportStage.Storing)]
    [InlineData(ImportStage.Recording)]
    public void Replacement_that_is_stopped_leaves_the_old_book_whole(ImportStage at)
    {
        Import();
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => _temp.Books.Import(
            Book("two"), ImportMode.Replace, dryRun: false, stop.Token, tell: progress => StopAt(progress, at, stop)));

        BookAssert.Equal(Book("one"), _temp.Books.Export("list")!);
    }

    [Fact]
    public void Import_that_is_stopped_when_it_finishes_is_stored()
    {
        using var stop = new CancellationTokenSource();
        Assert.IsType<ImportOutcome.Imported>(Import(progress => StopAt(progress, ImportStage.Finishing, stop), stop));
        BookAssert.Equal(Book("one"), _temp.Books.Export("list")!);
    }

    // All rows are written and none is committed when the history is told of them.
    [Fact]
    public void Readers_are_answered_by_the_base_as_it_was_while_an_import_writes()
    {
        Import();
        IReadOnlyList<BookSummary>? seen = null;
        _temp.Books.Import(Book("two"), ImportMode.Replace, dryRun: false, TestContext.Current.CancellationToken, tell: progress =>
        {
            if (progress.Stage == ImportStage.Recording && seen is null)
            {
                seen = _temp.Books.List();
                BookAssert.Equal(Book("one"), _temp.Books.Export("list")!);
            }
        });

        Assert.Equal(["list"], seen!.Select(book => book.Book)); // the stage was told
        BookAssert.Equal(Book("two"), _temp.Books.Export("list")!);
    }

    [Fact]
    public void Rows_in_any_order_come_out_in_the_order_of_their_keys()
    {
        var (sound, lines) = (Book("one"), Encoding.UTF8.GetString(Book("one").Find("makers.csv")!.Content.Span).TrimEnd('\n').Split('\n'));
        var turned = string.Concat(lines.Take(1).Concat(lines.Skip(1).Reverse()).Select(line => line + "\n"));
        _temp.Import(new BookFiles([sound.Find("book.csv")!, new BookFile("makers.csv", Encoding.UTF8.GetBytes(turned))]));

        BookAssert.Equal(sound, _temp.Books.Export("list")!);
    }

    [Fact]
    public void Book_of_more_lines_than_are_read_is_refused_before_it_is_read()
    {
        var makers = new byte[10_000_001];
        Array.Fill(makers, (byte)'\n');
        var refused = Assert.IsType<ImportOutcome.Refused>(_temp.Import(new BookFiles([Book("one").Find("book.csv")!, new BookFile("makers.csv", makers)])));

        var error = Assert.Single(refused.Errors);
        Assert.Equal("the files of the book have 10000003 lines together, at most 10000000 are read", error.Reason);
    }

    private static void StopAt(ImportProgress progress, ImportStage at, CancellationTokenSource stop)
    {
        if (progress.Stage == at)
        {
            stop.Cancel();
        }
    }

    private ImportOutcome Import(Action<ImportProgress>? tell = null, CancellationTokenSource? stop = null) =>
        _temp.Books.Import(Book("one"), ImportMode.Add, dryRun: false, stop?.Token ?? TestContext.Current.CancellationToken, tell: tell);

    private static BookFiles Book(string name)
    {
        var makers = new StringBuilder("maker,name\n");
        for (var maker = 0; maker < Makers; maker++)
        {
            makers.Append(CultureInfo.InvariantCulture, $"maker-{maker:0000},The {name} {maker}\n");
        }

        (string Name, string Text)[] files =
            [("book.csv", "format,book,kind,title,maker,uses,licence,note\n1,list,common,Many makers,,,,\n"), ("makers.csv", makers.ToString())];
        return new BookFiles(files.Select(file => new BookFile(file.Name, Encoding.UTF8.GetBytes(file.Text))));
    }
}
