using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Listings;

/// <summary>What every kit and assembly of the base holds.</summary>
public sealed class ContentsStore(Database database)
{
    private readonly Snapshot<ILookup<string, ContentsRow>> _contents = new(database);

    /// <summary>Rows by set, ordered by part. The same instance until the base changes.</summary>
    public ILookup<string, ContentsRow> All() => _contents.Find("", Read) ?? throw new InvalidOperationException("A list is never absent.");

    private static ILookup<string, ContentsRow> Read(SqliteConnection connection) => connection.Query<HeldRow>(
        """
        select s.part as set_part, p.part, c.quantity, c.certain, c.note
        from contents c
        join parts s on s.part_key = c.set_key
        join parts p on p.part_key = c.part_key
        order by s.part, p.part, c.book
        """)
        .Select(row => new ContentsRow(row.SetPart, row.Part, row.Quantity is null ? null : int.Parse(row.Quantity, CultureInfo.InvariantCulture), CertaintyOf(row.Certain), row.Note))
        .ToLookup(row => row.Set, StringComparer.Ordinal);

    internal static Certainty CertaintyOf(string? certain) => certain switch
    {
        null => Certainty.NotRecorded,
        "yes" => Certainty.Certain,
        _ => Certainty.Possible,
    };

    private sealed record HeldRow(string SetPart, string Part, string? Quantity, string? Certain, string? Note);
}
