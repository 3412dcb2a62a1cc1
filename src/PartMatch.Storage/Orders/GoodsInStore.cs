using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Items;

namespace PartMatch.Storage.Orders;

/// <summary>How keeping what was read of an arrival ended; one of the nested cases. Only what was told and done stored anything.</summary>
public abstract record GoodsInOutcome
{
    private GoodsInOutcome()
    {
    }

    /// <summary>The readings cannot be kept as they are; the order was not told of.</summary>
    public sealed record NotKept(EditOutcome Outcome) : GoodsInOutcome;

    /// <summary>The readings could be kept, and this became of the order: where it was not done, they were not kept either.</summary>
    public sealed record Told(OrderOutcome Outcome) : GoodsInOutcome;
}

/// <summary>What was read of an arrival and what it makes of its order: one write, so that neither is ever there without the other.</summary>
public sealed class GoodsInStore(Database database, OrderStore orders, TimeProvider time)
{
    /// <param name="rows">The item and its readings, for the book.</param>
    /// <param name="item">Code of the item.</param>
    /// <param name="make">What is told of the order, once the item is read as it was kept.</param>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public GoodsInOutcome Keep(
        string build, int number, int? seen, string book, IReadOnlyList<RowChange> rows, string item, Func<Item, OrderEvent> make, ChangeNote note,
        CancellationToken cancellation)
    {
        try
        {
            using var connection = database.Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var kept = EditStore.Apply(connection, book, rows, new HistoryEntry(book, note, Act.Edit, time.GetUtcNow()), cancellation);
            if (kept is not EditOutcome.Done)
            {
                return new GoodsInOutcome.NotKept(kept);
            }

            var read = ItemStore.Find(connection, book, item) ?? throw new InvalidOperationException($"The item {book}/{item} was written just now.");
            var told = orders.Append(connection, build, number, seen, make(read), note);
            if (told is OrderOutcome.Done)
            {
                transaction.Commit();
            }

            return new GoodsInOutcome.Told(told);
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }
}
