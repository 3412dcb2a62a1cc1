using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Items;

/// <summary>One example against its service limits, by the decision rule of ISO 14253-1: reading ± uncertainty wholly inside, wholly outside, else nothing shown.</summary>
public sealed class ItemCheckTests
{
    // Limits 44.95 … 45.05; the reading is known to ± 0.01, so 44.96 … 45.04 is surely inside, and what is below 44.94 or above 45.06 surely outside.
    [Theory]
    [InlineData(44.959, ItemCondition.NotInspected)]
    [InlineData(44.96, ItemCondition.WithinLimits)]
    [InlineData(45.00, ItemCondition.WithinLimits)]
    [InlineData(45.04, ItemCondition.WithinLimits)]
    [InlineData(45.041, ItemCondition.NotInspected)]
    [InlineData(45.06, ItemCondition.NotInspected)]
    [InlineData(45.061, ItemCondition.BeyondLimits)]
    [InlineData(44.94, ItemCondition.NotInspected)]
    [InlineData(44.939, ItemCondition.BeyondLimits)]
    public void A_reading_is_within_or_beyond_only_with_all_of_its_uncertainty(double read, ItemCondition expected)
    {
        var answer = Check(Shafts().Limit("shaft", "journal", 44.95m, 45.05m), Read("journal", (decimal)read, 0.01m));

        Assert.Equal((expected, expected), (Assert.Single(answer.Limits).Condition, answer.Condition));
        Assert.Equal(expected == ItemCondition.NotInspected,
            answer.Limits[0].Text.Contains("the reading's uncertainty straddles the limit", StringComparison.Ordinal));
    }

    // Wear has one end: at least 44.95.
    [Theory]
    [InlineData(60.0, ItemCondition.WithinLimits)]
    [InlineData(44.96, ItemCondition.WithinLimits)]
    [InlineData(44.9599, ItemCondition.NotInspected)]
    [InlineData(44.94, ItemCondition.NotInspected)]
    [InlineData(44.9399, ItemCondition.BeyondLimits)]
    public void An_open_end_limits_nothing(double read, ItemCondition expected) =>
        Assert.Equal(expected, Check(Shafts().Limit("shaft", "journal", 44.95m, null), Read("journal", (decimal)read, 0.01m)).Condition);

    [Theory]
    [InlineData(45.00, 0.05, ItemCondition.WithinLimits)]
    [InlineData(45.00, 0.50, ItemCondition.NotInspected)] // within one, not measured the other
    [InlineData(44.00, 0.05, ItemCondition.BeyondLimits)]
    [InlineData(44.00, 0.50, ItemCondition.BeyondLimits)] // beyond one counts, whatever is not measured
    public void The_whole_is_beyond_if_any_is_and_within_only_if_every_limit_is(double journal, double runOut, ItemCondition expected)
    {
        var family = Shafts().Limit("shaft", "journal", 44.95m, null).Limit("shaft", "run-out", null, 0.06m);
        ItemReading[] readings = [Read("journal", (decimal)journal, 0.01m),
            .. runOut < 0.1 ? [Read("run-out", (decimal)runOut, 0.005m)] : Array.Empty<ItemReading>()];

        var answer = Check(family, readings);

        Assert.Equal(expected, answer.Condition);
        Assert.Equal(2, answer.Limits.Count);
    }

    [Fact]
    public void Without_a_limit_for_the_kind_the_item_is_not_inspected_and_that_is_the_reason()
    {
        var answer = Check(Shafts().Limit("wheel", "bore", 10, 11), Read("journal", 45, 0.01m));

        Assert.Equal(ItemCondition.NotInspected, answer.Condition);
        Assert.Empty(answer.Limits);
        Assert.Equal("Not inspected: no service limit is recorded for Shaft or for alder:S-1.", answer.Text);
    }

    // New shafts of the kind are 45 or 47: the kind's "at least 44.95" would pass a worn 47. S-1 is a 47, at least 46.95.
    [Theory]
    [InlineData(46.99, ItemCondition.WithinLimits)]
    [InlineData(46.96, ItemCondition.WithinLimits)] // ± 0.01: on the limit
    [InlineData(46.959, ItemCondition.NotInspected)]
    [InlineData(46.94, ItemCondition.NotInspected)]
    [InlineData(46.939, ItemCondition.BeyondLimits)]
    [InlineData(45.00, ItemCondition.BeyondLimits)]
    public void A_limit_of_the_part_outranks_that_of_the_kind(double read, ItemCondition expected)
    {
        var answer = Check(Shafts().Limit("shaft", "journal", 44.95m, null).Limit("shaft", "journal", 46.95m, null, part: "S-1"), Read("journal", (decimal)read, 0.01m));

        var limit = Assert.Single(answer.Limits);
        Assert.Equal((expected, expected, Id("S-1")), (answer.Condition, limit.Condition, limit.Part));
        Assert.Contains("at least 46.95 mm for alder:S-1", limit.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_of_another_part_says_nothing()
    {
        var family = Shafts().Shaft("S-2").Limit("shaft", "journal", 46.95m, null, part: "S-2");
        Assert.Empty(Check(family, Read("journal", 45, 0.01m)).Limits);

        var limit = Assert.Single(Check(family.Limit("shaft", "journal", 44.95m, null), Read("journal", 45, 0.01m)).Limits);
        Assert.Equal((ItemCondition.WithinLimits, null), (limit.Condition, limit.Part));
    }

    [Fact]
    public void A_limit_of_the_part_outranks_for_its_own_feature_only()
    {
        var answer = Check(
            Shafts().Limit("shaft", "journal", 46.95m, null, part: "S-1").Limit("shaft", "run-out", null, 0.06m), Read("journal", 47, 0.01m), Read("run-out", 0.1m, 0.005m));

        Assert.Equal([("journal", ItemCondition.WithinLimits), ("run-out", ItemCondition.BeyondLimits)], answer.Limits.Select(limit => (limit.Feature, limit.Condition)));
    }

    [Fact]
    public void A_withdrawn_limit_of_the_part_leaves_that_of_the_kind() =>
        Assert.Null(Assert.Single(Check(
            Shafts().Limit("shaft", "journal", 44.95m, null).Limit("shaft", "journal", 46.95m, null, part: "S-1", evidence: Retracted()), Read("journal", 45, 0.01m)).Limits).Part);

    [Fact]
    public void Of_an_item_that_nobody_can_name_only_the_limits_of_the_kind_hold()
    {
        var facts = Shafts().Limit("shaft", "run-out", null, 0.06m).Limit("shaft", "journal", 46.95m, null, part: "S-1").Facts();
        var answer = ItemCheck.Decide(facts, facts.GetKind("shaft"), facts.Limits, null, Item(Read("run-out", 0.01m, 0.005m)) with { Part = null }, facts.Selects);

        Assert.Equal(["run-out"], answer.Limits.Select(limit => limit.Feature));
    }

    [Fact]
    public void A_limit_by_a_source_that_was_withdrawn_is_none() =>
        Assert.Empty(Check(Shafts().Limit("shaft", "journal", 44.95m, null, evidence: Retracted()), Read("journal", 40, 0.01m)).Limits);

    [Fact]
    public void A_limit_without_a_reading_is_not_inspected_and_is_shown()
    {
        var limit = Assert.Single(Check(Shafts().Limit("shaft", "journal", 44.95m, 45.05m, Consequence.Damage)).Limits);

        Assert.Equal((ItemCondition.NotInspected, Consequence.Damage, null), (limit.Condition, limit.Consequence, limit.Reading));
        Assert.Equal("Journal: not measured on this item; the limit is 44.95 … 45.05 mm.", limit.Text);
        Assert.Equal("ev-makers-document", limit.Source?.Evidence);
    }

    // How well it was read is not recorded: that is not known, not nothing. The bare number is told all the same.
    [Theory]
    [InlineData(45.00, "inside")]
    [InlineData(44.00, "beyond")]
    public void A_reading_nobody_knows_how_well_it_was_read_shows_nothing(double read, string where)
    {
        var answer = Check(Shafts().Limit("shaft", "journal", 44.95m, 45.05m), Read("journal", (decimal)read, null));

        Assert.Equal(ItemCondition.NotInspected, answer.Condition);
        Assert.Contains($"how well it was read is not recorded; the bare number lies {where} the limit", answer.Limits[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_withdrawn_reading_shows_nothing() =>
        Assert.Equal(ItemCondition.NotInspected, Check(Shafts()
            .Limit("shaft", "journal", 44.95m, null), Read("journal", 45, 0.01m) with { Evidence = Retracted(EvidenceGrade.Measured) }).Condition);

    // The reading names no source of its own: it rests on that of the item, which was withdrawn.
    [Fact]
    public void A_reading_that_rests_on_the_withdrawn_source_of_its_item_shows_nothing()
    {
        var facts = Shells().Limit("shaft", "journal", 44.95m, null).Facts();
        var item = Item(Read("journal", 44.985m, 0.002m) with { Evidence = null }) with { Evidence = Retracted(EvidenceGrade.Measured) };

        var answer = ItemCheck.Decide(facts, facts.GetKind("shaft"), facts.Limits, facts.GetPart(Id("S-1")), item, facts.Selects);

        Assert.Equal(ItemCondition.NotInspected, answer.Condition);
        Assert.Equal((false, true), (Assert.Single(answer.Readings).Counts, answer.Limits[0].Text.Contains("withdrawn", StringComparison.Ordinal)));
        Assert.Empty(answer.Grades);
    }

    [Theory]
    [InlineData(3, ItemCondition.WithinLimits)]
    [InlineData(4, ItemCondition.BeyondLimits)]
    public void A_count_is_exact(int damaged, ItemCondition expected)
    {
        var family = Shafts().Limit("shaft", "pitted-teeth", null, 3000); // 3 in the base unit of a count

        Assert.Equal(expected, Check(family, new ItemReading("pitted-teeth", Count(damaged), null, null, null, null)).Condition);
    }

    [Fact]
    public void A_word_is_no_number_to_hold_against_a_limit() =>
        Assert.Contains("no number", Check(Shafts().Limit("shaft", "journal", 44.95m, null),
            new ItemReading("journal", Word("worn"), null, null, null, null)).Limits[0].Text, StringComparison.Ordinal);

    [Fact]
    public void No_answer_says_that_the_item_is_sound() =>
        Assert.Contains("does not show that the part is sound",
            Check(Shafts().Limit("shaft", "journal", 44.95m, null), Read("journal", 45, 0.01m)).NotInspected, StringComparison.Ordinal);

    // Grades: A for 44.98 … 44.99, B for 44.99 … 45.00, C for 45.00 … 45.01.
    [Theory]
    [InlineData(44.985, 0.002, GradeOutcome.One, "A")]
    [InlineData(44.985, 0.005, GradeOutcome.Several, "A,B")] // 44.990 is in both
    [InlineData(44.985, 0.0049, GradeOutcome.One, "A")]
    [InlineData(44.995, 0.006, GradeOutcome.Several, "A,B,C")]
    [InlineData(44.979, 0.002, GradeOutcome.Several, "A")] // or beyond the end of the table
    [InlineData(44.978, 0.0019, GradeOutcome.Outside, "")]
    [InlineData(45.02, 0.002, GradeOutcome.Outside, "")]
    public void A_reading_names_the_graded_numbers_to_order(double read, double knownTo, GradeOutcome outcome, string parts)
    {
        var grade = Assert.Single(Check(Shells(), Read("journal", (decimal)read, (decimal)knownTo)).Grades);

        Assert.Equal(("main-shell", "journal", outcome), (grade.Position, grade.Feature, grade.Outcome));
        Assert.Equal(parts.Length == 0 ? [] : parts.Split(',').Select(part => Id($"M-{part}")), grade.Parts);
    }

    [Fact]
    public void What_to_order_is_said_in_words()
    {
        Assert.Equal("Main shell, chosen by journal, read as 44.985 mm (known to ± 0.002): order alder:M-A.",
            Check(Shells(), Read("journal", 44.985m, 0.002m)).Grades[0].Text);
        Assert.Contains("alder:M-A or alder:M-B: the reading's uncertainty straddles the grades; read it closer, then order",
            Check(Shells(), Read("journal", 44.99m, 0.002m)).Grades[0].Text, StringComparison.Ordinal);
        Assert.Contains("or beyond the end of the table", Check(Shells(), Read("journal", 44.979m, 0.002m)).Grades[0].Text, StringComparison.Ordinal);
        Assert.Contains("in no row of the table, which runs over 44.98 … 45.01 mm", Check(Shells(), Read("journal", 45.02m, 0.002m)).Grades[0].Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_between_two_rows_and_a_grade_with_two_numbers_are_said_to_be_that()
    {
        var family = Shells().Part("M-D", "main-shell").Part("M-E", "main-shell")
            .Chosen("main-shell", "shaft.journal", 45.02m, 45.03m, "M-D").Chosen("main-shell", "shaft.journal", 45.02m, 45.03m, "M-E");

        Assert.Contains("in a gap between two rows", Check(family, Read("journal", 45.015m, 0.002m)).Grades[0].Text, StringComparison.Ordinal);
        Assert.Contains("the table has several numbers for this grade", Check(family, Read("journal", 45.025m, 0.002m)).Grades[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_nobody_knows_how_well_it_was_read_orders_nothing()
    {
        var grade = Assert.Single(Check(Shells(), Read("journal", 44.985m, null)).Grades);

        Assert.Equal((GradeOutcome.NotKnown, "alder:M-A"), (grade.Outcome, Assert.Single(grade.Parts)));
    }

    [Fact]
    public void A_feature_that_was_not_read_or_a_table_of_another_kind_gives_no_grade()
    {
        Assert.Empty(Check(Shells(), Read("run-out", 0.01m, 0.002m)).Grades);
        Assert.Empty(ItemCheck.Decide(Shells().Facts(), Shells().Facts().GetKind("main-shell"), [], null, Item(Read("journal", 44.985m, 0.002m)),
            Shells().Facts().Selects).Grades);
        Assert.Empty(ItemCheck.Decide(null, Shells().Facts().GetKind("shaft"), [], null, Item(Read("journal", 44.985m, 0.002m)),
            Shells().Facts().Selects).Grades); // no family, no positions
    }

    internal static ItemReading Read(string feature, decimal mm, decimal? knownTo) =>
        new(feature, Bare(mm) with { Uncertainty = knownTo is { } known ? Metres(known) : null }, "micrometer", "2026-03-02",
            By(EvidenceGrade.Measured, "bench"), null);

    internal static Item Item(params ItemReading[] readings) =>
        new("i-0001", "finch-9", Id("S-1"), ItemOrigin.YardPull, "light rust", null, null, readings, []);

    private static ItemAnswer Check(TestFamily family, params ItemReading[] readings)
    {
        var facts = family.Facts();
        return ItemCheck.Decide(facts, facts.GetKind("shaft"), facts.Limits, facts.GetPart(Id("S-1")), Item(readings), facts.Selects);
    }

    private static TestFamily Shafts() => new TestFamily().Variant("lark")
        .Place("shaft", shaft => shaft.Length("journal").Length("run-out").Counted("pitted-teeth")).Shaft("S-1");

    private static TestFamily Shells() => Shafts().Place("main-shell", _ => { }).Part("M-A", "main-shell").Part("M-B", "main-shell").Part("M-C", "main-shell")
        .Chosen("main-shell", "shaft.journal", 44.98m, 44.99m, "M-A").Chosen("main-shell", "shaft.journal", 44.99m, 45.00m, "M-B")
            .Chosen("main-shell", "shaft.journal", 45.00m, 45.01m, "M-C");
}
