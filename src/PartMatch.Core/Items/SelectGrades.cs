using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Items;

/// <summary>Which graded part to order beside this item, where a position is chosen by what was read on it.</summary>
internal static class SelectGrades
{
    public static IReadOnlyList<GradeAnswer> For(FamilyFacts facts, Kind kind, Item item, IReadOnlyList<SelectRow> selects) =>
    [
        .. selects.Where(row => row.Evidence?.IsRetracted != true && facts.FindPosition(row.Measured.Position)?.Kind == kind.Code)
            .GroupBy(row => (row.Position, row.Measured))
            .OrderBy(table => table.Key.Position, StringComparer.Ordinal).ThenBy(table => table.Key.Measured.Position, StringComparer.Ordinal)
            .ThenBy(table => table.Key.Measured.Feature, StringComparer.Ordinal)
            .SelectMany(table => item.Readings.Where(reading =>
                item.Counts(reading) && reading.Feature == table.Key.Measured.Feature && reading.Reading is QuantityReading)
                .Select(reading => Judge(facts, kind, item, reading, [.. table.OrderBy(row => row.From).ThenBy(row => row.Part, StringComparer.Ordinal)]))),
    ];

    private static GradeAnswer Judge(FamilyFacts facts, Kind kind, Item item, ItemReading reading, SelectRow[] table)
    {
        var quantity = (QuantityReading)reading.Reading; // filtered by the caller
        var isBare = quantity.Uncertainty is null;
        var read = new Interval(quantity.Value, quantity.Value).Widened(quantity.Uncertainty ?? 0);
        SelectRow[] met = [.. table.Where(row => read.Meets(new Interval(row.From, row.To)))];
        string[] parts = [.. met.Select(row => row.Part).Distinct(StringComparer.Ordinal)];
        var isOneGrade = met.Length > 0 && met.All(row => (row.From, row.To) == (met[0].From, met[0].To));
        var whole = new Interval(table.Min(row => row.From), table.Max(row => row.To));
        var beyond = !read.LiesIn(whole);
        var position = facts.FindPosition(table[0].Position)?.Name ?? table[0].Position;
        var feature = kind.FindFeature(reading.Feature)?.Name ?? reading.Feature;
        var value = MeasuredPart.ValueOf(item, reading);
        var (outcome, text) = (parts.Length, isBare, beyond) switch
        {
            (0, _, true) => (GradeOutcome.Outside,
                $"in no row of the table, which runs over {FitWording.Text(whole, table[0].Unit)}: there is no grade for it"),
            (0, _, _) => (GradeOutcome.Outside, "in a gap between two rows of the table: there is no grade for it"),
            (_, true, _) => (GradeOutcome.NotKnown, $"by the bare number {Or(parts)}; how well it was read is not recorded: read it again, then order"),
            (1, _, false) => (GradeOutcome.One, $"order {parts[0]}"),
            (_, _, true) => (GradeOutcome.Several,
                $"{Or(parts)}, or beyond the end of the table: the reading's uncertainty reaches over it; read it closer, then order"),
            _ when isOneGrade => (GradeOutcome.Several,
                $"{Or(parts)}: the table has several numbers for this grade; which of them goes on this engine is a question of fit"),
            _ => (GradeOutcome.Several, $"{Or(parts)}: the reading's uncertainty straddles the grades; read it closer, then order"),
        };
        return new GradeAnswer(
            table[0].Position, position, reading.Feature, FitWording.Shown(value), outcome, parts,
            $"{position}, chosen by {feature}, read as {FitWording.Text(value)}: {text}.");
    }

    private static string Or(string[] parts) => string.Join(" or ", parts);
}
