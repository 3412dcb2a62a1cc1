using CsCheck;
using PartMatch.Core.Catalogue;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Catalogue;

/// <summary>
/// Families drawn at random for properties: three positions of one kind each, four parts of every kind, values recorded well, badly or not at
/// all, fitments with and without spans, joints, a stack, companions in any direction, supersessions in any tangle. Every part and position is
/// named alike (<c>A-0</c> at <c>a</c>), so that a property can go through all of them.
/// </summary>
internal static class AnyFamily
{
    public const int PartsOfAKind = 4;

    public static IReadOnlyList<string> Positions { get; } = ["a", "b", "c"];

    public static IReadOnlyList<string> Variants { get; } = ["lark", "swift"];

    public static IEnumerable<string> PartsAt(string position) => Enumerable.Range(0, PartsOfAKind).Select(index => Number(position, index));

    /// <param name="withSpans">Some fitments hold to, others from, serial number 1000.</param>
    public static Gen<TestFamily> Of(bool withSpans = true) =>
        Gen.Select(
            Gen.Select(Kind(), Kind(), Kind(), (a, b, c) => new[] { a, b, c }),
            Gen.Select(Value, Value, Colour("red", "blue", ""), (bore, width, colour) => (bore, width, colour)).Array[Positions.Count * PartsOfAKind],
            Fitment(withSpans).Array[Positions.Count * Variants.Count],
            Links, Gen.Select(Place, Place, Effects, (left, right, effect) => (left, right, effect)).Array[0, 3], Rules,
            (kinds, values, fitments, links, joints, rules) => Tell(kinds, values, fitments, links, joints, rules));

    private static Gen<int> Place => Gen.Int[0, Positions.Count - 1];

    private static Gen<string> Colour(params string[] colours) => Gen.Int[0, colours.Length - 1].Select(index => colours[index]);

    private static Gen<Effect> Effects => Gen.Enum<Effect>();

    private static Gen<QuantityReading?> Value => Gen.OneOf<QuantityReading?>(
        Gen.Bool.Select(_ => (QuantityReading?)null),
        Gen.Int[0, 6].Select(tenths => (QuantityReading?)Bare(10 + (tenths * 0.1m))),
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, 2], Gen.Int[0, 1], (tenths, spread, known) => (QuantityReading?)Mm(10 + (tenths * 0.1m), spread * 0.05m, known * 0.05m)));

    private static Gen<(bool CanAlter, Effect Bore, Effect Width, Effect Colour, int Rules)> Kind() =>
        Gen.Select(Gen.Bool, Effects, Effects, Effects, Gen.Int[0, 3], (canAlter, bore, width, colour, rules) => (canAlter, bore, width, colour, rules));

    /// <summary>A part, −1 for none, −2 for not recorded; and whether it changed at serial number 1000 to another part.</summary>
    private static Gen<(int Part, int Later)> Fitment(bool withSpans) =>
        Gen.Select(Gen.Int[-2, PartsOfAKind - 1], withSpans ? Gen.Int[-3, PartsOfAKind - 1] : Gen.Const(-3), (part, later) => (part, later));

    private static Gen<(int Old, int New, bool Both, bool Early)[]> Links =>
        Gen.Select(Gen.Int[0, PartsOfAKind - 1], Gen.Int[0, PartsOfAKind - 1], Gen.Bool, Gen.Bool, (old, by, both, early) => (old, by, both, early)).Array[0, 5];

    private static Gen<(int From, int To, string When, string Then)[]> Rules =>
        Gen.Select(Place, Place, Colour("red", "blue"), Colour("red", "blue"), (from, to, when, then) => (from, to, when, then)).Array[0, 4];

    private static string Number(string position, int index) => $"{position.ToUpperInvariant()}-{index}";

    private static TestFamily Tell(
        (bool CanAlter, Effect Bore, Effect Width, Effect Colour, int Rules)[] kinds,
        (QuantityReading? Bore, QuantityReading? Width, string Colour)[] values,
        (int Part, int Later)[] fitments,
        (int Old, int New, bool Both, bool Early)[] links,
        (int Left, int Right, Effect Effect)[] joints,
        (int From, int To, string When, string Then)[] rules)
    {
        var family = new TestFamily().Work("ream");
        foreach (var variant in Variants)
        {
            family.Variant(variant);
        }

        foreach (var (index, position) in Positions.Index())
        {
            family.Place(position, kind => Describe(kind, kinds[index]));
            foreach (var part in Enumerable.Range(0, PartsOfAKind))
            {
                var (bore, width, colour) = values[(index * PartsOfAKind) + part];
                RecordedValue[] recorded =
                [
                    .. bore is null ? [] : new[] { Has("bore", bore) },
                    .. width is null ? [] : new[] { Has("width", width, By(EvidenceGrade.Reported)) },
                    .. colour.Length == 0 ? [] : new[] { Has("colour", Word(colour)) },
                ];
                family.Part(Number(position, part), position, recorded);
            }

            foreach (var (at, variant) in Variants.Index())
            {
                Fit(family, variant, position, fitments[(index * Variants.Count) + at]);
            }
        }

        foreach (var (old, by, both, early) in links.Where(link => link.Old != link.New).DistinctBy(link => (link.Old, link.New)))
        {
            family.Replaced(Number("a", old), Number("a", by), both ? SupersessionWay.Both : SupersessionWay.One, span: early ? Serials(null, 1000) : null);
        }

        foreach (var (index, (left, right, effect)) in joints.Where(joint => joint.Left != joint.Right).Index())
        {
            family.Joint($"joint-{index}", $"{Positions[left]}.bore", $"{Positions[right]}.width", min: -0.3m, max: 0.3m, effect: effect, work: effect == Effect.Work ? "ream" : null);
        }

        foreach (var (index, (from, to, when, then)) in rules.Index())
        {
            family.Companion($"rule-{index}", $"{Positions[from]}.colour", Word(when), $"{Positions[to]}.colour", Word(then));
        }

        return family.Stack("stack", "+a.bore|-b.width|+0.2", min: -0.4m, max: 0.6m);
    }

    private static void Describe(TestKind kind, (bool CanAlter, Effect Bore, Effect Width, Effect Colour, int Rules) drawn)
    {
        if (!drawn.CanAlter)
        {
            kind.CannotAlterRunning();
        }

        kind.Length("bore").Choice("colour").Length("width");
        if (drawn.Rules > 0)
        {
            kind.Rule("bore", drawn.Bore, allowance: 0.1m, work: drawn.Bore == Effect.Work ? "ream" : null);
        }

        if (drawn.Rules > 1)
        {
            kind.Rule("width", drawn.Width, Relation.AtLeast, work: drawn.Width == Effect.Work ? "ream" : null);
        }

        if (drawn.Rules > 2)
        {
            kind.Rule("colour", drawn.Colour, work: drawn.Colour == Effect.Work ? "ream" : null);
        }
    }

    private static void Fit(TestFamily family, string variant, string position, (int Part, int Later) drawn)
    {
        var spans = drawn.Later != -3 && drawn.Part != -2;
        Put(drawn.Part, spans ? Serials(null, 1000) : null);
        if (spans)
        {
            Put(drawn.Later, Serials(1001, null));
        }

        void Put(int part, Span? span)
        {
            if (part > -2)
            {
                family.Fitted(variant, position, part == -1 ? Part.None : Number(position, part), span);
            }
        }
    }
}
