using PartMatch.Core.Fit;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>From a line back to what it stands on: a wish, the goal, the target, the donor, a relation between parts, or the objective alone.</summary>
internal sealed class WhyChain(BuildQuestion question)
{
    private readonly IReadOnlyDictionary<string, Candidate> _plan = question.Solved.Written.Chosen(question.Solved.Solution);
    private readonly IReadOnlySet<string> _works = question.Solved.Written.WorksOf(question.Solved.Solution);

    private readonly OpenedPlan _opened = OpenedPlan.Of(
        question.Terms, question.Solved.Written.Chosen(question.Solved.Solution), question.Solved.Written.WorksOf(question.Solved.Solution));

    private PlanRun Run => question.Run;

    /// <summary>The line first; of every line that a step stands on the steps follow, each once.</summary>
    public IReadOnlyList<WhyStep> Of(string position)
    {
        var steps = new List<WhyStep>();
        var asked = new HashSet<string>(StringComparer.Ordinal) { position };
        var next = new Queue<string>(asked);
        while (next.TryDequeue(out var at))
        {
            var own = StepsOf(_plan[at]).ToList();
            steps.AddRange(own);
            foreach (var other in own.SelectMany(step => step.On).Where(asked.Add))
            {
                next.Enqueue(other);
            }
        }

        // Lines that only hold each other up: not one of them is forced, all together are.
        return steps.Exists(step => step.On.Count == 0) ? steps : [.. steps, .. Together(position)];
    }

    private IEnumerable<WhyStep> StepsOf(Candidate candidate)
    {
        var at = question.Terms.At(candidate.Position);
        if (candidate.Goal is not null)
        {
            return [Step(at, WhyGround.Goal, $"You asked for it: {candidate.Parts[0].Number} boost.")];
        }

        var line = Run.Judge(candidate, _plan, _works);
        var donors = question.CandidatesAt(candidate.Position).FirstOrDefault(one => one.IsDonors);
        return Wished(at, candidate, donors) is { } wish ? [wish with { Sureness = line.Sureness }]
            : candidate.IsDonors ? Kept(at, line)
            : at.Position.Group == BuildTerms.Services ? [Step(at, WhyGround.Target, $"{line.Answer.Reference} has it so.", line)]
            : donors is null ? [Lacking(at, line)]
            : Replaced(at, line, donors);
    }

    private WhyStep? Wished(PositionTerms at, Candidate candidate, Candidate? donors) =>
        candidate.IsUsersChoice ? Step(at, WhyGround.Wish, at.Parts.Count == 1 ? "You chose it." : $"You allow only {FitWording.List(at.Parts)} there.")
        : candidate.IsDonors && at.Keep == KeepWish.Keep ? Step(at, WhyGround.Wish, "You asked that the donor's own stays.")
        : candidate.IsDonors && at.Keep == KeepWish.KeepIfPossible && question.Solved.GivenUp.All(wish => wish.Name != $"keep:{at.Position.Code}")
            ? Step(at, WhyGround.Wish, "You asked that the donor's own stays wherever that is possible, and it is.")
        : !candidate.IsDonors && donors is not null && at.Keep == KeepWish.Renew ? Step(at, WhyGround.Wish, "You asked for a new one.")
        : null;

    private IEnumerable<WhyStep> Kept(PositionTerms at, JudgedLine line)
    {
        var state = at.StateOfDonor == PartState.NotInspected ? ", not inspected" : "";
        var serves = line.Answer.Identity.Relation == IdentityRelation.FittedHere ? $"is what {line.Answer.Reference} has" : "serves";
        return
        [
            .. line.Works.Select(work => line.Answer.Reasons.FirstOrDefault(reason => reason.Met == Met.No && reason.Work == work)).OfType<Reason>()
                .Select(reason => Step(at, reason, line, "The donor's own needs work: ")),
            Step(at, WhyGround.Donor, $"The donor's own{state} {serves}: there is nothing to buy.", line),
        ];
    }

    private WhyStep Lacking(PositionTerms at, JudgedLine line)
    {
        if (at.StateOfDonor is PartState.Damaged or PartState.Missing)
        {
            return Step(at, WhyGround.Donor, at.StateOfDonor == PartState.Damaged ? "The donor's own is damaged." : "The donor came without it.", line);
        }

        if (line.Candidate.IsNothing)
        {
            return Step(at, WhyGround.Target, $"The donor has none, and {line.Answer.Reference} needs none.", line);
        }

        var empty = Run.Judge(Candidates.Nothing(question.Terms, at.Position.Code), _plan, _works);
        return FirstAgainst(at, empty, "Without it: ") ?? Step(at, WhyGround.Target, $"The donor has none; {line.Answer.Reference} has one.", line);
    }

    private IEnumerable<WhyStep> Replaced(PositionTerms at, JudgedLine line, Candidate donors)
    {
        var own = Run.Judge(donors, _plan, _works);
        if (own.Outcome is LineOutcome.Fails or LineOutcome.NotKnown && FirstAgainst(at, own, "The donor's own does not serve here: ") is { } against)
        {
            return [against];
        }

        if (_opened.WhyRenewed(at.Position.Code) is { } renewed)
        {
            // The chain names what is opened and for what: each of them has a reason of its own.
            string[] on = [.. _opened.Disturbed[at.Position.Code].Chain.SkipLast(1).Where(_plan.ContainsKey)];
            string[] evidence = [.. _opened.RenewedAt(at.Position.Code).Select(row => row.Evidence?.Code).OfType<string>().Distinct(StringComparer.Ordinal)];
            return [new WhyStep(at.Position.Code, WhyGround.Renewal, renewed, null, on, line.Sureness, evidence)];
        }

        var with = new Dictionary<string, Candidate>(_plan, StringComparer.Ordinal) { [donors.Position] = donors };
        foreach (var other in question.Solved.Lines.Where(one => one.Candidate.Position != donors.Position))
        {
            var beside = Run.Judge(other.Candidate, with, _works);
            if (beside.Outcome is LineOutcome.Fails or LineOutcome.NotKnown && beside.Outcome != other.Outcome
                && FirstAgainst(question.Terms.At(other.Candidate.Position), beside, $"With the donor's own {at.Position.Name}: ") is { } reason)
            {
                string[] on = [other.Candidate.Position, .. reason.On.Where(position => position != at.Position.Code && position != other.Candidate.Position)];
                return [reason with { Position = at.Position.Code, On = on }];
            }
        }

        return Together(at.Position.Code).Select(step => step with { Sureness = step.Sureness ?? line.Sureness });
    }

    /// <summary>Nothing forces it by itself: then what the best plan with the donor's own is like, or what keeps every such plan away.</summary>
    private IEnumerable<WhyStep> Together(string position)
    {
        var at = question.Terms.At(position);
        bool IsOther(Candidate one) => _plan[position].IsDonors ? !one.IsDonors : one.IsDonors;
        var name = _plan[position].IsDonors ? "without the donor's own" : "that keeps the donor's own";
        if (!question.CandidatesAt(position).Any(IsOther))
        {
            return [Step(at, WhyGround.Donor, "The donor has none, and nothing else is to be had.")];
        }

        var forced = question.SolveWithWishes(written => Otherwise.Force(written, position, IsOther), PlanTies.CostAndDays);
        if (forced.Solution.Choices.Count > 0)
        {
            return [Step(at, WhyGround.Objective, $"Nothing forces it: the best plan {name} {LineChanges.Difference(question.Terms, question.Solved, forced)}.")];
        }

        var members = question.ConflictWith(position, IsOther).Members;
        return members.Count == 0
            ? [Step(at, WhyGround.Target, $"No plan {name} holds.")]
            : members.Select(member => Step(at, GroundOf(member.Wish), $"No plan {name} holds: {member.Text}"));
    }

    private WhyStep? FirstAgainst(PositionTerms at, JudgedLine line, string before) => line.Answer.AlsoNeeded is [var change, ..]
        ? new WhyStep(at.Position.Code, WhyGround.Companion, before + change.Text, change.Because is [var code, ..] ? code : null, OthersOf(at, [change.Position]), line.Sureness, EvidenceOf(change))
        : LineReasons.ReasonAgainst(line) is { } reason ? Step(at, reason, line, before) : null;

    private string[] EvidenceOf(CompanionChange change) =>
        [.. question.Facts.Family.Companions.Where(rule => change.Because.Contains(rule.Code)).Select(rule => rule.Evidence?.Code).OfType<string>().Distinct(StringComparer.Ordinal)];

    private WhyStep Step(PositionTerms at, Reason reason, JudgedLine line, string before) => new(
        at.Position.Code, GroundOf(reason), before + reason.Text, reason.Code,
        reason.By is ReasonBy.Joint or ReasonBy.Stack or ReasonBy.Companion ? OthersOf(at, Run.Reads(at.Position.Code, reason)) : [], line.Sureness, reason.Evidence);

    private static WhyStep Step(PositionTerms at, WhyGround ground, string text, JudgedLine? line = null) => new(
        at.Position.Code, ground, text, null, [], line?.Sureness,
        line is null ? [] : [.. line.Answer.Reasons.Where(reason => reason.By == ReasonBy.Identity).SelectMany(reason => reason.Evidence).Distinct(StringComparer.Ordinal)]);

    private string[] OthersOf(PositionTerms at, IEnumerable<string> positions) =>
        [.. positions.Where(position => position != at.Position.Code && _plan.ContainsKey(position)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static WhyGround GroundOf(Reason reason) => reason.By switch
    {
        ReasonBy.Joint => WhyGround.Joint,
        ReasonBy.Stack => WhyGround.Stack,
        ReasonBy.Companion => WhyGround.Companion,
        ReasonBy.Finding => WhyGround.Finding,
        ReasonBy.Feature when reason.Need?.From == "fitted-part" => WhyGround.Target,
        ReasonBy.Identity => WhyGround.Target,
        _ => WhyGround.Need,
    };

    private static WhyGround GroundOf(string member) => member.Split(':')[0] switch
    {
        "goal" => WhyGround.Goal,
        "obtainable" => WhyGround.Need,
        "force" => WhyGround.Donor,
        _ => WhyGround.Wish,
    };
}
