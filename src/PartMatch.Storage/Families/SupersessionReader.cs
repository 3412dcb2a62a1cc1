using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads which part replaces which.</summary>
internal sealed class SupersessionReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>What these books say, ordered by old part, then new part.</summary>
    public IReadOnlyList<Supersession> OfBooks(IReadOnlyList<string> books) => Read("s.book in @books", new { books });

    /// <summary>What any book says of that part as the old one, ordered by new part.</summary>
    public IReadOnlyList<Supersession> OfOldPart(string partKey) => Read("s.old_part_key = @partKey", new { partKey });

    /// <summary>What any book says of that part as the new one, ordered by old part.</summary>
    public IReadOnlyList<Supersession> OfNewPart(string partKey) => Read("s.new_part_key = @partKey", new { partKey });

    /// <param name="wanted">Constant text of this class.</param>
    private List<Supersession> Read(string wanted, object parameters)
    {
        var rows = connection.Query<SupersessionRow>(
            $"""
            select o.part as old_part, n.part as new_part, s.way, s.quantity, s."with", s.built_from, s.built_to, s.serial_from, s.serial_to,
              s.variants, s.evidence, s.evidence_book, s.note
            from supersessions s
            join parts o on o.part_key = s.old_part_key
            join parts n on n.part_key = s.new_part_key
            where {wanted}
            order by o.part, n.part, s.book
            """,
            parameters);
        return [.. rows.Select(row => new Supersession(
            row.OldPart, row.NewPart, Codes.Get<SupersessionWay>(row.Way), int.Parse(row.Quantity, CultureInfo.InvariantCulture),
            [.. Readings.ListOf(row.With).Select(IdOf)],
            Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo), Readings.ListOf(row.Variants),
            evidence.Find(row.EvidenceBook, row.Evidence), row.Note))];
    }

    /// <summary>The id as the part itself writes it.</summary>
    private string IdOf(string written) =>
        connection.QuerySingle<string>("select part from parts where part_key = @key", new { key = PartId.Find(written)?.Key });

    private sealed record SupersessionRow(
        string OldPart, string NewPart, string Way, string Quantity, string? With, string? BuiltFrom, string? BuiltTo, string? SerialFrom, string? SerialTo,
        string? Variants, string? Evidence, string? EvidenceBook, string? Note);
}
