using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Builds;

/// <summary>What a line that does not hold in a plan teaches of every plan: the neighbours it fails against, and the ways out.</summary>
/// <remarks>Each rule follows from the fit answer, so that no plan is lost by it whose lines would all hold.</remarks>
internal sealed class LineLearning(BuildTerms terms, FitMemory memory, AsBuilt asBuilt)
{
    private FamilyFacts Facts => terms.Facts.Family;

    /// <param name="plan">What is at every position.</param>
    /// <param name="isDone">Is this work in the plan?</param>
    /// <param name="isOpen">Is something still to be found for this position? Of what hangs on it nothing is learned.</param>
    /// <param name="isOnTrust">Is what nobody knows of it taken on trust?</param>
    public IEnumerable<LineRule> From(
        JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, Func<string, bool> isDone, Func<string, bool> isOpen, bool isOnTrust) =>
        FromAny(line, plan, isDone, isOpen, isOnTrust).Where(learned => !learned.Positions.Any(isOpen))
            .Select(learned => Rule(line, plan, learned.Positions, learned.Works, learned.OnTrustAt, isDone));

    private IEnumerable<(IReadOnlyList<string> Positions, IReadOnlyList<string> Works, string? OnTrustAt)> FromAny(
        JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, Func<string, bool> isDone, Func<string, bool> isOpen, bool isOnTrust)
    {
        var at = line.Candidate.Position;
        switch (line.Outcome)
        {
            case LineOutcome.Fails when line.Answer.AlsoNeeded is [var change, ..]:
                // Among the maker's own neighbours alone a part at home needs no change where nothing is recorded, and of several grades another may need
                // none: then it hangs on every neighbour.
                var hangsOnAll = IsAtHome(line) || asBuilt.IsOwn(line.Candidate) || line.Candidate.Parts.Count > 1;
                yield return (
                    hangsOnAll ? [.. memory.Reach(Facts, line.Candidate.Reference, at).Union(PositionsOf(change))] : PositionsOf(change), WorksAt(change), null);
                break;
            case LineOutcome.Fails:
                yield return (Culprits(line, plan, isOpen), [], null);
                break;
            case LineOutcome.NotKnown when !isOnTrust:
                yield return (Culprits(line, plan, isOpen), [], at);
                break;
            case LineOutcome.WithWork or LineOutcome.NotKnown:
                foreach (var work in line.Works.Where(work => !isDone(work)))
                {
                    yield return (CulpritsOfWork(line, plan, isOpen, work), [work], null);
                }

                break;
        }
    }

    /// <summary>Works that change what the change asks for.</summary>
    private IReadOnlyList<string> WorksAt(CompanionChange change)
    {
        string[] features =
            [.. RulesOf(change).Where(rule => rule.Then.At.Position == change.Position).Select(rule => $"{change.Position}.{rule.Then.At.Feature}")];
        return [.. PlanWorks.Known(Facts).Where(work => work.Changes.Any(features.Contains)).Select(work => work.Code)];
    }

    private IEnumerable<Companion> RulesOf(CompanionChange change) => Facts.Companions.Where(rule => change.Because.Contains(rule.Code));

    private IReadOnlyList<string> PositionsOf(CompanionChange change) =>
        [change.Position, .. RulesOf(change).SelectMany(rule => new[] { rule.When.At.Position, rule.Then.At.Position })];

    private LineRule Rule(
        JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, IReadOnlyList<string> positions, IReadOnlyList<string> works, string? onTrustAt,
        Func<string, bool> isDone)
    {
        string[] others = [.. positions.Where(position => position != line.Candidate.Position && plan.ContainsKey(position)).Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)];
        string[] changing = [.. PlanWorks.Of(terms).Where(work => PlanWorks.PositionsOf(work).Any(others.Contains)).Select(work => work.Code)];
        return new LineRule(
            [new At(line.Candidate.Position, line.Candidate.FitKey), .. others.Select(position => new At(position, plan[position].FitKey))], [],
            [.. works.Union(changing).Where(work => !isDone(work))], onTrustAt)
        {
            IfDone = [.. changing.Where(isDone)],
        };
    }

    /// <summary>The fewest neighbours that are enough for the answer to be no better; rather such as are all there.</summary>
    private IReadOnlyList<string> Culprits(JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, Func<string, bool> isOpen)
    {
        var answer = line.Answer;
        var fails = line.Outcome == LineOutcome.Fails && !line.IsMissed;
        var (axis, wanted) = fails
            ? (answer.Headline == Headline.DoesNotFit ? Axis.Mounts : Axis.Runs, Met.No)
            : (answer.Mounts.Value == Mounts.NotKnown ? Axis.Mounts : Axis.Runs, Met.NotKnown);
        return Fewest(line, plan, isOpen, axis, reason => reason.Axis == axis && reason.Met == wanted && Decides(line, reason));
    }

    /// <summary>
    /// Does this reason alone keep the answer from ever being better, whatever else is said? What would only need work does not: beside another work it
    /// changes nothing. Nor do a kind's remarks, nor how a part runs by itself that was chosen as it is.
    /// </summary>
    private bool Decides(JudgedLine line, Reason reason) => reason switch
    {
        { By: ReasonBy.Kind } => reason is { Axis: Axis.Mounts, Met: Met.No },
        { Axis: Axis.Mounts } => reason.Effect is Effect.Stops,
        _ => reason.Effect is not null && !(reason.By == ReasonBy.Feature && IsAsWished(line.Candidate, reason)),
    };

    /// <summary>Did the user choose what is known of it, or does the goal size it, so that its own features are no fault?</summary>
    private bool IsAsWished(Candidate candidate, Reason reason) =>
        (candidate.IsUsersChoice && reason.Met == Met.No) || InjectorGoals.Sets(terms, candidate.Position);

    private IReadOnlyList<string> CulpritsOfWork(JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, Func<string, bool> isOpen, string work) =>
        Fewest(line, plan, isOpen, Axis.Mounts, reason => reason.Met == Met.No && reason.Work == work);

    private IReadOnlyList<string> Fewest(
        JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, Func<string, bool> isOpen, Axis axis, Func<Reason, bool> decides)
    {
        var all = memory.Reach(Facts, line.Candidate.Reference, line.Candidate.Position);

        // A finding on the axis or the part's identity outranks what is computed, depending on all that is there; and nothing is known of several parts at once.
        if (line.Candidate.Parts.Count > 1 || HasAlternatives(line) || HasFindings(line, axis))
        {
            return all;
        }

        // What is as the donor was built holds whatever the books say of it: only with something changed among them do reasons count.
        var own = asBuilt.IsOwn(line.Candidate);
        return line.Answer.Reasons.Where(reason => reason.By is not (ReasonBy.Identity or ReasonBy.Finding) && decides(reason))
            .Select(reason => (Reason: reason, Positions: PositionsOf(line.Candidate.Position, reason)))
            .Where(one => !own || one.Positions.Any(position => plan.TryGetValue(position, out var other) && !asBuilt.HasIt(other)))
            .Where(one => !IsAtHome(line)
                || (one.Reason.By is ReasonBy.Joint or ReasonBy.Stack && one.Positions.Any(position => IsAnothers(line, plan, position))))
            .Select(one => one.Positions).MinBy(positions => (positions.Any(isOpen), positions.Count)) ?? all;
    }

    /// <summary>Does what keeps it from holding hang on no neighbour at all?</summary>
    public bool IsAlone(JudgedLine line) =>
        line.Outcome == LineOutcome.Fails && line.Answer.AlsoNeeded.Count == 0 && line.Candidate.Parts.Count == 1 && !IsAtHome(line)
        && !HasFindings(line)
        && line.Answer.Reasons.Any(reason => reason is { Met: Met.No, By: ReasonBy.Feature or ReasonBy.Kind } && Decides(line, reason)
            && PositionsOf(line.Candidate.Position, reason).Count == 0);

    /// <summary>Is it not known whatever its neighbours are: left empty where no wished engine is, or a feature missing that no joint reads?</summary>
    public bool IsOpenAlone(JudgedLine line) =>
        line.Candidate.Parts.Count == 1 && !IsAtHome(line) && !HasFindings(line)
        && (line.Candidate.IsNothing
            ? (line.Outcome == LineOutcome.NotKnown || line.IsMissed)
                && !line.Answer.Reasons.Any(reason => reason.By is ReasonBy.Feature or ReasonBy.Joint or ReasonBy.Stack)
            : line.Outcome == LineOutcome.NotKnown && line.Answer.Reasons.Any(reason =>
                reason is { Met: Met.NotKnown, By: ReasonBy.Feature } && Decides(line, reason) && PositionsOf(line.Candidate.Position, reason).Count == 0));

    /// <summary>Is it at home where it is judged, or, where several are fitted there, perhaps beside other neighbours?</summary>
    private bool IsAtHome(JudgedLine line) => HasAlternatives(line)
        || line.Answer.Reasons.Any(reason => reason is { By: ReasonBy.Identity, Met: Met.Yes }) // on some engines of the variant, by its number
        || line.Answer.Identity.Relation is IdentityRelation.FittedHere or IdentityRelation.NewerNumber or IdentityRelation.SameBothWays;

    /// <summary>Was anything ever found of it there? It may speak beside other neighbours.</summary>
    /// <param name="axis">Only of this; null: of either.</param>
    private bool HasFindings(JudgedLine line, Axis? axis = null) => Facts.FindingsAt(line.Candidate.Position)
        .Any(finding => finding.Part == line.Candidate.Parts[0].Id && (axis is null || finding.Axis == axis));

    /// <summary>Of several fitted parts the answer names the one it suits best: beside other neighbours that may be another, with other reasons.</summary>
    private bool HasAlternatives(JudgedLine line) =>
        Facts.FitmentsAt(line.Candidate.Reference, line.Candidate.Position).Select(fitment => fitment.Part).Distinct(StringComparer.Ordinal).Count() > 1;

    /// <summary>Does something else sit there than the reference has: then its identity says nothing at that joint.</summary>
    private bool IsAnothers(JudgedLine line, IReadOnlyDictionary<string, Candidate> plan, string position) =>
        plan.TryGetValue(position, out var other) && position != line.Candidate.Position
        && !Facts.FitmentsAt(line.Candidate.Reference, position).Any(fitment => other.Parts.Any(part => part.Id == (fitment.Part ?? Part.None)));

    /// <summary>Positions that a reason of this one reads.</summary>
    public IReadOnlyList<string> PositionsOf(string own, Reason reason) => reason.By switch
    {
        ReasonBy.Joint => [.. Facts.Joints.Where(joint => joint.Code == reason.Code).SelectMany(joint => new[] { joint.Left.Position, joint.Right.Position })],
        ReasonBy.Stack => [.. Facts.Stacks.Where(stack => stack.Code == reason.Code)
            .SelectMany(stack => stack.Terms).OfType<FeatureTerm>().Select(term => term.At.Position)],
        ReasonBy.Companion => [.. Facts.Companions.Where(rule => reason.Because.Contains(rule.Code))
            .SelectMany(rule => new[] { rule.When.At.Position, rule.Then.At.Position })],

        // Whether a demand on a feature speaks depends on whether a joint reads the same feature.
        _ => [.. Facts.JointsAt(own).Where(joint => (joint.Left.Position == own ? joint.Left : joint.Right).Feature == reason.Feature)
            .SelectMany(joint => new[] { joint.Left.Position, joint.Right.Position })],
    };
}
