using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What holds for every family, tried on families drawn at random. A failure prints the seed to draw it again.</summary>
public sealed class FitPropertyTests
{
    private const int Draws = 100;

    [Fact]
    public void A_part_fits_where_the_maker_fitted_it() => Sample(family =>
    {
        var facts = family.Facts();
        foreach (var fitment in facts.Fitments.Where(fitment => fitment.Part is not null))
        {
            var answer = FitCheck.Decide(facts, new FitQuestion(fitment.Variant, fitment.Position, facts.GetPart(fitment.Part ?? ""), Serial: fitment.Span.SerialFrom ?? fitment.Span.SerialTo ?? 1));

            Assert.Equal((Headline.Fits, IdentityRelation.FittedHere), (answer.Headline, answer.Identity.Relation));
            Assert.Equal((3, 3), (answer.Mounts.Rank ?? 0, answer.Runs.Rank ?? 0));
        }
    });

    [Fact]
    public void Numbers_are_identical_exactly_along_the_arrows() => Sample(family =>
    {
        var facts = family.Facts();
        foreach (var (fitted, asked) in AnyFamily.PartsAt("a").SelectMany(_ => AnyFamily.PartsAt("a"), (fitted, asked) => (Id(fitted), Id(asked))))
        {
            var link = IdentityCheck.Between(facts, "lark", new EngineSpan(DateOnly.MinValue, Serial: 500, ""), fitted, asked);

            Assert.Equal(IsReached(facts, fitted, asked), link.IsIdentity);
            Assert.Equal(!link.IsIdentity && IsReached(facts, asked, fitted), link.Relation == IdentityRelation.OlderNumber);
        }
    });

    [Fact]
    public void A_chain_leads_step_by_step_from_the_fitted_part_to_the_one_asked_about() => Sample(family =>
    {
        var facts = family.Facts();
        foreach (var (fitted, asked) in AnyFamily.PartsAt("a").SelectMany(_ => AnyFamily.PartsAt("a"), (fitted, asked) => (Id(fitted), Id(asked))))
        {
            var chain = IdentityCheck.Between(facts, "lark", new EngineSpan(DateOnly.MinValue, Serial: 500, ""), fitted, asked).Chain;

            Assert.True(chain.Count < AnyFamily.PartsOfAKind);
            Assert.Equal(chain.Count == 0 ? [] : [fitted, .. chain.Select(link => link.To).SkipLast(1)], chain.Select(link => link.From));
            Assert.True(chain.Count == 0 || chain[^1].To == asked);
        }
    });

    [Fact]
    public void A_feature_that_nobody_recorded_never_turns_not_known_into_fits() =>
        Gen.Select(AnyFamily.Of(), Gen.Enum<Effect>(), Gen.Int[0, 2]).Sample(
            (family, effect, place) => Ask(family).Zip(Ask(family, more: (AnyFamily.Positions[place], effect))).All(pair => !IsFit(pair.Second) || IsFit(pair.First)),
            iter: Draws);

    [Fact]
    public void The_order_of_the_rows_changes_nothing() => Gen.Select(AnyFamily.Of(), Gen.Int).Sample(
        (family, seed) => Asked(family).All(asked => AsJson.Of(FitCheck.Decide(family.Facts(), asked)) == AsJson.Of(FitCheck.Decide(family.Facts(new Shuffled(seed)), asked))),
        iter: Draws / 2);

    [Fact]
    public void An_answer_is_never_a_bare_one() => Sample(family =>
    {
        foreach (var answer in Ask(family))
        {
            Assert.NotEmpty(answer.Mounts.CouldBe);
            Assert.NotEmpty(answer.Runs.CouldBe);
            Assert.Equal(answer.Mounts.Value == Mounts.NotKnown, answer.Mounts.CouldBe.Count > 1);
            Assert.Equal(answer.Runs.Value == Runs.NotKnown, answer.Runs.CouldBe.Count > 1);
            Assert.DoesNotContain(Mounts.NotKnown, answer.Mounts.CouldBe);
            Assert.Equal(AxisDecision.HeadlineOf(answer.Mounts.Value, answer.Runs.Value), answer.Headline);
            Assert.Equal(answer.Reasons.Count, answer.Reasons.Select(reason => reason.Id).Distinct().Count());
            Assert.All(answer.Mounts.DecidedBy.Concat(answer.Runs.DecidedBy), id => Assert.Contains(answer.Reasons, reason => reason.Id == id));
            Assert.True(answer.Mounts.Value == Mounts.NotKnown || answer.Mounts.DecidedBy.Count > 0);
            Assert.True(answer.Runs.Value == Runs.NotKnown || answer.Runs.DecidedBy.Count > 0);
        }
    });

    // What is not known of the serial number can only be one of what it is on either side of the change.
    [Fact]
    public void Without_the_serial_number_an_axis_is_known_only_if_it_is_the_same_on_every_span_that_is_recorded() => Sample(family =>
    {
        var facts = family.Facts();
        foreach (var asked in Asked(family))
        {
            var open = FitCheck.Decide(facts, asked);
            FitAnswer[] early = IsRecorded(facts, asked, 500) ? [FitCheck.Decide(facts, asked with { Serial = 500 })] : [];
            FitAnswer[] late = IsRecorded(facts, asked, 1500) ? [FitCheck.Decide(facts, asked with { Serial = 1500 })] : [];
            Assert.All(early.Concat(late), answer => Assert.True(answer.Mounts.CouldBe.All(open.Mounts.CouldBe.Contains) && answer.Runs.CouldBe.All(open.Runs.CouldBe.Contains)));
        }
    });

    private static bool IsRecorded(FamilyFacts facts, FitQuestion asked, long serial) =>
        facts.FitmentsAt(asked.Variant, asked.Position).Any(fitment => (fitment.Span.SerialFrom ?? 0) <= serial && serial <= (fitment.Span.SerialTo ?? long.MaxValue));

    private static void Sample(Action<TestFamily> holds) => AnyFamily.Of().Sample(holds, iter: Draws);

    private static bool IsFit(FitAnswer answer) => answer.Headline is Headline.Fits or Headline.FitsWithWork or Headline.MountsButRunsDifferently;

    private static IEnumerable<FitQuestion> Asked(TestFamily family) =>
        from variant in AnyFamily.Variants
        from position in AnyFamily.Positions
        from number in AnyFamily.PartsAt(position)
        select family.Question(number, position, variant);

    private static IReadOnlyList<FitAnswer> Ask(TestFamily family, (string Position, Effect Effect)? more = null)
    {
        var facts = more is { } feature ? family.Facts(feature.Position, feature.Effect) : family.Facts();
        return [.. Asked(family).Select(asked => FitCheck.Decide(facts, asked))];
    }

    /// <summary>By closing the permitted steps over and over, as one would with a pencil: an independent way to the same answer.</summary>
    private static bool IsReached(FamilyFacts facts, string from, string to)
    {
        var reached = new HashSet<string> { from };
        for (var before = 0; before != reached.Count;)
        {
            before = reached.Count;
            foreach (var link in facts.Supersessions)
            {
                if (reached.Contains(link.OldPart))
                {
                    reached.Add(link.NewPart);
                }

                if (link.Way == SupersessionWay.Both && reached.Contains(link.NewPart))
                {
                    reached.Add(link.OldPart);
                }
            }
        }

        return reached.Contains(to);
    }
}
