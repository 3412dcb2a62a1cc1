using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>
/// What must hold for evidence that contradicts itself, numbered as in the reference values. H02 (levels added up by the arithmetic of GRADE) and H04 (odds
/// multiplied by Bayes) are not what is done here: the best rank decides and nothing is added up, multiplied or averaged. H02 and H04 below show that.
/// </summary>
public sealed class EvidenceRulesTests
{
    private const int Draws = 300;

    // H01: {preferred A, normal B, deprecated C} → {A}; {normal B1 B2, deprecated C} → {B1, B2}; {deprecated C} → {}. Wikidata's best-rank rule.
    [Fact]
    public void H01_the_best_rank_counts_all_of_it_and_never_a_retracted_one()
    {
        var preferred = AnyFindings.Nothing().Found("a", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted))
            .Found("b", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported))
            .Found("c", "W-2", FindingOutcome.WithWork, Retracted(EvidenceGrade.TrialFitted)).Ask("W-2").Mounts;
        var normal = AnyFindings.Nothing().Found("b1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "1"))
            .Found("b2", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "2"))
            .Found("c", "W-2", FindingOutcome.WithWork, Retracted(EvidenceGrade.TrialFitted)).Ask("W-2").Mounts;
        var deprecated = AnyFindings.Nothing().Found("c", "W-2", FindingOutcome.Yes, Retracted(EvidenceGrade.TrialFitted)).Ask("W-2").Mounts;

        Assert.Equal([Mounts.Yes], preferred.CouldBe);
        Assert.Equal([Mounts.Yes, Mounts.No], normal.CouldBe);
        Assert.Equal((Mounts.NotKnown, null), (deprecated.Value, deprecated.Rank));
        Assert.Empty(deprecated.DecidedBy);
    }

    [Fact]
    public void H01_the_axes_are_those_of_the_best_rank_whatever_was_found() => Sample(AnyFindings.Nothing(), (_, answer) =>
    {
        Assert.Equal(BestOf(answer, Axis.Mounts).Select(FindingStatements.MountsOf).Distinct().Order(),
            answer.Mounts.Rank is null ? [] : answer.Mounts.CouldBe);
        Assert.Equal(BestOf(answer, Axis.Runs).Select(FindingStatements.RunsOf).Distinct().Order(), answer.Runs.Rank is null ? [] : answer.Runs.CouldBe);
        Assert.Equal(answer.Mounts.Rank is not null && answer.Mounts.CouldBe.Count > 1, answer.Mounts.Disputed);
        Assert.Equal(answer.Runs.Rank is not null && answer.Runs.CouldBe.Count > 1, answer.Runs.Disputed);
    });

    // GRADE would give a report with a large effect "Moderate". Here three reports that agree stay what one report is.
    [Fact]
    public void H02_reports_that_agree_are_not_added_up()
    {
        var one = AnyFindings.Nothing().Found("a", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "1"));
        var first = one.Ask("W-2").Mounts;
        var three = one.Found("b", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "2"))
            .Found("c", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "3")).Ask("W-2").Mounts;

        Assert.Equal((Mounts.Yes, 5, Sureness.Indicated), (first.Value, first.Rank ?? 0, first.Sureness));
        Assert.Equal((Mounts.Yes, 5, Sureness.Indicated), (three.Value, three.Rank ?? 0, three.Sureness));
        Assert.Equal(3, three.DecidedBy.Count);
    }

    // Two sources, each all but certain of its own and both leaving 1 % to a third thing: normalising the conflict away makes the third thing certain (Zadeh 1979).
    [Theory]
    [InlineData(EvidenceGrade.TrialFitted)]
    [InlineData(EvidenceGrade.Measured)]
    [InlineData(EvidenceGrade.MakersDocument)]
    [InlineData(EvidenceGrade.Reported)]
    [InlineData(EvidenceGrade.Inferred)]
    public void H03_equally_good_sources_that_contradict_each_other_are_disputed_and_make_nothing_certain(EvidenceGrade grade)
    {
        var answer = AnyFindings.Nothing().Found("a", "W-2", FindingOutcome.Yes, By(grade, "1")).Found("b", "W-2", FindingOutcome.No, By(grade, "2"))
            .Ask("W-2");

        Assert.Equal((Mounts.NotKnown, true, Sureness.Unproven), (answer.Mounts.Value, answer.Mounts.Disputed, answer.Mounts.Sureness));
        Assert.Equal([Mounts.Yes, Mounts.No], answer.Mounts.CouldBe); // and not with work, which neither says
        Assert.Equal(2, answer.Mounts.DecidedBy.Count);
        Assert.Equal("Not known yet; equally good sources disagree on whether it mounts", answer.HeadlineText);
    }

    // By odds, 9 for and 1/4 against would leave 0.69 for it. Here a report against a measurement takes one step of sureness, and a second and third no more.
    [Fact]
    public void H04_a_weaker_contradiction_takes_one_step_however_often_it_comes()
    {
        var family = AnyFindings.Nothing().Found("a", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Measured))
            .Found("b", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "1"));
        var once = family.Ask("W-2");
        var again = family.Found("c", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "2"))
            .Found("d", "W-2", FindingOutcome.No, By(EvidenceGrade.Inferred)).Ask("W-2");

        Assert.Equal((Mounts.Yes, Sureness.Documented, 1), (once.Mounts.Value, once.Mounts.Sureness, once.Disagreements.Count));
        Assert.Equal((Mounts.Yes, Sureness.Documented, 3), (again.Mounts.Value, again.Mounts.Sureness, again.Disagreements.Count));
    }

    [Fact]
    public void H05_copies_count_once() => Gen.Select(AnyFindings.Of(), AnyFindings.Grades, Gen.Int[0, 6]).Sample(
        (findings, grade, pick) =>
        {
            foreach (var family in Families())
            {
                var before = family.WithFindings(findings).Ask("W-2", serial: 700);
                if (before.Findings.Where(found => found.Rank is not null).ElementAtOrDefault(pick) is not { } counting)
                {
                    continue;
                }

                // Of a source that is itself a copy, another copy of the same grade.
                var original = findings.First(finding => finding.Code == counting.Code);
                var copied = new Evidence("ev-copy", original.Evidence.IsCopy ? original.Evidence.Grade : grade, null, null, null, original.Evidence.Code,
                    null, null)
                { Root = original.Evidence.Root };
                var after = family.WithFindings([.. findings, original with { Code = "f-copy", Evidence = copied }]).Ask("W-2", serial: 700);

                Assert.Equal(Said(before), Said(after));
                Assert.Contains(after.Findings, found => found is { Code: "f-copy", Rank: null });
            }
        },
        iter: Draws);

    [Fact]
    public void H06_a_contradiction_never_raises_how_sure_it_is() => Gen.Select(AnyFindings.Of(), AnyFindings.Outcomes, AnyFindings.Grades, Gen.Bool).Sample(
        (findings, outcome, grade, onThisSpan) =>
        {
            foreach (var family in Families())
            {
                var before = family.WithFindings(findings).Ask("W-2");
                var against = AnyFindings.One("f-against", By(grade, "against"), outcome, span: onThisSpan ? Serials(600, null) : null);
                var after = family.WithFindings([.. findings, against]).Ask("W-2");

                Assert.All(Enum.GetValues<Mounts>().Where(value =>
                    against.Axis == Axis.Mounts && value != FindingStatements.MountsOf(outcome) && value != Mounts.NotKnown),
                    value => Assert.True(SureThat(after.Mounts, value) <= SureThat(before.Mounts, value)));
                Assert.All(Enum.GetValues<Runs>().Where(value =>
                    against.Axis == Axis.Runs && value != FindingStatements.RunsOf(outcome) && value != Runs.NotKnown),
                    value => Assert.True(SureThat(after.Runs, value) <= SureThat(before.Runs, value)));
                Assert.True(outcome is FindingOutcome.Yes or FindingOutcome.Same || SureThatItFits(after) <= SureThatItFits(before));
            }
        },
        iter: Draws);

    [Fact]
    public void H06_removing_a_retracted_finding_changes_nothing_but_what_is_shown() => Gen.Select(AnyFindings.Of(), Gen.Bool).Sample(
        (findings, serialKnown) =>
        {
            foreach (var family in Families())
            {
                var with = family.WithFindings(findings).Ask("W-2", serial: serialKnown ? 1000 : null);
                var without = family.WithFindings([.. findings.Where(finding => !finding.Evidence.IsRetracted)]).Ask("W-2", serial: serialKnown ? 1000 : null);

                Assert.Equal(Said(without), Said(with));
                Assert.Equal(without.Findings, with.Findings.Where(found => found.Standing != FindingStanding.Retracted));
                Assert.Equal(findings.Length, with.Findings.Count); // all of them stay visible
            }
        },
        iter: Draws);

    [Fact]
    public void H06_the_order_of_entry_does_not_matter() => Gen.Select(AnyFindings.Of(), Gen.Int).Sample(
        (findings, seed) => Families().All(family =>
        {
            var told = family.WithFindings(findings);
            return AsJson.Of(FitCheck.Decide(told.Facts(), told.Question("W-2"))) == AsJson.Of(FitCheck.Decide(told.Facts(new Shuffled(seed)),
                told.Question("W-2")));
        }),
        iter: Draws);

    [Fact]
    public void What_is_found_on_one_axis_says_nothing_on_the_other() => Gen
        .Select(AnyFindings.Of(), AnyFindings.Outcomes, AnyFindings.Grades, Gen.Bool, Gen.Bool).Sample(
        (findings, outcome, grade, onThisSpan, serialKnown) =>
        {
            var more = AnyFindings.One("f-more", By(grade, "more"), outcome, span: onThisSpan ? Serials(600, null) : null);
            foreach (var family in Families())
            {
                var before = family.WithFindings(findings).Ask("W-2", serial: serialKnown ? 700 : null);
                var after = family.WithFindings([.. findings, more]).Ask("W-2", serial: serialKnown ? 700 : null);
                Assert.Equal(more.Axis == Axis.Mounts ? Said(before.Runs) : Said(before.Mounts),
                    more.Axis == Axis.Mounts ? Said(after.Runs) : Said(after.Mounts));
                Assert.Equal(AsJson.Of(family.WithFindings(findings).Ask("W-3")), AsJson.Of(family.WithFindings([.. findings, more]).Ask("W-3")));
            }
        },
        iter: Draws);

    private static TestFamily[] Families() => [AnyFindings.Nothing(), AnyFindings.Contradicting()];

    private static void Sample(TestFamily family, Action<Finding[], FitAnswer> holds) =>
        AnyFindings.Of().Sample(findings => holds(findings, family.WithFindings(findings).Ask("W-2", serial: 1000)), iter: Draws);

    /// <summary>What counts and is of the best rank, by hand.</summary>
    private static FindingOutcome[] BestOf(FitAnswer answer, Axis axis)
    {
        FindingShown[] counting = [.. answer.Findings.Where(found => found.Axis == axis && found.Rank is not null)];
        return [.. counting.Where(found => found.Rank == counting.Min(other => other.Rank)).Select(found => found.Outcome)];
    }

    private static int SureThat<T>(AxisAnswer<T> axis, T value)
        where T : struct, Enum => axis.Value.Equals(value) ? (int)axis.Sureness : -1;

    private static int SureThatItFits(FitAnswer answer) => answer.Headline == Headline.Fits ? (int)answer.Sureness : -1;

    /// <summary>Everything that is said, without which reason says it.</summary>
    private static string Said(FitAnswer answer) => string.Join('\n',
        answer.HeadlineText, answer.Sureness, answer.Consequence, Said(answer.Mounts), Said(answer.Runs),
            string.Join('|', answer.Disagreements.Select(one => (one.Axis, one.Says, one.Rank, one.Text))));

    private static string Said<T>(AxisAnswer<T> axis)
        where T : struct, Enum => $"{axis.Value} of {string.Join('/', axis.CouldBe)}, disputed {axis.Disputed}, rank {axis.Rank}, {axis.Sureness}";
}
