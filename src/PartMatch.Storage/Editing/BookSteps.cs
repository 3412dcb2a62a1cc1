using PartMatch.Storage.Books.Checks;
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
            var old = before?.Declared(table) ?? [];
            var (places, isStillThere) = (new KeyPlaces(place => RowKey.Of(old[place]), old.Count), new bool[old.Count]);
            foreach (var (place, row) in old.Index())
            {
                places.Add(RowKey.Of(row), place);
            }

            foreach (var row in after.Declared(table))
            {
                var key = RowKey.Of(row);
                if (places.Find(key) is not { } place)
                {
                    yield return new RowStep(table, key, null, row.Cells);
                    continue;
                }

                isStillThere[place] = true;
                var was = old[place].Cells;
                if (!was.SequenceEqual(row.Cells))
                {
                    yield return new RowStep(table, key, was, row.Cells);
                }
            }

            foreach (var (_, row) in old.Index().Where(row => !isStillThere[row.Index]).OrderBy(row => RowKey.Of(row.Item), StringComparer.Ordinal))
            {
                yield return new RowStep(table, RowKey.Of(row), row.Cells, null);
            }
        }
    }
}
