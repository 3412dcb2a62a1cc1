namespace PartMatch.Core.Planning;

/// <summary>What counts first. Each has its order of ties, down to the least difference that is told.</summary>
public enum PlanObjective
{
    /// <summary>Cost, then days, then risk, then what is kept.</summary>
    Cheapest,

    /// <summary>Days, then cost, then risk, then what is kept.</summary>
    Soonest,

    /// <summary>Risk, then cost, then days, then what is kept.</summary>
    Surest,

    /// <summary>What is kept, then cost, then days, then risk.</summary>
    MostKept,
}

public enum PlanStatus
{
    ProvenOptimal,

    /// <summary>The limit came first; nothing better than the bound is possible.</summary>
    BestFound,
    Infeasible,

    /// <summary>The limit came before anything was found.</summary>
    OutOfTime,
    StoppedByYou,
}

/// <summary>What was decided. Lists go by the indexes of the problem.</summary>
/// <param name="Choices">For each place its choice; null where the place stays open. Empty where nothing was found.</param>
/// <param name="Packs">For each offer.</param>
/// <param name="Jobs">For each job the day on which it starts; null where it is not done.</param>
/// <param name="Doubts">For each doubt, whether it is taken on trust.</param>
/// <param name="Bound">For the value that counts first, the best that is still possible.</param>
public sealed record PlanSolution(
    PlanStatus Status, IReadOnlyList<int?> Choices, IReadOnlyList<int> Packs, IReadOnlyList<int?> Jobs, IReadOnlyList<bool> Doubts, PlanTotals Totals,
    long Bound)
{
    /// <summary>There is none.</summary>
    public static PlanSolution Infeasible { get; } = new(PlanStatus.Infeasible, [], [], [], [], new PlanTotals(0, 0, 0, 0, 0), 0);

    /// <summary>The limit came before anything was found.</summary>
    public static PlanSolution OutOfTime { get; } = new(PlanStatus.OutOfTime, [], [], [], [], new PlanTotals(0, 0, 0, 0, 0), 0);
}

/// <param name="Sending">Part of the cost: what sellers charge to send.</param>
/// <param name="Days">Day on which everything has arrived and all work is done.</param>
public sealed record PlanTotals(long Cost, long Sending, int Days, long Risk, int Kept);

/// <summary>How far a long solve has come.</summary>
/// <param name="Best">Of the value that counts first; null before anything was found.</param>
public sealed record PlanProgress(long? Best, long Bound);
