using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>What differs between two states of one book, row by row.</summary>
internal static class BookSteps
{
    /// <param name="before">Null when there was no such book.</param>
    /// <returns>
    /// Table by table: what is there now in its order, then what is gone in order of the keys; rows that are the same are left out. Made as it is read.
    /// </returns>
    public static IEnumerable<RowStep> Between(BookDraft? before, BookDraft after)
    {
        foreach (var table in BookTables.All)
        {
            var old = (before?.Declared(table) ?? []).ToDictionary(RowKey.Of, row => row.Cells, StringComparer.Ordinal);
            foreach (var row in after.Declared(table))
            {
                var key = RowKey.Of(row);
                if (!old.Remove(key, out var was) || !was.SequenceEqual(row.Cells))
                {
                    yield return new RowStep(table, key, was, row.Cells);
                }
            }

            foreach (var (key, cells) in old.OrderBy(row => row.Key, StringComparer.Ordinal))
            {
                yield return new RowStep(table, key, cells, null);
            }
        }
    }
}
