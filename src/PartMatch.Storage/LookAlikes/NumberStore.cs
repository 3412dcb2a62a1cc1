using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.History;

namespace PartMatch.Storage.LookAlikes;

/// <summary>Numbers as the base stands after one change.</summary>
/// <param name="End">Of the history that they take in.</param>
public sealed record NumbersRead(HistoryEnd End, IReadOnlyList<PartNumber> Numbers);

/// <summary>Parts that a change has touched since, with all numbers that stand on them now.</summary>
/// <param name="Parts">The ids by which they were known, and those by which they are known now.</param>
public sealed record NumbersChanged(HistoryEnd End, IReadOnlyCollection<string> Parts, IReadOnlyList<PartNumber> Numbers);

/// <summary>Every number of the base, for the search for look-alikes: all of them, those near one, and what has changed since.</summary>
/// <remarks>Each answer is of one state of the base. Whatever writes parts and numbers tells the history in the same transaction, so the history says what has changed.</remarks>
public sealed class NumberStore(Database database)
{
    private const string OwnNumbers =
        "select maker, part as written, number_key, 'service' as sort, part as id from parts";

    private const string FurtherNumbers =
        "select n.maker, n.number as written, n.number_key, n.sort, p.part as id from numbers n join parts p on p.part_key = n.part_key";

    /// <summary>Differs from the last one whenever anybody has committed since.</summary>
    public long Version() => database.Version();

    /// <summary>Each part's own number (as sort service) and every further number, in no order.</summary>
    public NumbersRead All() => Read(static _ => true);

    /// <summary>The numbers near a key, found by looking at every one: slow, and complete without any index.</summary>
    public NumbersRead Near(string key) => Read(number => LookAlikeIndex.IsNear(key, number));

    /// <summary>What the history says has changed since.</summary>
    /// <param name="end">The one that <see cref="NumbersRead"/> came with.</param>
    /// <param name="most">More parts than this are not read.</param>
    /// <returns>Null when more has changed, or the history does not go on from there: another base is in place of that one.</returns>
    public NumbersChanged? Since(HistoryEnd end, int most)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        if (!end.IsIn(connection))
        {
            return null;
        }

        var parts = connection.Query<string>(
            """
            select distinct json_extract(coalesce(after, before), '$.part')
            from changed_rows
            where change > @change and "table" in ('parts', 'numbers')
            limit @most + 1
            """,
            new { change = end.Change, most }).ToHashSet(StringComparer.Ordinal);
        if (parts.Count > most)
        {
            return null;
        }

        var numbers = new List<PartNumber>();
        foreach (var key in parts.Select(part => PartId.Find(part)?.Key).OfType<string>().Distinct(StringComparer.Ordinal).ToList())
        {
            Collect(connection, $"{OwnNumbers} where part_key = @key union all {FurtherNumbers} where n.part_key = @key", key, static _ => true, numbers);
        }

        parts.UnionWith(numbers.Select(number => number.Part));
        return new NumbersChanged(HistoryEnd.Read(connection), parts, numbers);
    }

    /// <summary>The ids of the parts that a book describes; null when there is no such book.</summary>
    public IReadOnlySet<string>? FindParts(string book)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return connection.ExecuteScalar<long>("select count(*) from books where book = @book", new { book }) == 0 ? null
            : connection.Query<string>("select part from parts where book = @book", new { book }).ToHashSet(StringComparer.Ordinal);
    }

    private NumbersRead Read(Func<PartNumber, bool> isWanted)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var numbers = new List<PartNumber>();
        Collect(connection, $"{OwnNumbers} union all {FurtherNumbers}", null, isWanted, numbers);
        return new NumbersRead(HistoryEnd.Read(connection), numbers);
    }

    // A million rows: the mapper would take as long again.
    private static void Collect(SqliteConnection connection, string sql, string? key, Func<PartNumber, bool> isWanted, List<PartNumber> numbers)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        if (key is not null)
        {
            command.Parameters.AddWithValue("@key", key);
        }

        using var rows = command.ExecuteReader();
        var makers = new Dictionary<string, string>(StringComparer.Ordinal);
        while (rows.Read())
        {
            var maker = rows.GetString(0);
            maker = makers.TryGetValue(maker, out var known) ? known : makers[maker] = maker;
            var number = new PartNumber(maker, rows.GetString(1)[(maker.Length + 1)..], rows.GetString(2), Codes.Get<NumberSort>(rows.GetString(3)), rows.GetString(4));
            if (isWanted(number))
            {
                numbers.Add(number);
            }
        }
    }
}
