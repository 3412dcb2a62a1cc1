using System.Security.Cryptography;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;

namespace PartMatch.Storage.LookAlikes;

/// <summary>Tells whether what look-alikes are decided from has changed: ranking them costs seconds, reading the rows does not.</summary>
public sealed class LookAlikeStamp(Database database)
{
    private readonly Snapshot<string> _stamp = new(database);

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
    public string Get() => _stamp.Find("", Read) ?? throw new InvalidOperationException("A digest is never absent.");

    private static string Read(SqliteConnection connection)
    {
        using var digest = SHA256.Create();
        using (var rows = new CryptoStream(Stream.Null, digest, CryptoStreamMode.Write))
        using (var writer = new BinaryWriter(rows)) // writes each text with its length: no two lists of cells look alike
        {
            foreach (var book in connection.Query<string>("select book from books order by book"))
            {
                foreach (var row in BookTables.All.Except(Unread).SelectMany(table => BookRows.Read(connection, book, table)))
                {
                    writer.Write(book);
                    writer.Write(row.Table.File);
                    foreach (var cell in row.Cells)
                    {
                        writer.Write(cell);
                    }
                }
            }
        }

        return Convert.ToHexStringLower(digest.Hash ?? []);
    }
}
