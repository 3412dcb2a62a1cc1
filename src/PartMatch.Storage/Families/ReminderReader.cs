using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads what a builder minds at parts of a kind.</summary>
internal sealed class ReminderReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>What these books say, ordered by kind, reminder, then book.</summary>
    public IReadOnlyList<Reminder> OfBooks(IReadOnlyList<string> books) =>
    [
        .. connection.Query<ReminderRow>(
            """
            select kind, reminder, "at", works, text, evidence, evidence_book, note
            from reminders
            where book in @books
            order by kind, reminder, book
            """,
            new { books })
            .Select(row => new Reminder(
                row.Kind, row.Reminder, Codes.Get<ReminderAt>(row.At), Readings.ListOf(row.Works), row.Text, evidence.Find(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    private sealed record ReminderRow(
        string Kind, string Reminder, string At, string? Works, string Text, string? Evidence, string? EvidenceBook, string? Note);
}
