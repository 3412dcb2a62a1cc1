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

/// <summary>Makes what was read on one item a value of its number: one example among the sources, because a person says so.</summary>
public sealed class PromotionStore(EditStore edits, RowStore rows, ItemStore items)
{
    /// <summary>Adds a source of its own, which goes back to that of the item, and the value that rests on it. The reading of the item stays as it is.</summary>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public PromotionOutcome Promote(string book, string item, string feature, ChangeNote note, CancellationToken cancellation)
    {
        if (rows.Find(book, "items", item)?.Row is not { } owner || rows.Find(book, "readings", $"{item},{feature}")?.Row is not { } reading
            || FindGrade(book, item, feature) is not { } grade)
        {
            return new PromotionOutcome.NoReading();
        }

        var evidence = $"promoted-{item}-{feature}";
        var read = reading.Row;
        var outcome = edits.Apply(
            book,
            [
                new RowChange("evidence", null, null, Recorded(
                    ("evidence", evidence), ("grade", Codes.Of(grade)), ("date", read.GetValueOrDefault("readOn")), ("author", note.Who),
                    ("source", $"one example, item {item}"), ("derivedFrom", read.GetValueOrDefault("evidence") ?? owner.Row.GetValueOrDefault("evidence")))),
                new RowChange("sources", null, null, Recorded(
                    ("evidence", evidence), ("speaksOf", Codes.Of(SpeaksOf.Number)), ("instrument", read.GetValueOrDefault("instrument")), ("note", note.Why))),
                new RowChange("values", null, null, Recorded(
                    ("part", owner.Row["part"]), ("feature", feature), ("value", read["value"]), ("unit", read.GetValueOrDefault("unit")),
                    ("uncertainty", read.GetValueOrDefault("uncertainty")), ("evidence", evidence))),

                // As they are: whoever changes them meanwhile is not promoted with what they said before.
                AsItIs(owner), AsItIs(reading),
            ],
            note, Act.Promote, cancellation);
        return new PromotionOutcome.Edited(outcome is EditOutcome.Done done
            ? done with { Rows = [.. done.Rows.Where(row => row.Table is not ("items" or "readings"))] }
            : outcome);
    }

    /// <summary>What is only told or concluded of the item is no measurement of its number either.</summary>
    private EvidenceGrade? FindGrade(string book, string item, string feature) =>
        items.Find(book, item) is { } found && found.Readings.FirstOrDefault(reading => reading.Feature == feature) is { } reading
            ? found.GradeOf(reading)
            : null;

    private static RowChange AsItIs(RowSeen row) => new(row.Table, row.Key, row.Version, row.Row);

    private static Dictionary<string, string> Recorded(params IEnumerable<(string Column, string? Cell)> cells) =>
        cells.Where(cell => cell.Cell is not null).ToDictionary(cell => cell.Column, cell => cell.Cell!, StringComparer.Ordinal); // filtered for null
}
