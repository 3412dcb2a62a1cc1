using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class LookAlikeSearchTests
{
    private static readonly Part _pumpC = WrenFamily.Pump(WrenFamily.PumpC, "short", "clockwise", 12.0m);
    private static readonly Part _pumpE = WrenFamily.Pump(WrenFamily.PumpE, "short", "anticlockwise", 12.0m);

    [Fact]
    public void Near_and_the_same_to_the_eye_and_silently_wrong_is_high()
    {
        var row = Assert.Single(Decide([_pumpC, _pumpE], WrenFamily.PumpC).LookAlikes);
        Assert.Equal(WrenFamily.PumpE, row.Part);
        Assert.True(row.SameToTheEye);
        Assert.Equal((3, 5, DangerLevel.High), (row.Ease, row.Harm, row.Danger)); // mounts but runs differently: 4, engine damage: one more
        Assert.Equal(new WorstPlace("wren-9", "wb", "coolant-pump", WrenFamily.PumpC, null, null, Headline.MountsButRunsDifferently, Consequence.Damage, Sureness.Unproven), row.Worst); // mounts: a computed yes
        Assert.Equal((1, 1, MixUpClass.SuffixOnly), (row.Near!.Edits, row.Near.FoldedEdits, row.Near.Class)); // found by number
        Assert.Equal([new MixUpPlace(7, "C", "E")], row.Near.At);
        Assert.Equal(["rotation"], row.Differs.Select(difference => difference.Feature));
        Assert.Equal([(Method.Label, true), (Method.Bench, false)], row.TellApart.Select(check => (check.Check, check.BeforePaying)));
        Assert.Equal("Cheapest check: rotation, by its label, 2 min.", row.TellApartText);
        Assert.Equal(PartRelation.NotJudged, row.Relation);
    }

    [Fact]
    public void Worst_place_is_also_looked_for_where_the_other_would_be_the_wrong_one()
    {
        // C does no harm on WB, because WB was also built with C; on WA, E is the wrong one.
        var answer = Decide([_pumpC, _pumpE], WrenFamily.PumpC, [
            WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC), WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpC), WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpE)]);
        var worst = Assert.Single(answer.LookAlikes).Worst;
        Assert.Equal(("wa", WrenFamily.PumpE), (worst?.Variant, worst?.Part));
    }

    [Fact]
    public void What_only_the_eye_confuses_is_found_without_a_near_number()
    {
        var twin = WrenFamily.Pump("harl:H-90-0001-A", "short", "clockwise", 14.0m);
        var other = WrenFamily.Pump("harl:H-90-0002-A", "long", "anticlockwise", 12.0m);
        var row = Assert.Single(Decide([_pumpC, twin, other], WrenFamily.PumpC).LookAlikes);
        Assert.Equal((twin.Id, "H-90-0001-A"), (row.Part, row.Number));
        Assert.Null(row.Near);
        Assert.Equal((2, 4, DangerLevel.High), (row.Ease, row.Harm, row.Danger)); // runs differently, loss of output
    }

    [Fact]
    public void Another_kind_with_look_alike_characters_does_not_fit_and_is_medium()
    {
        var dowel = WrenFamily.Part("harl:H-26-II47-C", "dowel", "Dowel");
        var row = Assert.Single(Decide([_pumpC, dowel], WrenFamily.PumpC).LookAlikes);
        Assert.Equal((2, 2, DangerLevel.Medium), (row.Ease, row.Harm, row.Danger));
        Assert.Equal((0, 2), (row.Near!.FoldedEdits, row.Near.Edits)); // found by number
        Assert.Empty(row.Differs);
        Assert.Equal("Different kinds of part: Coolant pump and Dowel.", row.TellApartText);
    }

    [Fact]
    public void A_stranger_of_another_family_is_listed_and_caught_on_the_bench()
    {
        var row = Assert.Single(Decide([_pumpC], WrenFamily.PumpC, neighbour: true).LookAlikes);
        Assert.Equal((WrenFamily.Spring, "spring", "Spring"), (row.Part, row.Kind, row.Name));
        Assert.Equal(MixUpClass.AdjacentTransposition, row.Near?.Class);
        Assert.Equal((1, 2, DangerLevel.Low), (row.Ease, row.Harm, row.Danger));
        Assert.Equal(Headline.DoesNotFit, row.Worst?.Headline);
    }

    [Fact]
    public void The_family_is_the_context_of_the_danger_and_hides_nothing()
    {
        var facts = WrenFamily.Facts([Wren([_pumpC]), WrenFamily.Neighbour], [_pumpC, WrenFamily.Neighbour.GetPart(WrenFamily.Spring)]);
        var wren = Assert.Single(LookAlikeSearch.Decide(facts, new LookAlikeQuestion("H-26-1147-C", Family: "wren-9")).LookAlikes);
        var neighbour = Assert.Single(LookAlikeSearch.Decide(facts, new LookAlikeQuestion("H-26-1147-C", Family: "osk-2")).LookAlikes);
        Assert.Equal("wren-9", wren.Worst?.Family);
        Assert.Equal("osk-2", neighbour.Worst?.Family);
    }

    [Fact]
    public void A_pair_fitted_nowhere_is_not_known_and_says_so()
    {
        var row = Assert.Single(Decide([_pumpC, _pumpE], WrenFamily.PumpC, []).LookAlikes);
        Assert.Equal((3, 3, DangerLevel.High), (row.Ease, row.Harm, row.Danger));
        Assert.Null(row.Worst);
        Assert.Equal("Ease 3 (near in number and the same to the eye) × harm 3 (neither is fitted anywhere here, so what a mix-up does is not known).", row.DangerText);
    }

    [Fact]
    public void Where_the_right_part_is_fitted_on_some_engines_only_the_question_is_put_for_those()
    {
        // C to serial 41206, E from 41207: for any one engine the other is wrong, though on some engine of WA each fits.
        var answer = Decide([_pumpC, _pumpE], WrenFamily.PumpC, [
            WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC, new Span(null, null, null, 41206)),
            WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpE, new Span(null, null, 41207, null))]);
        var row = Assert.Single(answer.LookAlikes);
        Assert.Equal((5, 41207L, Headline.MountsButRunsDifferently), (row.Harm, row.Worst?.Serial, row.Worst?.Headline));
    }

    [Fact]
    public void For_an_engine_that_takes_the_one_the_other_does_not_fit_rather_than_being_not_known()
    {
        var eight = WrenFamily.Dowel("harl:H-30-0008-A", 8.0m);
        var nine = WrenFamily.Dowel("harl:H-30-0008-B", 9.0m);
        var answer = Decide([eight, nine], eight.Id, [
            WrenFamily.Fitted("wa", "dowel", eight.Id, new Span(null, null, null, 41206)),
            WrenFamily.Fitted("wa", "dowel", nine.Id, new Span(null, null, 41207, null))]);
        var row = Assert.Single(answer.LookAlikes);
        Assert.Equal((2, Headline.DoesNotFit, 41207L), (row.Harm, row.Worst?.Headline, row.Worst?.Serial));
    }

    [Fact]
    public void A_number_that_replaces_the_asked_one_does_no_harm_and_says_so()
    {
        var newer = WrenFamily.Pump("harl:H-26-1147-F", "short", "clockwise", 12.0m);
        var family = Wren([_pumpC, newer], supersessions: [WrenFamily.Replaced(WrenFamily.PumpC, newer.Id, SupersessionWay.One)]);
        var row = Assert.Single(LookAlikeSearch.Decide(WrenFamily.Facts([family], [_pumpC, newer]), new LookAlikeQuestion("H-26-1147-C", Family: "wren-9")).LookAlikes);
        Assert.Equal((PartRelation.NewerNumber, 0, DangerLevel.None), (row.Relation, row.Harm, row.Danger));
        Assert.Equal("harl:H-26-1147-C is replaced by harl:H-26-1147-F (not the other way round).", row.RelationText);
        Assert.Null(row.Worst);
    }

    [Fact]
    public void Another_number_of_the_asked_part_is_the_same_part()
    {
        var supplier = new PartNumber("kestlow", "H-26-1149-C", "H261149C", NumberSort.Supplier, WrenFamily.PumpC);
        var row = Assert.Single(LookAlikeSearch.Decide(WrenFamily.Facts([Wren([_pumpC])], [_pumpC], [supplier]), new LookAlikeQuestion("H-26-1147-C")).LookAlikes);
        Assert.Equal((PartRelation.SamePart, DangerLevel.None, "H-26-1149-C"), (row.Relation, row.Danger, row.Number));
        Assert.Equal("One part: there is nothing to tell apart.", row.TellApartText);
    }

    [Fact]
    public void A_part_that_no_check_separates_is_said_to_be_so()
    {
        var other = WrenFamily.Pump(WrenFamily.PumpE, "short", "clockwise", 12.05m);
        var row = Assert.Single(Decide([_pumpC, other], WrenFamily.PumpC).LookAlikes);
        Assert.Empty(row.TellApart);
        Assert.StartsWith("Nothing recorded separates them", row.TellApartText, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_number_gives_what_is_near_and_judges_the_harm_as_not_known()
    {
        var answer = Decide([_pumpC, _pumpE], "harl:H-26-1148-C");
        Assert.Empty(answer.Known);
        Assert.Equal([WrenFamily.PumpC, WrenFamily.PumpE], answer.LookAlikes.Select(row => row.Part)); // one edit before two
        Assert.All(answer.LookAlikes, row => Assert.Equal((1, 3, DangerLevel.Low, (string?)null), (row.Ease, row.Harm, row.Danger, row.Against)));
    }

    [Fact]
    public void The_same_key_of_two_makers_is_ambiguous_until_the_maker_is_named()
    {
        var other = WrenFamily.Pump("kestlow:H 261147 C", "short", "anticlockwise", 12.0m);
        var facts = WrenFamily.Facts([Wren([_pumpC, other])], [_pumpC, other]);
        var both = LookAlikeSearch.Decide(facts, new LookAlikeQuestion("h26-1147c"));
        Assert.Equal([WrenFamily.PumpC, other.Id], both.Known.Select(known => known.Part));
        Assert.Equal([(WrenFamily.PumpC, other.Id), (other.Id, WrenFamily.PumpC)], both.LookAlikes.Select(row => (row.Part, row.Against)));

        var one = LookAlikeSearch.Decide(facts, new LookAlikeQuestion("h26-1147c", Maker: "harl"));
        var row = Assert.Single(one.LookAlikes);
        Assert.Equal((other.Id, 0, 0, 0.0), (row.Part, row.Near!.Edits, row.Near.FoldedEdits, row.Near.Cost)); // found by number
        Assert.Null(row.Near.Class);
        Assert.Equal((3, 5), (row.Ease, row.Harm));
    }

    [Fact]
    public void A_casting_mark_narrows_and_gives_way_to_a_real_number()
    {
        PartNumber Mark(string written, string part) => new("harl", written, NumberKey.Of(written), NumberSort.CastingMark, part);
        var facts = WrenFamily.Facts([Wren([_pumpC, _pumpE])], [_pumpC, _pumpE], [Mark("77-104-3", WrenFamily.PumpC), Mark("77-104-3", WrenFamily.PumpE), Mark("H-26-1147-C", WrenFamily.PumpE)]);
        Assert.Equal([WrenFamily.PumpC, WrenFamily.PumpE], LookAlikeSearch.Decide(facts, new LookAlikeQuestion("77-104-3")).Known.Select(known => known.Part));
        Assert.Equal([WrenFamily.PumpC], LookAlikeSearch.Decide(facts, new LookAlikeQuestion("H-26-1147-C")).Known.Select(known => known.Part));
    }

    [Fact]
    public void Order_is_by_danger_then_cost_then_key_and_pages_join_without_a_gap()
    {
        Part[] parts =
        [
            _pumpC, _pumpE,
            WrenFamily.Part("harl:H-26-1147-F", "dowel", "Dowel"), WrenFamily.Part("harl:H-26-1147-H", "dowel", "Dowel"), // the same danger and cost: by key
            WrenFamily.Part("harl:H-26-1741-C", "dowel", "Dowel"), WrenFamily.Part("harl:H-26-II47-C", "dowel", "Dowel"),
            WrenFamily.Pump("harl:H-90-0001-A", "short", "clockwise", 14.0m),
        ];
        var whole = Decide(parts, WrenFamily.PumpC);
        Assert.Equal(
            ["H-26-1147-E", "H-90-0001-A", "H-26-II47-C", "H-26-1147-F", "H-26-1147-H", "H-26-1741-C"],
            whole.LookAlikes.Select(row => row.Number));
        Assert.Equal([15, 8, 4, 2, 2, 2], whole.LookAlikes.Select(row => row.Ease * row.Harm));
        Assert.Null(whole.Cursor);

        var paged = new List<string>();
        string? cursor = null;
        do
        {
            var page = Decide(parts, WrenFamily.PumpC, question: question => question with { Limit = 2, Cursor = cursor });
            Assert.Equal(6, page.Total);
            Assert.Equal(2, page.LookAlikes.Count);
            paged.AddRange(page.LookAlikes.Select(row => row.Number));
            cursor = page.Cursor;
        }
        while (cursor is not null);
        Assert.Equal(whole.LookAlikes.Select(row => row.Number), paged);
    }

    [Fact]
    public void A_broken_cursor_a_limit_of_nothing_and_an_unknown_family_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Decide([_pumpC], WrenFamily.PumpC, question: question => question with { Cursor = "nonsense" }));
        Assert.Throws<ArgumentException>(() => Decide([_pumpC], WrenFamily.PumpC, question: question => question with { Cursor = "%%" }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Decide([_pumpC], WrenFamily.PumpC, question: question => question with { Limit = 0 }));
        Assert.Throws<ArgumentException>(() => Decide([_pumpC], WrenFamily.PumpC, question: question => question with { Family = "no-such" }));
        Assert.False(LookAlikeSearch.IsCursor("nonsense"));
    }

    [Fact]
    public void A_warning_names_each_dangerous_part_once_with_its_cheapest_check()
    {
        var dowel = WrenFamily.Part("harl:H-26-1174-C", "dowel", "Dowel"); // low: not worth a warning
        Part[] parts = [_pumpC, _pumpE, dowel];
        var again = new PartNumber("kestlow", "H-26-1147-K", "H261147K", NumberSort.Supplier, WrenFamily.PumpE);
        var warnings = LookAlikeSearch.Warn(WrenFamily.Facts([Wren(parts)], parts, [again]), _pumpC, "wren-9");
        var warning = Assert.Single(warnings);
        Assert.Equal((WrenFamily.PumpE, "Coolant pump", "high", "rotation, by its label, 2 min"), (warning.Part, warning.Name, warning.Danger, warning.TellApart));
        Assert.Matches(@"^Ease 3 \(near in number and the same to the eye\) × harm [45] \(.+\)\.$", warning.DangerText);
    }

    [Fact]
    public void Near_numbers_alone_come_by_cost_without_the_asked_number()
    {
        var index = new LookAlikeIndex(new[] { "harl:H-26-1147-C", "harl:H-26-1147-E", "harl:H-26-1174-C", "osk:H-26-II47-C", "osk:H-26-1147-C" }
            .Select(id => WrenFamily.OwnNumber(WrenFamily.Part(id, "dowel", "Dowel"))));
        var answer = NearSearch.Decide(index, new NearQuestion("H-26-1147-C", Maker: "harl", Limit: 3));
        Assert.Equal(4, answer.Total);
        Assert.Equal([("osk:H-26-1147-C", 0), ("osk:H-26-II47-C", 2), ("harl:H-26-1147-E", 1)], answer.Numbers.Select(row => (row.Part, row.Edits)));
        var rest = NearSearch.Decide(index, new NearQuestion("H-26-1147-C", Maker: "harl", Limit: 3, Cursor: answer.Cursor));
        Assert.Equal(["harl:H-26-1174-C"], rest.Numbers.Select(row => row.Part));
        Assert.Null(rest.Cursor);
    }

    private static FamilyFacts Wren(IReadOnlyList<Part> parts, IReadOnlyList<Fitment>? fitments = null, IReadOnlyList<Supersession>? supersessions = null) =>
        WrenFamily.Wren(
            [.. parts.OrderBy(part => part.Id, StringComparer.Ordinal)],
            fitments ?? [WrenFamily.Fitted("wa", "coolant-pump", WrenFamily.PumpC), .. parts.Contains(_pumpE) ? [WrenFamily.Fitted("wb", "coolant-pump", WrenFamily.PumpE)] : Array.Empty<Fitment>()],
            supersessions);

    private static LookAlikeAnswer Decide(
        IReadOnlyList<Part> parts, string asked, IReadOnlyList<Fitment>? fitments = null, bool neighbour = false, Func<LookAlikeQuestion, LookAlikeQuestion>? question = null)
    {
        FamilyFacts[] families = neighbour ? [Wren(parts, fitments), WrenFamily.Neighbour] : [Wren(parts, fitments)];
        Part[] all = neighbour ? [.. parts, WrenFamily.Neighbour.GetPart(WrenFamily.Spring)] : [.. parts];
        var plain = new LookAlikeQuestion(asked[(asked.IndexOf(':', StringComparison.Ordinal) + 1)..], Family: "wren-9");
        return LookAlikeSearch.Decide(WrenFamily.Facts(families, all), question?.Invoke(plain) ?? plain);
    }
}
