using System.Globalization;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Orders;

/// <summary>How telling something of an order ended; one of the nested cases. Only <see cref="Done"/> stored anything.</summary>
public abstract record OrderOutcome
{
    private OrderOutcome()
    {
    }

    public sealed record Done(Order Now) : OrderOutcome;

    /// <summary>It cannot have happened to the order as it is.</summary>
    public sealed record Faulty(OrderFault Fault) : OrderOutcome;

    /// <summary>The build has no such order.</summary>
    public sealed record Absent : OrderOutcome;

    /// <summary>Somebody else has told something of it since.</summary>
    public sealed record Stale(Order Present) : OrderOutcome;

    /// <summary>More was ordered since the orders were seen.</summary>
    /// <param name="Since">What was ordered meanwhile, in the order in which it was made.</param>
    public sealed record Overtaken(IReadOnlyList<Order> Since) : OrderOutcome;
}

/// <summary>The orders of builds, each with everything that ever happened to it: no row is ever changed or removed.</summary>
public sealed class OrderStore(Database database, TimeProvider time)
{
    private const string Columns = "order_number as number, event, at, who, why, document";

    /// <summary>Of the build that is there, from the version on that made it: one made anew has nothing of the one that was deleted.</summary>
    private const string OfThePresent = $"build = @build and since = {Since}";

    private const string Since = "coalesce((select max(version) from build_versions where build = @build and act = 'create'), 1)";

    /// <summary>Of one build, in the order in which they were made.</summary>
    public IReadOnlyList<Order> List(string build)
    {
        using var connection = database.Connect();
        return
        [
            .. connection.Query<Row>($"select {Columns} from order_events where {OfThePresent} order by order_number, event", new { build })
                .GroupBy(row => row.Number).Select(rows => ToOrder(build, rows.Key, rows)),
        ];
    }

    /// <summary>Null where the build has none of that number.</summary>
    public Order? Find(string build, int number)
    {
        using var connection = database.Connect();
        return Find(connection, build, number);
    }

    /// <param name="seen">How many orders the build had when they were seen; null to order whatever was ordered since.</param>
    public OrderOutcome Add(string build, OrderTerms terms, ChangeNote note, int? seen = null) => Write(connection =>
    {
        var last = (int)(connection.ExecuteScalar<long?>($"select max(order_number) from order_events where {OfThePresent}", new { build }) ?? 0);
        return seen is { } known && known != last
            ? new OrderOutcome.Overtaken([.. Enumerable.Range(known + 1, Math.Max(0, last - known)).Select(number => Find(connection, build, number)).OfType<Order>()])
            : Next(connection, build, last + 1, [], new OrderEvent(OrderAct.Ordered, terms.OrderedOn) { Terms = terms }, note);
    });

    /// <param name="seen">The version that was seen; null to tell it whatever is there by now.</param>
    public OrderOutcome Append(string build, int number, int? seen, OrderEvent did, ChangeNote note) =>
        Write(connection => Append(connection, build, number, seen, did, note));

    /// <summary>The same inside the transaction of another write, which is committed by whoever began it.</summary>
    internal OrderOutcome Append(SqliteConnection connection, string build, int number, int? seen, OrderEvent did, ChangeNote note) =>
        Find(connection, build, number) switch
        {
            null => new OrderOutcome.Absent(),
            { } present when seen is { } version && version != present.Version => new OrderOutcome.Stale(present),
            { } present when OrderFold.FaultOf(present, did) is { } fault => new OrderOutcome.Faulty(fault),
            { } present => Next(connection, build, number, present.Events, did, note),
        };

    private OrderOutcome.Done Next(SqliteConnection connection, string build, int number, IReadOnlyList<OrderEventSaved> before, OrderEvent did, ChangeNote note)
    {
        var at = time.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
        var saved = new OrderEventSaved(before.Count + 1, at, note.Who, note.Why, did);
        connection.Execute(
            $"""
            insert into order_events (build, since, order_number, event, act, at, who, why, document)
            values (@build, {Since}, @number, @Event, @act, @At, @Who, @Why, @document)
            """,
            new { build, number, saved.Event, act = Codes.Of(did.Act), saved.At, saved.Who, saved.Why, document = OrderDocument.Write(did) });
        var (now, fault) = OrderFold.Of(build, number, [.. before, saved]);
        return new OrderOutcome.Done(Counted(connection, now ?? throw new InvalidOperationException($"An order was stored that cannot be: {fault}")));
    }

    /// <summary>What was counted of it before is counted anew.</summary>
    private static Order Counted(SqliteConnection connection, Order now)
    {
        connection.Execute($"delete from deliveries where {OfThePresent} and order_number = @number", new { build = now.Build, number = now.Number });
        connection.Execute(
            $"""
            insert into deliveries (build, since, order_number, line, seller, asked_part_key, sent_part_key, other_part)
            values (@build, {Since}, @number, @line, @seller, @asked, @sent, @other)
            """,
            now.Lines.Where(line => line.WasLookedAt).Select(line =>
            {
                var other = line.CameWrong.LastOrDefault(wrong => wrong.Fault == ArrivalFault.OtherPart);
                var (asked, sent) = (PartId.Find(line.Agreed.Part)?.Key ?? line.Agreed.Part, other?.Sent is { } said ? PartId.Find(said)?.Key : null);
                return new
                {
                    build = now.Build,
                    number = now.Number,
                    line = line.Line,
                    seller = now.Terms.Seller?.Split('/', 2)[^1],
                    asked,
                    sent = sent == asked ? null : sent,
                    other = other is null ? 0 : 1,
                };
            }));
        return now;
    }

    /// <summary>Decides and writes under one lock: what was found there still holds when it is written.</summary>
    private OrderOutcome Write(Func<SqliteConnection, OrderOutcome> decide)
    {
        try
        {
            using var connection = database.Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var outcome = decide(connection);
            if (outcome is OrderOutcome.Done)
            {
                transaction.Commit();
            }

            return outcome;
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    private static Order? Find(SqliteConnection connection, string build, int number) =>
        connection.Query<Row>($"select {Columns} from order_events where {OfThePresent} and order_number = @number order by event", new { build, number })
            .AsList() is [_, ..] rows ? ToOrder(build, number, rows) : null;

    private static Order ToOrder(string build, int number, IEnumerable<Row> rows)
    {
        var events = rows.Select(row => new OrderEventSaved(row.Event, row.At, row.Who, row.Why, EventOf(build, row))).ToList();
        try
        {
            var (order, fault) = OrderFold.Of(build, number, events);
            return order ?? throw Changed(build, number, fault?.ToString() ?? "");
        }
        catch (ArgumentException unreadable)
        {
            // A day or an amount that was checked before it was stored.
            throw Changed(build, number, unreadable.Message);
        }
    }

    private static OrderEvent EventOf(string build, Row row) =>
        OrderDocument.Read<OrderEvent>(Encoding.UTF8.GetBytes(row.Document)) is OrderReading<OrderEvent>.Read read ? read.Document
            : throw Changed(build, row.Number, string.Create(CultureInfo.InvariantCulture, $"event {row.Event}"));

    private static DatabaseException Changed(string build, int number, string what) => new(string.Create(
        CultureInfo.InvariantCulture, $"Order {number} of the build {build} cannot be read ({what}): it was changed outside this program. Restore a backup."));

    private sealed record Row
    {
        public int Number { get; init; }

        public int Event { get; init; }

        public required string At { get; init; }

        public string? Who { get; init; }

        public string? Why { get; init; }

        public required string Document { get; init; }
    }
}
