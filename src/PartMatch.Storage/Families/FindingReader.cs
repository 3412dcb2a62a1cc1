using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads what somebody found of parts on the engines of one family. Findings of retracted evidence are kept: deciders see that it is retracted.</summary>
internal sealed class FindingReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>Ordered by code; parts by the way their own rows write them.</summary>
    public IReadOnlyList<Finding> OfBook(string book)
    {
        var rows = connection.Query<FindingRow>(
            """
            select f.finding, p.part, f.variant, f.position, f.axis, f.outcome, f.built_from, f.built_to, f.serial_from, f.serial_to, f."with",
              f.evidence, f.evidence_book, f.note
            from findings f
            left join parts p on p.part_key = f.part_key
            where f.book = @book
            order by f.finding
            """,
            new { book });
        return [.. rows.Select(ToFinding)];
    }

    private Finding ToFinding(FindingRow row) => new(
        row.Finding, row.Part ?? Part.None, row.Variant, row.Position, Codes.Get<Axis>(row.Axis), Codes.Get<FindingOutcome>(row.Outcome),
        Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo),
        Readings.ListOf(row.With).Select(cell => cell.Split('=', 2)).ToDictionary(pair => pair[0], pair => PartOf(pair[1]), StringComparer.Ordinal),
        evidence.Find(row.EvidenceBook, row.Evidence) ?? throw new InvalidOperationException($"finding {row.Finding} rests on no evidence; the import asks for it"),
        row.Note);

    private string? PartOf(string written) => written == Part.None
        ? null
        : connection.QuerySingle<string>("select part from parts where part_key = @key", new { key = PartId.Find(written)?.Key });

    private sealed record FindingRow(
        string Finding, string? Part, string Variant, string Position, string Axis, string Outcome, string? BuiltFrom, string? BuiltTo,
        string? SerialFrom, string? SerialTo, string? With, string Evidence, string? EvidenceBook, string? Note);
}
