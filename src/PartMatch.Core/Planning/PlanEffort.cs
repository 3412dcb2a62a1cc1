namespace PartMatch.Core.Planning;

/// <summary>How long a plan may be thought about, in steps that are the same on every machine: one is one to three seconds of a core.</summary>
/// <remarks>No clock: the same problem ends with the same answer on a slow machine, later. Whoever wants it sooner stops it.</remarks>
/// <param name="Work">More than 0.</param>
public sealed record PlanEffort(double Work)
{
    /// <summary>False where what counts first is enough and ties may fall as they like.</summary>
    public bool WithTies { get; init; } = true;

    public static PlanEffort Ordinary { get; } = new(20);

    public static PlanEffort Thorough { get; } = new(200);

    /// <summary>Variables from which the linear relaxation is asked first where to look. Ours, by trying: below, it takes longer than it saves.</summary>
    internal int NarrowsFrom { get; init; } = 1500;
}
