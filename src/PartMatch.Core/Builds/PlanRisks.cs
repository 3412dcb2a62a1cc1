using PartMatch.Core.Fit;

namespace PartMatch.Core.Builds;

/// <summary>
/// What being unsure weighs when the surest plan is looked for: whole numbers, so that one thing taken on trust outweighs every smaller doubt.
/// </summary>
/// <remarks>Ours, no source.</remarks>
internal static class PlanRisks
{
    /// <summary>Nobody knows whether it fits.</summary>
    public const long TakenOnTrust = 10_000;

    /// <summary>A part of the donor that is kept and that nobody looked at.</summary>
    public const long NotInspected = 20;

    /// <summary>A number that somebody found to be a trap: the wrong box may come.</summary>
    public const long Trap = 10;

    /// <summary>Of a line that holds.</summary>
    public static long Of(Sureness sureness) => sureness switch
    {
        Sureness.Proven => 0,
        Sureness.Documented => 1,
        Sureness.Indicated => 10,
        _ => 30,
    };
}
