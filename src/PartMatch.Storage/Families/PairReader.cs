using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads what was found of pairs of parts.</summary>
internal sealed class PairReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>What these books say, each part by its own way of writing its number; ordered by part A, part B, then book.</summary>
    public IReadOnlyList<JudgedPair> OfBooks(IReadOnlyList<string> books) =>
    [
        .. connection.Query<PairRow>(
            """
            select a.part as part_a, b.part as part_b, s.judgement, s.evidence, s.evidence_book, s.note
            from pairs s
            join parts a on a.part_key = s.part_a_key
            join parts b on b.part_key = s.part_b_key
            where s.book in @books
            order by a.part, b.part, s.book
            """,
            new { books })
            .Select(row => new JudgedPair(
                row.PartA, row.PartB, Codes.Get<PairJudgement>(row.Judgement), evidence.Find(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    private sealed record PairRow(string PartA, string PartB, string Judgement, string? Evidence, string? EvidenceBook, string? Note);
}
