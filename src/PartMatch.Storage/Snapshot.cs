using Microsoft.Data.Sqlite;

namespace PartMatch.Storage;

/// <summary>Keeps immutable values read from the base until the base changes, whoever changes it.</summary>
internal sealed class Snapshot<T>(Database database)
    where T : class
{
    private readonly Dictionary<string, T> _kept = new(StringComparer.Ordinal);
    private readonly Lock _lock = new();
    private long _version = -1;

    /// <summary>The kept value, or what <paramref name="read"/> finds in one reading transaction. Nothing found is not kept.</summary>
    public T? Find(string key, Func<SqliteConnection, T?> read)
    {
        lock (_lock)
        {
            // Taken before reading: a change during the reading makes the next question read again.
            var version = database.Version();
            if (version != _version)
            {
                _kept.Clear();
                _version = version;
            }

            if (!_kept.TryGetValue(key, out var value))
            {
                using var connection = database.Connect();
                using var transaction = connection.BeginTransaction(deferred: true);
                value = read(connection);
                if (value is not null)
                {
                    _kept[key] = value;
                }
            }

            return value;
        }
    }
}
