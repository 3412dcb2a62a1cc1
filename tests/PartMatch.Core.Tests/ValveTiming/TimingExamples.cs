using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;
using Xunit;

namespace PartMatch.Core.Tests.ValveTiming;

/// <summary>
/// An invented engine with two camshafts, <c>late</c> boosted with a phaser, <c>early</c> with a fixed wheel; numbers without spread unless a test wants one.
/// </summary>
internal static class TimingExamples
{
    private static readonly Evidence _document = new("ev-1", EvidenceGrade.MakersDocument, "2026-02-14", null, "sheet 1", null, null, null);

    public static readonly Part LateIntake = Camshaft("I-2", "intake", -2, 44, 9.6m);
    public static readonly Part EarlyIntake = Camshaft("I-1", "intake", 8, -52, 5.8m);
    public static readonly Part LateExhaust = Camshaft("E-2", "exhaust", 40, 2, 9.4m);
    public static readonly Part EarlyExhaust = Camshaft("E-1", "exhaust", 18, -6, 8.0m);
    public static readonly Part Phaser = Of("D-2", "drive", ("teeth", Whole(42)), ("phaser-range", Degrees(50)), ("rest", new ChoiceReading("retarded")));
    public static readonly Part FixedWheel = Of("D-1", "drive", ("teeth", Whole(42)), ("phaser-range", Degrees(0)), ("rest", new ChoiceReading("none")));
    public static readonly Part Sprocket = Of("S-1", "sprocket", ("teeth", Whole(42)));
    public static readonly Part Piston = Of("P-1", "piston", ("bowl-volume", Cm3(14.6m)), ("compression-height", Mm(31)));
    public static readonly Part Head = Of("H-1", "head", ("chamber-volume", Cm3(43)));
    public static readonly Part Gasket = Of("G-1", "gasket", ("compressed-thickness", Mm(0.95m)), ("bore", Mm(86)));
    public static readonly Part ThinGasket = Of("G-2", "gasket", ("compressed-thickness", Mm(0.60m)), ("bore", Mm(86)));

    public static FamilyFacts Engine { get; } = Family();

    /// <param name="parts">Instead of those of the same number, or beside them.</param>
    /// <param name="without">Engine properties left out; "squish" for the stack.</param>
    public static FamilyFacts Family(IReadOnlyList<Part>? parts = null, params string[] without) => Family(parts, [], without);

    /// <param name="instead">Stand in place of every fitment at their variant and position.</param>
    public static FamilyFacts Family(IReadOnlyList<Part>? parts, IReadOnlyList<Fitment> instead, string[] without)
    {
        bool IsReplaced(Fitment fitment) => instead.Any(other => (other.Variant, other.Position) == (fitment.Variant, fitment.Position));
        Part[] own = [LateIntake, EarlyIntake, LateExhaust, EarlyExhaust, Phaser, FixedWheel, Sprocket, Piston, Head, Gasket, ThinGasket];
        return new FamilyFacts(
            [new Variant("early", "Early", Span.Always, _document), new Variant("late", "Late", Span.Always, _document)],
            [
                Place("intake-cam", Roles.IntakeCamshaft), Place("exhaust-cam", Roles.ExhaustCamshaft), Place("drive", Roles.CamSprocket),
                    Place("sprocket", Roles.CamSprocket),
                Place("piston", Roles.Piston), Place("head", Roles.Head), Place("gasket", Roles.HeadGasket),
            ],
            [
                Kind("intake-cam"), Kind("exhaust-cam"), Kind("drive", "phaser-range"), Kind("sprocket"), Kind("piston"), Kind("head"), Kind("gasket"),
            ],
            [.. own.Where(part => parts?.Any(other => other.Id == part.Id) != true).Concat(parts ?? [])],
            [],
            [
                .. Fit("late", LateIntake, LateExhaust, Phaser, Sprocket, Piston, Head, Gasket)
                    .Concat(Fit("early", EarlyIntake, EarlyExhaust, FixedWheel, Sprocket, Piston, Head, ThinGasket)).Where(one => !IsReplaced(one)),
                .. instead,
            ],
            [
                Mate("nose", "intake-cam", "drive"), Mate("seat", "sprocket", "exhaust-cam"),
            ],
            without.Contains("squish") ? [] :
            [
                new Stack(
                    "squish",
                    [new FeatureTerm(1, new FeatureAt("gasket", "compressed-thickness")), new ConstantTerm(1, 0.0312m),
                        new FeatureTerm(-1, new FeatureAt("piston", "compression-height"))],
                    new Interval(0.00065m, 0.0013m), UnitTable.Get("mm"), Effect.Alters, null, Consequence.Damage, [], _document),
            ])
        {
            Family = new Family("finch-9", "Finch 9", "alder", null),
            EngineFacts = [.. Facts("late", "9.30", "0.80").Concat(Facts("early", "13.01", "0.00")).Where(fact => !without.Contains(fact.Property))],
        };
    }

    public static ValveTimingAnswer Reckon(ValveTimingQuestion question, FamilyFacts? facts = null) =>
        Assert.IsType<ValveTimingAnswer>(ValveTimingReckoning.Reckon(facts ?? Engine, question));

    public static CompressionAnswer Reckon(CompressionQuestion question, FamilyFacts? facts = null) =>
        Assert.IsType<CompressionAnswer>(CompressionReckoning.Reckon(facts ?? Engine, question));

    public static SumRefused Refuse(ValveTimingQuestion question, FamilyFacts? facts = null) =>
        Assert.IsType<SumRefused>(ValveTimingReckoning.Reckon(facts ?? Engine, question));

    public static SumRefused Refuse(CompressionQuestion question, FamilyFacts? facts = null) =>
        Assert.IsType<SumRefused>(CompressionReckoning.Reckon(facts ?? Engine, question));

    public static QuantityRange Angle(string text) => Range(text, Dimension.Angle);

    public static QuantityRange Range(string text, Dimension dimension) => Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, dimension)).Range;

    public static Quantity Read(string text, Dimension dimension) => Assert.IsType<QuantityRead>(QuantityParser.Parse(text, dimension)).Quantity;

    public static Part Of(string number, string kind, params (string Feature, Reading Reading)[] values) => new(
        $"alder:{number}", "alder", number, NumberKey.Of(number), kind, kind, null, _document,
        [.. values.Select(value => new RecordedValue(value.Feature, value.Reading, _document))], []);

    public static Part Camshaft(string number, string valve, decimal opens, decimal closes, decimal lift) => Of(
        number, $"{valve}-cam", ($"{valve}-opens-1mm", Degrees(opens)), ($"{valve}-closes-1mm", Degrees(closes)), ("lift", Mm(lift)));

    public static QuantityReading Mm(decimal value) => Exact(value, "mm");

    private static QuantityReading Degrees(decimal value) => Exact(value, "deg");

    public static QuantityReading Cm3(decimal value) => Exact(value, "cm3");

    private static CountReading Whole(long value) => new(value, value.ToString(CultureInfo.InvariantCulture));

    private static QuantityReading Exact(decimal value, string symbol)
    {
        var unit = UnitTable.Get(symbol);
        return new QuantityReading(unit.ToBase(value), 0, 0, 0, unit, $"{value.ToString(CultureInfo.InvariantCulture)} {symbol}");
    }

    private static Position Place(string code, string role) => new(code, code, "works", code, role);

    private static Kind Kind(string code, params string[] quantities) =>
        new(code, code, true, true, [], [.. quantities.Select(feature => new Feature(feature, feature, FeatureType.Quantity, UnitTable.Get("deg"), []))], [],
            []);

    private static IEnumerable<Fitment> Fit(string variant, params Part[] parts) =>
        parts.Select(part => new Fitment(variant, part.Kind, part.Id, Span.Always, 1, _document));

    private static Joint Mate(string code, string left, string right) => new(
        code, new FeatureAt(left, code), Relation.Same, new FeatureAt(right, code), Interval.Everything, null, Effect.Stops, null, Consequence.Loss, [],
            _document);

    private static IEnumerable<EngineFact> Facts(string variant, string ratio, string boost)
    {
        EngineFact Fact(string property, string value, string symbol) =>
            new(variant, property, Exact(decimal.Parse(value, CultureInfo.InvariantCulture), symbol), _document);
        return
        [
            Fact("compression-ratio", ratio, "1"), Fact("boost", boost, "bar"), Fact("bore", "85", "mm"), Fact("stroke", "94", "mm"),
                Fact("rod-length", "152", "mm"), Fact("deck-height", "230.2", "mm"),
            new EngineFact(variant, "fuel", new ChoiceReading("petrol-e0"), _document),
        ];
    }
}
