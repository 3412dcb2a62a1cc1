using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Values that something reads and that nobody recorded of a part which the maker fitted, those first on which most questions hang.</summary>
internal static class MissingValues
{
    private const string NoSuchThing = "Where the part cannot have it, limit what reads it to the variants that do.";

    public static IEnumerable<Fault> Find(FamilyFacts facts, FittedPlaces places, OpenQuestions open) =>
        from part in facts.Parts
        let fitted = places.Of(part.Id).ToList()
        where fitted.Count > 0
        from read in fitted.SelectMany(fitment => Reader.At(facts, fitment.Variant, fitment.Position)).GroupBy(reader => reader.Feature, StringComparer.Ordinal)
        where read.Key != Feature.Present.Code && ValueSelection.Of(part, read.Key) is NotRecorded
        let hangs = open.HangingOn(new LacksValue(part.Id, read.Key))
        where read.Any(reader => reader.Applies) || hangs.Unlocks != Unlocks.None
        select Fault(facts, part, fitted, read.Key, [.. read], hangs);

    private static Fault Fault(FamilyFacts facts, Part part, List<Fitment> fitted, string feature, IReadOnlyList<Reader> readers, OpenQuestions.Hangs hangs)
    {
        var kind = facts.FindKind(part.Kind);
        var name = FaultWords.FeatureName(kind, feature);
        var check = CheckFor(kind, feature, hangs.Rooms);
        return new Fault(
            FaultSort.MissingValue, $"{part.Name} {part.Number}: {name} is not recorded",
            $"Read by {FitWording.Some([.. readers.Select(reader => reader.By).Distinct()])}. {FaultWords.Hangs(hangs.Unlocks)}",
            fitted[0].Position, [.. fitted.Select(fitment => fitment.Variant).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            [new FaultRows(facts).Of(part), .. readers.Select(reader => reader.Row).OfType<FaultRow>().Distinct()],
            hangs.Fit,
            $"{Get(kind, name, check)} {NoSuchThing}{Reach(facts.FindPosition(fitted[0].Position))}")
        {
            Unlocks = hangs.Unlocks,
            Measure = new Measurement(part.Id, feature, name, check?.Method, check?.Minutes, check?.How),
        };
    }

    private static string Get(Kind? kind, string name, Check? check)
    {
        if (check is null)
        {
            var of = kind is null ? name : $"{name} of {kind.Name}";
            return $"No check is recorded for {of}: look it up in a maker's document, and record the value with its evidence.";
        }

        var method = FitWording.AsSentence(FitWording.InWords(Codes.Of(check.Method)));
        return $"{method}, {FaultWords.Minutes(check.Minutes)}{(check.How is null ? "" : $": {check.How}")}. Then record the value with its evidence.";
    }

    private static string Reach(Position? position) => position is { Access: { } way, AccessMinutes: > 0 and { } minutes }
        ? $" On a complete engine the place is seen after {FaultWords.Minutes(minutes)}: {way}."
        : "";

    /// <summary>
    /// Of the checks of the feature the one that can decide most of the relations that lack the value: reading ± uncertainty has to fit into the
    /// room that is left. Among equals the cheapest; one of unknown uncertainty last where there is a room to fit into.
    /// </summary>
    private static Check? CheckFor(Kind? kind, string feature, IReadOnlyList<decimal?> rooms) => kind?.Checks
        .Where(check => check.Feature == feature)
        .OrderByDescending(check => rooms.Count(room => room is null || check.Uncertainty is null || 2 * check.Uncertainty <= room))
        .ThenBy(check => check.Uncertainty is null && rooms.Any(room => room is not null))
        .ThenBy(check => check.Minutes).ThenBy(check => check.Method)
        .FirstOrDefault();
}
