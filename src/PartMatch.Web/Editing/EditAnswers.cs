using PartMatch.Storage.Editing;

namespace PartMatch.Web.Editing;

/// <summary>Some rows of a table of a book, in order of their keys.</summary>
/// <param name="Columns">What each column may hold, in the order of the file.</param>
/// <param name="Total">How many rows match, on all pages together.</param>
public sealed record RowsAnswer(RowsAsked Asked, IReadOnlyList<ColumnSeen> Columns, int Total, string? Cursor, IReadOnlyList<RowNow> Rows, string Permalink);

public sealed record RowsAsked(string Book, string Table, string? Q, IReadOnlyList<string> Where, bool Used, int Limit, string? Cursor);

/// <summary>One row, with what its columns may hold.</summary>
/// <param name="Changed">The latest change of it; absent when the history has none.</param>
public sealed record RowAnswer(
    RowAsked Asked, IReadOnlyList<ColumnSeen> Columns, string Key, string Version, IReadOnlyDictionary<string, string> Row, ChangeSeen? Changed, string Permalink);

public sealed record RowAsked(string Book, string Table, string Key);

/// <summary>A row as it is in the base.</summary>
/// <param name="Version">To be named in If-Match by whoever changes it.</param>
/// <param name="Row">Its cells as typed; what is not recorded is absent.</param>
/// <param name="Link">Its address.</param>
public sealed record RowNow(string Book, string Table, string Key, string Version, IReadOnlyDictionary<string, string> Row, string Link)
{
    /// <summary>The latest change of it, where it is shown.</summary>
    public ChangeSeen? Changed { get; init; }

    internal static RowNow Of(RowSeen row) => new(row.Book, row.Table, row.Key, row.Version, row.Row, EditLinks.ToRow(row.Book, row.Table, row.Key));
}

/// <summary>What a change has done.</summary>
/// <param name="Change">Its number in the history; absent when nothing was different from what is there.</param>
/// <param name="Rows">The rows that are there now; those removed are left out.</param>
public sealed record EditAnswer(EditAsked Asked, long? Change, IReadOnlyList<RowNow> Rows, string Permalink);

public sealed record EditAsked(string Book, string? Table, string? Key, string? Who, string? Why);

/// <summary>Rows to add, change and remove, as one change.</summary>
/// <param name="Rows">In the order in which they shall be done.</param>
public sealed record ChangesBody(IReadOnlyList<ChangeBody> Rows);

/// <summary>One row to add (without key), to change (key and row) or to remove (key without row).</summary>
/// <param name="Table">The file's name without its ending.</param>
/// <param name="Key">The key it has now.</param>
/// <param name="Version">The version that was seen.</param>
/// <param name="Row">Its cells by column, all of them texts.</param>
public sealed record ChangeBody(string Table, string? Key = null, string? Version = null, IReadOnlyDictionary<string, string>? Row = null);
