using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Tests.LookAlikes;

/// <summary>
/// An invented family, small enough to judge by hand: two variants, a coolant pump that turns clockwise on WA and anticlockwise on WB, and a
/// dowel. Beside it an invented neighbour family that has nothing but a spring.
/// </summary>
internal static class WrenFamily
{
    public const string PumpC = "harl:H-26-1147-C";
    public const string PumpE = "harl:H-26-1147-E";
    public const string Spring = "osk:H-26-1174-C";

    public static Evidence Document { get; } = new("ev-0001", EvidenceGrade.MakersDocument, "2019-04-02", null, "parts document", null, null, null);

    public static Evidence Retracted { get; } = new("ev-0009", EvidenceGrade.Reported, "2020-01-01", null, "letter", null, "2020-03-01", "mistaken");

    private static readonly Unit _mm = UnitTable.Get("mm");

    public static Kind PumpKind { get; } = new(
        "coolant-pump", "Coolant pump", CanAlterRunning: true, Reviewed: true, [],
        [
            new Feature("blades", "number of blades", FeatureType.Count, null, []),
            new Feature("body", "body", FeatureType.Choice, null, ["long", "short"]),
            new Feature("colour", "colour", FeatureType.Choice, null, ["black", "grey"]),
            new Feature("rotation", "rotation", FeatureType.Choice, null, ["anticlockwise", "clockwise"]),
            new Feature("vane-height", "vane height", FeatureType.Quantity, _mm, []),
        ],
        [
            new Rule("body", Effect.Stops, Relation.Same, 0, null, Consequence.Nuisance, null),
            new Rule("rotation", Effect.Alters, Relation.Same, 0, null, Consequence.Damage, null),
            new Rule("vane-height", Effect.Alters, Relation.Same, 0.0005m, null, Consequence.Loss, null),
        ],
        [
            new Check("blades", Method.Count, 2, null, null),
            new Check("body", Method.Photo, 1, null, "side view"),
            new Check("rotation", Method.Label, 2, null, "arrow on the wrapper"),
            new Check("rotation", Method.Bench, 20, null, "blow through it"),
            new Check("vane-height", Method.Photo, 1, 0.002m, "photo with a rule beside it"),
            new Check("vane-height", Method.Caliper, 6, 0.00005m, "at three vanes"),
        ]);

    public static Kind DowelKind { get; } = new(
        "dowel", "Dowel", CanAlterRunning: false, Reviewed: true, [],
        [new Feature("diameter", "diameter", FeatureType.Quantity, _mm, [])],
        [new Rule("diameter", Effect.Stops, Relation.Same, 0, null, Consequence.Nuisance, null)],
        [new Check("diameter", Method.Caliper, 1, 0.00002m, null)]);

    public static Kind SpringKind { get; } = new("spring", "Spring", CanAlterRunning: true, Reviewed: true, [], [], [], []);

    public static Part Pump(string id, string? body, string? rotation, decimal? vaneHeightMm, decimal? spreadMm = 0.1m, int? blades = null) => Part(
        id, "coolant-pump", "Coolant pump",
        [
            .. blades is { } count ? [Value("blades", new CountReading(count, $"{count}"))] : Array.Empty<RecordedValue>(),
            .. body is null ? Array.Empty<RecordedValue>() : [Value("body", new ChoiceReading(body))],
            .. rotation is null ? Array.Empty<RecordedValue>() : [Value("rotation", new ChoiceReading(rotation))],
            .. vaneHeightMm is { } height
                ? [Value("vane-height", new QuantityReading(height / 1000, spreadMm / 1000, spreadMm / 1000, null, _mm, FormattableString.Invariant($"{height:0.00} mm")))]
                : Array.Empty<RecordedValue>(),
        ]);

    public static Part Dowel(string id, decimal diameterMm) => Part(
        id, "dowel", "Dowel", [Value("diameter", new QuantityReading(diameterMm / 1000, 0, 0, null, _mm, FormattableString.Invariant($"{diameterMm:0.0} mm")))]);

    public static Part Part(string id, string kind, string name, IReadOnlyList<RecordedValue>? values = null)
    {
        var (maker, number) = (id[..id.IndexOf(':', StringComparison.Ordinal)], id[(id.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        return new Part(id, maker, number, NumberKey.Of(number), kind, name, null, Document, values ?? [], []);
    }

    public static Fitment Fitted(string variant, string position, string part, Span? span = null) => new(variant, position, part, span ?? Span.Always, 1, Document);

    public static Supersession Replaced(string old, string by, SupersessionWay way, Span? span = null, params string[] variants) =>
        new(old, by, way, 1, [], span ?? Span.Always, variants, Document, null);

    public static FamilyFacts Wren(
        IReadOnlyList<Part> parts, IReadOnlyList<Fitment> fitments, IReadOnlyList<Supersession>? supersessions = null, IReadOnlyList<JudgedPair>? pairs = null) => new(
        [new Variant("wa", "WA", Span.Always, Document), new Variant("wb", "WB", Span.Always, Document)],
        [new Position("coolant-pump", "Coolant pump", "cooling", "coolant-pump", null), new Position("dowel", "Dowel", "block", "dowel", null)],
        [PumpKind, DowelKind],
        parts,
        [],
        fitments,
        [],
        [])
        {
            Family = new Family("wren-9", "Wren 9", "harl", null),
            Supersessions = supersessions ?? [],
            Pairs = pairs ?? [],
        };

    /// <summary>The neighbour family, whose only part is a spring with a number near that of a Wren pump.</summary>
    public static FamilyFacts Neighbour { get; } = new(
        [new Variant("o1", "O1", Span.Always, Document)],
        [new Position("spring", "Spring", "valve-train", "spring", null)],
        [SpringKind],
        [Part(Spring, "spring", "Spring")],
        [],
        [Fitted("o1", "spring", Spring)],
        [],
        [])
    {
        Family = new Family("osk-2", "Osk 2", "osk", null),
    };

    /// <summary>Facts over the parts' own numbers and the further ones given.</summary>
    public static LookAlikeFacts Facts(IReadOnlyList<FamilyFacts> families, IReadOnlyList<Part> parts, IReadOnlyList<PartNumber>? further = null, Odds? odds = null) =>
        new(new LookAlikeIndex(parts.Select(OwnNumber).Concat(further ?? [])), families, odds);

    public static PartNumber OwnNumber(Part part) => new(part.Maker, part.Number, part.Key, NumberSort.Service, part.Id);

    private static RecordedValue Value(string feature, Reading reading) => new(feature, reading, Document);
}
