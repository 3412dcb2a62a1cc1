using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads what the positions of one family demand of their parts and of each other. Lists are ordered by the keys of their tables.</summary>
internal sealed class RelationReader(
    SqliteConnection connection, EvidenceReader evidence, string book, IReadOnlyList<Kind> kinds, IReadOnlyList<Position> positions)
{
    private readonly Dictionary<string, Kind> _kindAt = positions.ToDictionary(
        position => position.Code, position => kinds.First(kind => kind.Code == position.Kind), StringComparer.Ordinal);

    public IReadOnlyList<Need> Needs() =>
    [
        .. connection.Query<NeedRow>(
            """
            select variant, position, feature, effect, relation, value, minus, plus, unit, uncertainty, evidence, evidence_book, note
            from needs
            where book = @book
            order by variant, position, feature, effect
            """,
            new { book }).Select(ToNeed),
    ];

    public IReadOnlyList<Joint> Joints() =>
    [
        .. connection.Query<JointRow>(
            """
            select joint, left_position, left_feature, relation, right_position, right_feature, min, max, unit, effect, work, consequence,
              variants, evidence, evidence_book
            from joints
            where book = @book
            order by joint
            """,
            new { book }).Select(ToJoint),
    ];

    public IReadOnlyList<Stack> Stacks() =>
    [
        .. connection.Query<StackRow>(
            """
            select stack, terms, min, max, unit, effect, work, consequence, variants, evidence, evidence_book
            from stacks
            where book = @book
            order by stack
            """,
            new { book }).Select(ToStack),
    ];

    public IReadOnlyList<Companion> Companions() =>
    [
        .. connection.Query<CompanionRow>(
            """
            select companion, when_position, when_feature, when_relation, when_value, when_unit, then_position, then_feature, then_relation, then_value, then_unit,
              variants, evidence, evidence_book, note
            from companions
            where book = @book
            order by companion
            """,
            new { book })
            .Select(row => new Companion(
                row.Companion, ToCondition(row.WhenPosition, row.WhenFeature, row.WhenRelation, row.WhenValue, row.WhenUnit),
                ToCondition(row.ThenPosition, row.ThenFeature, row.ThenRelation, row.ThenValue, row.ThenUnit), Readings.ListOf(row.Variants),
                Evidence(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    public IReadOnlyList<SelectRow> Selects() =>
    [
        .. connection.Query<SelectionRow>(
            """
            select s.position, s.measure_position, s.measure_feature, s."from", s."to", s.unit, p.part, s.evidence, s.evidence_book
            from selects s
            join parts p on p.part_key = s.part_key
            where s.book = @book
            order by s.position, s."from", s.part
            """,
            new { book }).Select(ToSelect),
    ];

    private Need ToNeed(NeedRow row)
    {
        var relation = Codes.Get<Relation>(row.Relation);
        var demand = Readings.OfDemand(TypeOf(row.Position, row.Feature), relation, row.Value, row.Minus, row.Plus, row.Unit, row.Uncertainty);
        return new Need(
            row.Variant, row.Position, row.Feature, Codes.Get<Effect>(row.Effect), relation, demand,
            Evidence(row.EvidenceBook, row.Evidence), row.Note);
    }

    private Joint ToJoint(JointRow row)
    {
        var unit = row.Unit is null ? null : UnitTable.Get(row.Unit);
        return new Joint(
            row.Joint, new FeatureAt(row.LeftPosition, row.LeftFeature), Codes.Get<Relation>(row.Relation), new FeatureAt(row.RightPosition, row.RightFeature),
            Band(row.Min, row.Max, unit), unit, Codes.Get<Effect>(row.Effect), row.Work, Codes.Get<Consequence>(row.Consequence), Readings.ListOf(row.Variants),
            Evidence(row.EvidenceBook, row.Evidence));
    }

    private Stack ToStack(StackRow row)
    {
        var unit = UnitTable.Get(row.Unit);
        var written = StackTerms.Find(row.Terms)
            ?? throw new InvalidOperationException($"stack {row.Stack} of book {book} has terms that the import must refuse: {row.Terms}");
        var terms = written.Select(term => term is ConstantTerm constant ? constant with { Value = unit.DifferenceToBase(constant.Value) } : term);
        return new Stack(
            row.Stack, [.. terms], Band(row.Min, row.Max, unit), unit, Codes.Get<Effect>(row.Effect), row.Work, Codes.Get<Consequence>(row.Consequence),
            Readings.ListOf(row.Variants), Evidence(row.EvidenceBook, row.Evidence));
    }

    private SelectRow ToSelect(SelectionRow row)
    {
        var unit = UnitTable.Get(row.Unit);
        return new SelectRow(
            row.Position, new FeatureAt(row.MeasurePosition, row.MeasureFeature), Readings.InBase(row.From, unit), Readings.InBase(row.To, unit), unit, row.Part,
            Evidence(row.EvidenceBook, row.Evidence));
    }

    private Condition ToCondition(string position, string feature, string relation, string value, string? unit)
    {
        var known = Codes.Get<Relation>(relation);
        return new Condition(new FeatureAt(position, feature), known, Readings.OfDemand(TypeOf(position, feature), known, value, null, null, unit, null));
    }

    /// <summary>A band lies on a scale of differences: the zero of a temperature scale plays no part.</summary>
    private static Interval Band(string? min, string? max, Unit? unit) => unit is null
        ? new Interval(Readings.FindNumber(min), Readings.FindNumber(max))
        : new Interval(Readings.DifferenceInBase(min, unit), Readings.DifferenceInBase(max, unit));

    private FeatureType TypeOf(string position, string feature) =>
        _kindAt[position].FindFeature(feature)?.Type ?? throw new InvalidOperationException($"no feature {feature} at {position} of book {book}");

    private Evidence? Evidence(string? evidenceBook, string? code) => evidence.Find(evidenceBook, code);

    private sealed record NeedRow(
        string Variant, string Position, string Feature, string Effect, string Relation, string Value, string? Minus, string? Plus, string? Unit, string? Uncertainty,
        string? Evidence, string? EvidenceBook, string? Note);

    private sealed record JointRow(
        string Joint, string LeftPosition, string LeftFeature, string Relation, string RightPosition, string RightFeature, string? Min, string? Max, string? Unit,
        string Effect, string? Work, string Consequence, string? Variants, string? Evidence, string? EvidenceBook);

    private sealed record StackRow(
        string Stack, string Terms, string? Min, string? Max, string Unit, string Effect, string? Work, string Consequence, string? Variants,
        string? Evidence, string? EvidenceBook);

    private sealed record CompanionRow(
        string Companion, string WhenPosition, string WhenFeature, string WhenRelation, string WhenValue, string? WhenUnit, string ThenPosition, string ThenFeature,
        string ThenRelation, string ThenValue, string? ThenUnit, string? Variants, string? Evidence, string? EvidenceBook, string? Note);

    private sealed record SelectionRow(
        string Position, string MeasurePosition, string MeasureFeature, string From, string To, string Unit, string Part, string? Evidence, string? EvidenceBook);
}
