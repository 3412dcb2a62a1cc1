using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>Preload = torque ÷ (nut factor × diameter), times the scatter; and its shares of what the bolt carries.</summary>
/// <remarks>
/// Shigley, Mechanical Engineering Design, chapter 8 (from memory). Torsion while tightening adds to the stress: the shares are those of the pull alone.
/// </remarks>
internal sealed record PreloadSum(MetricThread Thread, BoltLoads Loads, Spread Torque, Figure NutFactor, double Scatter)
{
    private SumInput[] Common => [new("torque", Torque), new("nut factor", NutFactor.Spread), new("scatter", new Spread(1 - Scatter, 1, 1 + Scatter))];

    public Spread Preload => SumRange.Of(Common, Pull);

    public Spread ShareOfProof => SumRange.Of(With(Loads.Proof), Share);

    public Spread ShareOfUltimate => SumRange.Of(With(Loads.Ultimate), Share);

    /// <summary>On the share of the proof load.</summary>
    public IReadOnlyList<Influence> Influences => SumRange.Influences(With(Loads.Proof), Share, TighteningText.Share);

    public IEnumerable<WorkingStep> Working(string state)
    {
        var preload = Preload;
        yield return new WorkingStep(
            $"preload, {state}", "T ÷ (K × d)",
            $"{InNewtonMetres(Torque.Expected)} ÷ ({SumText.Number(NutFactor.Spread.Expected, "0.00#")} × {SumText.Number(Thread.DiameterM, "0.####")} m)",
            $"{InKilonewtons(preload.Expected)}; from {InKilonewtons(preload.Low)} to {InKilonewtons(preload.High)} "
            + $"with every range and the scatter of ± {TighteningText.Share(Scatter)}",
            $"T = K·d·F: Shigley, Mechanical Engineering Design; K: {NutFactor.Source}");
        yield return OfShare("share of the proof load", Loads.Proof.Expected, ShareOfProof);
        yield return OfShare("share of the least breaking load", Loads.Ultimate.Expected, ShareOfUltimate);

        WorkingStep OfShare(string what, double load, Spread share) => new(
            $"{what}, {state}", "preload ÷ load", $"{InKilonewtons(preload.Expected)} ÷ {InKilonewtons(load)}",
            $"{SumText.InPercent(share.Expected, "0.0")}; from {TighteningText.Share(share.Low)} to {TighteningText.Share(share.High)}", "definition");
    }

    private SumInput[] With(Spread load) => [.. Common, new SumInput("strength", load)];

    private double Pull(double[] of) => of[0] / (of[1] * Thread.DiameterM) * of[2];

    private double Share(double[] of) => Pull(of) / of[3];
}
