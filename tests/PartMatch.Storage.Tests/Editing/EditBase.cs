using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Editing;

/// <summary>A base with the two sample books, and short ways to change it.</summary>
internal sealed class EditBase : IDisposable
{
    public const string Book = "lark-2";

    public EditBase()
    {
        Base.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        Rows = new RowStore(Base.Database);
        Edits = new EditStore(Base.Database, TimeProvider.System);
        History = new HistoryStore(Base.Database);
        UndoStore = new UndoStore(Base.Database, TimeProvider.System);
    }

    public TempBase Base { get; } = new();

    public RowStore Rows { get; }

    public EditStore Edits { get; }

    public HistoryStore History { get; }

    public UndoStore UndoStore { get; }

    public void Dispose() => Base.Dispose();

    public EditOutcome Apply(params IReadOnlyList<RowChange> changes) => ApplyTo(Book, changes);

    public EditOutcome ApplyTo(string book, params IReadOnlyList<RowChange> changes) =>
        Edits.Apply(book, changes, new ChangeNote("Ada", "test"), Act.Edit, TestContext.Current.CancellationToken);

    public EditOutcome.Done Done(params IReadOnlyList<RowChange> changes)
    {
        var outcome = Apply(changes);
        Assert.True(outcome is EditOutcome.Done, Show(outcome));
        return (EditOutcome.Done)outcome;
    }

    public UndoOutcome Undo(long change) => UndoStore.Undo(change, ChangeNote.None, TestContext.Current.CancellationToken);

    public ChangeTold Told(long change) => History.List(new HistoryWanted(null, null, null, Limit: 1, Before: change + 1)).Changes[0];

    public IReadOnlyDictionary<string, string>? Row(string table, string key, string book = Book) => Rows.Find(book, table, key)?.Row.Row;

    /// <summary>Every file of both books as text.</summary>
    public string Everything() => string.Join('\n', Base.Books.List().SelectMany(book => Base.Books.Export(book.Book)!.Files.Select(file =>
        $"== {book.Book}/{file.Name}\n{System.Text.Encoding.UTF8.GetString(file.Content.Span)}")));

    /// <summary>A row by "column=value" texts.</summary>
    public static Dictionary<string, string> Cells(params IEnumerable<string> cells) =>
        cells.Select(cell => cell.Split('=', 2)).ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);

    public static RowChange Add(string table, params IEnumerable<string> cells) => new(table, null, null, Cells(cells));

    public static RowChange Remove(string table, string key, string? version = null) => new(table, key, version, null);

    /// <summary>The row as it is, with some cells exchanged; an empty value takes a cell away.</summary>
    public RowChange Change(string table, string key, params IEnumerable<string> cells)
    {
        var found = Rows.Find(Book, table, key)!.Value.Row; // the row of the sample is there
        var row = new Dictionary<string, string>(found.Row, StringComparer.Ordinal);
        foreach (var (column, value) in Cells(cells))
        {
            row[column] = value;
        }

        return new RowChange(table, key, found.Version, row);
    }

    public static string Show(object outcome) => outcome switch
    {
        EditOutcome.Faulty faulty => string.Join('\n', faulty.Faults),
        EditOutcome.InUse inUse => string.Join('\n', inUse.Users),
        UndoOutcome.InUse inUse => string.Join('\n', inUse.Users),
        _ => outcome.ToString() ?? "",
    };
}
