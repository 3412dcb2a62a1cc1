using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Items;

/// <summary>Is this one example within its service limits, and which graded part does it ask for?</summary>
public static class ItemCheck
{
    private const string NoReadingShows =
        "Held against the recorded limits; nothing else. A reading within a limit does not show that the part is sound. " +
        "To look at by hand: cracks, sealing faces, threads, bores and journals, heat marks, corrosion, markings that do not belong together.";

    /// <param name="facts">The family whose tables choose by measurement; null where none is asked about.</param>
    /// <param name="kind">The kind of the part the item is claimed to be.</param>
    /// <param name="limits">Of any kinds and parts; those that hold for this part count.</param>
    /// <param name="part">The part it is taken for; null for the one it is claimed to be, if any.</param>
    /// <param name="selects">The tables that choose by measurement.</param>
    public static ItemAnswer Decide(FamilyFacts? facts, Kind kind, IReadOnlyList<ServiceLimit> limits, Part? part, Item item, IReadOnlyList<SelectRow> selects)
    {
        var taken = part?.Id ?? item.Part;
        LimitAnswer[] judged = [.. Holding(limits, kind, taken).Select(limit => Judge(kind, item, limit))];
        var condition = judged.Length == 0 ? ItemCondition.NotInspected : judged.Max(limit => limit.Condition);
        return new ItemAnswer(
            item.Code, item.Book, taken, condition, WhyWhole(kind, taken, judged, condition), judged,
            facts is null ? [] : SelectGrades.For(facts, kind, item, selects),
            NoReadingShows, Cautions.Of(kind.Cautions))
        {
            Readings = [.. item.Readings.Select(reading => Tell(kind, part, item, reading))],
        };
    }

    /// <summary>A limit of the part outranks that of its kind, which was drawn for parts that are alike when new; a limit of another part says nothing.</summary>
    private static IEnumerable<ServiceLimit> Holding(IReadOnlyList<ServiceLimit> limits, Kind kind, string? part) =>
        limits.Where(limit => limit.Kind == kind.Code && (limit.Part is null || limit.Part == part) && limit.Evidence?.IsRetracted != true)
            .GroupBy(limit => limit.Feature, StringComparer.Ordinal)
            .SelectMany(ofFeature => ofFeature.Any(limit => limit.Part is not null) ? ofFeature.Where(limit => limit.Part is not null) : ofFeature);

    private static ReadingAnswer Tell(Kind kind, Part? part, Item item, ItemReading reading)
    {
        var ofNumber = part is null ? NotRecorded.Instance : ValueSelection.Of(part, reading.Feature);
        return new ReadingAnswer(
            reading.Feature, kind.FindFeature(reading.Feature)?.Name ?? reading.Feature, FitWording.Shown(MeasuredPart.ValueOf(item, reading)),
            item.Counts(reading), reading.Instrument, reading.ReadOn, reading.Note,
            ofNumber is NotRecorded ? null : FitWording.Shown(ofNumber), SourceShown.Of(item.SourceOf(reading)));
    }

    private static string WhyWhole(Kind kind, string? part, LimitAnswer[] judged, ItemCondition condition)
    {
        string Named(ItemCondition which) => FitWording.List(judged.Where(limit => limit.Condition == which).Select(limit => limit.Name).Distinct());
        return condition switch
        {
            _ when judged.Length == 0 => $"Not inspected: no service limit is recorded for {kind.Name}{(part is null ? "" : $" or for {part}")}.",
            ItemCondition.WithinLimits => $"Within every recorded limit: {Named(ItemCondition.WithinLimits)}.",
            ItemCondition.BeyondLimits => $"Beyond the limit: {Named(ItemCondition.BeyondLimits)}.",
            _ => $"Not inspected: {Named(ItemCondition.NotInspected)} cannot be held against the limit as it stands.",
        };
    }

    private static LimitAnswer Judge(Kind kind, Item item, ServiceLimit limit)
    {
        var name = kind.FindFeature(limit.Feature)?.Name ?? limit.Feature;
        var wanted = FitWording.Text(limit.Band, limit.Unit) + (limit.Part is null ? "" : $" for {limit.Part}");
        var read = item.Readings.FirstOrDefault(reading => reading.Feature == limit.Feature);
        var (condition, text) = read switch
        {
            null => (ItemCondition.NotInspected, $"not measured on this item; the limit is {wanted}"),
            _ when !item.Counts(read) => (ItemCondition.NotInspected, $"the reading was withdrawn; the limit is {wanted}"),
            _ => Hold(read.Reading, limit.Band, wanted),
        };
        return new LimitAnswer(
            limit.Feature, name, limit.Part, condition, FitWording.Shown(limit.Band, limit.Unit),
            read is not null && item.Counts(read) ? FitWording.Shown(MeasuredPart.ValueOf(item, read)) : null,
            limit.Consequence, $"{FitWording.AsSentence(name)}: {text}.{NoteOf(limit, condition)}", SourceShown.Of(limit.Evidence));
    }

    // The decision rule of ISO 14253-1: wholly inside, wholly outside, else nothing is shown.
    private static (ItemCondition Condition, string Text) Hold(Reading reading, Interval band, string wanted)
    {
        if (reading is QuantityReading { Uncertainty: null } bare)
        {
            var where = new Interval(bare.Value, bare.Value).LiesIn(band) ? "inside" : "beyond";
            return (ItemCondition.NotInspected,
                $"read {reading.Text}, but how well it was read is not recorded; the bare number lies {where} the limit of {wanted}");
        }

        if (MeasuredPart.LimitsOf(reading) is not { } known)
        {
            return (ItemCondition.NotInspected, $"read {reading.Text}, which is no number to hold against the limit of {wanted}");
        }

        var found = reading is QuantityReading quantity ? FitWording.Text(ValueSelection.Of(MeasuredPart.OfOne(quantity), null)) : reading.Text;
        return FeatureComparison.InBand(known, band) switch
        {
            Met.Yes => (ItemCondition.WithinLimits, $"read {found}, within the limit of {wanted}"),
            Met.No => (ItemCondition.BeyondLimits, $"read {found}, beyond the limit of {wanted}"),
            _ => (ItemCondition.NotInspected, $"read {found}; the reading's uncertainty straddles the limit of {wanted}: read it closer"),
        };
    }

    private static string NoteOf(ServiceLimit limit, ItemCondition condition) =>
        condition == ItemCondition.BeyondLimits && limit.Note is { Length: > 0 } note ? $" {FitWording.AsSentence(note).TrimEnd('.')}." : "";
}
