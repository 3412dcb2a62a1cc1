using System.Globalization;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.History;

namespace PartMatch.Storage.LookAlikes;

/// <summary>
/// Tells whether what look-alikes are decided from has changed: ranking them costs seconds, and so does reading a million rows to see that they are the same.
/// </summary>
/// <remarks>Whatever writes rows of books tells the history in the same transaction, so the history says what has changed.</remarks>
public sealed class LookAlikeStamp(Database database)
{
    // Ours: of a change of more rows than that it is enough to know that there was one.
    private const int MostRowsRead = 5_000;

    private readonly Snapshot<string> _stamp = new(database);
    private HistoryEnd? _seen;
    private ulong _sum;

    /// <summary>
    /// The files that neither a family nor the list of numbers is read from. What was counted of offers and deliveries is no part of it either: it changes
    /// with every offer, and no ranking rests on it.
    /// </summary>
    internal static IReadOnlyList<BookTable> Unread { get; } =
        [BookTables.Items, BookTables.Readings, BookTables.WorksDone, BookTables.Photos, BookTables.Sellers, BookTables.Offers, BookTables.Listings];

    /// <summary>
    /// A text that is the same where all of that is the same, and differs where any of it does. The same instance as long as nobody has committed anything: then
    /// what was read between two calls is of one state.
    /// </summary>
    public string Get() => _stamp.Find("", Read) ?? throw new InvalidOperationException("A text is never absent.");

    // Asked one after the other: Snapshot keeps others out meanwhile.
    private string Read(SqliteConnection connection)
    {
        var latest = HistoryEnd.Read(connection);
        if (_seen is { } seen && latest != seen)
        {
            // Another base in place of this one has another history, whose changes say nothing of what differs.
            _sum += (seen.IsIn(connection) ? Since(connection, seen.Change) : null) ?? Digest(latest.Change, latest.At, "", "");
        }

        _seen = latest;
        return _sum.ToString("x16", CultureInfo.InvariantCulture);
    }

    /// <summary>What the rows that are there now add to the sum, less what those before them had added: taking a change back gives the old sum.</summary>
    /// <returns>Null where more has changed than is worth reading.</returns>
    private static ulong? Since(SqliteConnection connection, long seen)
    {
        var rows = connection.Query<ChangedRow>(
            """
            select c.book, r."table", r.before, r.after
            from changed_rows r
            join changes c on c.change = r.change
            where r.change > @seen and r."table" not in @unread
            limit @most + 1
            """,
            new { seen, unread = Unread.Select(table => table.Stem), most = MostRowsRead }).AsList();
        return rows.Count > MostRowsRead ? null
            : rows.Aggregate(0UL, (sum, row) => sum + Digest(0, row.Book, row.Table, row.After) - Digest(0, row.Book, row.Table, row.Before));
    }

    private static ulong Digest(long change, string book, string table, string? cells) => cells is null ? 0
        : XxHash64.HashToUInt64(MemoryMarshal.AsBytes(string.Create(CultureInfo.InvariantCulture, $"{change}\n{book}\n{table}\n{cells}").AsSpan()));

    private sealed record ChangedRow(string Book, string Table, string? Before, string? After);
}
