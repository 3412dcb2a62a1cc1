using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Items;

/// <summary>A part as one example of it was measured: what was read takes the place of what is recorded of the number.</summary>
internal static class MeasuredPart
{
    /// <summary>The part itself is not changed.</summary>
    /// <exception cref="ArgumentException">The item is claimed to be another part.</exception>
    public static Part Of(Part part, Item item)
    {
        if (item.Part is { } claimed && claimed != part.Id)
        {
            throw new ArgumentException($"The item {item.Address} is claimed to be {claimed}; asked about was {part.Id}.", nameof(item));
        }

        ItemReading[] counting = [.. item.Readings.Where(item.Counts)];
        return part with
        {
            Values =
            [
                .. part.Values.Where(value => !counting.Any(reading => reading.Feature == value.Feature))
                    .Concat(counting.Select(reading => new RecordedValue(reading.Feature, OfOne(reading.Reading), SourceOf(item, reading))))
                    .OrderBy(value => value.Feature, StringComparer.Ordinal),
            ],
        };
    }

    public static KnownValue ValueOf(Item item, ItemReading reading) => ValueSelection.Of(OfOne(reading.Reading), SourceOf(item, reading));

    /// <summary>
    /// One example has no spread: what the maker allows and how well it was read are never both added. Where it is not recorded how well it was
    /// read, the spread stays unknown, so that the reading is compared as a bare value.
    /// </summary>
    public static Reading OfOne(Reading reading) =>
        reading is QuantityReading { Uncertainty: not null } quantity ? quantity with { Minus = 0, Plus = 0 } : reading;

    /// <summary>Where the one example can really lie; null for what is no number, or was read nobody knows how well.</summary>
    public static Interval? LimitsOf(Reading reading) => reading switch
    {
        QuantityReading { Uncertainty: { } uncertainty } quantity => new Interval(quantity.Value, quantity.Value).Widened(uncertainty),
        CountReading count => new Interval(count.Value, count.Value),
        _ => null,
    };

    private static Evidence SourceOf(Item item, ItemReading reading)
    {
        var source = item.SourceOf(reading)
            ?? new Evidence(item.Code, EvidenceGrade.Measured, reading.ReadOn, null,
                $"read on the item {item.Address}{(reading.Instrument is null ? "" : $", {reading.Instrument}")}", null, null, null);
        return source with { Grade = item.GradeOf(reading) };
    }
}
