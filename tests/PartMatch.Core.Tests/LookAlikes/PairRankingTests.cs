using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class PairRankingTests
{
    private static readonly string[] _bodies = ["long", "short"];
    private static readonly string[] _rotations = ["anticlockwise", "clockwise"];

    // Numbers dense enough for near ones, some of them shorter than six characters.
    private static readonly Gen<Part[]> _parts =
        Gen.Select(Gen.String[Gen.Char["0O1A"], 4, 7], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Bool).Select(one => one.Item4
                ? WrenFamily.Dowel($"harl:{one.Item1}", 6 + one.Item2)
                : WrenFamily.Pump($"harl:{one.Item1}", _bodies.ElementAtOrDefault(one.Item2), _rotations.ElementAtOrDefault(one.Item3), null))
            .Array[0, 9].Select(parts => parts.DistinctBy(part => part.Id).OrderBy(part => part.Id, StringComparer.Ordinal).ToArray());

    /// <summary>A second family: its pumps are of the same kind, some of them like those of the first, and their numbers stand in the same base.</summary>
    private static readonly Gen<(Part[] Own, Part[] Others)> _base = Gen.Select(_parts, _parts)
        .Select((own, others) => (own, others.Select(part => part with { Id = part.Id.Replace("harl:", "osk:", StringComparison.Ordinal), Maker = "osk" }).ToArray()));

    [Fact]
    public void Every_pair_near_in_number_or_the_same_to_the_eye_is_listed_and_no_other() => _base.Sample(
        (own, others) =>
        {
            var answer = PairRanking.Decide(Facts(own, others), new PairQuestion("wren-9", Limit: 1_000));
            var expected = own.SelectMany(_ => own.Concat(others), (one, other) => (one, other))
                .Where(pair => pair.one.Id != pair.other.Id && (IsNear(pair.one, pair.other) || IsSameToTheEye(pair.one, pair.other)))
                .Select(pair => InOrder(pair.one.Id, pair.other.Id)).Distinct().Order();
            Assert.Equal(expected, answer.Pairs.Select(row => (row.A.Part, row.B.Part)).Order());
            Assert.Equal(answer.Total, answer.Pairs.Count);
            var all = own.Concat(others).ToDictionary(part => part.Id);
            Assert.All(answer.Pairs, row => Assert.Equal(IsSameToTheEye(all[row.A.Part], all[row.B.Part]), row.SameToTheEye));
            Assert.All(answer.Pairs, row => Assert.True(row.Near is null || row.Near.FoldedEdits == Folded(all[row.A.Part], all[row.B.Part])));
        },
        iter: 300);

    [Fact]
    public void Order_is_by_danger_then_offers_then_cost_then_the_two_parts_and_pages_cover_all_once() => Gen.Select(_base, Gen.Int[1, 5]).Sample(
        (parts, limit) =>
        {
            // Counted after the pairs were ranked once: what is kept of them must not keep their order.
            var uncounted = Facts(parts.Own, parts.Others);
            Assert.All(PairRanking.Decide(uncounted, new PairQuestion("wren-9", Limit: 1_000)).Pairs, row => Assert.Equal(0, row.A.Offers + row.B.Offers));
            var facts = uncounted.With(new Odds(parts.Own.Concat(parts.Others).Index().ToDictionary(part => part.Item.Id, part => part.Index % 3), []));
            var whole = PairRanking.Decide(facts, new PairQuestion("wren-9", Limit: 1_000)).Pairs;
            Assert.All(whole, row => Assert.Equal(facts.Odds.OffersOf(row.A.Part), row.A.Offers));
            Assert.Equal(
                whole.OrderByDescending(row => row.Ease * row.Harm).ThenByDescending(row => row.A.Offers + row.B.Offers)
                    .ThenBy(row => row.Near?.Cost ?? double.PositiveInfinity)
                    .ThenBy(row => row.A.Part, StringComparer.Ordinal).ThenBy(row => row.B.Part, StringComparer.Ordinal),
                whole);
            var paged = new List<PairRow>();
            for (var page = Page(null); ; page = Page(page.Cursor))
            {
                paged.AddRange(page.Pairs);
                Assert.Equal(whole.Count, page.Total);
                if (page.Cursor is null)
                {
                    break;
                }

                Assert.Equal(limit, page.Pairs.Count);
            }

            Assert.Equal(whole.Select(row => (row.A, row.B)), paged.Select(row => (row.A, row.B)));

            PairAnswer Page(string? cursor) => PairRanking.Decide(facts, new PairQuestion("wren-9", Limit: limit, Cursor: cursor));
        },
        iter: 100);

    [Fact]
    public void Counts_are_of_all_pairs_whatever_is_asked_for() => Gen.Select(_base, Gen.Enum<DangerLevel>(), Gen.OneOf("coolant-pump", "dowel")).Sample(
        (parts, danger, kind) =>
        {
            var facts = Facts(parts.Own, parts.Others);
            var whole = PairRanking.Decide(facts, new PairQuestion("wren-9", Limit: 1_000));
            int Of(DangerLevel level) => whole.Pairs.Count(row => row.Danger == level);
            var notJudged = whole.Total; // nobody judged anything here
            Assert.Equal(new PairCounts(Of(DangerLevel.High), Of(DangerLevel.Medium), Of(DangerLevel.Low), Of(DangerLevel.None), notJudged), whole.Counts);
            var some = PairRanking.Decide(facts, new PairQuestion("wren-9", kind, danger, Limit: 1_000));
            Assert.Equal(whole.Counts, some.Counts);
            Assert.Equal(
                whole.Pairs.Where(row => row.Danger == danger && (row.A.Kind == kind || row.B.Kind == kind)).Select(row => (row.A, row.B)),
                some.Pairs.Select(row => (row.A, row.B)));
            Assert.Equal(some.Pairs.Count, some.Total);
        },
        iter: 100);

    // One of every sort. C and E: near, the same to the eye, E pumps backwards, and the one came in place of the other: (3 + 1) × 5. C and 90-0001-A: by eye only, loss of output: 2 × 4.
    // 90-0001-A and the dowel are fitted nowhere, so what the mix-up does is not known: 1 × 3. B is the older number of C and does no harm.
    [Fact]
    public void Each_pair_says_what_it_rests_on()
    {
        var facts = Judged();
        var answer = PairRanking.Decide(facts, new PairQuestion("wren-9"));
        Assert.Equal(
            [
                ("harl:H-26-1147-C", "harl:H-26-1147-E", PartRelation.Trap, 20, true), ("harl:H-26-1147-C", "harl:H-90-0001-A", PartRelation.NotJudged, 8, false),
                ("harl:H-90-0001-A", "harl:K-7", PartRelation.Trap, 3, false), ("harl:H-26-1147-B", "harl:H-26-1147-C", PartRelation.NewerNumber, 0, true),
            ],
            answer.Pairs.Where(row => (row.A.Part, row.B.Part) is not ("harl:H-26-1147-B", "harl:H-26-1147-E" or "harl:H-90-0001-A") and not ("harl:H-26-1147-E", _))
                .Select(row => (row.A.Part, row.B.Part, row.Relation, row.Ease * row.Harm, row.Near is not null)));
        var trap = Assert.Single(answer.Pairs, row => (row.A.Part, row.B.Part) == (WrenFamily.PumpC, WrenFamily.PumpE));
        Assert.Equal("Pumps backwards.", trap.RelationText);
        Assert.Equal(new WrongDeliveries(30, 4), trap.Wrong); // 20 and 10 deliveries, asked either way
        Assert.All(answer.Pairs.Where(row => row != trap), row => Assert.Null(row.Wrong));
        Assert.Equal((true, 2), (answer.Complete, answer.Within));
    }

    [Theory]
    [InlineData(PartRelation.Trap, 2)]
    [InlineData(PartRelation.NewerNumber, 1)] // B to C, read from the first to the second
    [InlineData(PartRelation.Harmless, 0)]
    public void Judgement_filters(PartRelation judgement, int total) =>
        Assert.Equal(total, PairRanking.Decide(Judged(), new PairQuestion("wren-9", Judgement: judgement)).Total);

    [Fact]
    public void Not_judged_is_what_nobody_has_looked_at_and_is_counted()
    {
        var answer = PairRanking.Decide(Judged(), new PairQuestion("wren-9", Judgement: PartRelation.NotJudged));
        Assert.Equal(answer.Counts.NotJudged, answer.Total);
        Assert.All(answer.Pairs, row => Assert.Equal(PartRelation.NotJudged, row.Relation));
    }

    // Retracted, the finding is worth nothing, and nothing else links the two.
    [Fact]
    public void Retracted_trap_is_no_pair()
    {
        Part[] parts = [WrenFamily.Dowel("harl:K-7", 6), WrenFamily.Pump("harl:H-90-0001-A", "short", "clockwise", 14)];
        LookAlikeFacts Found(Evidence evidence) =>
            WrenFamily.Facts([WrenFamily.Wren(parts, [], [], [new JudgedPair("harl:K-7", "harl:H-90-0001-A", PairJudgement.Trap, evidence, null)])], parts);
        Assert.Empty(PairRanking.Decide(Found(WrenFamily.Retracted), new PairQuestion("wren-9")).Pairs);
        Assert.Single(PairRanking.Decide(Found(WrenFamily.Document), new PairQuestion("wren-9")).Pairs);
    }

    // A trap was found between two parts whose numbers are far apart and which any photo tells apart: each still warns of the other.
    [Fact]
    public void Found_trap_is_a_look_alike_though_neither_number_nor_eye_confuses_them()
    {
        Part[] parts = [WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12), WrenFamily.Pump("harl:K-90-0001", "long", "anticlockwise", 12)];
        var family = WrenFamily.Wren(
            parts, [WrenFamily.Fitted("wa", "coolant-pump", parts[0].Id), WrenFamily.Fitted("wb", "coolant-pump", parts[1].Id)], [],
            [new JudgedPair(parts[1].Id, parts[0].Id, PairJudgement.Trap, WrenFamily.Document, null)]);
        foreach (var (asked, other) in new[] { (parts[0], parts[1]), (parts[1], parts[0]) })
        {
            var row = Assert.Single(LookAlikeSearch.Decide(WrenFamily.Facts([family], parts), new LookAlikeQuestion(asked.Number)).LookAlikes);
            Assert.Equal((other.Id, PartRelation.Trap, false), (row.Part, row.Relation, row.SameToTheEye));
            Assert.StartsWith("Ease 1 (somebody found them mixed up)", row.DangerText, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Unknown_family_a_limit_of_nothing_and_a_broken_cursor_are_refused()
    {
        Assert.Throws<ArgumentException>(() => PairRanking.Decide(Judged(), new PairQuestion("no-such")));
        Assert.Throws<ArgumentOutOfRangeException>(() => PairRanking.Decide(Judged(), new PairQuestion("wren-9", Limit: 0)));
        Assert.Throws<ArgumentException>(() => PairRanking.Decide(Judged(), new PairQuestion("wren-9", Cursor: "nonsense")));
    }

    private static LookAlikeFacts Judged()
    {
        Part[] parts =
        [
            WrenFamily.Pump("harl:H-26-1147-B", "short", "clockwise", 12), WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12),
            WrenFamily.Pump(WrenFamily.PumpE, "short", "anticlockwise", 12), WrenFamily.Pump("harl:H-90-0001-A", "short", "clockwise", 14),
            WrenFamily.Dowel("harl:K-7", 6),
        ];
        var family = WrenFamily.Wren(
            parts, [WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC), WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpE)],
            [WrenFamily.Replaced("harl:H-26-1147-B", WrenFamily.PumpC, SupersessionWay.One)],
            [
                new JudgedPair(WrenFamily.PumpE, WrenFamily.PumpC, PairJudgement.Trap, WrenFamily.Document, "Pumps backwards."),
                new JudgedPair("harl:K-7", "harl:H-90-0001-A", PairJudgement.Trap, WrenFamily.Document, null),
            ]);
        return WrenFamily.Facts(
            [family], parts,
            odds: new Odds(
                new Dictionary<string, int>(),
                [new MixUpCount(WrenFamily.PumpC, WrenFamily.PumpE, 20, 3), new MixUpCount(WrenFamily.PumpE, WrenFamily.PumpC, 10, 1)]));
    }

    private static LookAlikeFacts Facts(Part[] own, Part[] others)
    {
        var fitted = own.Where(part => part.Kind == "coolant-pump").Take(2).Select((part, index) => WrenFamily.Fitted(index == 0 ? "wa" : "wb", "coolant-pump", part.Id));
        var second = WrenFamily.Wren(others, []);
        FamilyFacts[] families = [WrenFamily.Wren(own, [.. fitted]), Named(second, "osk-2")];
        return WrenFamily.Facts(families, [.. own, .. others]);
    }

    private static FamilyFacts Named(FamilyFacts family, string code) => new(
        family.Variants, family.Positions, [WrenFamily.PumpKind, WrenFamily.DowelKind], [.. family.Parts], [], [], [], [])
    { Family = new Family(code, code, "osk", null) };

    // By definition: the folded keys of the asked part's number and of the other's, at most two edits apart, one where the asked key is shorter than six characters.
    private static bool IsNear(Part asked, Part other) => Folded(asked, other) <= (asked.Key.Length < 6 ? 1 : 2);

    private static int Folded(Part one, Part other) =>
        EditDistanceByDefinition.OptimalStringAlignment(EditDistanceByDefinition.Folded(one.Key), EditDistanceByDefinition.Folded(other.Key));

    // Of a pump the photo shows the body; the rotation matters, and only the label and the bench show it. Of a dowel no photo shows anything.
    private static bool IsSameToTheEye(Part one, Part other) =>
        one.Kind == "coolant-pump" && other.Kind == "coolant-pump"
        && Value(one, "body") is { } body && Value(other, "body") == body
        && Value(one, "rotation") is { } rotation && Value(other, "rotation") is { } otherRotation && rotation != otherRotation;

    private static string? Value(Part part, string feature) => part.Values.FirstOrDefault(value => value.Feature == feature)?.Reading.Text;

    private static (string A, string B) InOrder(string one, string other) => string.CompareOrdinal(one, other) < 0 ? (one, other) : (other, one);
}
