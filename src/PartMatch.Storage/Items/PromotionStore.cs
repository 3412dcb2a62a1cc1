using PartMatch.Core.Catalogue;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Items;

/// <summary>How promoting a reading ended: what came of the edit, or there is no such reading.</summary>
public abstract record PromotionOutcome
{
    private PromotionOutcome()
    {
    }

    public sealed record NoReading : PromotionOutcome;

    public sealed record Edited(EditOutcome Outcome) : PromotionOutcome;
}

/// <summary>Makes what was read on one item a value of its number: one measured example among the sources, because a person says so.</summary>
public sealed class PromotionStore(EditStore edits, RowStore rows)
{
    /// <summary>Adds a source of its own, which goes back to that of the item, and the value that rests on it. The reading of the item stays as it is.</summary>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public PromotionOutcome Promote(string book, string item, string feature, ChangeNote note, CancellationToken cancellation)
    {
        if (rows.Find(book, "items", item) is not { } found || FindReading(book, item, feature) is not { } reading)
        {
            return new PromotionOutcome.NoReading();
        }

        var evidence = $"promoted-{item}-{feature}";
        return new PromotionOutcome.Edited(edits.Apply(
            book,
            [
                new RowChange("evidence", null, null, Recorded(
                    ("evidence", evidence), ("grade", Codes.Of(EvidenceGrade.Measured)), ("date", reading.GetValueOrDefault("readOn")), ("author", note.Who),
                    ("source", $"one example, item {item}"), ("derivedFrom", reading.GetValueOrDefault("evidence") ?? found.Row.Row.GetValueOrDefault("evidence")))),
                new RowChange("sources", null, null, Recorded(
                    ("evidence", evidence), ("speaksOf", Codes.Of(SpeaksOf.Number)), ("instrument", reading.GetValueOrDefault("instrument")), ("note", note.Why))),
                new RowChange("values", null, null, Recorded(
                    ("part", found.Row.Row["part"]), ("feature", feature), ("value", reading["value"]), ("unit", reading.GetValueOrDefault("unit")),
                    ("uncertainty", reading.GetValueOrDefault("uncertainty")), ("evidence", evidence))),
            ],
            note, Act.Promote, cancellation));
    }

    private IReadOnlyDictionary<string, string>? FindReading(string book, string item, string feature) => rows.Find(book, "readings", $"{item},{feature}")?.Row.Row;

    private static Dictionary<string, string> Recorded(params IEnumerable<(string Column, string? Cell)> cells) =>
        cells.Where(cell => cell.Cell is not null).ToDictionary(cell => cell.Column, cell => cell.Cell!, StringComparer.Ordinal); // filtered for null
}
