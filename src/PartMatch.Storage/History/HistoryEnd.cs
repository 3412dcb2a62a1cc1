using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.History;

/// <summary>
/// How far a history goes: its latest change, and when that was. A base that was exchanged for another one under a running server has it not, or not then.
/// </summary>
/// <param name="Change">0 where nothing has changed yet.</param>
public sealed record HistoryEnd(long Change, string At)
{
    private static readonly HistoryEnd _none = new(0, "");

    internal static HistoryEnd Read(SqliteConnection connection) =>
        connection.QueryFirstOrDefault<HistoryEnd>("select change, at from changes order by change desc limit 1") ?? _none;

    /// <summary>Does that history go on from here?</summary>
    internal bool IsIn(SqliteConnection connection) =>
        Change == 0 || connection.QueryFirstOrDefault<string>("select at from changes where change = @Change", new { Change }) == At;
}
