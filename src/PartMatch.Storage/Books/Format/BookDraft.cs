using PartMatch.Core.Catalogue;
using PartMatch.Core.Photos;

namespace PartMatch.Storage.Books.Format;

/// <summary>The rows of one book, from files or from the base, not yet judged against each other.</summary>
/// <param name="rows">Of the files that are there; null for a file that could not be read.</param>
internal sealed class BookDraft(IReadOnlyDictionary<BookTable, IReadOnlyList<BookRow>?> rows)
{
    /// <summary>The pictures that came with the files, by their names; those of a draft from the base are in the base.</summary>
    public IReadOnlyDictionary<string, Photo> Images { get; init; } = new Dictionary<string, Photo>();

    /// <summary>Row of <c>book.csv</c>; a draft has exactly one.</summary>
    public BookRow Head => Declared(BookTables.Books)[0];

    public string Code => Head["book"];

    /// <summary>A kind that is neither is reported by its cell; what else it could have done wrong is not guessed.</summary>
    public bool IsFamily => Head["kind"] != Codes.Of(BookKind.Common);

    public string[] Uses => Head.List("uses");

    /// <summary>Could the file be read, or is it absent and so known to be empty?</summary>
    public bool IsReadable(BookTable table) => !rows.TryGetValue(table, out var found) || found is not null;

    /// <summary>The rows to be judged, in the order of the file, or of the key when they come from the base.</summary>
    public IEnumerable<BookRow> Rows(BookTable table) => Declared(table).Where(row => !row.IsBroken);

    /// <summary>All rows, those of the wrong width too: what they declare is not missing.</summary>
    public IReadOnlyList<BookRow> Declared(BookTable table) => rows.GetValueOrDefault(table) ?? [];

    public int Count => BookTables.All.Sum(table => Declared(table).Count);

    /// <summary>With packed rows in the order of their keys: SQLite then appends to its trees, instead of looking for the place of every row.</summary>
    public BookDraft InOrder() => new(rows.ToDictionary(table => table.Key, table => table.Value is PackedRows packed ? packed.InOrder() : table.Value))
    {
        Images = Images,
    };

    /// <summary>Per file that has rows, in ordinal order.</summary>
    public IReadOnlyList<FileCount> Counts() =>
        [.. BookTables.All.Where(table => Declared(table).Count > 0).Select(table => new FileCount(table.File, Declared(table).Count))];
}
