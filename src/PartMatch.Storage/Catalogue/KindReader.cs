using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Storage.Catalogue;

/// <summary>Kinds and works of the books of one scope, in which each code stands once.</summary>
internal static class KindReader
{
    /// <summary>Every kind, ordered by code, with the features, rules, checks and shots that the books of the scope give it, ordered by their keys.</summary>
    public static IReadOnlyList<Kind> Read(SqliteConnection connection, IReadOnlyList<string> books)
    {
        var features = Features(connection, books).ToLookup(row => row.Kind, StringComparer.Ordinal);
        var rules = Rules(connection, books).ToLookup(row => row.Kind, StringComparer.Ordinal);
        var checks = Checks(connection, books).ToLookup(row => row.Kind, StringComparer.Ordinal);
        var shots = Shots(connection, books).ToLookup(row => row.Kind, StringComparer.Ordinal);
        var rows = connection.Query<KindRow>(
            """
            select kind, name, running, reviewed, cautions
            from kinds
            where book in @books
            order by kind
            """,
            new { books });
        return
        [
            .. rows.Select(row => new Kind(
                row.Kind, row.Name, row.Running == "can-alter", row.Reviewed == "yes", Readings.ListOf(row.Cautions),
                [.. features[row.Kind].Select(feature => feature.Feature)], [.. rules[row.Kind].Select(rule => rule.Rule)],
                [.. checks[row.Kind].Select(check => check.Check)])
            {
                Shots = [.. shots[row.Kind].Select(shot => shot.Shot)],
            }),
        ];
    }

    /// <summary>Every work, ordered by code.</summary>
    public static IReadOnlyList<Work> ReadWorks(SqliteConnection connection, IReadOnlyList<string> books)
    {
        var rows = connection.Query<WorkRow>(
            """
            select work, name, minutes, days, price, currency, who, needs_first, changes, undo, cautions
            from works
            where book in @books
            order by work
            """,
            new { books });
        return [.. rows.Select(ToWork)];
    }

    private static Work ToWork(WorkRow row) => new(
        row.Work, row.Name, Readings.FindNumber(row.Minutes), Readings.FindNumber(row.Days),
        row is { Price: { } price, Currency: { } currency } ? new Money(price, currency) : null,
        row.Who, Readings.ListOf(row.NeedsFirst), Readings.ListOf(row.Changes), row.Undo is null ? null : row.Undo == "yes", Readings.ListOf(row.Cautions));

    private static IEnumerable<(string Kind, Feature Feature)> Features(SqliteConnection connection, IReadOnlyList<string> books) =>
        connection.Query<FeatureRow>(
            """
            select kind, feature, name, type, unit, choices
            from features
            where book in @books
            order by kind, feature
            """,
            new { books })
            .Select(row => (row.Kind, new Feature(row.Feature, row.Name, Codes.Get<FeatureType>(row.Type), UnitOf(row.Unit), Readings.ListOf(row.Choices))));

    private static IEnumerable<(string Kind, Rule Rule)> Rules(SqliteConnection connection, IReadOnlyList<string> books) =>
        connection.Query<RuleRow>(
            """
            select kind, feature, effect, relation, allowance, unit, work, consequence, note
            from rules
            where book in @books
            order by kind, feature, effect
            """,
            new { books })
            .Select(row => (row.Kind, new Rule(
                row.Feature, Codes.Get<Effect>(row.Effect), Codes.Get<Relation>(row.Relation), Allowance(row), row.Work,
                Codes.Get<Consequence>(row.Consequence), row.Note)));

    private static IEnumerable<(string Kind, Check Check)> Checks(SqliteConnection connection, IReadOnlyList<string> books) =>
        connection.Query<CheckRow>(
            """
            select kind, feature, method, minutes, uncertainty, unit, how
            from checks
            where book in @books
            order by kind, feature, method
            """,
            new { books })
            .Select(row => (row.Kind, new Check(
                row.Feature, Codes.Get<Method>(row.Method), Readings.FindNumber(row.Minutes) ?? throw new InvalidOperationException("minutes are obligatory"),
                UnitOf(row.Unit) is { } unit ? Readings.DifferenceInBase(row.Uncertainty, unit) : null, row.How)));

    private static IEnumerable<(string Kind, Shot Shot)> Shots(SqliteConnection connection, IReadOnlyList<string> books) =>
        connection.Query<ShotRow>(
            """
            select kind, shot, name, shows, how
            from shots
            where book in @books
            order by kind, shot
            """,
            new { books })
            .Select(row => (row.Kind, new Shot(row.Shot, row.Name, Readings.ListOf(row.Shows), row.How)));

    /// <summary>No allowance is written for counts and choices, and may be left out where a quantity is a limit: then nothing is allowed beyond it.</summary>
    private static decimal Allowance(RuleRow row) => UnitOf(row.Unit) is { } unit ? Readings.DifferenceInBase(row.Allowance, unit) ?? 0 : 0;

    private static Unit? UnitOf(string? symbol) => symbol is null ? null : UnitTable.Get(symbol);

    private sealed record KindRow(string Kind, string Name, string Running, string Reviewed, string? Cautions);

    private sealed record FeatureRow(string Kind, string Feature, string Name, string Type, string? Unit, string? Choices);

    private sealed record RuleRow(
        string Kind, string Feature, string Effect, string Relation, string? Allowance, string? Unit, string? Work, string Consequence, string? Note);

    private sealed record CheckRow(string Kind, string Feature, string Method, string Minutes, string? Uncertainty, string? Unit, string? How);

    private sealed record ShotRow(string Kind, string Shot, string Name, string? Shows, string? How);

    private sealed record WorkRow(
        string Work, string Name, string? Minutes, string? Days, string? Price, string? Currency, string? Who,
        string? NeedsFirst, string? Changes, string? Undo, string? Cautions);
}
