using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Books.Merge;

/// <summary>Two states of one book, row by row.</summary>
internal sealed class BookMeeting
{
    private readonly List<BookRow> _onlyThere = [];
    private readonly List<(BookRow Here, BookRow There, IReadOnlyList<MergeConflict> Conflicts)> _differing = [];
    private int _same;

    public BookMeeting(BookDraft here, BookDraft there)
    {
        foreach (var table in BookTables.All)
        {
            var known = here.Declared(table).ToDictionary(RowKey.Of, StringComparer.Ordinal);
            foreach (var row in there.Declared(table).OrderBy(RowKey.Of, StringComparer.Ordinal))
            {
                Meet(known.GetValueOrDefault(RowKey.Of(row)), row);
            }
        }

        Conflicts = [.. _differing.SelectMany(pair => pair.Conflicts)];
    }

    /// <summary>In order of file, key and column.</summary>
    public IReadOnlyList<MergeConflict> Conflicts { get; }

    /// <summary>Makes the rows what the decisions say; every conflict must be decided.</summary>
    /// <returns>The rows that were put in.</returns>
    public IReadOnlyList<BookRow> Decide(BookEdit edit, IReadOnlyDictionary<MergeConflict, bool> takesThere)
    {
        var added = _onlyThere.ConvertAll(row => edit.Add(row.Table, [.. row.Cells], row.Line));
        foreach (var (here, there, conflicts) in _differing.Where(pair => pair.Conflicts.Any(conflict => takesThere[conflict])))
        {
            string[] cells = [.. here.Cells];
            foreach (var conflict in conflicts.Where(conflict => takesThere[conflict]))
            {
                cells[here.Table.IndexOf(conflict.Column)] = conflict.There;
            }

            edit.Remove(here);
            added.Add(edit.Add(here.Table, cells, there.Line));
        }

        return added;
    }

    public MergeCounts Count(IReadOnlyDictionary<MergeConflict, bool> takesThere)
    {
        var changed = _differing.Count(pair => pair.Conflicts.Any(conflict => takesThere[conflict]));
        return new MergeCounts(_onlyThere.Count, changed, _differing.Count - changed, _same);
    }

    private void Meet(BookRow? here, BookRow there)
    {
        if (here is null)
        {
            _onlyThere.Add(there);
            return;
        }

        MergeConflict[] conflicts =
        [
            .. there.Table.Columns.Index().Where(column => here[column.Index] != there[column.Index])
                .Select(column => new MergeConflict(there.Table.File, RowKey.Of(there), column.Item.Name, here[column.Index], there[column.Index])),
        ];
        if (conflicts.Length == 0)
        {
            _same++;
        }
        else
        {
            _differing.Add((here, there, conflicts));
        }
    }
}
