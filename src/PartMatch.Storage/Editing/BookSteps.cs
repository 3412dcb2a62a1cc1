using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>What differs between two states of one book, row by row.</summary>
internal static class BookSteps
{
    /// <param name="before">Null when there was no such book.</param>
    /// <returns>In order of table and key; rows that are the same are left out.</returns>
    public static IReadOnlyList<RowStep> Between(BookDraft? before, BookDraft after)
    {
        var steps = new List<RowStep>();
        foreach (var table in BookTables.All)
        {
            var old = ByKey(before?.Declared(table) ?? []);
            var now = ByKey(after.Declared(table));
            steps.AddRange(old.Keys.Union(now.Keys).Order(StringComparer.Ordinal)
                .Select(key => new RowStep(table, key, old.GetValueOrDefault(key), now.GetValueOrDefault(key)))
                .Where(step => step.Before is null || step.After is null || !step.Before.SequenceEqual(step.After)));
        }

        return steps;
    }

    private static Dictionary<string, IReadOnlyList<string>> ByKey(IReadOnlyList<BookRow> rows) =>
        rows.ToDictionary(RowKey.Of, row => row.Cells, StringComparer.Ordinal);
}
