using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Checks each cell by the rule of its column, puts lists into ordinal order, and finds keys that stand twice.</summary>
internal static class CellChecks
{
    public static void Run(BookDraft draft, ErrorList errors, ImportWatch watch)
    {
        watch.Begin(ImportStage.CheckingCells, draft.Count);
        foreach (var table in BookTables.All)
        {
            foreach (var row in draft.Rows(table))
            {
                for (var column = 0; column < table.Columns.Count; column++)
                {
                    Check(row, column, errors);
                }

                watch.Row();
            }

            CheckKeys(table, draft.Declared(table), errors);
            if (table.FamilyOnly && !draft.IsFamily && draft.Rows(table).FirstOrDefault() is { } first)
            {
                errors.Add(first, null, "a common book describes no engine: only a family book has this file", "move the file to the family's book");
            }
        }
    }

    /// <summary>The same for some rows of a draft whose other rows have passed; a part without its maker is looked up, because a person types it.</summary>
    public static void RunOn(BookScope scope, IReadOnlyList<BookRow> rows, ErrorList errors)
    {
        var draft = scope.Own;
        foreach (var row in rows)
        {
            for (var column = 0; column < row.Table.Columns.Count; column++)
            {
                Check(row, column, errors, scope);
            }

            if (row.Table.FamilyOnly && !draft.IsFamily)
            {
                errors.Add(row, null, "a common book describes no engine: only a family book has such rows", "put it into the family's book");
            }
        }

        // The rows that were there come first, so that a key that stands twice is told of the new row.
        foreach (var table in rows.Select(row => row.Table).Distinct())
        {
            CheckKeys(table, draft.Declared(table), errors);
        }
    }

    private static void Check(BookRow row, int index, ErrorList errors, BookScope? scope = null)
    {
        var column = row.Table.Columns[index];
        var cell = row[index];
        if (cell.Length == 0)
        {
            if (column.Required)
            {
                errors.Add(row, column.Name, $"empty, expected {column.Rule.Expected}");
            }
        }
        else if (column.Rule.FindFault(cell) is { } fault)
        {
            errors.Add(
                row, column.Name, fault,
                () => column.Rule.FindMend(cell) ?? (scope is not null && column.Refers == Refers.Part ? PartNaming.Complete(scope, cell) : null));
        }
        else if (column.Rule.IsList)
        {
            row[index] = InOrder(cell);
        }
    }

    /// <summary>A list cell with its items in ordinal order.</summary>
    public static string InOrder(string list) => string.Join('|', list.Split('|').Order(StringComparer.Ordinal));

    private static void CheckKeys(BookTable table, IReadOnlyList<BookRow> rows, ErrorList errors)
    {
        if (table == BookTables.Books)
        {
            return;
        }

        var places = new KeyPlaces(place => RowKey.Of(rows[place]), rows.Count);
        foreach (var (place, row) in rows.Index())
        {
            if (!row.IsBroken && places.Add(RowKey.Of(row), place) is var first && first != place)
            {
                var other = rows[first];
                errors.Add(
                    row, table.Key[0], $"the key {row.KeyText} ({string.Join(", ", table.Key)}) already stands {other.Place}",
                    other.Line > 0 ? "leave one row out, or correct the key" : "change that row instead, or correct the key");
            }
        }
    }
}
