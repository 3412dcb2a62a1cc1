using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books;
using PartMatch.Storage.Families;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Families;

public sealed class FamilyStoreTests : IDisposable
{
    private readonly TempBase _temp = new();
    private readonly FamilyStore _store;

    public FamilyStoreTests()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        _store = new FamilyStore(_temp.Database);
    }

    // The sample family is loaded above.
    private FamilyFacts Facts => _store.FindFamily("lark-2")!;

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void Families_are_listed_and_common_books_are_not()
    {
        var family = Assert.Single(_store.List());
        Assert.Equal(("lark-2", "Lark 2", "marl", "Marl Engines", 3, 4), (family.Family, family.Title, family.Maker, family.MakerName, family.Positions, family.Parts));
        Assert.Equal(["la", "lb"], family.Variants);
    }

    [Theory]
    [InlineData("shared")]
    [InlineData("lark-3")]
    public void What_is_no_family_is_not_found(string code) => Assert.Null(_store.FindFamily(code));

    [Fact]
    public void Family_and_variants_are_read_with_span_and_evidence()
    {
        Assert.Equal(new Family("lark-2", "Lark 2", "marl", null), Facts.Family);
        var variant = Facts.Variants[0];
        Assert.Equal(("la", "LA pump set"), (variant.Code, variant.Name));
        Assert.Equal((new DateOnly(2015, 3, 1), new DateOnly(2018, 11, 30), 100L, 41206L), (variant.Span.BuiltFrom?.First, variant.Span.BuiltTo?.Last, variant.Span.SerialFrom, variant.Span.SerialTo));
        Assert.Equal("parts list", variant.Evidence?.Source);
        Assert.Equal((null, null, 41207L, null), (Facts.Variants[1].Span.BuiltFrom, Facts.Variants[1].Span.BuiltTo, Facts.Variants[1].Span.SerialFrom, Facts.Variants[1].Span.SerialTo));
        Assert.Null(Facts.Variants[1].Evidence);
    }

    [Fact]
    public void Evidence_is_that_of_the_own_book_where_two_books_use_one_code()
    {
        Assert.Equal("parts list", Facts.GetPart("marl:S-100").Evidence?.Source);
        Assert.Equal("wall chart", Facts.GetPart("orrin:B-77").Evidence?.Source);
        Assert.NotEqual(Facts.GetPart("marl:S-100").Evidence?.Root, Facts.GetPart("orrin:B-77").Evidence?.Root);
    }

    [Fact]
    public void Quantities_are_exact_in_the_base_unit_and_keep_their_text()
    {
        var bore = Assert.IsType<QuantityReading>(Facts.GetPart("marl:B-1/2").Values[0].Reading);
        Assert.Equal((0.0254m, 0.000005m, 0.00001m, 0.000001m, "25.400 mm"), (bore.Value, bore.Minus, bore.Plus, bore.Uncertainty, bore.Text));

        // 2.047 in × 25.4 mm/in = 51.9938 mm exactly.
        var length = Assert.IsType<QuantityReading>(Assert.Single(Facts.GetPart("marl:I-1").Values).Reading);
        Assert.Equal((0.0519938m, null, null, null, "in"), (length.Value, length.Minus, length.Plus, length.Uncertainty, length.Unit.Symbol));
    }

    [Fact]
    public void Counts_choices_and_sets_are_read_by_the_type_of_the_feature()
    {
        var values = Facts.GetPart("marl:B-1/2").Values;
        Assert.Equal(["bore", "bore", "grooves", "lining"], values.Select(value => value.Feature));
        Assert.Equal(new CountReading(2, "2"), values[2].Reading);
        Assert.Equal(["bronze", "tin"], Assert.IsType<ChoicesReading>(values[3].Reading).Choices);
        Assert.Null(values[3].Evidence);
        Assert.Equal(new ChoiceReading("tang"), Facts.GetPart("marl:S-100").Values[0].Reading);
    }

    [Fact]
    public void Curves_are_read_in_base_units()
    {
        var point = Facts.GetPart("marl:I-1").Curves[1];
        Assert.Equal(("dead-time", 14m, 300_000m, 0.00092m), (point.Curve, point.X, point.Y, point.Value));
    }

    [Fact]
    public void Parts_and_kinds_of_used_books_belong_to_the_family()
    {
        Assert.NotNull(Facts.FindPart("orrin:B-77"));
        var bush = Facts.GetKind("bush");
        Assert.Equal(["bore", "grooves", "lining"], bush.Features.Select(feature => feature.Code));
        Assert.Equal(new Rule("bore", Effect.Stops, Relation.Same, 0.00001m, null, Consequence.Damage, null), bush.Rules[0]);
        Assert.Equal(0m, bush.Rules[1].Allowance);
        Assert.Equal((Method.Gauge, 4m, 0.000002m), (bush.Checks[0].Method, bush.Checks[0].Minutes, bush.Checks[0].Uncertainty));
        Assert.Equal((false, true), (bush.CanAlterRunning, bush.Reviewed));
        Assert.Equal(["fuel-pressure", "hot-parts"], Facts.GetKind("injector").Cautions);
        var work = Facts.FindWork("ream-bush");
        Assert.Equal((30m, 1.5m, new Money("40.00", "EUR"), false), (work?.Minutes, work?.Days, work?.Price, work?.CanBeUndone));
    }

    [Fact]
    public void Fitments_keep_nothing_fitted_apart_from_not_recorded()
    {
        var none = Assert.Single(Facts.FitmentsAt("lb", "injector"));
        Assert.Equal((null, 0), (none.Part, none.Quantity));
        Assert.Empty(Facts.FitmentsAt("lb", "front-bush"));
        Assert.Equal([20000L, null], Facts.FitmentsAt("la", "front-bush").Select(fitment => fitment.Span.SerialTo));
        Assert.Equal("wide flange", Facts.FitmentsAt("la", "front-bush").Last().Span.Mark);
    }

    [Fact]
    public void Demands_for_a_set_are_sets()
    {
        Assert.Equal(["e85", "petrol"], Assert.IsType<ChoicesReading>(Facts.Needs[1].Demand).Choices);
        Assert.Equal(new ChoiceReading("yes"), Facts.Needs[2].Demand);
        Assert.Equal(0.02545m, Assert.IsType<QuantityReading>(Facts.Needs[0].Demand).Value);
        Assert.Equal(["plain", "tang"], Assert.IsType<ChoicesReading>(Facts.Companions[1].When.Value).Choices);
        Assert.Equal(["lb"], Facts.Companions[1].Variants);
    }

    [Fact]
    public void Joints_stacks_and_selections_are_in_base_units()
    {
        var joint = Assert.Single(Facts.Joints);
        Assert.Equal(new Interval(0.000005m, null), joint.Band);
        Assert.Equal((Effect.Work, "ream-bush"), (joint.Effect, joint.Work));
        var stack = Assert.Single(Facts.Stacks);
        Assert.Equal(
            [new FeatureTerm(1, new FeatureAt("front-bush", "bore")), new FeatureTerm(-1, new FeatureAt("main-shaft", "outer")), new ConstantTerm(1, 0.0015m)], stack.Terms);
        Assert.Equal(new Interval(0.00001m, 0.00005m), stack.Band);
        var select = Assert.Single(Facts.Selects);
        Assert.Equal((0.02498m, 0.02499m, "marl:B-1/2"), (select.From, select.To, select.Part));
    }

    [Fact]
    public void Supersessions_keep_retracted_evidence_and_its_root()
    {
        var supersession = Assert.Single(Facts.Supersessions);
        Assert.Equal(("marl:B-1/2", "marl:B-1/3", SupersessionWay.One, 1, 20001L), (supersession.OldPart, supersession.NewPart, supersession.Way, supersession.Quantity, supersession.Span.SerialFrom));
        Assert.Equal(["marl:S-100", "orrin:B-77"], supersession.With);
        Assert.True(supersession.Evidence?.IsRetracted);
        Assert.Equal("lark-2/ev-0002", supersession.Evidence?.Root);
    }

    [Fact]
    public void Findings_come_with_their_neighbours_span_and_source()
    {
        Assert.Equal(["fi-0001", "fi-0002", "fi-0003"], Facts.Findings.Select(finding => finding.Code));
        var (fitted, ran, empty) = (Facts.Findings[0], Facts.Findings[1], Facts.Findings[2]);
        Assert.Equal(("marl:B-1/2", "la", "front-bush", Axis.Mounts, FindingOutcome.WithWork), (fitted.Part, fitted.Variant, fitted.Position, fitted.Axis, fitted.Outcome));
        Assert.Equal([new KeyValuePair<string, string?>("injector", null), new("main-shaft", "marl:S-100")], fitted.With.OrderBy(pair => pair.Key, StringComparer.Ordinal));
        Assert.Equal((20000L, "page 12"), (fitted.Span.SerialTo, fitted.Evidence.Details?.Page));

        // 12.0 kW under load for 41.5 hours.
        Assert.Equal((41.5m, 12000m, "petrol"), (ran.Evidence.Details?.Hours, ((QuantityReading?)ran.Evidence.Details?.Output)?.Value, ran.Evidence.Details?.Fuel));
        Assert.Equal((Part.None, true), (empty.Part, empty.Evidence.IsRetracted));
    }

    [Fact]
    public void Copy_of_a_retracted_source_is_retracted_with_it()
    {
        _temp.Load(SampleBook.Family().Add("evidence.csv", "ev-0006,reported,2026-05,,heard,ev-0003,,").Change("engine.csv", "fuel-system,port-injected,,,,,", "fuel-system,port-injected,,,,,ev-0006").Files);

        var copy = Facts.EngineFacts.Single(fact => fact.Property == "fuel-system").Evidence;
        Assert.Equal(("2026-04-01", "copied from ev-0003, which was retracted: wrong part"), (copy?.RetractedOn, copy?.RetractedWhy));
    }

    [Fact]
    public void Torques_come_pass_by_pass_for_each_source_in_base_units()
    {
        var passes = Facts.TorquesAt("la", "front-bush").ToList();

        // 15.5 lbf·ft × 1.3558179483314004 N·m (NIST SP 811) = 21.0151781991367062 N·m
        Assert.Equal(
            [("ev-0001", 1, 20m, "20 N·m"), ("ev-0001", 2, 90m, "90 deg"), ("ev-0003", 1, 21.0151781991367062m, "15.5 lbf·ft")],
            passes.Select(pass => (pass.Evidence.Code, pass.Pass, pass.Turn.Value, pass.Turn.Text)));
        Assert.Equal(
            [(Lubrication.Oiled, SingleUse.Stretch), (null, null), (null, null)],
            passes.Select(pass => (pass.Lubrication, pass.SingleUse)));
        Assert.Equal((2m, 2m), (passes[0].Turn.Minus, passes[0].Turn.Plus));
        Assert.True(passes[2].Evidence.IsRetracted);
        Assert.Empty(Facts.TorquesAt("lb", "front-bush"));
    }

    [Fact]
    public void Torques_of_one_source_before_and_from_a_serial_number_are_read_with_their_spans()
    {
        _temp.Load(SampleBook.Family()
            .Change("torques.csv", "la,front-bush,1,,,,,15.5,,,lbf·ft,,,,ev-0003,", "la,front-bush,1,,,,200,25,,,N·m,,,,ev-0002,\nla,front-bush,1,,,201,,28,,,N·m,,,,ev-0002,")
            .Files);

        Assert.Equal(
            [(25m, null, 200L), (28m, 201L, (long?)null)],
            Facts.TorquesAt("la", "front-bush").Where(pass => pass.Evidence.Code == "ev-0002")
                .Select(pass => (pass.Turn.Value, pass.Span.SerialFrom, pass.Span.SerialTo)));
    }

    [Fact]
    public void Torques_of_a_book_from_before_the_spans_hold_for_every_engine()
    {
        _temp.Load(SampleBook.Family()
            .Change("torques.csv", "pass,built_from,built_to,serial_from,serial_to,value", "pass,value")
            .Change("torques.csv", "bush,1,,,,,20", "bush,1,20").Change("torques.csv", "bush,2,,,,,90", "bush,2,90")
            .Change("torques.csv", "bush,1,,,,,15.5", "bush,1,15.5").Files);

        Assert.All(Facts.TorquesAt("la", "front-bush"), pass => Assert.Equal(Span.Always, pass.Span));
        Assert.Equal(3, Facts.TorquesAt("la", "front-bush").Count());
    }

    [Fact]
    public void Limits_are_in_base_units_and_open_where_nothing_is_recorded()
    {
        Assert.Equal(
            [
                ("bush", "grooves", null, new Interval(2, null), Consequence.Loss),
                ("shaft", "outer", null, new Interval(0.02495m, 0.025m), Consequence.Damage),
                ("shaft", "outer", "marl:S-100", new Interval(0.02497m, null), Consequence.Damage),
            ],
            Facts.Limits.Select(limit => (limit.Kind, limit.Feature, limit.Part, limit.Band, limit.Consequence)));
    }

    [Fact]
    public void Pairs_keep_their_order_and_retracted_evidence()
    {
        Assert.Equal(
            [("marl:B-1/2", "orrin:B-77", PairJudgement.Trap, "the oil hole is missing"), ("marl:S-100", "marl:B-1/2", PairJudgement.Harmless, null)],
            Facts.Pairs.Select(pair => (pair.PartA, pair.PartB, pair.Judgement, pair.Note)));
        Assert.Equal("parts list", Facts.Pairs[0].Evidence?.Source);
        Assert.True(Facts.Pairs[1].Evidence?.IsRetracted);
    }

    [Fact]
    public void Pairs_of_used_books_come_too_and_name_parts_as_they_write_themselves()
    {
        var common = SampleBook.Common().Add("parts.csv", "orrin:B-78,bush,Split bush,,")
            .Write("pairs.csv", "part_a,part_b,judgement,evidence,note\norrin:b 77,orrin:B78,same-part,,\n");
        _temp.Load(common.Files);
        BookAssert.Equal(common.Files, _temp.Books.Export("shared")!);
        Assert.Equal(new JudgedPair("orrin:B-77", "orrin:B-78", PairJudgement.SamePart, null, null), Facts.Pairs[^1]);
        Assert.Equal(3, Facts.Pairs.Count);
    }

    [Fact]
    public void Shots_are_ordered_by_code_and_empty_cells_are_not_recorded()
    {
        var shots = Facts.GetKind("shaft").Shots;
        Assert.Equal([("mark", "stamped mark", null), ("whole", "whole shaft beside a ruler", "lay it flat, a ruler along it, camera square on")], shots.Select(shot => (shot.Code, shot.Name, shot.How)));
        Assert.Empty(shots[0].Shows);
        Assert.Equal(["nose", "outer"], shots[1].Shows);
        Assert.Empty(Facts.GetKind("bush").Shots);
    }

    [Fact]
    public void Bench_order_and_reminders_are_read_with_their_joins_and_works()
    {
        Assert.Equal([null, BenchJoin.OnBench, BenchJoin.Into], Facts.BenchOrders.Select(row => row.How));
        Assert.Equal(("front-bush", "main-shaft", "ev-0001", "pressed in, cold"), (Facts.BenchOrders[1].First, Facts.BenchOrders[1].Then, Facts.BenchOrders[1].Evidence?.Code, Facts.BenchOrders[1].Note));
        Assert.Equal(["la"], Facts.BenchOrders[1].Variants);
        Assert.Equal((ReminderAt.Worked, "Reamed in line, and washed?"), (Facts.Reminders[0].At, Facts.Reminders[0].Text));
        Assert.Equal(["ream-bush"], Facts.Reminders[0].Works);
        Assert.Equal(("leak", ReminderAt.Start, null), (Facts.Reminders[1].Code, Facts.Reminders[1].At, Facts.Reminders[1].Evidence));
        Assert.Empty(Facts.Reminders[1].Works);
    }

    [Fact]
    public void Access_keeps_from_outside_apart_from_not_recorded()
    {
        Assert.Equal((95.5m, "sump and front cover off"), (Facts.FindPosition("front-bush")?.AccessMinutes, Facts.FindPosition("front-bush")?.Access));
        Assert.Equal((0m, null), (Facts.FindPosition("injector")?.AccessMinutes, Facts.FindPosition("injector")?.Access));
        Assert.NotNull(Facts.FindPosition("main-shaft"));
        Assert.Equal((null, null), (Facts.FindPosition("main-shaft")?.AccessMinutes, Facts.FindPosition("main-shaft")?.Access));
    }

    [Fact]
    public void Engine_facts_are_quantities_counts_and_words()
    {
        Assert.Equal(0.085m, Assert.IsType<QuantityReading>(Facts.EngineFacts[0].Reading).Value);
        Assert.Equal(new CountReading(2, "2"), Facts.EngineFacts[1].Reading);
        Assert.Equal(new ChoiceReading("port-injected"), Facts.EngineFacts[2].Reading);
    }

    [Fact]
    public void Facts_are_kept_until_the_base_changes_here_or_through_another_connection()
    {
        var first = Facts;
        Assert.Same(first, Facts);
        _temp.Load(SampleBook.Family().Change("variants.csv", "LB cart", "LB utility cart").Files);
        Assert.Equal("LB utility cart", Facts.FindVariant("lb")?.Name);
        Assert.Equal("LB cart", first.FindVariant("lb")?.Name);

        using var other = Database.Open(_temp.Path);
        new BookStore(other).Import(SampleBook.Family().Files, ImportMode.Replace, false, TestContext.Current.CancellationToken);
        Assert.Equal("LB cart", Facts.FindVariant("lb")?.Name);
    }

    [Fact]
    public void Replaced_common_book_changes_the_facts_of_the_families_that_use_it()
    {
        _temp.Load(SampleBook.Family().Remove("companions.csv").Files);
        Assert.IsType<ChoiceReading>(Facts.GetPart("marl:S-100").Values[0].Reading);
        _temp.Load(SampleBook.Common().Change("features.csv", "shaft,nose,nose,choice", "shaft,nose,nose,choices").Files);
        Assert.IsType<ChoicesReading>(Facts.GetPart("marl:S-100").Values[0].Reading);
    }
}
