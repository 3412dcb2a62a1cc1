using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Parts;

/// <summary>Reads parts with their values and curves.</summary>
internal sealed class PartReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>The parts that these books describe, ordered by id, with the values and curves that the same books state.</summary>
    public IReadOnlyList<Part> OfBooks(IReadOnlyList<string> books) => Read("p.book in @books", "s.book in @books", new { books });

    /// <summary>The parts of those keys, ordered by id, with what any book states.</summary>
    public IReadOnlyList<Part> OfKeys(IReadOnlyList<string> keys) => keys.Count == 0 ? [] : Read("p.part_key in @keys", "true", new { keys });

    public IReadOnlyList<Part> OfKind(string kind) => Read("p.kind = @kind", "true", new { kind });

    /// <param name="wanted">Condition on the parts; constant text of this class.</param>
    /// <param name="stated">Condition on the values and curves; likewise.</param>
    private List<Part> Read(string wanted, string stated, object parameters)
    {
        var parts = connection.Query<PartRow>(
            $"""
            select p.part as id, p.part_key, p.maker,
                   (select m.name from makers m where m.maker = p.maker order by m.book limit 1) as maker_name, p.number_key, p.kind, p.name, p.note, p.evidence, p.evidence_book
            from parts p
            where {wanted}
            order by p.part
            """,
            parameters);
        var values = connection.Query<ValueRow>(
            $"""
            select s.part_key, s.feature, s.type, s.value, s.minus, s.plus, s.unit, s.uncertainty, s.evidence, s.evidence_book
            from "values" s
            join parts p on p.part_key = s.part_key
            where {wanted} and {stated}
            order by s.part_key, s.feature, s.evidence, s.book
            """,
            parameters).ToLookup(row => row.PartKey, StringComparer.Ordinal);
        var curves = connection.Query<CurveRow>(
            $"""
            select s.part_key, s.curve, s.x, s.x_unit, s.y, s.y_unit, s.value, s.unit, s.evidence, s.evidence_book
            from curves s
            join parts p on p.part_key = s.part_key
            where {wanted} and {stated}
            order by s.part_key, s.curve, s.evidence, s.book
            """,
            parameters).ToLookup(row => row.PartKey, StringComparer.Ordinal);
        return [.. parts.Select(part => new Part(
            part.Id, part.Maker, part.Id[(part.Maker.Length + 1)..], part.NumberKey, part.Kind, part.Name, part.Note,
            evidence.Find(part.EvidenceBook, part.Evidence), [.. values[part.PartKey].Select(Value)], Points(curves[part.PartKey]))
        {
            MakerName = part.MakerName,
        })];
    }

    private List<CurvePoint> Points(IEnumerable<CurveRow> rows) =>
        [.. rows.Select(Point).OrderBy(point => point.Curve, StringComparer.Ordinal).ThenBy(point => point.X).ThenBy(point => point.Y)];

    private RecordedValue Value(ValueRow row) => new(
        row.Feature, Readings.Of(Codes.Get<FeatureType>(row.Type), row.Value, row.Minus, row.Plus, row.Unit, row.Uncertainty),
        evidence.Find(row.EvidenceBook, row.Evidence));

    private CurvePoint Point(CurveRow row)
    {
        var (xUnit, unit) = (UnitTable.Get(row.XUnit), UnitTable.Get(row.Unit));
        var yUnit = row.YUnit is null ? null : UnitTable.Get(row.YUnit);
        return new CurvePoint(
            row.Curve, Readings.InBase(row.X, xUnit), xUnit, yUnit is null ? null : Readings.InBase(row.Y, yUnit), yUnit, Readings.InBase(row.Value, unit), unit,
            evidence.Find(row.EvidenceBook, row.Evidence));
    }

    private sealed record PartRow(
        string Id, string PartKey, string Maker, string? MakerName, string NumberKey, string Kind,
        string Name, string? Note, string? Evidence, string? EvidenceBook);

    private sealed record ValueRow(
        string PartKey, string Feature, string Type, string Value, string? Minus, string? Plus, string? Unit, string? Uncertainty,
        string Evidence, string? EvidenceBook);

    private sealed record CurveRow(
        string PartKey, string Curve, string X, string XUnit, string Y, string? YUnit, string Value, string Unit, string Evidence, string? EvidenceBook);
}
