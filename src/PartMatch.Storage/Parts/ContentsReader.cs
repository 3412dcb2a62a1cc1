using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Parts;

/// <summary>Reads what kits and assemblies hold.</summary>
internal sealed class ContentsReader(SqliteConnection connection)
{
    /// <summary>Every row, ordered by set, part and book.</summary>
    public IReadOnlyList<ContentsRow> All() => Read("true", null);

    /// <summary>What a set holds, ordered by part and book.</summary>
    public IReadOnlyList<ContentsRow> OfSet(string key) => Read("c.set_key = @key", key);

    /// <summary>The sets that hold a part, ordered by set and book.</summary>
    public IReadOnlyList<ContentsRow> OfPart(string key) => Read("c.part_key = @key", key);

    /// <param name="wanted">Constant text of this class.</param>
    private IReadOnlyList<ContentsRow> Read(string wanted, string? key) =>
    [
        .. connection.Query<HeldRow>(
            $"""
            select s.part as set_part, p.part, c.quantity, c.certain, c.note
            from contents c
            join parts s on s.part_key = c.set_key
            join parts p on p.part_key = c.part_key
            where {wanted}
            order by s.part, p.part, c.book
            """,
            new { key })
            .Select(row => new ContentsRow(
                row.SetPart, row.Part, row.Quantity is null ? null : int.Parse(row.Quantity, CultureInfo.InvariantCulture), CertaintyOf(row.Certain), row.Note)),
    ];

    private static Certainty CertaintyOf(string? certain) => certain switch
    {
        null => Certainty.NotRecorded,
        "yes" => Certainty.Certain,
        _ => Certainty.Possible,
    };

    private sealed record HeldRow(string SetPart, string Part, string? Quantity, string? Certain, string? Note);
}
