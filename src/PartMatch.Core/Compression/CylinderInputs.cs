using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>
/// Everything that the compression of one engine is reckoned from: each number once, so that a length which stands in several places is one length.
/// </summary>
/// <param name="asked">Which of the inputs the question gives, or leaves open: the engine as built has no part in their ranges.</param>
internal sealed class CylinderInputs(
    IReadOnlyList<Assumption> assumed, IReadOnlyList<SumInput> inputs, IReadOnlySet<int> asked, Func<double[], Cylinder> build, Spread? closes)
{
    public IReadOnlyList<Assumption> Assumed { get; } = assumed;

    /// <summary>Intake closing after bottom dead centre, shifts included; null where not known.</summary>
    public Spread? Closes { get; } = closes;

    public Cylinder Expected => build([.. inputs.Select(input => input.Spread.Expected)]);

    public Spread Ratio => Of(cylinder => cylinder.Ratio);

    /// <summary>Over the ranges of what is asked alone: what is recorded stands in the engine as built alike, and moves both together.</summary>
    public Spread RatioAsAsked => SumRange.Of(OnlyAsked, of => build(of).Ratio);

    /// <inheritdoc cref="RatioAsAsked"/>
    public Spread? TrappedAsAsked => Closes is { } known && double.IsFinite(Expected.RodM)
        ? SumRange.Of(OnlyAsked, of => TrappedCompression.Of(build(of).Ratio, build(of).Crank, known.Expected))
        : null;

    public Spread Squish => Of(cylinder => cylinder.SquishM);

    /// <summary>Null where the closing or the rod is not known.</summary>
    public Spread? Trapped => Closes is { } known && double.IsFinite(Expected.RodM) ? SumRange.Of(WithClosing(known), TrappedOf) : null;

    public Spread Of(Func<Cylinder, double> result) => SumRange.Of(inputs, of => result(build(of)));

    /// <summary>On the trapped ratio; on the geometric one where that is not known.</summary>
    public IReadOnlyList<Influence> Influences => Closes is { } known && double.IsFinite(Expected.RodM)
        ? SumRange.Influences(WithClosing(known), TrappedOf, GeometryText.InRatio)
        : SumRange.Influences(inputs, of => build(of).Ratio, GeometryText.InRatio);

    private SumInput[] OnlyAsked =>
        [.. inputs.Select((input, index) => asked.Contains(index) ? input : input with { Spread = Spread.Exactly(input.Spread.Expected) })];

    private SumInput[] WithClosing(Spread known) => [.. inputs, new SumInput("intake closing", TrappedCompression.FromBottom(known))];

    private double TrappedOf(double[] of)
    {
        var cylinder = build(of[..^1]);
        return TrappedCompression.Of(cylinder.Ratio, cylinder.Crank, of[^1]);
    }
}
