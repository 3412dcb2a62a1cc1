using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Items;

namespace PartMatch.Core.Builds;

/// <summary>What the fit answer makes of a line.</summary>
internal enum LineOutcome
{
    Holds,
    WithWork,

    /// <summary>Nobody knows; it may be taken on trust where that is admitted.</summary>
    NotKnown,
    Fails,
}

/// <summary>One line, judged among the plan's own neighbours.</summary>
/// <param name="Works">Works that the part itself needs; also where something else of it is not known.</param>
/// <param name="IsAsChosen">It runs differently from its reference by its own features, which the user chose.</param>
internal sealed record JudgedLine(Candidate Candidate, FitAnswer Answer, LineOutcome Outcome, IReadOnlyList<string> Works, bool IsAsChosen)
{
    /// <summary>It fails because it is not there, and nobody knows whether the engine does without.</summary>
    public bool IsMissed => Outcome == LineOutcome.Fails && Candidate.IsNothing
        && Answer is { Headline: Headline.NotKnownYet, AlsoNeeded.Count: 0 } && Answer.Runs.CouldBe.Contains(Runs.Same);

    /// <summary>It and all it touches are as the donor came out of the factory; what the books leave open of that does not matter.</summary>
    public bool IsAsBuilt { get; init; }

    public Headline Headline => IsAsBuilt ? Headline.Fits : Answer.Headline;

    public Sureness Sureness => IsAsChosen ? Answer.Mounts.Sureness : IsAsBuilt && Answer.Sureness < Sureness.Indicated ? Sureness.Indicated : Answer.Sureness;
}

/// <summary>Asks <i>will it fit</i> of the lines of a plan, each with the plan's own neighbours.</summary>
internal sealed class LineJudge(BuildTerms terms, FitMemory memory, AsBuilt asBuilt)
{
    private readonly Lazy<IReadOnlyDictionary<string, SizedInjector>> _sized = new(() => InjectorGoals.Size(terms));

    private FamilyFacts Facts => terms.Facts.Family;

    /// <param name="plan">What is at every position.</param>
    /// <param name="works">Works that the plan does.</param>
    public JudgedLine Judge(Candidate candidate, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works)
    {
        var lines = candidate.Examples.Count > 0
            ? candidate.Examples.Select(item => Judge(candidate, Facts.GetPart(candidate.Parts[0].Id), item, plan, works)).ToList() // one part was measured
            : candidate.Parts.Select(part => Judge(candidate, part, null, plan, works)).ToList();

        // Of what is chosen by measurement the best counts; where nobody knows which it is, the worst.
        var line = candidate.IsGraded ? lines.MinBy(line => line.Outcome)! : lines.MaxBy(line => line.Outcome)!; // a candidate has a part
        return line.Outcome == LineOutcome.Holds || !asBuilt.Is(candidate, plan, works) ? line : line with { Outcome = LineOutcome.Holds, Works = [], IsAsBuilt = true };
    }

    /// <summary>The question behind a line, to be asked again by hand.</summary>
    /// <param name="item">The example that was measured; null where none was.</param>
    public FitQuestion Ask(Candidate candidate, Part part, Item? item, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works)
    {
        var near = memory.Reach(Facts, candidate.Reference, candidate.Position).Where(position => position != candidate.Position).ToList();
        var beside = near.Where(plan.ContainsKey).Select(position => plan[position]).ToList();
        var (built, serial) = EngineOf(candidate.Reference);
        return new FitQuestion(candidate.Reference, candidate.Position, part, Built: built, Serial: serial,
            With: beside.Where(one => one is { Parts.Count: 1, Examples.Count: <= 1 })
                .ToDictionary(one => one.Position, one => one.IsNothing ? null : WorkedPart.Of(terms, one, works), StringComparer.Ordinal))
        {
            Beside = beside.Where(one => one.Parts.Count > 1 || one.Examples.Count > 1)
                .ToDictionary(
                    one => one.Position, one => new OneOfThese(one.Parts.Count > 1 ? one.Parts : AsMeasured(one, works), one.IsGraded), StringComparer.Ordinal),
            Item = item,
        };
    }

    private IReadOnlyList<Part> AsMeasured(Candidate candidate, IReadOnlySet<string> works) =>
    [
        .. candidate.Examples.Select(item => candidate with { Parts = [MeasuredPart.Of(Facts.GetPart(candidate.Parts[0].Id), item)] })
            .Select(measured => WorkedPart.Of(terms, measured, works)),
    ];

    /// <summary>The donor is the engine it is; any other variant stands for its way of building at the end of its time.</summary>
    private (BuildDate? Built, long? Serial) EngineOf(string variant)
    {
        if (variant == terms.Build.Donor.Variant)
        {
            return (terms.Built, terms.Build.Donor.Serial);
        }

        var span = Facts.FindVariant(variant)?.Span;
        return (span?.BuiltTo, span?.SerialTo);
    }

    private JudgedLine Judge(Candidate candidate, Part part, Item? item, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works)
    {
        var question = Ask(candidate, part, item, plan, works);
        var measured = memory.Reach(Facts, candidate.Reference, candidate.Position).Where(plan.ContainsKey).Select(position => plan[position])
            .Where(one => one.Examples.Count > 0 || one.Goal is not null).Select(one => one.FitKey);
        var engine = $"{candidate.Key}@{terms.Target}/{terms.Build.Donor.Variant}/{terms.Built?.Text}/{terms.Build.Donor.Serial}/{string.Join(',', measured)}";
        var answer = memory.Ask(Facts, question, engine, works);
        var isAsChosen = answer.Headline is Headline.MountsButRunsDifferently or Headline.NotKnownYet
            && answer.Mounts.Value is Mounts.Yes or Mounts.WithWork && RunsAsChosen(candidate, answer);
        var outcome = (answer.Headline, isAsChosen) switch
        {
            (Headline.Fits, _) => LineOutcome.Holds,
            (Headline.FitsWithWork, _) => LineOutcome.WithWork,
            (_, true) => answer.Mounts.Value == Mounts.WithWork ? LineOutcome.WithWork : LineOutcome.Holds,

            // Whatever else would be found out: it runs differently.
            (Headline.NotKnownYet, _) => answer.Runs.CouldBe.Contains(Runs.Same) ? LineOutcome.NotKnown : LineOutcome.Fails,
            _ => LineOutcome.Fails,
        };

        outcome = outcome == LineOutcome.NotKnown && IsMissed(candidate) ? LineOutcome.Fails
            : outcome is LineOutcome.Holds or LineOutcome.WithWork && IsFlowOpen(candidate, part) ? LineOutcome.NotKnown : outcome;

        // A change elsewhere that the plan does not make: as things stand in the plan, it does not hold.
        outcome = answer.AlsoNeeded.Count > 0 ? LineOutcome.Fails : outcome;
        return new JudgedLine(
            candidate, answer, outcome, outcome is LineOutcome.WithWork or LineOutcome.NotKnown ? [.. answer.Works.Select(work => work.Work).Order(StringComparer.Ordinal)] : [], isAsChosen);
    }

    /// <summary>
    /// Is something left off that a wished engine has? Nobody says that such an engine runs, and that is never taken on trust: without its crankshaft every
    /// engine is cheaper.
    /// </summary>
    private bool IsMissed(Candidate candidate) => candidate is { IsNothing: true, IsUsersChoice: false }
        && terms.At(candidate.Position).Like.Any(variant => Facts.FitmentsAt(variant, candidate.Position).Any(fitment => fitment.Part is not null));

    /// <summary>Do the sums leave open whether these injectors are enough for the goal?</summary>
    private bool IsFlowOpen(Candidate candidate, Part part) =>
        InjectorGoals.Sets(terms, candidate.Position) && _sized.Value.GetValueOrDefault(part.Id)?.Enough == Enough.NotKnown;

    /// <summary>Does nothing but its own features, which the user chose or the goal sets, make it run differently?</summary>
    private bool RunsAsChosen(Candidate candidate, FitAnswer answer) =>
        (candidate.IsUsersChoice || InjectorGoals.Sets(terms, candidate.Position))
        && answer.Reasons.Where(reason => reason.Axis == Axis.Runs && reason.Met != Met.Yes).All(reason => reason.By switch
        {
            // What nobody knows of it, nobody chose.
            ReasonBy.Feature => InjectorGoals.IsFlow(reason.Feature) || (candidate.IsUsersChoice && reason.Met == Met.No),
            ReasonBy.Finding => answer.Findings.Any(found => found.Code == reason.Code && found.Rank is null),
            ReasonBy.Identity or ReasonBy.Kind => true,
            _ => false,
        });
}
