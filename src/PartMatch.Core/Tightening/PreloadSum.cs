using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Tightening.TighteningText;

namespace PartMatch.Core.Tightening;

/// <summary>Preload = torque ÷ (nut factor × diameter), the nut factor with its scatter; and its shares of what the bolt carries.</summary>
/// <param name="NutFactor">Before the scatter.</param>
/// <param name="Scatter">Of the preload at one torque, either way; a share below 1.</param>
/// <remarks>
/// Shigley, Mechanical Engineering Design, chapter 8 (from memory). The shares are those of the pull alone; torsion while tightening stands beside them.
/// At one torque the preload scatters because friction does, so the scatter is the nut factor's own range: counted there, and nowhere again.
/// </remarks>
internal sealed record PreloadSum(MetricThread Thread, BoltLoads Loads, Spread Torque, Figure NutFactor, double Scatter)
{
    /// <summary>The range that pulls 1 − scatter to 1 + scatter of what the factor alone does.</summary>
    public Spread Factor => new(NutFactor.Spread.Low / (1 + Scatter), NutFactor.Spread.Expected, NutFactor.Spread.High / (1 - Scatter));

    public string FactorSource => Scatter == 0 ? $"{NutFactor.Source}; without scatter, as asked"
        : $"{NutFactor.Source}; its range is what makes the preload scatter by ± {TighteningText.Share(Scatter)} at one torque"
        + (Scatter is >= 0.25 and <= TighteningCheck.UsualScatter ? ": ± 25 to 30 % is common practice, no source" : ", given in the question");

    private SumInput[] Common => [new("torque", Torque), new("nut factor", Factor)];

    public Spread Preload => SumRange.Of(Common, Pull);

    public Spread ShareOfProof => SumRange.Of(With(Loads.Proof), Share);

    public Spread ShareOfUltimate => SumRange.Of(With(Loads.Ultimate), Share);

    /// <summary>Of the proof stress, pull and torsion together, while the wrench turns.</summary>
    public Spread ShareWithTorsion => SumRange.Of(With(Loads.Proof), of => Share(of) * BoltTorsion.Times(Thread, of[1]));

    /// <summary>On the share of the proof load.</summary>
    public IReadOnlyList<Influence> Influences => SumRange.Influences(With(Loads.Proof), Share, TighteningText.Share);

    public IEnumerable<WorkingStep> Working(string state)
    {
        var (preload, told) = (Preload, NutFactor.Spread);
        if (Scatter > 0)
        {
            yield return new WorkingStep(
                $"nut factor with its scatter, {state}", "least K ÷ (1 + scatter) … greatest K ÷ (1 − scatter)",
                $"{InFactor(told.Low)} ÷ (1 + {TighteningText.Share(Scatter)}) … {InFactor(told.High)} ÷ (1 − {TighteningText.Share(Scatter)})",
                Factor.In(Ratio, FactorFormat).Text, FactorSource);
        }

        yield return new WorkingStep(
            $"preload, {state}", "T ÷ (K × d)",
            $"{InNewtonMetres(Torque.Expected)} ÷ ({InFactor(told.Expected)} × {SumText.Number(Thread.DiameterM, "0.####")} m)",
            $"{InKilonewtons(preload.Expected)}; from {InKilonewtons(preload.Low)} to {InKilonewtons(preload.High)} over the ranges of T and K",
            $"T = K·d·F: Shigley, Mechanical Engineering Design; K: {NutFactor.Source}");
        yield return OfShare("share of the proof load", Loads.Proof.Expected, ShareOfProof);
        yield return OfShare("share of the least breaking load", Loads.Ultimate.Expected, ShareOfUltimate);
        yield return new WorkingStep(
            $"share of the proof stress with torsion, {state}", "share of the proof load × √(1 + 3 × (shear ÷ tension)²)",
            $"{SumText.InPercent(ShareOfProof.Expected, "0.0")} × {SumText.Number(BoltTorsion.Times(Thread, told.Expected), "0.000")}",
            SumText.InPercent(ShareWithTorsion.Expected, "0.0"), BoltTorsion.Source);

        WorkingStep OfShare(string what, double load, Spread share) => new(
            $"{what}, {state}", "preload ÷ load", $"{InKilonewtons(preload.Expected)} ÷ {InKilonewtons(load)}",
            $"{SumText.InPercent(share.Expected, "0.0")}; from {TighteningText.Share(share.Low)} to {TighteningText.Share(share.High)}", "definition");
    }

    private static string InFactor(double factor) => SumText.Number(factor, FactorFormat);

    private SumInput[] With(Spread load) => [.. Common, new SumInput("strength", load)];

    private double Pull(double[] of) => of[0] / (of[1] * Thread.DiameterM);

    private double Share(double[] of) => Pull(of) / of[2];
}
