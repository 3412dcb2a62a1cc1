using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A question about the plan of a build: the plan itself, and what becomes of it when one thing is otherwise.</summary>
internal sealed class BuildQuestion
{
    private readonly HashSet<int> _givenUp;

    public BuildQuestion(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, CancellationToken stop)
    {
        (Facts, Build, Today, Memory, Effort, Stop) = (facts, build, today, memory, effort, stop);
        Run = new PlanRun(facts, build, today, memory);
        Asked = new PlanAsked(build.Code, version, objective, Run.Terms.StartOn);
        Solved = memory.Plans.Solve(facts, build, objective, today, effort, () => BuildPlanner.SolveWithWishes(Run, objective, effort, stop: stop));
        _givenUp = [.. Solved.Written.Grounds.Index().Where(ground => Solved.GivenUp.Any(given => given.Name == ground.Item.Name)).Select(ground => ground.Index)];
    }

    private BuildQuestion(BuildQuestion other)
    {
        (Facts, Build, Today, Memory, Effort, Stop) = (other.Facts, other.Build, other.Today, other.Memory, other.Effort, other.Stop);
        (Asked, Solved, _givenUp) = (other.Asked, other.Solved, other._givenUp);
        Run = other.Run.ForAnotherThread();
    }

    public BuildFacts Facts { get; }

    public Build Build { get; }

    public DateOnly Today { get; }

    public FitMemory Memory { get; }

    public PlanEffort Effort { get; }

    public CancellationToken Stop { get; }

    public PlanRun Run { get; }

    public PlanAsked Asked { get; }

    /// <summary>The plan as it is asked for.</summary>
    public SolvedPlan Solved { get; }

    public BuildTerms Terms => Run.Terms;

    public bool HasPlan => Solved.Solution.Choices.Count > 0;

    /// <summary>The best plan when the problem is otherwise; what was to be kept "if possible" is as in the plan.</summary>
    /// <param name="ties">How far; all where its lines are told.</param>
    public SolvedPlan Solve(Func<WrittenPlan, PlanProblem> adjust, PlanTies ties = PlanTies.All) =>
        Run.Solve(Asked.Objective, Effort with { Ties = ties }, _givenUp, adjust, stop: Stop);

    /// <summary>The same where what was to be kept "if possible" may give way once more.</summary>
    public SolvedPlan SolveWithWishes(Func<WrittenPlan, PlanProblem> adjust, PlanTies ties = PlanTies.All) =>
        BuildPlanner.SolveWithWishes(Run, Asked.Objective, Effort with { Ties = ties }, adjust: adjust, stop: Stop);

    /// <summary>The same question for another thread: one plans at a time, what is learned is learned for both.</summary>
    public BuildQuestion ForAnotherThread() => new(this);

    /// <summary>What keeps away every plan that has one of these there.</summary>
    public BuildConflict ConflictWith(string position, Func<Candidate, bool> isIt)
    {
        var name = Terms.At(position).Position.Name;
        var ground = new BuildGround($"force:{position}", $"{name}: it would have to be otherwise.", $"leave {name} as in the plan");
        return ConflictWith(new ForcedChoice(position, isIt, ground, Solved));
    }

    public BuildConflict ConflictWith(ForcedChoice force) =>
        new ConflictSearch(new PlanRun(Facts, Build, Today, Memory, refusedSellers: []), Asked, Effort, force, isNone: false, Stop).Find(withFurther: false);

    public BuildPlan Read(SolvedPlan solved) => PlanReader.Read(Run, solved, Asked, null, null);

    /// <exception cref="ArgumentException">The family has no such position.</exception>
    public IReadOnlyList<Candidate> CandidatesAt(string position) =>
        Terms.Facts.Family.Positions.Index().FirstOrDefault(one => one.Item.Code == position) is (var place, { } _)
            ? Run.Candidates[place]
            : throw new ArgumentException($"{Build.Family} has no position {position}.", nameof(position));
}

/// <summary>What is otherwise in a problem.</summary>
internal static class Otherwise
{
    /// <summary>One of these has to be there.</summary>
    /// <param name="ground">For a conflict to name.</param>
    public static PlanProblem Force(WrittenPlan written, string position, Func<Candidate, bool> isIt, int? ground = null) =>
        With(written, new PlanRule([], Made(written, position, isIt), ground));

    /// <summary>None of these may be there.</summary>
    public static PlanProblem Forbid(WrittenPlan written, string position, Func<Candidate, bool> isIt) =>
        With(written, [.. Made(written, position, isIt).Select(made => new PlanRule([made], []))]);

    /// <summary>At most so many packs of an offer.</summary>
    public static PlanProblem Limit(WrittenPlan written, int offer, int packs) =>
        Offer(written, offer, one => one with { Packs = Math.Min(one.Packs, packs) });

    /// <summary>The same where it is known what the best such plan costs: only its ties are sought.</summary>
    public static PlanProblem LimitAt(WrittenPlan written, int offer, int packs, long cost)
    {
        var limited = Limit(written, offer, packs);
        return limited with { MostCost = limited.MostCost is { } most && most.Limit <= cost ? most : new PlanBound(cost, null) };
    }

    public static PlanProblem Offer(WrittenPlan written, int offer, Func<PlanOffer, PlanOffer> change) => written.Problem with
    {
        Offers = [.. written.Problem.Offers.Select((one, index) => index == offer ? change(one) : one)],
    };

    /// <summary>Ready by this day at the latest.</summary>
    public static PlanProblem By(WrittenPlan written, int day) => written.Problem with { LastDay = new PlanBound(day, null) };

    /// <summary>Nothing is taken on trust.</summary>
    public static PlanProblem NothingOnTrust(WrittenPlan written) => written.Problem with
    {
        Doubts = [.. written.Problem.Doubts.Select((doubt, index) => index < written.Places.Count ? doubt with { IsAdmitted = false } : doubt)],
    };

    /// <summary>Nothing is taken on trust at one position.</summary>
    public static PlanProblem NotOnTrust(WrittenPlan written, string position) => Doubt(written, position, isAdmitted: false);

    /// <summary>Something may be taken on trust at one position.</summary>
    public static PlanProblem OnTrust(WrittenPlan written, string position) => Doubt(written, position, isAdmitted: true);

    private static PlanProblem Doubt(WrittenPlan written, string position, bool isAdmitted) => written.Problem with
    {
        Doubts = [.. written.Problem.Doubts.Select((doubt, index) =>
            index < written.Places.Count && written.Problem.Places[index].Name == position ? doubt with { IsAdmitted = isAdmitted } : doubt)],
    };

    private static List<PlanFact> Made(WrittenPlan written, string position, Func<Candidate, bool> isIt) =>
    [
        .. written.Places.Index().Where(place => written.Problem.Places[place.Index].Name == position)
            .SelectMany(place => place.Item.Index().Where(choice => isIt(choice.Item)).Select(choice => new ChoiceMade(place.Index, choice.Index))),
    ];

    private static PlanProblem With(WrittenPlan written, params IReadOnlyList<PlanRule> rules) =>
        written.Problem with { Rules = [.. written.Problem.Rules, .. rules] };
}
