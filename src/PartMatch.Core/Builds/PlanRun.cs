using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A build being planned: everything that is learned for one question serves the next.</summary>
internal sealed class PlanRun
{
    /// <summary>Plans that are tried until every line holds. Each teaches at least one rule, so that it ends; a family of the demo takes a handful.</summary>
    private const int MostTries = 300;

    private readonly LineJudge _judge;
    private readonly LineLearning _learning;
    private readonly PlanWriter _writer;
    private readonly LearnedRules _learned;
    private readonly FitMemory _memory;
    private readonly Build _build;
    private readonly IReadOnlyCollection<string>? _refusedSellers;
    private readonly Lock _writing = new();
    private readonly (int Known, WrittenPlan Plan)?[] _written = new (int, WrittenPlan)?[2];

    public PlanRun(BuildFacts facts, Build build, DateOnly today, FitMemory memory, IReadOnlyCollection<string>? refusedSellers = null)
    {
        (_memory, Today, _build, _refusedSellers) = (memory, today, build, refusedSellers);
        Terms = BuildTerms.Of(facts, build, today);
        Screen = OfferScreen.Of(Terms, refusedSellers ?? build.RefusedSellers, today);
        Candidates = Builds.Candidates.Of(Terms, Screen.Obtainable);
        var asBuilt = new AsBuilt(Terms, memory);
        _judge = new LineJudge(Terms, memory, asBuilt);
        _learning = new LineLearning(Terms, memory, asBuilt);
        _writer = new PlanWriter(Terms, Candidates, Screen);
        _learned = memory.Learned(Terms, Candidates, () => RelationRules.Of(Terms, ByPosition, asBuilt).Concat(Alone()));
    }

    private PlanRun(PlanRun other)
    {
        (_memory, Today, _build, _refusedSellers) = (other._memory, other.Today, other._build, other._refusedSellers);
        (Terms, Screen, Candidates, _writer, _learned) = (other.Terms, other.Screen, other.Candidates, other._writer, other._learned);
        var asBuilt = new AsBuilt(Terms, _memory);
        (_judge, _learning) = (new LineJudge(Terms, _memory, asBuilt), new LineLearning(Terms, _memory, asBuilt));
        lock (other._writing)
        {
            _written = [.. other._written];
        }
    }

    /// <summary>The same for another thread: one run answers one question at a time; what is learned is learned for all.</summary>
    public PlanRun ForAnotherThread()
    {
        Write();
        return new PlanRun(this);
    }

    /// <summary>The same where the build is otherwise.</summary>
    public PlanRun Where(Func<Build, Build> otherwise) => new(Terms.Facts, otherwise(_build), Today, _memory, _refusedSellers);

    public BuildTerms Terms { get; }

    /// <summary>The day of the question.</summary>
    public DateOnly Today { get; }

    public OfferScreen Screen { get; }

    /// <summary>In the order of the family's positions.</summary>
    public IReadOnlyList<IReadOnlyList<Candidate>> Candidates { get; }

    private Dictionary<string, IReadOnlyList<Candidate>> ByPosition =>
        Candidates.Where(choices => choices.Count > 0).ToDictionary(choices => choices[0].Position, StringComparer.Ordinal);

    /// <summary>How much is learned: it only grows.</summary>
    public int Learned => _learned.Count;

    /// <summary>The problem with everything learned so far.</summary>
    public WrittenPlan Write() => Write(withRisks: true);

    /// <summary>Written once for what is known: many questions ask the same problem with one thing otherwise.</summary>
    private WrittenPlan Write(bool withRisks)
    {
        lock (_writing)
        {
            var known = _learned.Count;
            ref var kept = ref _written[withRisks ? 1 : 0];
            if (kept is not var (before, plan) || before != known)
            {
                plan = _writer.Write(_learned.Rules, withRisks ? _learned.Risks : []);
                kept = (known, plan);
            }

            return plan;
        }
    }

    /// <param name="adjust">Changes the problem, for questions beside the plain one.</param>
    public SolvedPlan Solve(
        PlanObjective objective, PlanEffort effort, IReadOnlySet<int> dropped, Func<WrittenPlan, PlanProblem>? adjust = null,
        Action<PlanProgress>? told = null, CancellationToken stop = default)
    {
        // Most plans that do not hold are found out by what counts first; only then the ties are settled.
        var rough = effort with { Ties = PlanTies.None };
        var ties = _learned.IsSettled && effort.Ties != PlanTies.None;
        for (var tries = 0; tries < MostTries; tries++)
        {
            var withRisks = objective == PlanObjective.Surest || (ties && effort.Ties == PlanTies.All);
            var written = Write(withRisks);
            var problem = adjust is null ? written.Problem : adjust(written);
            var solution = PlanSolver.SolveWithout(problem, dropped, objective, ties ? effort : rough, told, stop);
            if (solution.Choices.Count == 0)
            {
                return new SolvedPlan(written, solution, []);
            }

            var lines = Judge(written, solution);
            if (!Learn(written, solution, lines, withRisks))
            {
                if (ties || effort.Ties == PlanTies.None || solution.Status == PlanStatus.StoppedByYou)
                {
                    _learned.IsSettled |= ties;
                    return new SolvedPlan(written, solution, lines);
                }

                ties = true;
            }
            else if (solution.Status == PlanStatus.StoppedByYou)
            {
                return new SolvedPlan(written, solution with { Choices = [] }, []);
            }
        }

        return new SolvedPlan(Write(withRisks: false), PlanSolution.OutOfTime, []);
    }

    /// <inheritdoc cref="FindHeld"/>
    public bool? CanHold(IReadOnlySet<int> dropped, PlanEffort effort, Func<WrittenPlan, PlanProblem>? adjust, CancellationToken stop) =>
        FindHeld(dropped, effort, adjust, expectsNone: false, stop).CanHold;

    /// <summary>Can all wishes and facts hold together where these are dropped? Null where that was not found out.</summary>
    /// <param name="adjust">Changes the problem, for questions beside the plain one.</param>
    /// <param name="expectsNone">Is it likely that there is no plan? Then it is asked first what keeps it away: an answer the sooner.</param>
    /// <returns>
    /// Where there is a plan, with the grounds that it does without: it holds where no more than these are dropped. Where there is none, with such as hold and
    /// suffice for that.
    /// </returns>
    public (bool? CanHold, IReadOnlySet<int> Grounds) FindHeld(
        IReadOnlySet<int> dropped, PlanEffort effort, Func<WrittenPlan, PlanProblem>? adjust, bool expectsNone, CancellationToken stop)
    {
        for (var tries = 0; tries < MostTries; tries++)
        {
            var written = Write(withRisks: false);
            var problem = adjust is null ? written.Problem : adjust(written);
            if (expectsNone && WhyNone(problem, dropped, effort, stop) is { } grounds)
            {
                return (false, grounds);
            }

            var solution = PlanSolver.FindAny(problem, dropped, effort, stop);
            if (solution.Choices.Count == 0)
            {
                return solution.Status == PlanStatus.Infeasible
                    ? (false, WhyNone(problem, dropped, effort, stop) ?? problem.Grounds.Except(dropped).ToHashSet())
                    : (null, dropped);
            }

            if (!LearnRules(written, solution, Judge(written, solution)))
            {
                return (true, PlanBroken.Of(problem, solution));
            }
        }

        return (null, dropped);
    }

    /// <summary>The grounds by which money and time are limited.</summary>
    public IReadOnlyList<int> Limits
    {
        get
        {
            var problem = Write().Problem;
            return [.. new[] { problem.MostCost?.Ground, problem.LastDay?.Ground }.OfType<int>()];
        }
    }

    /// <summary>Null where it is not found out: where money or time is short, whatever has to be bought takes part, and the solver takes long to say so.</summary>
    private static IReadOnlySet<int>? WhyNone(PlanProblem problem, IReadOnlySet<int> dropped, PlanEffort effort, CancellationToken stop)
    {
        bool IsShort(PlanBound? limit) => limit is not null && !(limit.Ground is { } ground && dropped.Contains(ground));
        return IsShort(problem.MostCost) || IsShort(problem.LastDay) ? null : PlanSolver.WhyNone(problem, dropped, effort, stop);
    }

    /// <summary>Every line of the plan, judged among its own neighbours; in the order of the family's positions.</summary>
    public IReadOnlyList<JudgedLine> Judge(WrittenPlan written, PlanSolution solution)
    {
        var plan = written.Chosen(solution);
        var works = written.WorksOf(solution);
        return [.. plan.Values.Where(IsJudged).Select(candidate => _judge.Judge(candidate, plan, works))];
    }

    /// <summary>One candidate in the place of what the plan has there.</summary>
    public JudgedLine Judge(Candidate candidate, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works) =>
        _judge.Judge(candidate, new Dictionary<string, Candidate>(plan, StringComparer.Ordinal) { [candidate.Position] = candidate }, works);

    /// <summary>Positions that a reason of this one reads.</summary>
    public IReadOnlyList<string> Reads(string position, Fit.Reason reason) => _learning.PositionsOf(position, reason);

    /// <summary>A goal is not judged: it is what the others are judged by.</summary>
    private static bool IsJudged(Candidate candidate) => candidate.Goal is null;

    /// <summary>Whether anything was learned: then the plan does not hold as it is, or weighs otherwise than the solver thought.</summary>
    private bool Learn(WrittenPlan written, PlanSolution solution, IReadOnlyList<JudgedLine> lines, bool withRisks) =>
        LearnRules(written, solution, lines) || (withRisks && LearnRisks(written, lines, written.Chosen(solution)));

    /// <summary>Whether a line does not hold. A rule that another plan taught meanwhile is a reason to try again as well.</summary>
    private bool LearnRules(WrittenPlan written, PlanSolution solution, IReadOnlyList<JudgedLine> lines)
    {
        var plan = written.Chosen(solution);
        var works = written.WorksOf(solution);
        HashSet<string> open = [.. solution.Choices.Index().Where(choice => choice.Item is null).Select(choice => written.Problem.Places[choice.Index].Name)];
        var learned = false;
        foreach (var line in lines)
        {
            var isOnTrust = line.Outcome == LineOutcome.NotKnown && IsOnTrust(written, solution, line.Candidate.Position);
            foreach (var rule in _learning.From(line, plan, works.Contains, open.Contains, isOnTrust))
            {
                // Another plan may have taught it while this one was sought; in the rules this one was sought by, it is a fault.
                if (!_learned.Add(rule) && written.Keys.Contains(rule.Key))
                {
                    throw new InvalidOperationException($"A plan breaks a rule that it was sought by: {rule.Key}");
                }

                learned = true;
            }
        }

        return learned;
    }

    /// <summary>Whether a line weighs what was not in the problem. What another plan taught meanwhile was not in it either.</summary>
    private bool LearnRisks(WrittenPlan written, IReadOnlyList<JudgedLine> lines, IReadOnlyDictionary<string, Candidate> plan)
    {
        var learned = false;
        foreach (var line in lines.Where(line => line.Outcome is LineOutcome.Holds or LineOutcome.WithWork && PlanRisks.Of(line.Sureness) > 0))
        {
            var near = _memory.Reach(Terms.Facts.Family, line.Candidate.Reference, line.Candidate.Position).Where(plan.ContainsKey);
            var risk = new LineRisk([.. near.Select(position => new At(position, plan[position].FitKey))], PlanRisks.Of(line.Sureness));
            learned |= !written.Risks.Contains(_learned.Keep(line.Candidate.Position, risk));
        }

        return learned;
    }

    private static bool IsOnTrust(WrittenPlan written, PlanSolution solution, string position) =>
        solution.Doubts[written.Problem.Places.Index().First(place => place.Item.Name == position).Index];

    /// <summary>What every candidate's own features say, whatever its neighbours are.</summary>
    private IEnumerable<LineRule> Alone()
    {
        var nothing = new Dictionary<string, Candidate>();
        var none = new HashSet<string>();
        foreach (var candidate in Candidates.SelectMany(choices => choices).Where(IsJudged))
        {
            var line = _judge.Judge(candidate, nothing, none);
            if (_learning.IsOpenAlone(line))
            {
                yield return new LineRule([new At(candidate.Position, candidate.FitKey)], [], [], line.IsMissed ? null : candidate.Position);
            }

            foreach (var rule in _learning.From(line, nothing, _ => true, _ => false, isOnTrust: false).Where(rule => rule.If.Count == 1 && _learning.IsAlone(line)))
            {
                yield return rule;
            }
        }
    }
}

/// <param name="Lines">Empty where nothing was found.</param>
internal sealed record SolvedPlan(WrittenPlan Written, PlanSolution Solution, IReadOnlyList<JudgedLine> Lines)
{
    /// <summary>Wishes "if possible" that are not.</summary>
    public IReadOnlyList<BuildGround> GivenUp { get; init; } = [];

    /// <summary>There is no plan.</summary>
    public static SolvedPlan None(WrittenPlan written) => new(written, PlanSolution.Infeasible, []);

    /// <summary>Is it known of every such wish whether any plan keeps it?</summary>
    public bool IsFoundOut { get; init; } = true;

    /// <summary>Does it travel in the seller's later parcel, because something is measured for it first that is not there yet?</summary>
    public bool IsLater(int offer) =>
        PlanLater.IsLater(Written.Problem, Written.Problem.Offers[offer], Solution.Choices, [.. Solution.Jobs.Select(start => start is not null)]);
}
