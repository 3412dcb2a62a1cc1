using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads how the fasteners of one family are tightened. Rows of retracted evidence are kept: deciders see that it is retracted.</summary>
internal sealed class TorqueReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>Ordered by variant, position, evidence, span and pass.</summary>
    public IReadOnlyList<TorquePass> OfBook(string book)
    {
        var rows = connection.Query<TorqueRow>(
            """
            select variant, position, pass, built_from, built_to, serial_from, serial_to, value, minus, plus, unit, lubrication, sequence, single_use, evidence, evidence_book, note
            from torques
            where book = @book
            order by variant, position, evidence, built_from, built_to, serial_from, serial_to, pass
            """,
            new { book });
        return [.. rows.Select(ToPass)];
    }

    private TorquePass ToPass(TorqueRow row) => new(
        row.Variant, row.Position, int.Parse(row.Pass, CultureInfo.InvariantCulture),
        (QuantityReading)Readings.Of(FeatureType.Quantity, row.Value, row.Minus, row.Plus, row.Unit, null),
        row.Lubrication is null ? null : Codes.Get<Lubrication>(row.Lubrication), row.Sequence,
        row.SingleUse is null ? null : Codes.Get<SingleUse>(row.SingleUse),
        evidence.Find(row.EvidenceBook, row.Evidence)
            ?? throw new InvalidOperationException($"the torque of {row.Variant}, {row.Position} rests on no evidence; the import asks for it"),
        row.Note)
    {
        Span = Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo),
    };

    private sealed record TorqueRow(
        string Variant, string Position, string Pass, string BuiltFrom, string BuiltTo, string SerialFrom, string SerialTo,
        string Value, string? Minus, string? Plus, string Unit, string? Lubrication, string? Sequence,
        string? SingleUse, string Evidence, string? EvidenceBook, string? Note);
}
