using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>What is lost between pump and rail: so much at the flow where it was measured, and with the square of the flow elsewhere.</summary>
/// <remarks>loss ∝ flow², turbulent flow (from memory). One pipe has one loss at one flow, whatever goal is asked for.</remarks>
/// <param name="Loss">Pa, at that flow.</param>
/// <param name="AtM3S">That flow.</param>
/// <param name="IsMeasured">Given in the question; else the usual one stands for it and no limit may be drawn from it.</param>
internal sealed record LineLoss(Figure Loss, QuantityRange AtM3S, bool IsMeasured)
{
    private static readonly LineLoss _usual = new(
        new Figure(10_000, 20_000, 40_000,
            "not recorded; 0.1 … 0.2 … 0.4 bar at 100 L/h through line and clean filter (common practice, no source), growing with the square of the flow: "
            + "measure at the pump and at the rail, and give it with the flow at which it was measured"),
        Spread.Exactly((double)UnitTable.Get("L/h").ToBase(100)).In(SumText.LitresPerHour, "0"), IsMeasured: false);

    /// <summary>Nothing between pump and regulator.</summary>
    public static LineLoss None { get; } = _usual with { Loss = new Figure(0, 0, 0, "the regulator sits at the pump"), IsMeasured = true };

    public static LineLoss Of(SupplyQuestion question) => question.LineLoss is not { } loss
        ? _usual
        : new LineLoss(
            new Figure(Spread.Of(loss), question.LineLossFlow is { } at
                ? $"given in the question, at {at.Text}; it grows with the square of the flow (turbulent flow, from memory)"
                : "given in the question: none at any flow"),
            question.LineLossFlow ?? _usual.AtM3S, IsMeasured: true);

    /// <summary>Loss ÷ flow², Pa·s²/m6.</summary>
    public Spread PerFlowSquared => Loss.Spread / (Spread.Of(AtM3S) * Spread.Of(AtM3S));

    /// <summary>Lost at another flow, Pa.</summary>
    public Spread At(Spread flowM3S) => PerFlowSquared * flowM3S * flowM3S;

    /// <summary>The flow that loses so much, m3/s; without end where nothing is lost.</summary>
    public Spread FlowThatLoses(Spread pascals) => (pascals.NotNegative() / PerFlowSquared).SquareRoot();

    /// <summary>Both in words: so much at that flow.</summary>
    public string Text => $"{SumText.InBar(Loss.Spread)} at {AtM3S.Text}";

    public WorkingStep Step(Spread flowM3S) => new(
        "loss of line and filter", "loss × (flow ÷ flow at which it was measured)²",
        $"{SumText.InBar(Loss.Spread.Expected)} × ({SumText.In(SumText.LitresPerHour, flowM3S.Expected, "0.0")} ÷ {SumText.In(SumText.LitresPerHour, AtM3S.Expected, "0.#")})²",
        SumText.InBar(At(flowM3S).Expected), Loss.Source);
}
