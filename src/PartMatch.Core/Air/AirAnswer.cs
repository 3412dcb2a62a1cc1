using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>How the goal stands to what the air can carry.</summary>
public enum GoalStanding
{
    /// <summary>The air carries it with the expected figures, or the variant as built is recorded to do as much.</summary>
    Ordinary,

    /// <summary>Only with figures better than expected.</summary>
    Ambitious,

    /// <summary>Not even with the best of all the ranges.</summary>
    Unlikely,

    /// <summary>The displacement is not known, or the consumption is none that an engine of this sort reaches.</summary>
    NotKnown,
}

/// <summary>The goal seen from the air: an independent way to the same power.</summary>
/// <param name="Because">The standing in words.</param>
public sealed record AirSide(
    GoalStanding Standing, string Because, IReadOnlyList<Yardstick> Yardsticks, IReadOnlyList<Assumption> Assumed, IReadOnlyList<WorkingStep> Working)
{
    /// <summary>What low and high of these ranges are.</summary>
    public string Ranges { get; init; } = RangesInWords.WorstCases;

    /// <summary>kg/s; absent where the displacement is not known.</summary>
    public QuantityRange? AirFlow { get; init; }

    /// <summary>Power that this air carries, W.</summary>
    public QuantityRange? Power { get; init; }

    /// <summary>Brake mean effective pressure that the goal implies, Pa.</summary>
    public QuantityRange? Bmep { get; init; }

    /// <summary>Mean piston speed at the goal, m/s.</summary>
    public QuantityRange? PistonSpeed { get; init; }

    /// <summary>Where a measured power was corrected.</summary>
    public CorrectedPower? Corrected { get; init; }

    /// <summary>Flags; an answer shows them among its warnings.</summary>
    internal IReadOnlyList<SumWarning> Warnings { get; init; } = [];
}

/// <summary>What a variant of the family does at its rating, or a published range.</summary>
/// <param name="Of">Code of the variant, or <c>published</c>.</param>
public sealed record Yardstick(string Of, QuantityRange Bmep, QuantityRange? PistonSpeed, string Source)
{
    /// <summary>As a person calls it; absent for a published range.</summary>
    public string? Name { get; init; }
}

/// <summary>A power brought to the reference air of ISO 1585.</summary>
/// <param name="Factor">Corrected ÷ measured.</param>
public sealed record CorrectedPower(QuantityRange Factor, QuantityRange Power, string Text);
