namespace PartMatch.Core.Planning;

/// <summary>How long a plan may be thought about, in steps that are the same on every machine: one is one to three seconds of a core.</summary>
/// <remarks>No clock: the same problem ends with the same answer on a slow machine, later. Whoever wants it sooner stops it.</remarks>
/// <param name="Work">More than 0.</param>
public sealed record PlanEffort(double Work)
{
    /// <summary>Searches that go on at once where a question takes several: each uses one core. The answer is the same with any number.</summary>
    public int AtOnce { get; init; } = 2;

    /// <summary>How far ties are settled.</summary>
    public PlanTies Ties { get; init; } = PlanTies.All;

    public static PlanEffort Ordinary { get; } = new(20);

    public static PlanEffort Thorough { get; } = new(200);

    /// <summary>Variables from which the linear relaxation is asked first where to look. Ours, by trying: below, it takes longer than it saves.</summary>
    internal int NarrowsFrom { get; init; } = 1500;
}

/// <summary>Which ties of a plan are settled: what is not needed for an answer costs time.</summary>
public enum PlanTies
{
    /// <summary>What counts first is enough.</summary>
    None,

    /// <summary>Until both cost and days are the least there are: enough for "what would it cost, and when would it be ready".</summary>
    CostAndDays,

    /// <summary>What it costs, what is done at all and the very last one: for a plan whose lines count and not its days, the same for the same question.</summary>
    Lines,

    /// <summary>All: for a plan whose lines are shown.</summary>
    All,
}
