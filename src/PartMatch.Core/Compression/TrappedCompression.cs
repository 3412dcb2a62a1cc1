using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>
/// Volume when the intake valve closes ÷ clearance volume: geometry only. It leaves out ram, pulses, heat and what a valve still leaks below the stated lift,
/// and does not predict knock.
/// </summary>
/// <remarks>
/// 1 + (geometric ratio − 1) × x(θ) ÷ stroke, θ = 180° + closing after bottom dead centre. Equal distances before and after bottom dead centre enclose the
/// same volume, so the sum is over the distance: it falls all the way, while over the closing itself it turns at bottom dead centre.
/// </remarks>
public static class TrappedCompression
{
    private const double HalfTurn = 180;

    /// <param name="ratio">Geometric compression ratio.</param>
    /// <param name="closes">Degrees of the crank after bottom dead centre; negative = before.</param>
    public static double Of(double ratio, SliderCrank crank, double closes) => 1 + ((ratio - 1) * ShareEnclosed(crank, closes));

    /// <summary>How much of the stroke is still (or, closing early, already) enclosed when the valve closes.</summary>
    public static double ShareEnclosed(SliderCrank crank, double closes) => crank.ShareBelowTop(HalfTurn + closes);

    /// <summary>Low, expected and high, all inputs as ranges.</summary>
    public static Spread Of(Spread ratio, Spread strokeM, Spread rodM, Spread closes) => SumRange.Of(Inputs(ratio, strokeM, rodM, closes), Formula);

    /// <summary>What each input alone does. The closing is shown over its distance from bottom dead centre, where the least comes from the far end.</summary>
    public static IReadOnlyList<Influence> Influences(Spread ratio, Spread strokeM, Spread rodM, Spread closes) =>
        SumRange.Influences(Inputs(ratio, strokeM, rodM, closes), Formula, trapped => SumText.Number(trapped, "0.00"));

    /// <summary>The distance of the closing from bottom dead centre; a range that reaches over it begins at 0.</summary>
    public static Spread FromBottom(Spread closes)
    {
        var (one, other) = (Math.Abs(closes.Low), Math.Abs(closes.High));
        return new Spread(closes is { Low: <= 0, High: >= 0 } ? 0 : Math.Min(one, other), Math.Abs(closes.Expected), Math.Max(one, other));
    }

    /// <summary>How far from bottom dead centre, on either side, the valve has to close for a wanted trapped ratio; null where no closing gives it.</summary>
    /// <param name="wanted">More than 1 and at most the geometric ratio.</param>
    public static double? FindClosing(double ratio, SliderCrank crank, double wanted) =>
        wanted > 1 && wanted <= ratio ? HalfTurn - crank.DegreesAt((wanted - 1) / (ratio - 1)) : null;

    private static IReadOnlyList<SumInput> Inputs(Spread ratio, Spread strokeM, Spread rodM, Spread closes) =>
        [new("compression ratio", ratio), new("stroke", strokeM), new("rod length", rodM), new("intake closing", FromBottom(closes))];

    private static double Formula(double[] of) => Of(of[0], new SliderCrank(of[1], of[2]), of[3]);
}
